using System.Globalization;
using Laygate.Engineering.Acceptance;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Acceptance;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>A part of a lot report: sentences, then a table; the same on the terminal and on the page.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Lines">Sentences.</param>
/// <param name="Head">Head of the table; empty without one.</param>
/// <param name="Rows">Its rows.</param>
internal sealed record LotSection(string Title, IReadOnlyList<string> Lines, IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    /// <summary>Level of the heading.</summary>
    public int Level { get; init; } = 2;
}

/// <summary>The lot report in parts, each number with what it follows from.</summary>
internal static class LotSections
{
    /// <summary>What the report comes to, one sentence for each characteristic of each lot.</summary>
    public static IReadOnlyList<string> Says(AcceptanceReport report) =>
    [
        .. report.Lots.SelectMany(lot => lot.Characteristics.Where(one => one.Values.Count > 0 || one.Verdict == LotVerdict.Reject).Select(one => $"{Name(lot)}, {PlainText.Show(one.Id)}: {Verdict(one)}")),
        .. report.Lots.Where(lot => lot.Characteristics.All(one => one.Values.Count == 0)).Select(lot => $"{Name(lot)}: no results yet."),
        .. LaboratorySections.Counts(report),
    ];

    /// <summary>All parts.</summary>
    public static IReadOnlyList<LotSection> Of(AcceptanceReport report) =>
    [
        Scheme(report), .. report.Lots.SelectMany(lot => Lot(lot, report)), .. report.Gauges.Select(gauge => Gauge(gauge, report.Scheme)), .. report.Laboratories.Select(LaboratorySections.Of), Draw(report),
    ];

    private static LotSection Scheme(AcceptanceReport report)
    {
        var scheme = report.Scheme;
        return new LotSection("Scheme",
        [
            $"{PlainText.Show(scheme.Title)} ({PlainText.Show(scheme.Name)}). {PlainText.Show(scheme.Issuer)}, {PlainText.Show(scheme.Edition)}.",
            PlainText.Show(scheme.Coverage),
            $"SHA-256 of the scheme {scheme.Hash}.",
        ], [], []);
    }

    private static IEnumerable<LotSection> Lot(AcceptanceLot lot, AcceptanceReport report)
    {
        yield return new LotSection(Capital(Name(lot)), lot.Pay is { } pay ? [$"Pay of the lot: {Number(pay)} % ({(report.Scheme.Combine == PayCombination.Lowest ? "the lowest of its characteristics" : "by weight")})."] : [], [], []);
        foreach (var one in lot.Characteristics)
        {
            yield return new LotSection(PlainText.Show(one.Id), [.. Lines(one)], one.Values.Count > 0 ? ["result", "value", "station", "sublot", "row"] : [], [.. one.Values.Select(value => Row(value, one.Unit, report.Length))]) { Level = 3 };
            if (one.Outcome.Steps.Count > 0)
            {
                yield return new LotSection("Working", [], ["step", "value"], [.. one.Outcome.Steps.Select(step => new[] { step.Expression, Figures.WithUnit(Full(step.Value), step.Unit) })]) { Level = 4 };
            }
        }
    }

    private static IEnumerable<string> Lines(LotCharacteristic one)
    {
        yield return $"{Capital(Verdict(one))}";
        if (one.Limits.Count > 0)
        {
            yield return string.Join("; ", one.Limits.Select(limit => $"{limit.Name} {(limit.Value is { } value ? Figures.WithUnit(Number(value), one.Unit) : "not stated: the contract has it")}{(limit.FromPlan ? " (of the plan)" : string.Empty)}")) + ".";
        }

        if (one.Values.Count > 0)
        {
            yield return $"Least {Figures.WithUnit(Number(one.Values.Min(value => value.Value)), one.Unit)}, greatest {Figures.WithUnit(Number(one.Values.Max(value => value.Value)), one.Unit)}.";
        }

        if (one.EmptySublots.Count > 0)
        {
            yield return $"No result in sublot {string.Join(", ", one.EmptySublots.Select(number => number.ToString(CultureInfo.InvariantCulture)))}: not decided before there is one.";
        }

        foreach (var line in Outlier(one).Append(Next(one)).Append(Known(one)).Where(line => line.Length > 0))
        {
            yield return line;
        }
    }

    private static IEnumerable<string> Outlier(LotCharacteristic one)
    {
        if (one.Outlier is not { } outlier)
        {
            yield break;
        }

        var label = PlainText.Show(one.Values[outlier.Index].Label);
        yield return string.Create(CultureInfo.InvariantCulture, $"Farthest from the mean is {label}: {outlier.Statistic:0.000} deviations, critical {outlier.Critical:0.000} (Grubbs, both sides, one pass): {(outlier.IsMarked ? "marked, not removed" : "no outlier")}.");
        if (one.Without is { } without)
        {
            yield return $"Without {label}: {(without.Statistic is { } statistic ? $"{Number(statistic)} {StatisticUnit(one)}, " : string.Empty)}{Word(without.Verdict)}. It may be left out only with a cause that somebody names; it stays in the record.";
        }
    }

    private static string Next(LotCharacteristic one)
    {
        if (one.Outcome.Statistic is null || one.Outcome.Verdict == LotVerdict.Accept || one.Outcome.IsUnlisted || one.Measures == MeasuredProperty.ThermalRange)
        {
            return string.Empty;
        }

        return (one.NextLow, one.NextHigh) switch
        {
            (null, _) => "No single further result would have the lot accepted in full.",
            ({ } low, { } high) when double.IsFinite(low) && double.IsFinite(high) => $"The next result must lie from {Figures.WithUnit(Number(low), one.Unit)} to {Figures.WithUnit(Number(high), one.Unit)} for the lot to be accepted in full.",
            ({ } low, _) when double.IsFinite(low) => $"The next result must reach {Figures.WithUnit(Number(low), one.Unit)} for the lot to be accepted in full.",
            (_, { } high) => $"The next result must not exceed {Figures.WithUnit(Number(high), one.Unit)} for the lot to be accepted in full.",
            _ => string.Empty,
        };
    }

    private static string Known(LotCharacteristic one)
    {
        var clause = one.Clause is { } named ? $", {PlainText.Show(named)}" : string.Empty;
        return $"{PlainText.Show(one.Source)}{clause} ({Words.Of(one.Evidence)}).{(one.Remark is { } remark ? " " + PlainText.Show(remark) : string.Empty)}";
    }

    private static LotSection Gauge(GaugeReport gauge, AcceptanceScheme scheme)
    {
        var name = $"gauge {PlainText.Show(gauge.Gauge)}, {PlainText.Show(gauge.Course)}";
        var lines = new List<string>();
        if (gauge.Offset is { } offset)
        {
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"Offset {offset.Offset:+0.0;-0.0;0.0} kg/m3 from {offset.Pairs} pairs with cores, deviation of the differences {offset.Deviation:0.0} kg/m3, readings of the pairs from {offset.Low:0} to {offset.High:0} kg/m3; it says nothing outside them."));
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"Mean of {gauge.Readings} corrected readings {gauge.Mean:0} kg/m3; standard uncertainty of one, cores not counted, {offset.Uncertainty(0):0.0} kg/m3."));
        }
        else
        {
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"No core was cut at a reading: mean of {gauge.Readings} readings as they stand {gauge.Mean:0} kg/m3."));
        }

        lines.Add(gauge.IsIndicative
            ? scheme.Gauge is { } rule
                ? string.Create(CultureInfo.InvariantCulture, $"Indicative only: {rule.Pairs} pairs with a deviation of at most {rule.Deviation:0} kg/m3 are asked for ({PlainText.Show(scheme.Sources[rule.Source.Id])}, {Words.Of(rule.Source.Evidence)}).")
                : "Indicative only: the scheme has no rule by which gauges count. Gauges do not replace cores under limits that were made for cores."
            : "Correlated with cores as the scheme asks.");
        return new LotSection(Capital(name), lines, [], []);
    }

    private static LotSection Draw(AcceptanceReport report)
    {
        var rows = report.Lots.SelectMany(lot => lot.Sublots, (lot, sublot) => (lot, sublot)).SelectMany(pair => pair.sublot.Places, (pair, place) => (pair.lot, pair.sublot, place))
            .Select(one => (IReadOnlyList<string>)[PlainText.Show(one.lot.Course), one.sublot.Number.ToString(CultureInfo.InvariantCulture), Text(one.place.Draw.First, 6), Text(one.place.Draw.Second, 6), PlainText.Show(one.place.Run), Along(one.place.Station, report.Length, 1), Along(one.place.Draw.Across, report.Length, 2)]).ToList();
        return rows.Count == 0 ? new LotSection("Places", ["The scheme draws none."], [], []) : new LotSection("Places",
        [
            string.Create(CultureInfo.InvariantCulture, $"Drawn with the seed {report.Seed}: {SamplingPlaces.Method}. Draw before laying, and never again because a place looks bad."),
        ], ["course", "sublot", "r1", "r2", "run", "station", "from the left edge"], rows);
    }

    private static string Name(AcceptanceLot lot) => $"{PlainText.Show(lot.Course)}, lot {lot.Number.ToString(CultureInfo.InvariantCulture)}";

    private static string Verdict(LotCharacteristic one)
    {
        var count = LedgerNumbers.Count(one.Values.Count, "result", "results");
        if (one.Outcome.Statistic is not { } statistic)
        {
            return one.Limits.Any(limit => limit.Value is null) ? $"{count}, not decided: a limit is missing." : $"{count}, not decided: too few.";
        }

        var value = $"{Statistic(one)} {Number(statistic)} {StatisticUnit(one)} of {count}";
        var pay = one.Outcome.Pay is { } factor ? $", pay {Number(factor)} %" : string.Empty;
        var why = one.Outcome.IsUnlisted ? ": the table, as it is known, does not list it" : one.Outcome.IsWeak ? ": a table that is only remembered would reject it" : string.Empty;
        return $"{value}{(one.Outcome.Says is { } says ? $", {PlainText.Show(says)}" : string.Empty)}{pay}, {Word(one.Verdict)}{why}.";
    }

    private static string Statistic(LotCharacteristic one) => one.Statistic switch
    {
        LotStatistic.PercentWithin => $"percent within limits ({(one.Mode == PercentMode.Formula ? "formula" : one.Mode == PercentMode.TableNextHigher ? "table, next higher" : "table, interpolated")})",
        LotStatistic.MeanDeviation => "mean deviation from the target",
        LotStatistic.DeviationOfMean => "deviation of the mean from the target",
        LotStatistic.LowerMean => "lower end of the mean",
        LotStatistic.Shortfall => "shortfall of the least",
        _ => Words.Of(one.Statistic),
    };

    private static string StatisticUnit(LotCharacteristic one) => one.Statistic == LotStatistic.PercentWithin ? "%" : one.Unit;

    private static string Word(LotVerdict verdict) => verdict switch
    {
        LotVerdict.Accept => "accepted",
        LotVerdict.Adjust => "not accepted in full",
        LotVerdict.Reject => "rejected",
        _ => "not decided",
    };

    private static string[] Row(LotValue value, string unit, Unit length) =>
    [
        PlainText.Show(value.Label) + (value.IsMarked ? " (outlier)" : string.Empty), Figures.WithUnit(Full(value.Value), unit), value.Station is { } station ? Along(station, length, 1) : "–",
        value.Sublot > 0 ? value.Sublot.ToString(CultureInfo.InvariantCulture) : "–", $"{PlainText.Show(value.Place.File)}:{value.Place.Line.ToString(CultureInfo.InvariantCulture)}",
    ];

    private static string Number(double value) => Math.Round(value, 2, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture);

    // Enough digits to do the sum again.
    private static string Full(double value) => Math.Round(value, 5).ToString("0.#####", CultureInfo.InvariantCulture);

    private static string Along(double metres, Unit unit, int decimals) => Figures.WithUnit(Text(unit.FromSi(metres), decimals), unit.Spelling);

    private static string Text(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}

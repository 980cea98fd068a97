using System.Globalization;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Records;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What became of limits, in sentences.</summary>
internal static class HeldWords
{
    private const int MostRows = 3;

    /// <summary>The decision.</summary>
    public static string Says(HeldReport report)
    {
        var counts = report.Counts;
        var all = counts.Held + counts.Departed + counts.Missed + counts.NotDecided + counts.NotRecorded;
        var departed = counts.Departed > 0 ? $", {Number(counts.Departed)} departed from with permission" : string.Empty;
        if (counts is { Missed: 0, NotDecided: 0, NotRecorded: 0 })
        {
            return all == 0 ? "Nothing is judged: the plan has no limit that a record could show." : $"Held: all {Number(all - counts.Departed)} limits that a record can show{departed}.";
        }

        return $"Not all is held: of {Number(all)} limits {Number(counts.Missed)} missed, {Number(counts.NotDecided)} not decided, {Number(counts.NotRecorded)} not recorded, {Number(counts.Held)} held{departed}.";
    }

    /// <summary>How uncertainty counts.</summary>
    public static string Decision(HeldReport report) => report.SimpleBy is { } clause
        ? $"Readings are taken as they are, by {PlainText.Show(clause)}; their uncertainty is shown and does not decide."
        : "A value is held or missed only where its uncertainty (twice the standard one) does not reach the limit.";

    /// <summary>An outcome.</summary>
    public static string Of(HeldOutcome outcome) => outcome switch
    {
        HeldOutcome.Held => "held",
        HeldOutcome.Departed => "departed",
        HeldOutcome.Missed => "missed",
        HeldOutcome.NotDecided => "not decided",
        _ => "not recorded",
    };

    /// <summary>What was read, and of which element.</summary>
    public static string What(HeldFinding one) => $"{PlainText.Show(one.Finding.Address)}, {one.Quantity.What}";

    /// <summary>The value with its uncertainty; null where none was recorded.</summary>
    public static string? Value(HeldFinding one) => Shown(one) is not { Number: { } number } value ? null
        : one.Uncertainty is not { } u || u == 0 ? (one.Quantity.IsLimit ? Figures.WithUnit(Rounded(number, 1), value.Unit) : Figures.Of(one.Finding).Value())
        : WithUncertainty(one, number, u, value.Unit);

    /// <summary>A value among those that are not held, with its unit.</summary>
    public static string Bare(HeldFinding one, JudgedValue value) => Figures.WithUnit(Text.Rounding.Text(value.Number, RoundingKind.General, 1), Shown(one)?.Unit ?? string.Empty);

    /// <summary>The limit: what it asks, how strongly, whose it is.</summary>
    public static string Limit(HeldFinding one)
    {
        if (one.Finding.Limit is not { } limit)
        {
            return "no limit";
        }

        var figures = Figures.Of(one.Finding);
        var text = one.Quantity.IsLimit
            ? $"{(one.Finding.Check == CheckKind.AtLeast ? "at most" : "at least")} {figures.Value()} ({Names.OfQuantity(one.Finding.Quantity)})"
            : Wording.LimitText(limit, figures);
        return $"{text} {Names.Of(limit.Strength, limit.Basis)}{string.Concat(BriefWords.Whose(one.Finding).Take(1).Select(whose => $" [{whose}]"))}";
    }

    /// <summary>Where, when and in which rows.</summary>
    public static string Where(HeldReport report, HappenedValue value, bool all = false)
    {
        var parts = new[]
        {
            value.Of is { } of ? PlainText.Show(of) : null,
            value.At is { } at ? Time(report, at) : null,
            value.Station is { } station ? Station(report, station) : null,
            Rows(value.Rows, all),
        };
        return string.Join(", ", parts.OfType<string>());
    }

    /// <summary>A station in the unit of the plan.</summary>
    public static string Station(HeldReport report, double metres) => Figures.WithUnit(report.Length.FromSi(metres).ToString("0.#", CultureInfo.InvariantCulture), report.Length.Spelling);

    /// <summary>A time of the shift; with its date where it is of another night.</summary>
    public static string Time(HeldReport report, DateTimeOffset at) =>
        DateOnly.FromDateTime(at.DateTime).DayNumber - report.Plan.JudgedFor.DayNumber is 0 or 1 ? LedgerNumbers.Time(at) : at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A row.</summary>
    public static string Row(RowPlace row) => string.Create(CultureInfo.InvariantCulture, $"{PlainText.Show(row.File)}:{row.Line}");

    /// <summary>How many of the values it concerns; empty where there is only one.</summary>
    public static string Count(HeldFinding one)
    {
        var missed = one.NotHeld.Count(value => value.Outcome == HeldOutcome.Missed);
        var open = one.NotHeld.Count(value => value.Outcome == HeldOutcome.NotDecided);
        return one.Count <= 1 ? string.Empty
            : (missed, open) switch
            {
                (0, 0) => string.Create(CultureInfo.InvariantCulture, $"worst of {one.Count}"),
                (0, _) => string.Create(CultureInfo.InvariantCulture, $"{open} of {one.Count} not decided"),
                (_, 0) => string.Create(CultureInfo.InvariantCulture, $"{missed} of {one.Count} missed"),
                _ => string.Create(CultureInfo.InvariantCulture, $"{missed} of {one.Count} missed, {open} not decided"),
            };
    }

    /// <summary>Why it is not decided; null where it is.</summary>
    public static string? Because(HeldFinding one) => one.Because switch
    {
        NotDecidedBecause.Uncertainty => "the limit lies within the uncertainty",
        NotDecidedBecause.NoUncertainty => "the record states no uncertainty",
        NotDecidedBecause.ReadLater => "read later than it should be: it shows only that it was no less",
        NotDecidedBecause.NoLimit => NoLimit(one.Finding),
        _ => null,
    };

    /// <summary>What is missing in the record.</summary>
    public static string Lacking(HeldFinding one) => one.Count == 0 && one.Lacking is [{ What: null }] or [] ? $"{one.Quantity.Columns} ({What(one)})"
        : $"{one.Quantity.Columns} ({What(one)}): {string.Join("; ", one.Lacking.Take(MostRows).Select(Lacking))}{(one.Lacking.Count > MostRows ? string.Create(CultureInfo.InvariantCulture, $"; {one.Lacking.Count - MostRows} more") : string.Empty)}";

    /// <summary>One thing that is missing.</summary>
    public static string Lacking(LackingRow lacking) => $"{PlainText.Show(lacking.What ?? "nothing recorded")}{(lacking.Row is { } row ? $" ({Row(row)})" : string.Empty)}";

    /// <summary>What the record says of a hold point.</summary>
    public static string Of(HeldReport report, HoldPointUse point)
    {
        var release = point.Release;
        var by = release?.By is { } who ? $" by {PlainText.Show(who)}" : string.Empty;
        var at = release?.At is { } time ? $" at {Time(report, time)}" : string.Empty;
        var on = release?.Evidence is { } evidence ? $" on {PlainText.Show(evidence)}" : string.Empty;
        var row = release is null ? string.Empty : $" ({Row(release.Place)})";
        var named = PlainText.Show(point.ReleasedBy ?? "nobody");
        return point.State switch
        {
            HoldPointState.Released => $"released{at}{by}{on}{row}",
            HoldPointState.ByAnother => $"released{at}{by}{on}{row}, where the plan names {named}",
            HoldPointState.TooLate => $"released{at}{by}{on}{row}, after laying had begun",
            HoldPointState.Incomplete => $"released{at}{by}{on}{row}; {string.Join(", ", Unsaid(release!))} not recorded",
            _ => $"no release is recorded; the plan names {named}",
        };
    }

    private static IEnumerable<string> Unsaid(HoldPointRelease release) =>
        new[] { release.At is null ? "when" : null, release.By is null ? "who" : null, release.Evidence is null ? "on what evidence" : null }.OfType<string>();

    private static string NoLimit(Finding finding) => finding.Missing.Count > 0 ? $"the plan does not state {string.Join(", ", Names.Missing(finding))}"
        : finding.Notes.Count > 0 ? NoteWords.Of(finding.Notes[0]).TrimEnd('.') : "no limit is known for it";

    private static ShownValue? Shown(HeldFinding one) => one.Quantity.IsLimit ? one.Finding.Limit?.Low ?? one.Finding.Limit?.High : one.Finding.Value;

    // Two digits of an uncertainty that begins with 1 or 2, else one, and the value with as many decimals; more where it would look as if it met a limit that it misses, or the other way round.
    private static string WithUncertainty(HeldFinding one, double number, double u, string unit)
    {
        var lead = Math.Pow(10, Math.Floor(Math.Log10(u)));
        var decimals = Math.Clamp(-(int)Math.Floor(Math.Log10(u)) + (u / lead < 3 ? 1 : 0), 0, 6);
        while (decimals < 6 && !LooksRight(one, number, decimals))
        {
            decimals++;
        }

        return Figures.WithUnit($"{Rounded(number, decimals)} ± {Rounded(u, decimals)}", unit);
    }

    private static bool LooksRight(HeldFinding one, double number, int decimals) =>
        new[] { one.Quantity.IsLimit ? one.Finding.Value?.Number : null, one.Quantity.IsLimit ? null : one.Finding.Limit?.Low?.Number, one.Quantity.IsLimit ? null : one.Finding.Limit?.High?.Number }.OfType<double>()
            .All(limit => Math.Sign(number - limit) == Math.Sign(Math.Round(number, decimals, MidpointRounding.AwayFromZero) - Math.Round(limit, decimals, MidpointRounding.AwayFromZero)));

    private static string Rounded(double number, int decimals) => Math.Round(number, decimals, MidpointRounding.AwayFromZero).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Rows(IReadOnlyList<RowPlace> rows, bool all)
    {
        var shown = rows.Take(all ? rows.Count : MostRows).GroupBy(row => row.File, StringComparer.Ordinal)
            .Select(file => $"{PlainText.Show(file.Key)}:{string.Join(",", file.Select(row => row.Line.ToString(CultureInfo.InvariantCulture)))}");
        return string.Join(" ", shown) + (!all && rows.Count > MostRows ? string.Create(CultureInfo.InvariantCulture, $" and {rows.Count - MostRows} more rows") : string.Empty);
    }

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}

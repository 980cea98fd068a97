using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Words for laying hour by hour and for workable weather.</summary>
internal static class OutlookWords
{
    /// <summary>Pass, warn or fail.</summary>
    public static string Of(LayingVerdict verdict) => verdict switch
    {
        LayingVerdict.Pass => "pass",
        LayingVerdict.Warn => "warn",
        _ => "fail",
    };

    /// <summary>A side of the weather.</summary>
    public static string Of(WeatherAxis axis) => axis switch
    {
        WeatherAxis.Air => "lowest air",
        WeatherAxis.Base => "lowest base",
        _ => "highest wind at the mat",
    };

    /// <summary>A moment in local time.</summary>
    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A limit that does not pass, with value and limit.</summary>
    public static string Of(BrokenLimit broken)
    {
        var name = $"{PlainText.Show(broken.Finding.Title)} ({PlainText.Show(broken.Finding.Rule)}, {PlainText.Show(broken.Finding.Address)})";
        if (broken.Value is not { } value || broken.Limit is not { } limit)
        {
            return name;
        }

        var end = limit.Low ?? limit.High;
        var tight = broken.OnExpectedValuesOnly ? ", but not in the worse case" : string.Empty;
        return end is null || (value.Number is null && string.Equals(value.Text, end.Text, StringComparison.Ordinal)) ? name : $"{name}: {Number(value)} against {(limit.Low is null ? "at most" : "at least")} {Number(end)}{tight}";
    }

    /// <summary>What cannot be read out of an outlook: one line per rule that could not be judged, with what to state; none where all were.</summary>
    public static IReadOnlyList<string> NotJudged(LayingOutlook outlook) =>
    [
        .. outlook.NotJudged.GroupBy(rule => (rule.Finding.Rule, rule.Finding.Title)).Select(group =>
        {
            var keys = group.SelectMany(rule => rule.Missing).Select(Names.Of).Distinct(StringComparer.Ordinal).ToList();
            var where = string.Join(", ", group.Select(rule => PlainText.Show(rule.Finding.Address)));
            var state = keys.Count > 0 ? $": state {string.Join(", ", keys.Select(key => $"`{key}`"))}" : string.Concat(group.SelectMany(rule => rule.Notes).Select(NoteWords.Of).Take(1).Select(note => ": " + note.TrimEnd('.')));
            return $"{PlainText.Show(group.Key.Title)} ({PlainText.Show(group.Key.Rule)}, {where}){state}.";
        }),
    ];

    /// <summary>What stands above <see cref="NotJudged"/>; null where all was judged and something was.</summary>
    public static string? Unsaid(LayingOutlook outlook) =>
        outlook.NotJudged.Count > 0 ? "Could not be judged, so nothing here says that the weather is good enough for:"
        : outlook.Rules.Count == 0 ? "No rule that depends on the weather was judged, so nothing here says that any weather is good enough."
        : null;

    /// <summary>How far one side may go.</summary>
    public static string Alone(AxisLimit axis, bool isUnknown)
    {
        var name = Names.Capital(Of(axis.Axis));
        var first = axis.BreaksFirst is { } broken ? $"; then: {Of(broken)}" : string.Empty;
        if (isUnknown)
        {
            var end = (axis.BreaksFirst, axis.NotBeyond) switch
            {
                (null, _) => string.Empty,
                (_, { } last) => $"; beyond {Number(last)} it fails for certain{first}",
                _ => $"; something that was judged fails at every value looked at{first}",
            };
            return $"{name}, the others as stated (plan: {Number(axis.Stated)}): how far it may go is not known{end}.";
        }

        var go = axis.AllPass is { } value ? $"everything passes to {Number(value)}" : "not everything passes at any value looked at";
        var safe = axis.NoFailure is { } still ? $"nothing fails to {Number(still)}" : "something fails at every value looked at";
        var searched = axis is { BreaksFirst: null } ? ", the end of what was looked at" : string.Empty;
        return $"{name}, the others as stated (plan: {Number(axis.Stated)}): {go}; {safe}{searched}{first}.";
    }

    /// <summary>A limit that holds in every hour alike, with its status.</summary>
    public static string Always(LimitMargin margin) => $"{Of(margin.Limit)}: {Words.Of(margin.Limit.Status)}";

    /// <summary>What the ids in front of the margins stand for.</summary>
    public static string Legend(LayingOutlook outlook) => string.Join("; ", outlook.Hours.SelectMany(hour => hour.Limits).Select(limit => limit.Limit.Finding)
        .DistinctBy(finding => finding.Rule, StringComparer.Ordinal)
        .OrderBy(finding => finding.Rule, StringComparer.Ordinal)
        .Select(finding => $"{PlainText.Show(finding.Rule)}{PlainText.Glue}{PlainText.Show(finding.Title)}"));

    /// <summary>Margins of an hour, the least of each rule: id, margin with sign and unit, status.</summary>
    public static IReadOnlyList<string> Margins(IEnumerable<LimitMargin> limits) =>
    [
        .. limits.GroupBy(limit => limit.Limit.Finding.Rule, StringComparer.Ordinal).Select(rule =>
        {
            var least = Least(rule)!;
            return $"{PlainText.Show(rule.Key)}{PlainText.Glue}{Signed(least.Margin)}{Words.Of(least.Limit.Status)}{(least.Limit.OnExpectedValuesOnly ? " (expected only)" : string.Empty)}";
        }),
    ];

    /// <summary>Of several limits the one that decides: the worst status, then the least margin; null of none.</summary>
    public static LimitMargin? Least(IEnumerable<LimitMargin> limits) =>
        limits.OrderByDescending(limit => limit.Limit.Status).ThenBy(limit => limit.Margin?.Number ?? double.PositiveInfinity).FirstOrDefault();

    /// <summary>A margin with its sign, and its unit; hours are told in minutes, as they have no digits to spare. Null where there is no number.</summary>
    public static (string Text, string Unit)? Margin(ShownValue? margin)
    {
        if (margin?.Number is not { } stated)
        {
            return null;
        }

        var (number, unit) = margin.Unit is "h" ? (stated * 60, "min") : (stated, margin.Unit);
        var kind = unit switch { "K" or "°F" => RoundingKind.Temperature, "min" => RoundingKind.Minutes, _ => RoundingKind.General };
        var text = Rounding.Text(Math.Abs(number), kind, 0);
        // What lies just beyond a limit must not look as if it lay on it.
        return ($"{(number < 0 ? "−" : "+")}{(text is "0" && number != 0 ? Rounding.Text(Math.Abs(number), kind, 1) : text)}", unit);
    }

    private static string Signed(ShownValue? margin) => Margin(margin) is { } told ? $"{Figures.WithUnit(told.Text, told.Unit)} " : string.Empty;

    /// <summary>A value to three digits.</summary>
    public static string Number(ShownValue value) => value.Number is { } number
        ? Figures.WithUnit(Rounding.Text(number, value.Unit is "°C" or "°F" or "C" or "F" or "K" ? RoundingKind.Temperature : RoundingKind.General, 0), value.Unit)
        : PlainText.Show(value.Text ?? string.Empty);
}

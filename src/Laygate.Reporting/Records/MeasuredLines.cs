using System.Globalization;
using Laygate.Engineering.Measured;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>Measured against computed temperatures on a terminal.</summary>
public static class MeasuredLines
{
    /// <summary>How to read the figures.</summary>
    internal static IReadOnlyList<string> Notes { get; } =
    [
        "Measured as instruments show it, whose own uncertainty widens no band; computed with what was measured of weather and loads, else with the plan.",
        "Readings of one place hang together, so that the limits of a share are those of as many places. No limit follows from these differences.",
    ];

    /// <summary>All lines.</summary>
    /// <param name="reports">Shifts.</param>
    /// <param name="full">Whether each reading is shown.</param>
    public static IReadOnlyList<TerminalLine> Of(IReadOnlyList<MeasuredReport> reports, bool full)
    {
        var lines = new List<TerminalLine>();
        foreach (var report in reports)
        {
            lines.AddRange([Line(TextStyle.Heading, Plan(report)), .. Shift(report, full), Line(TextStyle.Plain, string.Empty)]);
        }

        lines.AddRange(Notes.Select(note => Line(TextStyle.Quiet, note)));
        lines.AddRange(Caution.Brief.Select(sentence => Line(TextStyle.Quiet, sentence)));
        return lines;
    }

    /// <summary>Title and id of a plan.</summary>
    internal static string Plan(MeasuredReport report) => $"{PlainText.Show(report.PlanTitle ?? report.PlanId)} ({PlainText.Show(report.PlanId)})";

    /// <summary>Which readings a group holds.</summary>
    internal static string Named(TemperatureGroup group) => IsAll(group) ? group.IsSkin ? "Skin" : "Inside" : $"{(group.IsSkin ? "Skin" : "Inside")}, {Time(group)}";

    /// <summary>What the computed band rests on.</summary>
    internal static string Basis(MeasuredReport report) => string.Create(
        CultureInfo.InvariantCulture, $"{report.Comparison.Places} places, {report.Comparison.WithMeasuredLoads} with the measured temperature of their loads; weather {(report.Comparison.WithMeasuredWeather ? "measured" : "as planned")}.{string.Concat(report.Learnt.Select(one => $" Computed with what recorded shifts taught, {LearntText.Of(one)}."))}");

    /// <summary>Readings that are not compared.</summary>
    internal static string Left(NotCompared reason, int count) => $"{LedgerNumbers.Count(count, "reading is", "readings are")} not compared: {Reason(reason)}";

    private static bool IsAll(TemperatureGroup group) => group.From <= 0 && double.IsInfinity(group.To);

    /// <summary>What one group comes to.</summary>
    internal static string Of(TemperatureGroup group) => string.Create(
        CultureInfo.InvariantCulture,
        $"{LedgerNumbers.Count((int)Math.Round(group.Inside.Expected * group.Readings), "reading", "readings")} of {group.Readings} in the band that should hold 90 % ({Math.Round(100 * group.Inside.Expected)} %, {Math.Floor(100 * group.Inside.Low)} to {Math.Ceiling(100 * group.Inside.High)} % from {LedgerNumbers.Count(group.Places, "place", "places")}); measured {Bias(group.Bias)}{(group.Deviation is { } deviation ? $", spread {deviation:F0} K" : string.Empty)}");

    private static IEnumerable<TerminalLine> Shift(MeasuredReport report, bool full)
    {
        var comparison = report.Comparison;
        if (report.Record.About is { } about)
        {
            yield return Line(TextStyle.Quiet, PlainText.Show(about));
        }

        if (comparison.Compared.Count == 0)
        {
            yield return Line(TextStyle.Plain, "  No temperature could be compared.");
        }

        foreach (var group in comparison.Groups)
        {
            var all = IsAll(group);
            yield return Line(all ? TextStyle.Heading : TextStyle.Plain, $"  {(all ? group.IsSkin ? "Skin" : "Inside" : "  " + Time(group))}: {Of(group)}.");
        }

        yield return Line(TextStyle.Quiet, "  " + Basis(report));
        foreach (var (reason, count) in comparison.Left)
        {
            yield return Line(TextStyle.Quiet, "  - " + Left(reason, count));
        }

        foreach (var one in full ? comparison.Compared : [])
        {
            yield return Line(TextStyle.Plain, string.Create(
                CultureInfo.InvariantCulture,
                $"    {PlainText.Show(one.Row.Place.File)}, line {one.Row.Place.Line}: {PlainText.Show(one.Course)}, {(one.IsSkin ? "skin" : $"{1000 * one.Row.Depth:F0} mm deep")}, {one.Age / 60:F0} min: measured {one.Row.Value:F0} °C, computed {one.Expected:F0} ({one.Low:F0} to {one.High:F0}) °C{(one.IsInside ? string.Empty : ", outside")}"));
        }
    }

    private static string Bias(double kelvins) => Math.Round(kelvins) switch
    {
        0 => "as expected on average",
        > 0 and var more => string.Create(CultureInfo.InvariantCulture, $"{more} K warmer than expected on average"),
        var less => string.Create(CultureInfo.InvariantCulture, $"{-less} K colder than expected on average"),
    };

    private static string Time(TemperatureGroup group) => double.IsInfinity(group.To)
        ? string.Create(CultureInfo.InvariantCulture, $"from {group.From / 60:F0} min on")
        : string.Create(CultureInfo.InvariantCulture, $"{group.From / 60:F0} to {group.To / 60:F0} min");

    internal static string Reason(NotCompared reason) => reason switch
    {
        NotCompared.NoPlace => "map `station`, `depth` (0 for the skin) and a `course` of the plan.",
        NotCompared.NoRun => "the station lies in no run of the plan, or in several; map `run` there.",
        NotCompared.NotLaid => "no stations are recorded around it, so that nobody knows when it was laid.",
        NotCompared.BeforeScreed => "read before the screed passed: look at clocks and stations.",
        NotCompared.TooLate => "read later than the mat is followed.",
        NotCompared.NoInput => "weather, layers or temperatures that the computation needs are not stated for that time.",
        _ => "more places than are solved.",
    };

    private static TerminalLine Line(TextStyle style, string text) => new([new TextSpan(style, text)]);
}

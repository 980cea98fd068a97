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
    private const string Sources = "Measured as instruments show it, whose own uncertainty widens no band; computed with what was measured of weather and loads, else with the plan.";

    /// <summary>All lines.</summary>
    /// <param name="reports">Shifts.</param>
    /// <param name="full">Whether each reading is shown.</param>
    public static IReadOnlyList<TerminalLine> Of(IReadOnlyList<MeasuredReport> reports, bool full)
    {
        var lines = new List<TerminalLine>();
        foreach (var report in reports)
        {
            lines.AddRange([Line(TextStyle.Heading, $"{PlainText.Show(report.PlanTitle ?? report.PlanId)} ({PlainText.Show(report.PlanId)})"), .. Shift(report, full), Line(TextStyle.Plain, string.Empty)]);
        }

        lines.Add(Line(TextStyle.Quiet, Sources));
        lines.Add(Line(TextStyle.Quiet, "Readings of one place hang together, so that the limits of a share are those of as many places. No limit follows from these differences."));
        lines.AddRange(Caution.Brief.Select(sentence => Line(TextStyle.Quiet, sentence)));
        return lines;
    }

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
            var all = group.From <= 0 && double.IsInfinity(group.To);
            yield return Line(all ? TextStyle.Heading : TextStyle.Plain, $"  {(all ? group.IsSkin ? "Skin" : "Inside" : "  " + Time(group))}: {Of(group)}.");
        }

        yield return Line(TextStyle.Quiet, string.Create(CultureInfo.InvariantCulture, $"  {comparison.Places} places, {comparison.WithMeasuredLoads} with the measured temperature of their loads; weather {(comparison.WithMeasuredWeather ? "measured" : "as planned")}."));
        foreach (var (reason, count) in comparison.Left)
        {
            yield return Line(TextStyle.Quiet, $"  - {LedgerNumbers.Count(count, "reading is", "readings are")} not compared: {Reason(reason)}");
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

    private static string Reason(NotCompared reason) => reason switch
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

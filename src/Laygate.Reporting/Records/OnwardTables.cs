using System.Globalization;
using Laygate.Engineering.Onward;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Records;

/// <summary>The rest of a shift in pairs of name and value, the same on the terminal and on the page.</summary>
internal static class OnwardTables
{
    /// <summary>Chance to finish above which nobody asks what is left at the closing: judgement, one shift in twenty.</summary>
    private const double Sure = 0.95;

    /// <summary>The whole shift.</summary>
    public static IReadOnlyList<(string Name, string Value)> Whole(OnwardResult result)
    {
        var forecast = result.Forecast;
        var lines = new List<(string, string)>
        {
            ("left", $"{LedgerNumbers.Text(result.LengthLeft)}{Place(result)}"),
            ("finish", $"{OnwardWords.ChanceWithLimits(forecast.Finish)} by {LedgerNumbers.Time(result.Closing)}, of {forecast.Shifts.ToString(CultureInfo.InvariantCulture)} simulated shifts"),
            ("end", $"{OnwardWords.End(forecast.End, withWord: false)}{(result.SteadyEnd is { } steady ? $"; {LedgerNumbers.Time(steady)} if nothing varied" : string.Empty)}"),
            ("longest stop", $"{OnwardWords.Minutes(forecast.LongestStop.Expected)} on average, {OnwardWords.Minutes(forecast.LongestStop.High)} in a bad shift; {forecast.Stops.Expected.ToString("F1", CultureInfo.InvariantCulture)} stops for want of mix"),
        };
        if (result.StopLimit is { } limit && forecast.OverLimit is { } over)
        {
            lines.Add(("joint", $"a stop beyond the {OnwardWords.Minutes(limit)} of the plan, which asks for a joint: {OnwardWords.ChanceWithLimits(over)}"));
        }

        lines.Add(("at risk now", $"{LedgerNumbers.Text(result.AtRisk)} on trucks and machine"));
        if (result.StopAt is { } stop && (stop.IsRain || forecast.Finish.Expected < Sure))
        {
            lines.Add(("at risk then", $"{LedgerNumbers.WithRange(stop.Left)} left on trucks and machine when {(stop.IsRain ? "rain" : "the closing")} stops laying at {LedgerNumbers.Time(stop.At)}, at {LedgerNumbers.WithRange(stop.Reached)} of the way{(stop.Place is var (run, station) ? $", about {Station(station, result)} of {PlainText.Show(run)}" : string.Empty)}"));
            lines.AddRange(stop.StopLoading.Select(group => ("", $"last load of {PlainText.Show(group.Group)} that is still laid by then: leaves {LedgerNumbers.Time(group.At)}")));
        }

        return lines;
    }

    /// <summary>One course.</summary>
    public static IReadOnlyList<(string Name, string Value)> Course(OnwardCourse course)
    {
        var lines = new List<(string, string)>
        {
            ("on the machine", LedgerNumbers.Text(course.OnMachine)),
            ("on site", Out(course.OnSite)),
            ("on the road", Out(course.OnRoad)),
            ("to call", OnwardWords.Call(course.ToCall)),
        };
        if (course.LastsUntil is { } lasts)
        {
            lines.Add(("lasts until", $"{LedgerNumbers.Time(lasts)} if no truck came"));
        }

        lines.AddRange(course.Windows.Select(window => ("window", $"{OnwardWords.Window(window)} to densify what is laid at {LedgerNumbers.Time(window.At)}{Needs(course, window)}")));
        lines.AddRange(course.Passes.Select(one => ("passes", string.Create(CultureInfo.InvariantCulture, $"{one.Expected} of {one.Planned} of {PlainText.Show(one.Phase)} within the window of what is laid now, {one.Low} within its low end"))));
        return lines;
    }

    private static string Needs(OnwardCourse course, WindowAt window) => course.RolledWithin is not { } within ? string.Empty
        : $"; {(course.Passes.Count > 0 ? "with the rollers left it takes" : "the plan needs")} {OnwardWords.Minutes(within)}{(window.Seconds < within ? ": too short" : window.Low < within ? ": too short at the low end" : string.Empty)}";

    /// <summary>Changes that were tried.</summary>
    public static IReadOnlyList<(string Name, string Value)> Tried(OnwardResult result) =>
        [.. result.Tried.Select(change => (OnwardWords.Lever(change), $"finish {OnwardWords.Chance(change.Forecast.Finish)}, longest stop {OnwardWords.Minutes(change.Forecast.LongestStop.Expected)}"))];

    /// <summary>What it started from.</summary>
    public static IReadOnlyList<(string Name, string Value)> Facts(OnwardResult result) => [.. result.Facts.Select(fact => (Name(fact), Value(fact)))];

    private static string Place(OnwardResult result) => result.Starts is [{ Place: var (run, station) }] ? $", from {Station(station, result)} of {PlainText.Show(run)}" : string.Empty;

    private static string Station(double station, OnwardResult result) => LedgerNumbers.Text(result.LengthLeft with { Si = station });

    private static string Out(LoadsOut loads) => loads.Loads == 0 ? "no load"
        : $"{LedgerNumbers.Count(loads.Loads, "load", "loads")}, {LedgerNumbers.Text(loads.Mass)}{(loads.Oldest is { } age ? $"; the oldest ({PlainText.Show(loads.Ticket!)}) was loaded {OnwardWords.Minutes(age)} ago" : string.Empty)}";

    private static string Name(OnwardFact fact) => (fact.Of is { } of ? $"{PlainText.Show(of)}: " : string.Empty) + fact.Kind switch
    {
        FactKind.Laid => "laid",
        FactKind.OnMachine => "on the machine",
        FactKind.Lowest => "laid with as little on the machine as",
        FactKind.Yield => "mass against the plan",
        FactKind.Speed => "speed between stops",
        FactKind.Trucks => "trucks",
        FactKind.TimetableLate => "loads leave later than planned",
        FactKind.Closing => "closing",
        FactKind.Air => "air",
        FactKind.Base => "surface below",
        FactKind.Wind => "wind",
        FactKind.LayingTemperature => "behind the screed",
        _ => "in the silo",
    };

    private static string Value(OnwardFact fact)
    {
        var value = fact.Value is null ? fact.At is { } at ? LedgerNumbers.Time(at) : string.Empty
            : fact.Kind is FactKind.Speed ? OnwardWords.Speed(fact.Value)
            : fact.Kind is FactKind.Trucks ? ((int)fact.Value.Si).ToString(CultureInfo.InvariantCulture)
            : fact.Kind is FactKind.Air or FactKind.Base or FactKind.LayingTemperature ? Figures.WithUnit(Math.Round(fact.Value.Number).ToString(CultureInfo.InvariantCulture), fact.Value.Unit.Spelling)
            : fact.Kind is FactKind.Wind ? Figures.WithUnit(fact.Value.Number.ToString("F1", CultureInfo.InvariantCulture), fact.Value.Unit.Spelling)
            : LedgerNumbers.Text(fact.Value);
        var basis = fact.Basis switch
        {
            FactBasis.Record => "recorded",
            FactBasis.Said => "as said",
            FactBasis.Plan => "as planned",
            _ => "reckoned",
        };
        var moment = fact is { Value: not null, At: { } when } ? $" at {LedgerNumbers.Time(when)}" : string.Empty;
        return $"{value}, {basis}{moment}{(fact.IsStale ? ": old" : string.Empty)}";
    }
}

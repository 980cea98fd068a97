using System.Globalization;
using Laygate.Engineering.Onward;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What the rest of a shift comes to, in sentences.</summary>
internal static class OnwardWords
{
    /// <summary>What the foreman and the shift manager need first.</summary>
    public static IReadOnlyList<string> Says(OnwardResult result)
    {
        if (result.LengthLeft.Si <= 0)
        {
            return [$"Laid to the end at {LedgerNumbers.Time(result.Starts.Max(start => start.From))}{(result.Starts.Max(start => start.From) > result.Closing ? $", after the closing at {LedgerNumbers.Time(result.Closing)}" : string.Empty)}; nothing more to call."];
        }

        List<string> says = [.. result.Phases.Where(phase => phase.Rollers == 0).Select(phase => Left(result, phase)), Finish(result)];
        if (Joint(result) is { } joint)
        {
            says.Add(joint);
        }

        if (result is { StopLimit: { } limit, Forecast.OverLimit: { Expected: >= 0.1 } over })
        {
            says.Add($"A stop beyond {Minutes(limit)}, which asks for a joint: {ChanceWithLimits(over)}.");
        }

        says.AddRange(result.Courses.Where(course => course.ToCall.Loads > 0 || course.OnRoad.Loads + course.OnSite.Loads > 0).Select(course => $"{PlainText.Show(course.Course)}: {Call(course.ToCall)}."));
        says.AddRange(result.Phases.Where(phase => phase.Rollers > 0).Select(phase => Left(result, phase)));
        says.AddRange(result.Courses.Select(Rolling).OfType<string>());
        says.Add(Change(result));
        return says;
    }

    /// <summary>A window with its range.</summary>
    public static string Window(WindowAt window) => $"{Minutes(window.Seconds)} ({Math.Round(window.Low / 60).ToString(CultureInfo.InvariantCulture)} to {Minutes(window.High)})";

    // What the rollers that are left still do; without one nothing below is worth its paper.
    private static string Left(OnwardResult result, PhaseLeft phase) => phase switch
    {
        { Rollers: 0 } => $"{PlainText.Show(phase.Phase)}: no roller is left. Stop laying until one is there; speed and end are reckoned as if another did its passes.",
        { AtPlannedSpeed: { } passes, Follows: { } follows } when passes < phase.Planned =>
            $"{PlainText.Show(phase.Phase)}: with {LedgerNumbers.Count(phase.Rollers, "roller", "rollers")} left it gets {passes.ToString(CultureInfo.InvariantCulture)} of {LedgerNumbers.Count(phase.Planned, "pass", "passes")} at the planned {Speed(result, result.PlannedSpeed)}, and all of them up to {Speed(result, follows)}.",
        { AtPlannedSpeed: null } => $"{PlainText.Show(phase.Phase)}: a roller is lost, and the plan does not state enough to tell how many of {LedgerNumbers.Count(phase.Planned, "pass", "passes")} are left. Count them on the mat.",
        _ => $"{PlainText.Show(phase.Phase)}: with {LedgerNumbers.Count(phase.Rollers, "roller", "rollers")} left it still gets all {LedgerNumbers.Count(phase.Planned, "pass", "passes")} at the planned speed.",
    };

    /// <summary>Passes within the window of what is laid now; null where all come within it.</summary>
    private static string? InWindow(OnwardCourse course) => course.Passes.Where(one => one.Low < one.Planned).ToList() is { Count: > 0 } few
        ? string.Join(", ", few.Select(one => $"{(one.Low == one.Expected ? one.Low.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{one.Low} to {one.Expected}"))} of {LedgerNumbers.Count(one.Planned, "pass", "passes")} of {PlainText.Show(one.Phase)}"))
        : null;

    private static string Speed(OnwardResult result, double si) => result.LengthLeft.Unit.System == Laygate.Model.Measures.UnitSystem.UnitedStates
        ? Figures.WithUnit((si * 60 / 0.3048).ToString("F0", CultureInfo.InvariantCulture), "ft/min")
        : Figures.WithUnit((si * 60).ToString("F1", CultureInfo.InvariantCulture), "m/min");

    // A window that is long enough on average only is a reason to roll sooner, too: nobody sees tonight's heat before the passes are due.
    private static string? Rolling(OnwardCourse course) => course is not { RolledWithin: { } within, Windows: [var now, ..] } || now.Low >= within ? null
        : $"{PlainText.Show(course.Course)}: what is laid now can be densified for {Window(now)}, and {(course.Passes.Count > 0 ? "with the rollers left it takes" : "the plan needs")} {Minutes(within)}{(InWindow(course) is { } passes ? $" ({passes} come within it)" : string.Empty)}: {(now.Seconds < within ? "roll sooner, or stop" : "keep the rollers close, measure the mat, and stop if it is colder than computed")}.";

    /// <summary>Title and numbers of a plan.</summary>
    public static string Plan(OnwardReport report) =>
        $"{PlainText.Show(report.PlanTitle ?? report.PlanId)} ({PlainText.Show(report.PlanId)}{(report.Revision is { } revision ? $", revision {PlainText.Show(revision)}" : string.Empty)})";

    /// <summary>Of which moment it is.</summary>
    public static string Moment(OnwardResult result) =>
        $"From {LedgerNumbers.Moment(result.At)} on; last row {(result.LastRow is { } last ? LedgerNumbers.Moment(last) : "none")}";

    /// <summary>What was said with the call; null where nothing was.</summary>
    public static string? Said(OnwardResult result)
    {
        var (events, said) = (result.Events, new List<string>());
        if (events.Plant is { } plant)
        {
            said.Add($"{PlainText.Show(plant.Plant)} sends nothing {(plant.Until is { } until ? $"until {LedgerNumbers.Time(until)}" : "any more")}");
        }

        said.AddRange(events.RainAt is { } rain ? [$"rain at {LedgerNumbers.Time(rain)}"] : []);
        said.AddRange(events.StandsUntil is { } stands ? [$"the paver stands until {LedgerNumbers.Time(stands)}"] : []);
        said.AddRange(events.Trucks.OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => $"{LedgerNumbers.Count(group.Value, "truck", "trucks")} for {PlainText.Show(group.Key)}"));
        said.AddRange(events.RollersLost.Select(roller => $"{PlainText.Show(roller)} lost"));
        said.AddRange(events.EndsAt is var (run, station) ? [$"the work ends at {LedgerNumbers.Text(result.LengthLeft with { Si = station })}{(run is null ? string.Empty : $" of {PlainText.Show(run)}")}"] : []);
        said.AddRange(events.Speed is not null ? ["speed"] : []);
        said.AddRange(events.Closing is not null ? [$"closing {LedgerNumbers.Time(result.Closing)}"] : []);
        said.AddRange(events is { Air: null, Base: null, Wind: null } ? [] : ["weather"]);
        return said.Count == 0 ? null : $"As said: {string.Join("; ", said)}.";
    }

    /// <summary>A chance in whole shifts of a hundred, never 0 or 100 unless no simulated shift says otherwise.</summary>
    public static string Chance(Band share)
    {
        var hundred = share.Expected is > 0 and < 1 ? Math.Clamp(Math.Round(100 * share.Expected), 1, 99) : Math.Round(100 * share.Expected);
        return string.Create(CultureInfo.InvariantCulture, $"{hundred} %");
    }

    /// <summary>A chance with its limits.</summary>
    public static string ChanceWithLimits(Band share) => string.Create(
        CultureInfo.InvariantCulture, $"{Chance(share)} ({Math.Floor(100 * share.Low)} to {Math.Ceiling(100 * share.High)} %)");

    /// <summary>The end with its range.</summary>
    public static string End(MomentRange end, bool withWord = true) => end.Expected is not { } expected
        ? "no end at this rate"
        : $"{(withWord ? "end " : string.Empty)}{LedgerNumbers.Time(expected)} ({(end.Low is { } low ? LedgerNumbers.Time(low) : "–")} to {(end.High is { } high ? LedgerNumbers.Time(high) : "never")})";

    /// <summary>Loads to call.</summary>
    public static string Call(LoadsToCall call) => call.Loads == 0
        ? "call nothing more"
        : $"call {LedgerNumbers.Count(call.Loads, "load", "loads")} more, {LedgerNumbers.Text(call.Mass)}; the last{(call.LastMass is { } last ? $" ({LedgerNumbers.Load(last)})" : string.Empty)} leaves {LedgerNumbers.Time(call.Last!.Value)}";

    /// <summary>The one change, or that none helps.</summary>
    public static string Change(OnwardResult result)
    {
        if (result.Change is { } change)
        {
            return $"Change one thing: {Lever(change)}. {Effect(change.Forecast, result.Forecast)}.";
        }

        return result.Tried.Count == 0
            ? "Change nothing: it holds as it is."
            : $"None of {LedgerNumbers.Count(result.Tried.Count, "change", "changes")} tried helps by itself: more trucks, another speed, loads sent otherwise.";
    }

    /// <summary>A change.</summary>
    public static string Lever(OnwardChange change) => change.Lever switch
    {
        OnwardLever.Trucks => $"{((int)(change.To!.Si - change.From!.Si)).ToString(CultureInfo.InvariantCulture)} {(change.To.Si - change.From.Si == 1 ? "truck" : "trucks")} more for {PlainText.Show(change.Of!)}, {((int)change.To.Si).ToString(CultureInfo.InvariantCulture)} in all",
        OnwardLever.Speed => $"lay at {Speed(change.To!)} on average between stops, not {Speed(change.From!)}{(change.To!.Si > change.To.PlanSi * 1.001 ? ": the rollers can follow it; check the plan at that speed first" : string.Empty)}",
        OnwardLever.EndSooner => $"end the work at {LedgerNumbers.Text(change.To!)} of {PlainText.Show(change.Of!)} with a clean joint, and leave {LedgerNumbers.Text(change.From!)} for another shift",
        OnwardLever.SendAtOnce => "send each load as soon as it is loaded",
        OnwardLever.SendOnCall => "send loads on call, as the paver comes on",
        _ => $"put the timetable of the loads back by {LedgerNumbers.Text(change.To!)} against the plan",
    };

    /// <summary>What a change does.</summary>
    public static string Effect(OnwardForecast one, OnwardForecast now)
    {
        var parts = new List<string> { $"Finish in time {Chance(one.Finish)} instead of {Chance(now.Finish)}" };
        if (one.OverLimit is { } over && now.OverLimit is { } before && Math.Abs(over.Expected - before.Expected) >= 0.01)
        {
            parts.Add($"a stop beyond the limit {Chance(over)} instead of {Chance(before)}");
        }

        if (one.End.Expected is { } end)
        {
            parts.Add($"end {LedgerNumbers.Time(end)}");
        }

        return string.Join("; ", parts);
    }

    /// <summary>A speed with one digit behind the point.</summary>
    public static string Speed(Laygate.Engineering.Records.LedgerFigure figure) =>
        Figures.WithUnit(figure.Number.ToString(figure.Unit.Spelling is "ft/min" ? "F0" : "F2", CultureInfo.InvariantCulture), figure.Unit.Spelling);

    /// <summary>Minutes.</summary>
    public static string Minutes(double seconds) => Figures.WithUnit(Math.Round(seconds / 60).ToString(CultureInfo.InvariantCulture), "min");

    private static string Finish(OnwardResult result) =>
        $"Finished by {LedgerNumbers.Time(result.Closing)}: {ChanceWithLimits(result.Forecast.Finish)} of the simulated shifts; {End(result.Forecast.End)}.";

    private static string? Joint(OnwardResult result)
    {
        if (result.JointBy is not { } by || result.StopLimit is not { } limit)
        {
            return result.StandsSince is { } stands ? $"The paver has been standing since {LedgerNumbers.Time(stands)}; the plan states no limit." : null;
        }

        if (result.StandsSince is { } since)
        {
            return by <= result.At
                ? $"Make a joint: the paver has been standing since {LedgerNumbers.Time(since)}, longer than the {Minutes(limit)} of the plan."
                : $"The paver has been standing since {LedgerNumbers.Time(since)}: make a joint at {LedgerNumbers.Time(by)} if it does not go on before.";
        }

        return $"If no truck came from now on, the mix on site would last until {LedgerNumbers.Time(by.AddSeconds(-limit))}; then a joint by {LedgerNumbers.Time(by)}.";
    }
}

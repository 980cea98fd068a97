using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Onward;

/// <summary>
/// Tries one change at a time and simulates each anew: trucks more, other speeds, other ways of sending loads. The best is the one with the highest chance to
/// finish; of those that are alike the one with the fewest stops beyond the limit, then with the shortest stops. What helps less than it can be told is none.
/// </summary>
internal sealed class OnwardChanges
{
    /// <summary>Least gain: judgement. Two shifts in a hundred for the finish, five for stops beyond the limit, two minutes of the longest stop.</summary>
    private const double LeastFinish = 0.02, LeastOver = 0.05, LeastStop = 120;

    /// <summary>Chance below which an earlier end is proposed: judgement, one shift in five that hands the road back late.</summary>
    private const double Likely = 0.8;

    /// <summary>Step of that end, m: judgement, a place that can be marked.</summary>
    private const double Step = 5;

    /// <summary>Most groups whose trucks are tried, the largest first.</summary>
    private const int MostGroups = 4;

    private readonly OnwardRuns runs;
    private readonly Func<OnwardEvents, IReadOnlyList<OnwardStart>> read;
    private readonly OnwardEvents events;
    private readonly IReadOnlyList<OnwardStart> asItIs;
    private readonly double plannedSpeed;
    private readonly double late;
    private readonly double follows;
    private readonly double? endsAfter;
    private readonly Func<double, (string Run, double Station)> placeAt;

    /// <summary>Takes the shift as it is.</summary>
    /// <param name="runs">Runs it.</param>
    /// <param name="read">Reads the states under other events.</param>
    /// <param name="events">The events.</param>
    /// <param name="asItIs">The states under them.</param>
    /// <param name="speeds">Speed of the plan, and the highest one that the rollers can follow; no higher one is tried, m/s.</param>
    /// <param name="late">How late the paver is, s.</param>
    /// <param name="endsAfter">Length that 95 of 100 shifts have laid when the site closes, m; null where it does not stop them.</param>
    /// <param name="placeAt">Run and station of a length.</param>
    public OnwardChanges(
        OnwardRuns runs, Func<OnwardEvents, IReadOnlyList<OnwardStart>> read, OnwardEvents events, IReadOnlyList<OnwardStart> asItIs, (double Planned, double Follows) speeds, double late, double? endsAfter, Func<double, (string Run, double Station)> placeAt) =>
        (this.runs, this.read, this.events, this.asItIs, plannedSpeed, follows, this.late, this.endsAfter, this.placeAt) = (runs, read, events, asItIs, speeds.Planned, speeds.Follows, late, endsAfter, placeAt);

    /// <summary>Tries all.</summary>
    /// <param name="now">What comes of the shift as it is, with all replications.</param>
    public (OnwardChange? Best, IReadOnlyList<OnwardChange> Tried) Search(OnwardForecast now)
    {
        var few = runs.Forecast(asItIs, OnwardRuns.Search);
        if (few is null || (now.Finish.Expected >= 1 - LeastFinish && !(now.OverLimit?.Expected >= LeastOver) && now.LongestStop.Expected < LeastStop))
        {
            return (null, []);
        }

        var tried = Candidates().Select(one => Try(one, OnwardRuns.Search)).OfType<(OnwardChange Change, IReadOnlyList<OnwardStart> Starts)>().ToList();
        var best = tried.Where(one => IsBetter(one.Change.Forecast, few)).OrderByDescending(one => Math.Round(one.Change.Forecast.Finish.Expected / LeastFinish))
            .ThenBy(one => Math.Round((one.Change.Forecast.OverLimit?.Expected ?? 0) / LeastOver)).ThenBy(one => Math.Round(one.Change.Forecast.LongestStop.Expected / LeastStop)).FirstOrDefault();
        var confirmed = Confirmed(best.Change, best.Starts, now);
        if (!(confirmed?.Forecast.Finish.Expected >= Likely) && now.Finish.Expected < Likely && Shorter().Select(one => Try(one, now.Shifts)).FirstOrDefault() is { } shorter)
        {
            tried.Add(shorter);
            confirmed = IsBetter(shorter.Change.Forecast, confirmed?.Forecast ?? now) ? shorter.Change : confirmed;
        }

        return (confirmed, [.. tried.Select(one => one.Change)]);
    }

    private OnwardChange? Confirmed(OnwardChange? change, IReadOnlyList<OnwardStart> starts, OnwardForecast now) =>
        change is not null && runs.Forecast(starts, now.Shifts) is { } all && IsBetter(all, now) ? change with { Forecast = all } : null;

    private static bool IsBetter(OnwardForecast one, OnwardForecast than)
    {
        var finish = one.Finish.Expected - than.Finish.Expected;
        var over = (than.OverLimit?.Expected ?? 0) - (one.OverLimit?.Expected ?? 0);
        return finish >= LeastFinish || (finish > -LeastFinish && (over >= LeastOver || (over > -LeastOver && than.LongestStop.Expected - one.LongestStop.Expected >= LeastStop)));
    }

    private (OnwardChange Change, IReadOnlyList<OnwardStart> Starts)? Try((OnwardChange Change, Func<IReadOnlyList<OnwardStart>> Starts) one, int replications)
    {
        var starts = one.Starts();
        return runs.Forecast(starts, replications) is { } forecast ? (one.Change with { Forecast = forecast }, starts) : null;
    }

    private IEnumerable<(OnwardChange Change, Func<IReadOnlyList<OnwardStart>> Starts)> Candidates()
    {
        foreach (var group in asItIs.SelectMany(start => start.Model.Trucks).OrderByDescending(trucks => trucks.Count).Take(MostGroups))
        {
            var count = asItIs.Sum(start => start.Model.Trucks.Select((trucks, g) => (trucks, g)).Where(one => Same(one.trucks.Id, group.Id)).Sum(one => Driving(start, one.g)));
            foreach (var more in new[] { 1, 2, 4 })
            {
                var trucks = new Dictionary<string, int>(events.Trucks, StringComparer.Ordinal) { [group.Id] = count + more };
                yield return (Of(OnwardLever.Trucks, group.Id, Count(count + more), Count(count)), () => read(events with { Trucks = trucks }));
            }
        }

        var speed = asItIs.Max(start => start.Model.Speed);
        double[] speeds = [.. new[] { 0.95, 0.9, 0.8, 0.7 }.Select(share => share * speed), plannedSpeed, .. new[] { 1.05, 1.1, 1.2 }.Select(share => share * plannedSpeed).Where(one => one <= follows)];
        foreach (var other in speeds.Where(one => Math.Abs(one - speed) > 0.01 * speed))
        {
            yield return (Of(OnwardLever.Speed, null, Metres(other), Metres(speed)), () => read(events with { Speed = other }));
        }

        if (asItIs.Any(start => start.Model.Dispatch != Dispatch.AsLoaded))
        {
            yield return (Of(OnwardLever.SendAtOnce, null, null, null), () => Sent(model => model with { Dispatch = Dispatch.AsLoaded }));
        }

        if (asItIs.Any(start => start.Model.Dispatch == Dispatch.Timetable) && asItIs.All(start => start.Place is not null) && late > TimetableDelay.Least)
        {
            yield return (Of(OnwardLever.SendOnCall, null, null, null), () => Sent(model => model with { Dispatch = Dispatch.OnCall }));
            if (Math.Abs(late - asItIs[0].Model.TimetableLate) > TimetableDelay.Least)
            {
                yield return (Of(OnwardLever.MoveTimetable, null, new LedgerFigure(late, LedgerUnits.Minutes), new LedgerFigure(asItIs[0].Model.TimetableLate, LedgerUnits.Minutes)), () => Sent(model => model with { TimetableLate = late }));
            }
        }
    }

    // Where no other change makes it likely: end the work at a place that is reached, so that a clean joint is made and no mix is left.
    private IEnumerable<(OnwardChange Change, Func<IReadOnlyList<OnwardStart>> Starts)> Shorter()
    {
        if (endsAfter is { } length && asItIs is [{ Place: not null } only] && length > only.Laid)
        {
            var whole = Math.Floor(length / Step) * Step;
            var (run, station) = placeAt(whole);
            yield return (Of(OnwardLever.EndSooner, run, new LedgerFigure(station, runs.LengthUnit), new LedgerFigure(only.Model.Length - whole, runs.LengthUnit)), () => read(events with { EndsAfter = whole }));
        }
    }

    private IReadOnlyList<OnwardStart> Sent(Func<ShiftModel, ShiftModel> change) => [.. asItIs.Select(start => start with { Model = change(start.Model) })];

    private static int Driving(OnwardStart start, int group)
    {
        var before = start.Model.Trucks.Take(group).Sum(trucks => trucks.Count);
        return start.State.Trucks.Skip(before).Take(start.Model.Trucks[group].Count).Count(truck => !truck.LeavesTheJob);
    }

    private static OnwardChange Of(OnwardLever lever, string? of, LedgerFigure? to, LedgerFigure? from) => new(lever, of, to, from, null!);

    private static LedgerFigure Count(int count) => new(count, OnwardUnits.Count);

    private LedgerFigure Metres(double speed) => new(speed, runs.SpeedUnit) { PlanSi = plannedSpeed };

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.Ordinal);
}

/// <summary>Units that a ledger does not need.</summary>
internal static class OnwardUnits
{
    public static Unit Count { get; } = new(string.Empty, Dimension.None, 1);

    public static Unit Celsius => UnitTable.Find("°C")!;

    public static Unit Wind => UnitTable.Find("m/s")!;

    /// <summary>Speed of a paver in the system of a plan.</summary>
    public static Unit Speed(LedgerUnits units) => UnitTable.Find(units.Length.Spelling is "ft" ? "ft/min" : "m/min")!;
}

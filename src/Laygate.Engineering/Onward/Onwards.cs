using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;
using ShiftRecord = Laygate.Model.Records.ShiftRecord;

namespace Laygate.Engineering.Onward;

/// <summary>The rest of a shift, planned anew from what the record says of a moment. The past is not planned anew, and the plan stays as it is.</summary>
public static class Onwards
{
    /// <summary>Furthest moment from the shift: judgement, no shift lasts longer.</summary>
    private static readonly TimeSpan Furthest = TimeSpan.FromHours(24);

    /// <summary>Plans the rest of the shift.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="record">The record.</param>
    /// <param name="at">The moment; null: that of the last row.</param>
    /// <param name="events">What no file of the record holds.</param>
    /// <returns>The rest of the shift; or why there is none, with the id that is not known.</returns>
    public static (OnwardResult? Result, OnwardProblem? Problem, string? Id) Of(QuantityContext context, ShiftRecord record, DateTimeOffset? at, OnwardEvents events)
    {
        var clock = PlanView.Of(context).Clock;
        if (clock is not { Start: { } start, End: { } end })
        {
            return (null, OnwardProblem.NoTimes, null);
        }

        var upTo = RecordUpTo.Of(record, at ?? DateTimeOffset.MaxValue);
        var now = at ?? upTo.Last ?? start;
        if (now < start - Furthest || now > end + Furthest)
        {
            return (null, OnwardProblem.OtherDay, null);
        }

        if (new ShiftReader(new Calculation(context)).Read() is not { } models || ShiftTimeline.Of(context) is not { } timeline)
        {
            return (null, OnwardProblem.NoShift, null);
        }

        var trains = TrainReader.Of(timeline, new Calculation(context));
        if (models.Count > 1 && models.SelectMany(model => model.Buffers.Select(buffer => buffer.Mix).Distinct(StringComparer.Ordinal)).GroupBy(mix => mix, StringComparer.Ordinal).Any(mix => mix.Count() > 1))
        {
            return (null, OnwardProblem.SharedMix, null);
        }

        return (Unknown(context.Plan, events) ?? Outside(trains, events)) is { } unknown
            ? (null, OnwardProblem.Unknown, unknown)
            : new OnwardMaking(context, upTo, new OnwardClock(start, now), events, [.. trains.Zip(models)]).Make() is { } made ? (made, null, null) : (null, OnwardProblem.NoShift, null);
    }

    private static string? Outside(IReadOnlyList<PavingTrain> trains, OnwardEvents events) =>
        events.EndsAt is var (run, station) && trains.Count(train => new TrainWay(train).DistanceOf(run, station) is not null) != 1 ? FormattableString.Invariant($"{run}{(run is null ? string.Empty : " at ")}{station} m") : null;

    private static string? Unknown(Plan plan, OnwardEvents events) =>
        events.Plant is { } down && plan.Supply?.Plants.Any(plant => PlanView.Same(plant.Id, down.Plant)) != true ? down.Plant
        : events.Trucks.Keys.FirstOrDefault(group => plan.Supply?.Trucks.Any(trucks => PlanView.Same(trucks.Id, group)) != true) is { } named ? named
        : events.RollersLost.FirstOrDefault(roller => plan.Rolling?.Rollers.Any(one => PlanView.Same(one.Id, roller)) != true);
}

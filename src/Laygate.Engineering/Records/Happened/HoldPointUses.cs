using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>What the record says of a hold point.</summary>
public enum HoldPointState
{
    /// <summary>Released in time by the person whom the plan names, on evidence.</summary>
    Released,

    /// <summary>Released by somebody whom the plan does not name for it.</summary>
    ByAnother,

    /// <summary>Released after the step for which it holds.</summary>
    TooLate,

    /// <summary>The row lacks who, when or on what evidence.</summary>
    Incomplete,

    /// <summary>No row.</summary>
    NotRecorded,
}

/// <summary>A hold point of the plan with its release.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Before">Before what it holds.</param>
/// <param name="ReleasedBy">Who releases it by the plan.</param>
/// <param name="State">What the record says.</param>
/// <param name="Release">The row that decides; null without one.</param>
public sealed record HoldPointUse(string Id, string? Before, string? ReleasedBy, HoldPointState State, HoldPointRelease? Release);

/// <summary>Holds the hold points of a plan against the rows of a record.</summary>
public static class HoldPointUses
{
    /// <summary>Every hold point of the plan, and after them rows that name none of them as not recorded in the plan.</summary>
    /// <param name="shift">Plan and record.</param>
    public static IReadOnlyList<HoldPointUse> Of(HappenedShift shift) => [.. shift.Plan.HoldPoints.Select(point => Of(shift, point))];

    /// <summary>Rows that name no hold point of the plan.</summary>
    /// <param name="shift">Plan and record.</param>
    public static IReadOnlyList<HoldPointRelease> Unknown(HappenedShift shift) =>
        [.. shift.Record.HoldPoints.Where(release => !shift.Plan.HoldPoints.Any(point => PlanView.Same(point.Id, release.HoldPoint)))];

    // Where a hold point is released several times, the worst of them decides.
    private static HoldPointUse Of(HappenedShift shift, HoldPoint point)
    {
        var worst = shift.Record.HoldPoints.Where(release => PlanView.Same(release.HoldPoint, point.Id))
            .Select(release => (Release: release, State: StateOf(shift, point, release)))
            .OrderBy(one => one.State is HoldPointState.Released).ThenBy(one => one.State).Take(1).ToList();
        return worst is [var (release, state)]
            ? new HoldPointUse(point.Id, point.Before, point.ReleasedBy, state, release)
            : new HoldPointUse(point.Id, point.Before, point.ReleasedBy, HoldPointState.NotRecorded, null);
    }

    private static HoldPointState StateOf(HappenedShift shift, HoldPoint point, HoldPointRelease release) =>
        Answers.Given(release.By) && Answers.Given(point.ReleasedBy) && !PeopleOfThePlan.Same(shift.Plan, release.By!, point.ReleasedBy!) ? HoldPointState.ByAnother
        : HoldSteps.StepOf(point) == HoldStep.BeforeLaying && release.At > FirstLaid(shift) ? HoldPointState.TooLate
        : release.At is null || !Answers.Given(release.By) || !Answers.Given(release.Evidence) ? HoldPointState.Incomplete
        : HoldPointState.Released;

    private static DateTimeOffset? FirstLaid(HappenedShift shift) => shift.Plan.Courses.Min(course => shift.Screed(course).First?.At);
}

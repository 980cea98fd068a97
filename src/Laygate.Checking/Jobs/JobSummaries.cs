using Laygate.Engineering.Jobs;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Results;

namespace Laygate.Checking.Jobs;

/// <summary>Sums a job up: its shifts, and the mix of each day.</summary>
internal static class JobSummaries
{
    /// <summary>The summary.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reports">The reports of its shifts, in their order.</param>
    public static JobSummary Of(JobView job, IReadOnlyList<Report> reports)
    {
        var system = job.Whole.Courses.Count > 0 ? job.Whole.Courses[0].Thickness.Unit.System : UnitSystem.Metric;
        var (mass, hours) = (UnitTable.Find(system == UnitSystem.UnitedStates ? "short ton" : "t")!, UnitTable.Find("h")!);
        return new JobSummary(
            job.Whole.Identity.Id,
            job.Whole.Identity.Title,
            [.. job.Shifts.Select((shift, index) => new ShiftOfJob(
                shift.Id, reports[index].PlanId, shift.Start, shift.End,
                [.. shift.Plan.Runs.Select(run => run.Id)], [.. shift.Courses.Select(course => course.Course.Id)],
                Shown(shift.Duration, hours), Shown(shift.Needed, hours), Sum(shift.Courses, mass)))],
            [.. job.Shifts.Where(shift => shift.Plan.Shift?.Date is not null)
                .SelectMany(shift => shift.Courses.Select(course => (Day: shift.Plan.Shift!.Date!.Value, course.Course.Mix, Course: course)))
                .GroupBy(one => (one.Day, one.Mix)).OrderBy(one => one.Key.Day).ThenBy(one => one.Key.Mix, StringComparer.Ordinal)
                .Select(day => Sum([.. day.Select(one => one.Course)], mass) is { } sum ? new MixOfDay(day.Key.Day, day.Key.Mix, sum) : null).OfType<MixOfDay>()])
        {
            Lots = [.. job.LotWays.Select(way => Lot(way, mass))],
        };
    }

    private static LotOfJob Lot(LotWay way, Unit mass)
    {
        var unit = (way.Lot.Size ?? way.Lot.Sublot)?.Unit ?? mass;
        return new LotOfJob(
            way.Lot.Id, way.Lot.Course, way.Lot.Test, way.Lot.Size is { } size ? new ShownValue(size.Number, size.Unit.Spelling) : null, way.Lot.Tests,
            [.. way.After.Select(after => new LotAfterShift(
                after.Shift.Id, after.SoFar is { } si ? new ShownValue(unit.FromSi(si), unit.Spelling) : null, way.Sublots(after.SoFar),
                way.Lot.Tests - way.Sublots(after.SoFar) is { } left ? Math.Max(0, left) : null, !ReferenceEquals(after.Shift, way.EndsIn)))],
            way.EndsIn?.Id);
    }

    private static ShownValue? Shown(Answer answer, Unit unit) => answer.Value is NumberValue number ? new ShownValue(unit.FromSi(number.Si), unit.Spelling) : null;

    // What is not known of one course is not known of their sum.
    private static ShownValue? Sum(IReadOnlyList<CourseOfShift> courses, Unit unit) => courses.Count > 0 && courses.All(course => course.Mass.Value is NumberValue)
        ? new ShownValue(unit.FromSi(courses.Sum(course => ((NumberValue)course.Mass.Value!).Si)), unit.Spelling)
        : null;
}

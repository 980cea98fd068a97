using Laygate.Model.Plans;
using Laygate.Reading.Measures;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>How a course is laid must fit what lies below it.</summary>
internal static class Layings
{
    public static void Check(Plan plan, PlanPart at)
    {
        Course? below = null;
        foreach (var (course, where) in at.Each("courses", plan.Courses))
        {
            // A name that no course has is reported as that.
            if (course.On is null || plan.Courses.Any(other => string.Equals(other.Id, course.On, StringComparison.Ordinal)))
            {
                On(course, below, where);
            }

            if (course is { Distance: { } distance, Delay: { } delay })
            {
                where.Fail("delay", $"Both `distance` ({MeasureReader.Write(distance)}) and `delay` ({MeasureReader.Write(delay)}) are stated.", "State one of them; the other follows from the speed of the paver.");
            }

            if (course.LaidAt is not null && plan.Runs.Any(run => run.Courses.Count == 0 || run.Courses.Contains(course.Id, StringComparer.Ordinal)))
            {
                where.Fail("laid_at", $"A run of this plan lays the course `{course.Id}`, and `laid_at` says that another shift does.", "Leave `laid_at` out, or name in `courses` of each run what it lays.");
            }

            below = course;
        }
    }

    private static void On(Course course, Course? below, PlanPart at)
    {
        var isHot = course.Laid is Laying.HotOnHot or Laying.HotOnWarm;
        if (isHot && course.On is null)
        {
            at.Fail("laid", $"A course that is laid {Words.Of(course.Laid!.Value)} must name the course below it.", below is null ? "Add the course below it in front of this one." : $"Add `on: {below.Id}`.");
        }
        else if (course.Laid == Laying.Separately && course.On is not null)
        {
            at.Fail("on", "A course that is laid separately lies on a cold one; `on` names a warm or hot course.", "Remove `on`, or change `laid`.");
        }
        else if (string.Equals(course.On, course.Id, StringComparison.Ordinal))
        {
            at.Fail("on", $"The course `{course.Id}` cannot be laid on itself.", below is null ? null : $"Write `on: {below.Id}`.");
        }
        else if (isHot && !string.Equals(course.On, below?.Id, StringComparison.Ordinal))
        {
            at.Fail("on", $"The course `{course.On}` does not lie directly below `{course.Id}`; courses stand from bottom to top.", below is null ? "Change the order of the courses." : $"Write `on: {below.Id}`, or change the order of the courses.");
        }
    }
}

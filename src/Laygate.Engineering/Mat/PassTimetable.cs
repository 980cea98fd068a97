using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>An expected value with the 5 % and 95 % points of the samples.</summary>
/// <param name="Expected">Value at central assumptions.</param>
/// <param name="Low">5 % point, never above the expected value.</param>
/// <param name="High">95 % point, never below the expected value.</param>
public sealed record PassValue(double Expected, double Low, double High);

/// <summary>A course at one pass.</summary>
/// <param name="Course">Id of the course.</param>
/// <param name="AfterItsScreed">Middle of the time of the pass, s after the screed of this course.</param>
/// <param name="Mean">Mean of the course, °C.</param>
/// <param name="MidDepth">Middle of the course, °C.</param>
/// <param name="InWindow">Whether the pass is made everywhere before the densification window closes, on expected values; null where the window is not to be had.</param>
/// <param name="InWindowAtLowEnd">The same for the low end of the window.</param>
public sealed record CourseAtPass(string Course, double AfterItsScreed, PassValue Mean, PassValue MidDepth, bool? InWindow, bool? InWindowAtLowEnd);

/// <summary>One pass over a point of the mat. Times in s after the last screed; temperatures in °C at the middle of its time.</summary>
/// <param name="Phase">Id of its phase.</param>
/// <param name="Kind">Part of the rolling.</param>
/// <param name="Number">Number within the phase, from 1.</param>
/// <param name="Earliest">Earliest time at which it can come.</param>
/// <param name="Middle">Middle of its time.</param>
/// <param name="Latest">Time by which it has come everywhere.</param>
/// <param name="Skin">Skin.</param>
/// <param name="Core">Hottest point of the hot body.</param>
/// <param name="CoreSkin">Core minus skin, K.</param>
/// <param name="Courses">Courses of the hot body, from bottom to top.</param>
public sealed record PassAtPoint(
    string Phase, PhaseKind? Kind, int Number, double Earliest, double Middle, double Latest,
    PassValue Skin, PassValue Core, PassValue CoreSkin, IReadOnlyList<CourseAtPass> Courses);

/// <summary>
/// The passes over one point of a hot body, with its temperatures. The passes of a phase share the time of its zone evenly; in which strip the point
/// lies decides when within its share a pass comes. Each temperature is the lowest over the time of laying, each core-skin difference the largest.
/// </summary>
/// <param name="Passes">Passes in order of time.</param>
public sealed record PassTimetable(IReadOnlyList<PassAtPoint> Passes)
{
    /// <summary>The timetable of the hot body that a course belongs to.</summary>
    /// <param name="context">Plan and assumptions.</param>
    /// <param name="course">Id of the course.</param>
    /// <returns>The timetable, or the answer that says what is missing.</returns>
    public static (PassTimetable? Timetable, Answer? Absent) Of(QuantityContext context, string course)
    {
        var view = PlanView.Of(context);
        if (view.Passes.FirstOrDefault(body => body.Courses.Any(one => PlanView.Same(one.Id, course))) is not { } body)
        {
            return (null, Answer.Missing(new InputReference($"course:{course}", string.Empty)));
        }

        var calculation = new Calculation(context);
        var planned = PassPlan.Of(calculation);
        double[] delays = [.. body.Courses.Select(one => CourseRolling.DelayAbove(calculation, one))];
        if (CoolingInputs.Gather(calculation, body, MatQuestion.Fast) is { } stopped)
        {
            return (null, stopped);
        }

        if (planned.Count == 0)
        {
            return (new PassTimetable([]), null);
        }

        var cooling = MatCooling.Of(context).While(body, planned[0].Middle);
        var windows = body.Courses.Select(one => context.Get("course.densification_window", view.Of(ElementKind.Course, one.Id)!).Value as NumberValue).ToList();
        return (new PassTimetable([.. planned.Select(pass => At(cooling, body, pass, delays, windows)).OfType<PassAtPoint>()]), null);
    }

    private static PassAtPoint? At(FastCooling cooling, PavingPass body, PlannedPass pass, double[] delays, List<NumberValue?> windows)
    {
        var skin = Value(cooling, pass, "skin");
        var core = Value(cooling, pass, "core");
        var difference = Value(cooling, pass, "core-skin");
        return skin is null || core is null || difference is null
            ? null
            : new PassAtPoint(
                pass.Phase.Id, pass.Phase.Kind, pass.Number, pass.Earliest, pass.Middle, pass.Latest, skin, core, difference,
                [.. body.Courses.Select((course, i) => new CourseAtPass(
                    course.Id, pass.Middle + delays[i],
                    Value(cooling, pass, $"mean {course.Id}")!, Value(cooling, pass, $"middle {course.Id}")!,
                    Inside(windows[i]?.Si, pass, delays[i]), Inside(windows[i]?.Low ?? windows[i]?.Si, pass, delays[i])))]);
    }

    private static bool? Inside(double? window, PlannedPass pass, double delay) => window is { } closes ? pass.Latest + delay <= closes : null;

    private static PassValue? Value(FastCooling cooling, PlannedPass pass, string what) =>
        cooling.At(what, pass.Middle).Band?.Ends is { } ends ? new PassValue(ends.Expected, ends.Low, ends.High) : null;
}

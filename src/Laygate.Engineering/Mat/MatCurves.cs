using Laygate.Engineering.Cooling;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>One temperature over time.</summary>
/// <param name="Place">Where it is: skin, core or course mean.</param>
/// <param name="Course">Id of the course of a course mean; empty for skin and core.</param>
/// <param name="Celsius">Temperature in °C at each time; not a number where the course is not laid yet.</param>
public sealed record MatSeries(Place Place, string Course, IReadOnlyList<double> Celsius);

/// <summary>Expected cooling curves of one hot body in the worst hour of laying, for plots and cards.</summary>
/// <param name="From">The moment of laying in the worst hour; null where the weather is an envelope.</param>
/// <param name="LastScreed">When the last screed of the body passes, s after the first course that counts.</param>
/// <param name="Seconds">Times, s after the first course that counts, half a minute apart.</param>
/// <param name="Series">Skin, core, then the mean of each course of the body from bottom to top.</param>
public sealed record MatCurves(DateTimeOffset? From, double LastScreed, IReadOnlyList<double> Seconds, IReadOnlyList<MatSeries> Series)
{
    private const double Step = 30;

    /// <summary>The curves of the hot body that a course belongs to.</summary>
    /// <param name="context">Plan and assumptions.</param>
    /// <param name="course">Id of the course.</param>
    /// <param name="duration">Time in s to follow it, half a minute to twelve hours.</param>
    /// <returns>The curves, or the answer that says what is missing.</returns>
    public static (MatCurves? Curves, Answer? Absent) Of(QuantityContext context, string course, double duration)
    {
        if (PlanView.Of(context).Passes.FirstOrDefault(body => body.Courses.Any(one => PlanView.Same(one.Id, course))) is not { } body)
        {
            return (null, Answer.Missing(new InputReference($"course:{course}", string.Empty)));
        }

        var calculation = new Calculation(context);
        if (CoolingInputs.Gather(calculation, body, MatQuestion.Fast) is { } stopped)
        {
            return (null, stopped);
        }

        var inputs = new MatReader(context, new Calculation(context)).Read(body)!;
        var mat = MatCooling.Of(context);
        var cooling = mat.While(body);
        return cooling.Curve(mat.Solver, Math.Clamp(duration, Step, MatCooling.LongestRolling)) is { } curve
            ? (Read(curve, inputs, body, cooling.Weather!.Start), null)
            : (null, CoolingInputs.Failed(cooling.Failure));
    }

    private static MatCurves Read(CoolingCurve curve, MatInputs inputs, PavingPass body, DateTimeOffset? from)
    {
        double[] times = [.. Enumerable.Range(0, (int)(curve.End / Step) + 1).Select(i => i * Step)];
        return new MatCurves(
            from, inputs.LastScreed, times,
            [
                new MatSeries(Place.Skin, string.Empty, Values(CoolingPlace.Skin)),
                new MatSeries(Place.Core, string.Empty, Values(CoolingPlace.Core)),
                .. body.Courses.Select(course => new MatSeries(Place.CourseMean, course.Id, Values(CoolingPlace.Mean(inputs.LayerOf(course.Id))))),
            ]);

        double[] Values(CoolingPlace place)
        {
            var values = new double[times.Length];
            curve.Series(place, times, values);
            return values;
        }
    }
}

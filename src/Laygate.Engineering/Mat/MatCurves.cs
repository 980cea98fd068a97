using Laygate.Engineering.Cooling;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>One temperature over time.</summary>
/// <param name="Place">Where it is: skin, core or course mean.</param>
/// <param name="Course">Id of the course of a course mean; empty for skin and core.</param>
/// <param name="Celsius">Temperature in °C at each time; not a number where the course is not laid yet.</param>
/// <param name="Laid">Moment of laying that is followed; null where the weather is an envelope.</param>
public sealed record MatSeries(Place Place, string Course, IReadOnlyList<double> Celsius, DateTimeOffset? Laid)
{
    /// <summary>Whether it follows what recorded shifts taught, which then is more careful than what is assumed.</summary>
    public bool IsLearnt { get; init; }
}

/// <summary>
/// Expected cooling curves of one hot body, for plots and cards: the mean of each course from the moment of laying at which its window is shortest, skin
/// and core from that of the uppermost course.
/// </summary>
/// <param name="LastScreed">When the last screed of the body passes, s after the first course that counts.</param>
/// <param name="Seconds">Times, s after the first course that counts, half a minute apart.</param>
/// <param name="Series">Skin, core, then the mean of each course of the body from bottom to top.</param>
public sealed record MatCurves(double LastScreed, IReadOnlyList<double> Seconds, IReadOnlyList<MatSeries> Series)
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
        var asked = new[] { $"window {body.Top.Id}", "grit", "marking to" }.FirstOrDefault(question => cooling.Find(question).Weather is not null);
        if (asked is null)
        {
            return (null, CoolingInputs.Failed(cooling.Find("marking to").Failure));
        }

        return (Follow(cooling, body, inputs, asked, Math.Clamp(duration, Step, MatCooling.LongestRolling)), null);
    }

    private static MatCurves Follow(FastCooling cooling, PavingPass body, MatInputs inputs, string asked, double longest)
    {
        double[] times = [.. Enumerable.Range(0, (int)(longest / Step) + 1).Select(i => i * Step)];
        var top = cooling.Find(asked).Weather!;
        var series = new List<MatSeries>
        {
            Follow(asked, top, CoolingPlace.Skin, Place.Skin, string.Empty),
            Follow(asked, top, CoolingPlace.Core, Place.Core, string.Empty),
        };
        series.AddRange(body.Courses.Select(one => cooling.Find($"window {one.Id}").Weather is { } worst
            ? Follow($"window {one.Id}", worst, CoolingPlace.Mean(inputs.LayerOf(one.Id)), Place.CourseMean, one.Id)
            : Follow(asked, top, CoolingPlace.Mean(inputs.LayerOf(one.Id)), Place.CourseMean, one.Id)));
        return new MatCurves(inputs.LastScreed, times, series);

        MatSeries Follow(string question, MatWeather laid, CoolingPlace place, Place named, string course)
        {
            var values = new double[times.Length];
            Array.Fill(values, double.NaN);
            var (solved, isLearnt) = cooling.Judged(question, laid, longest);
            solved.Curve?.Series(place, times, values);
            return new MatSeries(named, course, values, laid.Start) { IsLearnt = isLearnt };
        }
    }
}

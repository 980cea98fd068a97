using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.Engineering.PlotData;

/// <summary>When a rolling phase works at a point of the mat.</summary>
/// <param name="Phase">Phase.</param>
/// <param name="From">Start, s after the last screed.</param>
/// <param name="To">End, s after the last screed.</param>
public sealed record PhaseTime(Phase Phase, double From, double To);

/// <summary>When a course reaches its cessation temperature.</summary>
/// <param name="Course">Course.</param>
/// <param name="Celsius">Cessation temperature, °C.</param>
/// <param name="At">Moment, s after the last screed; null where it is not reached.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
public sealed record CessationTime(Course Course, double Celsius, double? At, double? Low, double? High);

/// <summary>Cooling and rolling of one hot body.</summary>
/// <param name="Courses">Courses from bottom to top.</param>
/// <param name="Curves">Temperatures; null where they cannot be computed.</param>
/// <param name="Timetable">Passes with temperatures; null where the plan does not tell them.</param>
/// <param name="Phases">Rolling phases.</param>
/// <param name="Cessations">Cessation of each course.</param>
/// <param name="Absent">Why there are no temperatures.</param>
public sealed record BodyCooling(
    IReadOnlyList<Course> Courses, MatCurves? Curves, PassTimetable? Timetable, IReadOnlyList<PhaseTime> Phases, IReadOnlyList<CessationTime> Cessations, Absence? Absent);

/// <summary>What plots need and no rule asks for. It reuses what the check has solved in the same context.</summary>
/// <param name="context">Plan and assumptions.</param>
public sealed class PlotQuantities(QuantityContext context)
{
    private const double Shortest = 1800;
    private const double Longest = 6 * 3600;

    private readonly PlanView view = PlanView.Of(context);

    /// <summary>Planned start of laying; null where it is not stated.</summary>
    public DateTimeOffset? Start => view.Clock.Start;

    /// <summary>Hot bodies from bottom to top.</summary>
    public IReadOnlyList<BodyCooling> Bodies() => [.. view.Passes.Select(Body)];

    /// <summary>The simulated shift, and why there is none.</summary>
    public (ShiftSimulation Simulation, Absence? Absent) Shift()
    {
        var calculation = new Calculation(context);
        _ = new ShiftReader(calculation).Read();
        return (ShiftSimulation.Of(context), calculation.Stopped?.Absence);
    }

    private BodyCooling Body(PavingPass body)
    {
        var phases = Phases();
        var calculation = new Calculation(context);
        if (CoolingInputs.Gather(calculation, body, MatQuestion.Fast) is { } stopped)
        {
            return new BodyCooling(body.Courses, null, null, phases, [], stopped.Absence);
        }

        var inputs = new MatReader(context, new Calculation(context)).Read(body)!;
        var cessations = body.Courses.Select(course => Cessation(course, inputs)).OfType<CessationTime>().ToList();
        var last = phases.Select(phase => phase.To).Concat(cessations.Select(cessation => cessation.High ?? cessation.At ?? 0)).DefaultIfEmpty(0).Max();
        var (curves, absent) = MatCurves.Of(context, body.Top.Id, inputs.LastScreed + Math.Clamp(1.1 * last, Shortest, Longest));
        var (timetable, _) = curves is null ? (null, null) : PassTimetable.Of(context, body.Top.Id);
        return new BodyCooling(body.Courses, curves, timetable, phases, cessations, absent?.Absence);
    }

    private List<PhaseTime> Phases() => [.. (context.Plan.Rolling?.Phases ?? []).Select(Time).OfType<PhaseTime>()];

    private PhaseTime? Time(Phase phase)
    {
        var passes = PassPlan.Of(new Calculation(context), phase);
        return passes.Count > 0 ? new PhaseTime(phase, passes[0].Earliest, passes[^1].Latest) : null;
    }

    private CessationTime? Cessation(Course course, MatInputs inputs)
    {
        var calculation = new Calculation(context);
        var celsius = MatLimits.Cessation(calculation, course);
        if (double.IsNaN(celsius) || calculation.Stopped is not null)
        {
            return null;
        }

        var laidAt = inputs.Courses.First(laid => PlanView.Same(laid.Id, course.Id)).LaidAt - inputs.LastScreed;
        var window = context.Get("course.densification_window", view.Of(ElementKind.Course, course.Id)!).Value as NumberValue;
        return new CessationTime(course, celsius, window?.Si + laidAt, window?.Low + laidAt, window?.High + laidAt);
    }
}

using Laygate.Engineering.Cooling;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>The passes at one point of a course and what they find there.</summary>
internal static class CourseRolling
{
    private static readonly Define Course = new(ElementKind.Course);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Course.Number("first_pass", Shape.Minutes, "Minutes, after the screed of the course, of the first pass over a point.", FirstPass, new Method(
            "t = middle of the time of the first pass, plus the delay of the screeds above", Sources.Balance,
            "the passes of a phase share the time of its zone evenly; the slowest paver counts")),
        Course.Number("bears_from", Shape.Minutes, "Minutes, after its screed, until the course is down to its start temperature; 0 where the plan states none.", BearsFrom, CoolingMethods.Bears),
        Course.Number("temperature_at_first_pass", Shape.Temperature, "Temperature at the earliest moment of the first pass, at the place for which the start temperature is stated; the course mean unless the plan says otherwise.", AtFirstPass, CoolingMethods.AtPass, Place.CourseMean),
        Course.Flag("bears_first_pass", "Whether the course is not above its start temperature at the first pass.", BearsFirstPass),
        Course.Category("first_mode", PhaseQuantities.Modes, "How the rollers of the first phase compact.", (c, _) => c.Plan.Rolling?.Phases is [var first, ..]
            ? c.Get("phase.mode", PlanView.Of(c).Of(ElementKind.Phase, first.Id)!)
            : Answer.Missing(new InputReference("plan", "rolling.phases"))),
        Course.Number("densifying_passes", Shape.None, "Planned passes of the initial and main phases over a point.", (c, e) => Passes(c, e, inWindow: false), new Method(
            "n = Σ passes", Sources.Definition, "finish rolling does not count")),
        Course.Number("passes_in_window", Shape.None, "Passes of the initial and main phases that are made everywhere before the densification window of the course closes.", (c, e) => Passes(c, e, inWindow: true), new Method(
            "n = passes with t + Δt ≤ tw", Sources.Balance, "low and high by the low and high end of the window; as first_pass")),
    ];

    /// <summary>Time between the screed of a course and the last screed of its hot body, s.</summary>
    internal static double DelayAbove(Calculation calculation, Course course) => PlanView.Of(calculation.Context).PassOf(course).Courses
        .SkipWhile(other => !ReferenceEquals(other, course)).Skip(1)
        .Sum(above => PairQuantities.DelayOf(calculation, above));

    private static PlannedPass? First(Calculation calculation) => PassPlan.Of(calculation) is [var first, ..] ? first : null;

    private static Answer FirstPass(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var first = First(calculation);
        var delay = DelayAbove(calculation, (Course)element.Subject!);
        return calculation.Result("course.first_pass", "t", "t = (ts + ½ · (te − ts) / n) + Δt", first?.Middle + delay);
    }

    private static Answer BearsFrom(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var start = MatLimits.Start(calculation, course);
        if (start is null && calculation.Stopped is null)
        {
            return calculation.Result("course.bears_from", "t", "no start temperature", 0);
        }

        var pass = PlanView.Of(context).PassOf(course);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).While(pass);
        return CoolingInputs.Result(
            calculation, "course.bears_from", "t", "T(t) = Ts", cooling.Find($"bears {course.Id}"), MatCooling.LongestRolling);
    }

    private static Answer AtFirstPass(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var kind = MatLimits.Start(calculation, course)?.Kind ?? CoolingPlaceKind.LayerMean;
        var first = First(calculation);
        var pass = PlanView.Of(context).PassOf(course);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        if (first is null)
        {
            return calculation.Stopped ?? Answer.Missing(new InputReference("rolling", "rollers"));
        }

        var answer = CoolingInputs.Result(
            calculation, "course.temperature_at_first_pass", "T", "T = T(t) at the first pass", MatCooling.Of(context).While(pass).Find($"first {course.Id}"), MatCooling.LongestRolling);
        return answer.Value is null ? answer : answer with { Place = PlaceOf(kind) };
    }

    private static Place PlaceOf(CoolingPlaceKind kind) => kind switch
    {
        CoolingPlaceKind.Skin => Place.Skin,
        CoolingPlaceKind.Core => Place.Core,
        CoolingPlaceKind.MidDepth => Place.MidDepth,
        _ => Place.CourseMean,
    };

    private static Answer BearsFirstPass(QuantityContext context, Element element)
    {
        var course = (Course)element.Subject!;
        var mix = $"mix:{course.Mix}";
        if (PlanView.Of(context).MixOf(course)?.Start?.Value is not { } start)
        {
            return Answer.Missing(new InputReference(mix, "start.value"));
        }

        var temperature = context.Get("course.temperature_at_first_pass", element);
        return temperature.Value is NumberValue number
            ? Answers.Follows(number.Si <= start.Si, new InputReference(mix, "start.value")) with { Partial = temperature.Partial }
            : temperature;
    }

    private static Answer Passes(QuantityContext context, Element element, bool inWindow)
    {
        var calculation = new Calculation(context);
        var passes = PassPlan.Of(calculation).Where(pass => pass.Phase.Kind is not PhaseKind.Finish).ToList();
        calculation.Miss(passes.Where(pass => pass.Phase.Kind is null).Select(pass => new InputReference($"phase:{pass.Phase.Id}", "kind")));
        if (!inWindow)
        {
            return calculation.Result("course.densifying_passes", "n", "n = Σ passes", passes.Count);
        }

        var delay = DelayAbove(calculation, (Course)element.Subject!);
        var window = calculation.Quantity("tw", "course.densification_window", element);
        var number = context.Get("course.densification_window", element).Value as NumberValue;
        return calculation.Result(
            "course.passes_in_window", "n", "n = passes with t + Δt ≤ tw", Inside(window), Inside(number?.Low), Inside(number?.High));

        double? Inside(double? end) => end is { } closes ? passes.Count(pass => pass.Latest + delay <= closes) : null;
    }
}

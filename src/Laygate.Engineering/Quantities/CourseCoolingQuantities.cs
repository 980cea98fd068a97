using Laygate.Engineering.Formulas;
using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Time in which a course can be densified, and when its last densifying pass comes.</summary>
internal static class CourseCoolingQuantities
{
    private static readonly Define Course = new(ElementKind.Course);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Course.Number("densification_window", Shape.Minutes, "Minutes from the moment its screed passes a point until the mean temperature of the course is down to its cessation temperature.", Window, CoolingMethods.Window),
        Course.Number("temperature_of_lower_at_laying", Shape.Temperature, "Temperature of the course below when this one is laid hot-on-warm or hot-on-hot on it, at the place for which the plan states its lowest value, else its mean.", OfLower, CoolingMethods.OfLower),
        Course.Number("marking_from", Shape.Minutes, "Minutes behind the last screed of its hot body until finish rolling can take out marks.", (c, e) => Marking(c, e, "course.marking_from", "marking from"), CoolingMethods.Marking),
        Course.Number("marking_to", Shape.Minutes, "Minutes behind the last screed of its hot body until the skin is too cold to take out marks.", (c, e) => Marking(c, e, "course.marking_to", "marking to"), CoolingMethods.Marking),
        Course.Number("last_densifying_pass", Shape.Minutes, "Minutes, after the screed of the course, of the last pass of the initial and main phases.", LastPass, new Method(
            "t = latest of the phases, done_within or zone_to / v, plus the delay of the screeds above", Sources.Balance, "the slowest paver counts; finish rolling does not count")),
    ];

    private static Answer Window(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var pass = PlanView.Of(context).PassOf(course);
        MatLimits.Cessation(calculation, course);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).While(pass);
        return CoolingInputs.Result(
            calculation, "course.densification_window", "tw", "mean T(tw) = Tc", cooling.Find($"window {course.Id}"), MatCooling.LongestRolling);
    }

    private static Answer OfLower(QuantityContext context, Element element)
    {
        const string Name = "course.temperature_of_lower_at_laying";
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        if (course.Laid is not (Laying.HotOnWarm or Laying.HotOnHot))
        {
            return Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.LaidCold), new InputReference(element.Address, "laid"));
        }

        var pass = PlanView.Of(context).PassOf(course);
        PairQuantities.DelayOf(calculation, course);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).While(pass);
        var answer = CoolingInputs.Result(
            calculation, Name, "Tl", "Tl = T(Δt)", cooling.Find($"lower {course.Id}"), MatCooling.LongestRolling);
        return answer.Value is null ? answer : answer with { Place = MatLimits.PlaceOfLower(course) };
    }

    private static Answer Marking(QuantityContext context, Element element, string quantity, string question)
    {
        var calculation = new Calculation(context);
        var pass = PlanView.Of(context).PassOf((Course)element.Subject!);
        MatLimits.Marking(calculation);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).While(pass);
        return CoolingInputs.Result(
            calculation, quantity, "tm", "T(skin, tm) = Tm", cooling.Find(question), MatCooling.LongestRolling);
    }

    private static Answer LastPass(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var latest = double.NaN;
        var phases = context.Plan.Rolling?.Phases ?? [];
        foreach (var phase in phases.Where(phase => phase.Kind is null))
        {
            calculation.Miss($"phase:{phase.Id}", "kind");
        }

        foreach (var phase in phases.Where(phase => phase.Kind is PhaseKind.Initial or PhaseKind.Main))
        {
            var done = PhaseQuantities.DoneBySeconds(calculation, phase);
            latest = done <= latest ? latest : done;
        }

        if (!phases.Any(phase => phase.Kind is not PhaseKind.Finish))
        {
            calculation.Miss("plan", "rolling.phases");
        }

        foreach (var above in PlanView.Of(context).PassOf(course).Courses.SkipWhile(other => !ReferenceEquals(other, course)).Skip(1))
        {
            latest += PairQuantities.DelayOf(calculation, above);
        }

        return calculation.Result("course.last_densifying_pass", "t", "t = latest zone end / v + Δt", latest);
    }
}

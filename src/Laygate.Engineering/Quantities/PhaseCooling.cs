using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Rolling;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Phases against the cooling of the uppermost hot body.</summary>
internal static class PhaseCooling
{
    /// <summary>Skin at the earliest moment of the first pass.</summary>
    public static Answer SkinAtFirst(QuantityContext context, Element element) =>
        Skin(context, element, "phase.skin_at_first_pass", passes => passes[0].Earliest);

    /// <summary>Skin when the last pass has been made everywhere.</summary>
    public static Answer SkinAtLast(QuantityContext context, Element element) =>
        Skin(context, element, "phase.skin_at_last_pass", passes => passes[^1].Latest);

    /// <summary>Length that the slowest paver lays in the shortest densification window.</summary>
    public static Answer WindowLength(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var courses = context.Elements.Of(ElementKind.Course).ToList();
        var windows = courses.Select(course => Window(calculation, course)).ToList();
        if (courses.Count == 0)
        {
            calculation.Miss("plan", "courses");
        }

        var speed = PhaseQuantities.SlowestPaver(calculation);
        return calculation.Result(
            "phase.window_length", "L", "L = v · tw", Length(windows.Min(window => window.Si)), Length(windows.Min(window => window.Low)), Length(windows.Min(window => window.High)));

        double? Length(double? window) => window is { } time ? RollerOutput.ZoneLength(speed, time) : null;
    }

    private static (double? Si, double? Low, double? High) Window(Calculation calculation, Element course)
    {
        var si = calculation.Quantity("tw", "course.densification_window", course);
        return calculation.Context.Get("course.densification_window", course).Value is NumberValue number
            ? (number.Si, number.Low ?? number.Si, number.High ?? number.Si)
            : (si, null, null);
    }

    private static Answer Skin(QuantityContext context, Element element, string quantity, Func<IReadOnlyList<PlannedPass>, double> pick)
    {
        var calculation = new Calculation(context);
        if (PlanView.Of(context).Passes is not [.., var body])
        {
            return Answer.Missing(new InputReference("plan", "courses"));
        }

        var passes = PassPlan.Of(calculation, (Phase)element.Subject!);
        if (CoolingInputs.Gather(calculation, body, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        // A zone whose time cannot be computed, at a paver speed of nothing for example, leaves no passes although nothing is missing.
        if (passes.Count == 0)
        {
            return calculation.Stopped ?? calculation.Outside(quantity);
        }

        var time = pick(passes);
        var cooling = MatCooling.Of(context).While(body, time);
        return CoolingInputs.Result(
            calculation, quantity, "T", "T = T(skin) at t", cooling.At("skin", time), MatCooling.LongestRolling);
    }
}

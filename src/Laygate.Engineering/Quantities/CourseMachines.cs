using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What the plan states about the machines that lay and carry a course.</summary>
internal static class CourseMachines
{
    /// <summary>Highest stated speed of the pavers that lay a course.</summary>
    public static Answer PaverSpeed(QuantityContext context, Element element) => OfPavers(context, element, "speed", paver => paver.Speed);

    /// <summary>Longest stated stop, before a joint is made, of the pavers that lay a course.</summary>
    public static Answer StopLimit(QuantityContext context, Element element) => OfPavers(context, element, "stop_limit", paver => paver.StopLimit);

    /// <summary>Longest stated loaded journey of the trucks that carry the mix of a course.</summary>
    public static Answer HaulLongest(QuantityContext context, Element element)
    {
        var course = (Course)element.Subject!;
        var trucks = (context.Plan.Supply?.Trucks ?? []).Where(group => PlanView.Same(group.Mix, course.Mix));
        return Highest([.. trucks.Select(group => ((IMeasure?)group.HaulOut, new InputReference($"trucks:{group.Id}", "haul_out")))], new InputReference("supply", "trucks"));
    }

    private static Answer OfPavers(QuantityContext context, Element element, string key, Func<Paver, IMeasure?> read)
    {
        var course = (Course)element.Subject!;
        var view = PlanView.Of(context);
        var pavers = view.RunsOf(course).Select(run => view.PaverOf(course, run)).Append(view.PaverOf(course)).OfType<Paver>().Distinct();
        return Highest([.. pavers.Select(paver => (read(paver), new InputReference($"paver:{paver.Id}", key)))], new InputReference("plan", "pavers"));
    }

    // One machine that says nothing may be the one that matters, so silence is not passed over.
    private static Answer Highest(IReadOnlyList<(IMeasure? Value, InputReference Input)> stated, InputReference list)
    {
        InputReference[] silent = stated.Count == 0 ? [list] : [.. stated.Where(one => one.Value is null).Select(one => one.Input)];
        if (silent.Length > 0)
        {
            return Answer.Missing(silent);
        }

        var (value, input) = stated.MaxBy(one => one.Value!.Si);
        return Answers.Measure(value, input);
    }
}

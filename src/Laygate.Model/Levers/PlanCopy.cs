using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>Changed copies of a plan.</summary>
internal static class PlanCopy
{
    public static Plan WithPaver(Plan plan, Paver changed) =>
        plan with { Pavers = Replace(plan.Pavers, item => item.Id, changed) };

    public static Plan WithTrucks(Plan plan, TruckGroup changed) =>
        plan with { Supply = plan.Supply! with { Trucks = Replace(plan.Supply.Trucks, item => item.Id, changed) } };

    public static Plan WithPlant(Plan plan, Plant changed) =>
        plan with { Supply = plan.Supply! with { Plants = Replace(plan.Supply.Plants, item => item.Id, changed) } };

    public static Plan WithPhase(Plan plan, Phase changed) =>
        plan with { Rolling = plan.Rolling! with { Phases = Replace(plan.Rolling.Phases, item => item.Id, changed) } };

    public static Plan WithRoller(Plan plan, Roller changed) =>
        plan with { Rolling = plan.Rolling! with { Rollers = Replace(plan.Rolling.Rollers, item => item.Id, changed) } };

    public static Plan WithCourse(Plan plan, Course changed) =>
        plan with { Courses = Replace(plan.Courses, item => item.Id, changed) };

    public static Plan WithCoat(Plan plan, BondCoat changed) =>
        plan with { BondCoats = Replace(plan.BondCoats, item => item.Id, changed) };

    public static IReadOnlyList<T> Replace<T>(IReadOnlyList<T> items, Func<T, string> id, T changed) =>
        [.. items.Select(item => string.Equals(id(item), id(changed), StringComparison.Ordinal) ? changed : item)];

    /// <summary>A measure moved by a difference in SI, in its own unit.</summary>
    public static Measure<T>? Moved<T>(Measure<T>? measure, double bySi)
        where T : IDimension => measure is null ? null : measure with { Number = double.Round(measure.Unit.FromSi(measure.Si + bySi), 6) };
}

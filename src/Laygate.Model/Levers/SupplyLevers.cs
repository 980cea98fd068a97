using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>Levers of the supply: trucks, plants, tonnage ordered.</summary>
internal static class SupplyLevers
{
    public static IEnumerable<Lever> Of(Plan plan) =>
        Trucks(plan).Concat(Plants(plan)).Concat(Tonnages(plan)).OfType<Lever>();

    private static IEnumerable<Lever?> Trucks(Plan plan)
    {
        foreach (var trucks in plan.Supply?.Trucks ?? [])
        {
            var address = $"trucks:{trucks.Id}";
            yield return PlanLevers.Count(
                LeverKind.TruckCount, address, "count", trucks.Count, 1, count => PlanCopy.WithTrucks(plan, trucks with { Count = count }));
            yield return PlanLevers.Count(
                LeverKind.LoadsBeforeStart, address, "loads_before_start", trucks.LoadsBeforeStart, 0,
                count => PlanCopy.WithTrucks(plan, trucks with { LoadsBeforeStart = count }));
        }
    }

    private static IEnumerable<Lever?> Plants(Plan plan) => (plan.Supply?.Plants ?? []).Select(plant => PlanLevers.Measure(
        LeverKind.PlantOutput, $"plant:{plant.Id}", "planned", plant.Planned, (null, plant.Nameplate?.Si),
        planned => PlanCopy.WithPlant(plan, plant with { Planned = planned })));

    private static IEnumerable<Lever?> Tonnages(Plan plan) => plan.Courses.Select(course => PlanLevers.Measure(
        LeverKind.Tonnage, $"course:{course.Id}", "tonnage", course.Tonnage, (null, null),
        tonnage => PlanCopy.WithCourse(plan, course with { Tonnage = tonnage })));
}

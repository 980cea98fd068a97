using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>Levers of the supply: trucks, plants, tonnage ordered.</summary>
internal static class SupplyLevers
{
    /// <summary>Trucks of which one docks while the others wait.</summary>
    private const int Docked = 1;

    public static IEnumerable<Lever> Of(Plan plan) =>
        Sending(plan).Concat(Trucks(plan)).Concat(LoadingPlaces(plan)).Concat(Plants(plan)).Concat(Tonnages(plan)).OfType<Lever>();

    // A plan that says nothing is taken as sent by timetable; saying otherwise is a change, too.
    private static IEnumerable<Lever?> Sending(Plan plan)
    {
        if (plan.Supply is { Trucks.Count: > 0 } supply)
        {
            yield return new Lever
            {
                Kind = LeverKind.Dispatch,
                Address = "supply",
                Key = "dispatch",
                IsCount = true,
                Names = Words.Of<Dispatch>(),
                Current = (int)(supply.Dispatch ?? Dispatch.Timetable),
                Lowest = 0,
                Highest = (int)Dispatch.AsLoaded,
                Step = 1,
                Change = number => plan with { Supply = supply with { Dispatch = (Dispatch)(int)Math.Round(number) } },
            };
        }
    }

    private static IEnumerable<Lever?> LoadingPlaces(Plan plan) => (plan.Supply?.Plants ?? []).Select(plant => PlanLevers.Count(
        LeverKind.LoadingPlaces, $"plant:{plant.Id}", "loading_places", plant.LoadingPlaces ?? 1, 1,
        places => PlanCopy.WithPlant(plan, plant with { LoadingPlaces = places })));

    private static IEnumerable<Lever?> Trucks(Plan plan)
    {
        foreach (var trucks in plan.Supply?.Trucks ?? [])
        {
            var address = $"trucks:{trucks.Id}";
            yield return PlanLevers.Count(
                LeverKind.TruckCount, address, "count", trucks.Count, 1, count => PlanCopy.WithTrucks(plan, trucks with { Count = count }));
            yield return LoadsBeforeStart(plan, trucks);
        }
    }

    // No more loads can wait than there are trucks of the group, or places left by the other groups.
    private static Lever? LoadsBeforeStart(Plan plan, TruckGroup trucks)
    {
        var lever = PlanLevers.Count(
            LeverKind.LoadsBeforeStart, $"trucks:{trucks.Id}", "loads_before_start", trucks.LoadsBeforeStart, 0,
            count => PlanCopy.WithTrucks(plan, trucks with { LoadsBeforeStart = count }));
        if (lever is null)
        {
            return null;
        }

        var others = plan.Supply!.Trucks.Where(other => !string.Equals(other.Id, trucks.Id, StringComparison.Ordinal)).Sum(other => (double)(other.LoadsBeforeStart ?? 0));
        var places = plan.Supply.WaitingPlaces is { } waiting ? waiting + Docked - others : double.PositiveInfinity;
        return lever with { Highest = Math.Max(lever.Current, Math.Min(lever.Highest, Math.Min(places, trucks.Count ?? double.PositiveInfinity))) };
    }

    private static IEnumerable<Lever?> Plants(Plan plan) => (plan.Supply?.Plants ?? []).Select(plant => PlanLevers.Measure(
        LeverKind.PlantOutput, $"plant:{plant.Id}", "planned", plant.Planned, (null, plant.Nameplate?.Si ?? plant.Planned?.Si),
        planned => PlanCopy.WithPlant(plan, plant with { Planned = planned })));

    private static IEnumerable<Lever?> Tonnages(Plan plan) => plan.Courses.Select(course => PlanLevers.Measure(
        LeverKind.Tonnage, $"course:{course.Id}", "tonnage", course.Tonnage, (null, null),
        tonnage => PlanCopy.WithCourse(plan, course with { Tonnage = tonnage })));
}

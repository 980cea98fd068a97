using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;
using PlanSupply = Laygate.Model.Plans.Supply;

namespace Laygate.Engineering.Quantities;

/// <summary>Plants and the supply as a whole.</summary>
internal static class SupplyQuantities
{
    private static readonly Define Supply = new(ElementKind.Supply);
    private static readonly Define Plant = new(ElementKind.Plant);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Supply.Number("mix_count", Shape.None, "Number of different mixes that the courses are made of.", (c, _) =>
            new Calculation(c).Result("supply.mix_count", "n", "n = different mixes of the courses", c.Plan.Courses.Select(course => course.Mix).Distinct(StringComparer.Ordinal).Count())),
        Supply.StatedFields<PlanSupply>("identification", "identification", "How loads of different mixes are told apart: mark on the truck, who releases, what happens on a mismatch.", supply =>
        [
            ("identification.on_truck", Answers.Given(supply?.Identification?.OnTruck)),
            ("identification.released_by", Answers.Given(supply?.Identification?.ReleasedBy)),
            ("identification.on_mismatch", Answers.Given(supply?.Identification?.OnMismatch)),
        ]),
        Supply.StatedFields<PlanSupply>("left_over_goes_to", "left_over_goes_to", "Where mix goes that is left over at the end of the shift.", supply =>
            [("left_over_goes_to", Answers.Given(supply?.LeftOverGoesTo))]),
        Supply.StatedCount<PlanSupply>("waiting_places", "waiting_places", "Trucks that find room to wait on site.", supply => supply?.WaitingPlaces),
        Supply.Flag("waiting_places_stated", "Whether the plan states how many trucks find room to wait on site.", (c, e) =>
            Answers.Follows(c.Plan.Supply?.WaitingPlaces is not null, new InputReference(e.Address, "waiting_places"))),
        Supply.Presence("place_for_caught_loads", "Where loads go that rain catches on the road: the place stated with the action for rain.", (c, _) => CaughtLoads(c)),
        Plant.Stated<Plant>("longest_stop", Shape.Minutes, "longest_stop", "Longest stop of the plant that the paver is to survive without stopping.", plant => plant.LongestStop),
        Plant.Flag("longest_stop_stated", "Whether the plan states a stop of the plant that the paver is to survive.", (_, e) =>
            Answers.Follows(((Plant)e.Subject!).LongestStop is not null, new InputReference(e.Address, "longest_stop"))),
        Plant.Stated<Plant>("planned", Shape.Flow, "planned", "Average output planned for this job over the shift.", plant => plant.Planned),
        Plant.Stated<Plant>("nameplate", Shape.Flow, "nameplate", "Output on the plant's name plate.", plant => plant.Nameplate),
        Plant.Flag("silo_stated", "Whether the plan states what the silo of the plant holds; nothing where there is none.", (_, e) =>
            Answers.Follows(((Plant)e.Subject!).SiloCapacity is not null, new InputReference(e.Address, "silo_capacity"))),
        Plant.Number("silo_loads", Shape.None, "Truck loads that the silo holds: its capacity over the largest payload loaded there.", SiloLoads, new Method(
            "n = B / P", Sources.Definition, "needs the payload of each group of trucks")),
        Plant.Number("demand", Shape.Flow, "Mix that the courses laid together take from the plant while the paver moves.", PlantDemand, new Method(
            "R = largest over the passes of Σ R of the courses that it makes, shared by planned output with other plants of the same mix", Sources.Balance, "as the demand of the courses")),
        Plant.Number("loading_use", Shape.None, "Share of the time in which the loading place for one mix is busy while the paver moves: the busiest mix of the plant.", LoadingUse, new Method(
            "u = R · tl / (P · s)", Sources.Balance, "tl loading of one truck, s trucks loaded at a time; above 1 no number of trucks keeps up. Groups of one mix are counted by their number of trucks")),
    ];

    private static Answer SiloLoads(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var held = calculation.Stated("B", ((Plant)element.Subject!).SiloCapacity, element.Address, "silo_capacity");
        var groups = (context.Plan.Supply?.Trucks ?? []).Where(trucks => trucks.Plant is null || PlanView.Same(trucks.Plant, element.Id)).ToList();
        if (groups.Count == 0)
        {
            calculation.Miss("supply", "trucks");
        }

        var load = groups.Select(trucks => calculation.Stated("P", trucks.Payload, $"trucks:{trucks.Id}", "payload")).DefaultIfEmpty(double.NaN).Max();
        return calculation.Result("plant.silo_loads", "n", "n = B / P", load > 0 ? held / load : null);
    }

    /// <summary>Largest demand, over the passes and what two trains lay at one time, of the courses that fulfil a condition, kg/s.</summary>
    /// <param name="calculation">Takes inputs and what is missing.</param>
    /// <param name="counts">Which courses count.</param>
    /// <param name="share">Share of a course's demand that counts.</param>
    internal static double LargestDemand(Calculation calculation, Func<Course, bool> counts, Func<Course, double>? share = null)
    {
        var view = PlanView.Of(calculation.Context);
        var largest = double.NaN;
        foreach (var together in view.Passes.Select(pass => pass.Courses).Concat(ShiftTimeline.Of(calculation.Context)?.AtOneTime() ?? []))
        {
            var courses = together.Where(counts).ToList();
            var sum = courses.Sum(course =>
                calculation.Quantity("R", "course.demand", view.Of(ElementKind.Course, course.Id)) * (share?.Invoke(course) ?? 1));
            largest = courses.Count > 0 && !(sum <= largest) ? sum : largest;
        }

        return largest;
    }

    // The mass at stake is said with it: somebody must know what stands to be lost.
    private static Answer CaughtLoads(QuantityContext context)
    {
        var answer = Answers.Fullest(
            context.Plan.Contingencies.Where(action => action.Event == ContingencyEvent.Rain).Select(action => Answers.Fields(
                new InputReference($"contingency:{action.Id}", "spare"), ("spare", Answers.Given(action.Spare)))),
            new InputReference("plan", "contingencies"), Words.Of(ContingencyEvent.Rain), "spare");
        return !context.IsQuick && ShiftSimulation.Of(context).Result?.CommittedHighest is { } most
            ? answer with { Note = new Note(NoteIds.CommittedMix, [new NoteArgument("mass", null, Math.Round(most.Expected / 1000), "t")]) }
            : answer;
    }

    private static Answer PlantDemand(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var plant = (Plant)element.Subject!;
        var demand = LargestDemand(
            calculation, course => CourseSupplyQuantities.Makes(plant, course, context.Plan), course => ShareOf(calculation, plant, course));
        if (plant.Mixes.Count == 0 && context.Plan.Supply!.Plants.Count > 1)
        {
            calculation.Miss(element.Address, "mixes");
        }

        return calculation.Result("plant.demand", "R", "R = Σ R of its mixes", demand);
    }

    private static Answer LoadingUse(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var plant = (Plant)element.Subject!;
        var plan = context.Plan;
        var groups = plan.Supply!.Trucks
            .Where(trucks => trucks.Plant is { } named ? PlanView.Same(named, plant.Id) : plan.Supply.Plants.Count == 1 || plant.Mixes.Contains(trucks.Mix, StringComparer.Ordinal))
            .Where(trucks => trucks.Mix is not null && plan.Courses.Any(course => PlanView.Same(course.Mix, trucks.Mix)))
            .ToList();
        if (groups.Count == 0)
        {
            calculation.Miss("supply", "trucks");
        }

        var places = HaulReader.PlacesOf(calculation, plant);
        double? busiest = null;
        foreach (var mix in groups.GroupBy(trucks => trucks.Mix!, StringComparer.Ordinal))
        {
            var demand = LargestDemand(calculation, course => PlanView.Same(course.Mix, mix.Key), course => ShareOf(calculation, plant, course));
            var use = demand * LoadingOfOneKilogram(calculation, [.. mix]) / places;
            busiest = busiest is null || !(use <= busiest) ? use : busiest;
        }

        return calculation.Result("plant.loading_use", "u", "u = R · tl / (P · s)", busiest);
    }

    /// <summary>Time at the loading place for one kilogram, s/kg: each truck of each group loads as often as any other.</summary>
    private static double LoadingOfOneKilogram(Calculation calculation, IReadOnlyList<TruckGroup> groups)
    {
        var (time, mass) = (0.0, 0.0);
        foreach (var trucks in groups)
        {
            var address = $"trucks:{trucks.Id}";
            var count = groups.Count == 1 ? 1 : calculation.Stated("N", trucks.Count, address, "count");
            time += count * calculation.StatedOr(AssumptionIds.Loading, "tl", trucks.Loading, address, "loading");
            mass += count * calculation.Stated("P", trucks.Payload, address, "payload");
        }

        return time / mass;
    }

    private static double ShareOf(Calculation calculation, Plant plant, Course course)
    {
        var plan = calculation.Context.Plan;
        var makers = plan.Supply!.Plants.Where(other => CourseSupplyQuantities.Makes(other, course, plan)).ToList();
        return makers.Count < 2 ? 1 : calculation.Stated("S0", plant.Planned, $"plant:{plant.Id}", "planned")
            / makers.Sum(other => calculation.Stated("S0", other.Planned, $"plant:{other.Id}", "planned"));
    }
}

using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Trucks that carry one mix from one plant.</summary>
internal static class TruckQuantities
{
    private static readonly Define Trucks = new(ElementKind.Trucks);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Trucks.StatedCount<TruckGroup>("count", "count", "Number of trucks.", trucks => trucks.Count),
        Trucks.StatedFlag<TruckGroup>("insulated", "insulated", "Whether the bodies are insulated.", trucks => trucks.Insulated),
        Trucks.StatedFlag<TruckGroup>("covered", "covered", "Whether the loads are covered.", trucks => trucks.Covered),
        Trucks.StatedCount<TruckGroup>("loads_before_start", "loads_before_start", "Loads that wait on site before the paver starts.", trucks => trucks.LoadsBeforeStart),
        Trucks.Number("cycle", Shape.Minutes, "Time of one round of a truck.", Cycle, new Method(
            "C = loading + ticket + out + wait + exchange + discharge + cleaning + back", Sources.Napa62, "usual day; parts that are not stated are assumed, the journeys never")),
        Trucks.Number("minimum_count", Shape.None, "Number of trucks that keeps up with the paver when nothing varies and each waits on site as planned.", (c, e) => MinimumCount(c, e, waits: true), new Method(
            "N = ⌈R · C / P⌉", Sources.Napa62, "a lower bound: real hauls vary and need more; groups of one mix share it by what they can carry")),
        Trucks.Number("necessary_count", Shape.None, "Least number of trucks that can keep up with the paver: no truck waits for anything.", (c, e) => MinimumCount(c, e, waits: false), new Method(
            "N = ⌈R · (C − wait) / P⌉", Sources.Napa62, "fewer cannot carry the mix, whatever is planned; nothing that somebody chose is in it")),
        Trucks.Number("parts_without_time", Shape.None, "Parts of a truck's round besides the journeys that are stated as taking no time.", PartsWithoutTime, new Method(
            "n = parts of ticket, wait and cleaning stated as 0", Sources.Definition, "loading and exchange decide more and have rules of their own")),
        Trucks.Number("interval", Shape.Minutes, "Time between two loads of the group while the paver moves.", Interval, new Method(
            "T = P / R", Sources.Balance, "demand and payload above zero")),
        Trucks.Number("age_at_laying", Shape.Minutes, "Time from loading to the mat on a usual day.", Age, new Method(
            "A = ticket + out + wait + exchange + discharge + dwell, dwell = B / R", Sources.Balance, "a full buffer is counted, the slow end; a plain hopper and the feeder's own storage are not")),
    ];

    /// <summary>Time in which a load is passed on, with the exchange of trucks, s.</summary>
    private static double Unloading(Calculation calculation, TruckGroup trucks, string address)
    {
        var plan = calculation.Context.Plan;
        var payload = calculation.Stated("P", trucks.Payload, address, "payload");
        if (plan.Supply?.Feeder is { } feeder)
        {
            var exchange = calculation.StatedOr(AssumptionIds.Exchange, "e", feeder.Exchange, $"feeder:{feeder.Id}", "exchange");
            var rate = calculation.Stated("Q", feeder.Rate, $"feeder:{feeder.Id}", "rate");
            return exchange + Emptied(payload, rate);
        }

        var change = calculation.Assumed(AssumptionIds.Exchange, "e", address, null);
        return change + Emptied(payload, MixDemand(calculation, trucks, address));
    }

    private static double Emptied(double payload, double rate) =>
        Fleet.Discharge(payload, rate) ?? double.NaN;

    /// <summary>Demand of the mix that the trucks carry, kg/s.</summary>
    private static double MixDemand(Calculation calculation, TruckGroup trucks, string address)
    {
        var demand = trucks.Mix is null
            ? double.NaN
            : SupplyQuantities.LargestDemand(calculation, course => PlanView.Same(course.Mix, trucks.Mix));
        if (double.IsNaN(demand) && calculation.Stopped is null)
        {
            calculation.Miss(address, "mix");
        }

        return demand;
    }

    private static Answer Cycle(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var round = Round(calculation, element, waits: true);
        return calculation.Result("trucks.cycle", "C", "C = Σ ti", calculation.Stopped is null ? round : null);
    }

    /// <summary>Time of one round, s; NaN where something is missing.</summary>
    /// <param name="calculation">Takes inputs and what is missing.</param>
    /// <param name="element">The group of trucks.</param>
    /// <param name="waits">Whether the planned wait on site counts; it is chosen and no need of the haul.</param>
    private static double Round(Calculation calculation, Element element, bool waits)
    {
        var trucks = (TruckGroup)element.Subject!;
        double[] parts =
        [
            calculation.StatedOr(AssumptionIds.Loading, "loading", trucks.Loading, element.Address, "loading"),
            calculation.StatedOr(AssumptionIds.Ticket, "ticket", trucks.Ticket, element.Address, "ticket"),
            calculation.Stated("out", trucks.HaulOut, element.Address, "haul_out"),
            waits ? calculation.StatedOr(AssumptionIds.Wait, "wait", trucks.Wait, element.Address, "wait") : 0,
            Unloading(calculation, trucks, element.Address),
            calculation.StatedOr(AssumptionIds.Cleaning, "cleaning", trucks.Cleaning, element.Address, "cleaning"),
            calculation.Stated("back", trucks.HaulBack, element.Address, "haul_back"),
        ];
        if (double.IsFinite(parts[4]))
        {
            calculation.Step("e + td", "e + td, td = P / Q", parts[4], "min", "min");
        }

        return calculation.Stopped is null ? Fleet.Cycle([.. parts]) ?? double.NaN : double.NaN;
    }

    private static Answer MinimumCount(QuantityContext context, Element element, bool waits)
    {
        var calculation = new Calculation(context);
        var trucks = (TruckGroup)element.Subject!;
        var cycle = waits ? calculation.Quantity("C", "trucks.cycle", element) : Round(calculation, element, waits: false);
        var payload = calculation.Stated("P", trucks.Payload, element.Address, "payload");
        var rate = MixDemand(calculation, trucks, element.Address) * Share(calculation, trucks, cycle, waits);
        var count = Fleet.MinimumCount(rate, cycle, payload);
        var answer = waits
            ? calculation.Result("trucks.minimum_count", "N", "N = ⌈R · C / P⌉", count)
            : calculation.Result("trucks.necessary_count", "N", "N = ⌈R · (C − wait) / P⌉", count);
        return answer.Value is null ? answer : answer with { Note = SlowLoading(context, trucks) };
    }

    /// <summary>A remark where the loading place alone is slower than the paver: then no number of trucks is enough.</summary>
    private static Note? SlowLoading(QuantityContext context, TruckGroup trucks)
    {
        var plants = context.Plan.Supply?.Plants ?? [];
        var plant = plants.FirstOrDefault(plant => PlanView.Same(plant.Id, trucks.Plant)) ?? (plants is [var only] ? only : null);
        return plant is not null && context.Elements.Find($"plant:{plant.Id}") is { } element
            && context.Get("plant.loading_use", element).Value is NumberValue { Si: > 1 }
            ? Note.Of(SimulationNotes.LoadingTooSlow, ("plant", plant.Id))
            : null;
    }

    /// <summary>The parts of ticket, wait and cleaning that are stated; each that takes no time favours the plan.</summary>
    private static Answer PartsWithoutTime(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var trucks = (TruckGroup)element.Subject!;
        var parts = new[] { ("ticket", trucks.Ticket), ("wait", trucks.Wait), ("cleaning", trucks.Cleaning) };
        var stated = parts.Where(part => part.Item2 is not null).ToList();
        if (stated.Count == 0)
        {
            calculation.Miss(parts.Select(part => new InputReference(element.Address, part.Item1)));
        }

        foreach (var (key, time) in stated)
        {
            calculation.Stated(key, time, element.Address, key);
        }

        return calculation.Result(
            "trucks.parts_without_time", "n", "n = parts stated as 0", stated.Count(part => part.Item2 is { Si: <= 0 }));
    }

    /// <summary>Share of the mix's demand that falls to one group, by what the groups can carry.</summary>
    private static double Share(Calculation calculation, TruckGroup trucks, double cycle, bool waits = true)
    {
        var context = calculation.Context;
        var groups = context.Plan.Supply!.Trucks.Where(other => PlanView.Same(other.Mix, trucks.Mix)).ToList();
        if (groups.Count < 2)
        {
            return 1;
        }

        return Carries(trucks, cycle) / groups.Sum(other => Carries(other, ReferenceEquals(other, trucks)
            ? cycle
            : Other($"trucks:{other.Id}")));

        double Other(string address) => context.Elements.Find(address) is not { } element ? double.NaN
            : waits ? calculation.Quantity("C", "trucks.cycle", element)
            : Round(calculation, element, waits: false);

        double Carries(TruckGroup group, double round) =>
            calculation.Stated("n", group.Count, $"trucks:{group.Id}", "count")
            * calculation.Stated("P", group.Payload, $"trucks:{group.Id}", "payload") / round;
    }

    private static Answer Interval(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var trucks = (TruckGroup)element.Subject!;
        var payload = calculation.Stated("P", trucks.Payload, element.Address, "payload");
        var rate = MixDemand(calculation, trucks, element.Address);
        if (context.Plan.Supply!.Trucks.Count(other => PlanView.Same(other.Mix, trucks.Mix)) > 1)
        {
            rate *= Share(calculation, trucks, calculation.Quantity("C", "trucks.cycle", element));
        }

        return calculation.Result("trucks.interval", "T", "T = P / R", Fleet.Interval(
            payload, rate));
    }

    private static Answer Age(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var trucks = (TruckGroup)element.Subject!;
        var age = calculation.StatedOr(AssumptionIds.Ticket, "ticket", trucks.Ticket, element.Address, "ticket")
            + calculation.Stated("out", trucks.HaulOut, element.Address, "haul_out")
            + calculation.StatedOr(AssumptionIds.Wait, "wait", trucks.Wait, element.Address, "wait")
            + Unloading(calculation, trucks, element.Address)
            + Dwell(calculation, trucks);
        return calculation.Result("trucks.age_at_laying", "A", "A = ticket + out + wait + e + td + B/R", age);
    }

    /// <summary>Longest time that the mix stays in a full buffer of a paver, s; 0 where no buffer is stated.</summary>
    private static double Dwell(Calculation calculation, TruckGroup trucks)
    {
        var view = PlanView.Of(calculation.Context);
        var longest = 0.0;
        foreach (var course in calculation.Context.Plan.Courses.Where(course => PlanView.Same(course.Mix, trucks.Mix)))
        {
            var paver = view.AnyPaverOf(course);
            if (paver?.Buffers.FirstOrDefault(buffer => PlanView.Same(buffer.Course, course.Id))?.Capacity is { } capacity)
            {
                var held = calculation.Stated("B", capacity, $"paver:{paver.Id}", $"buffers.{course.Id}.capacity");
                longest = Math.Max(longest, Emptied(held, calculation.Quantity("R", "course.demand", view.Of(ElementKind.Course, course.Id))));
            }
        }

        return longest;
    }
}

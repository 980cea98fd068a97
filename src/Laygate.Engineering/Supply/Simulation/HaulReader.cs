using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Reads plants and trucks.</summary>
internal sealed class HaulReader(Calculation calculation, TruckDeal? deal = null)
{
    private readonly List<ShiftLine> lines = [];
    private readonly Plan plan = calculation.Context.Plan;

    /// <summary>Mixes at their plants; complete after the trucks were read.</summary>
    public IReadOnlyList<ShiftLine> Lines => lines;

    /// <summary>Reads the groups of trucks that carry the mixes.</summary>
    /// <param name="tonnages">Mix to be laid by mix, kg.</param>
    /// <param name="serviceSpread">Coefficient of variation of loading.</param>
    public IReadOnlyList<ShiftTrucks> Read(IReadOnlyDictionary<string, double> tonnages, double serviceSpread)
    {
        foreach (var unknown in (plan.Supply?.Trucks ?? []).Where(trucks => trucks.Mix is null))
        {
            calculation.Miss($"trucks:{unknown.Id}", "mix");
        }

        var groups = (plan.Supply?.Trucks ?? []).Where(trucks => trucks.Mix is not null && tonnages.ContainsKey(trucks.Mix)).ToList();
        foreach (var mix in tonnages.Keys)
        {
            var carried = groups.Where(trucks => PlanView.Same(trucks.Mix, mix)).ToList();
            if (carried.Count == 0)
            {
                calculation.Miss("supply", "trucks");
            }
            else if (carried.All(trucks => trucks.Count <= 0))
            {
                calculation.Block(AbsenceReason.NotComputable, Note.Of(SimulationNotes.NoTrucks, ("mix", mix)));
            }
            else if (carried.All(trucks => CountOf(trucks) <= 0))
            {
                calculation.Block(AbsenceReason.NotComputable, Note.Of(SimulationNotes.TooFewTrucks, ("mix", mix)));
            }
        }

        return [.. groups.Where(trucks => trucks.Count is not > 0 || CountOf(trucks) > 0).Select(trucks => OfGroup(trucks, tonnages, serviceSpread))];
    }

    private int CountOf(TruckGroup trucks) => deal?.Count(trucks) ?? trucks.Count ?? 0;

    private int Counted(TruckGroup trucks, string address)
    {
        var (all, own) = (calculation.Stated("N", trucks.Count, address, "count"), CountOf(trucks));
        if (deal?.IsDealt(trucks) == true)
        {
            calculation.Assumed(SimulationAssumptions.TrucksStay, "own", address, new InputReference(address, "paver"));
        }

        if (own < all)
        {
            calculation.Step("N own", "trucks of this group for this paver", own, string.Empty, string.Empty);
        }

        return own;
    }

    private ShiftTrucks OfGroup(TruckGroup trucks, IReadOnlyDictionary<string, double> tonnages, double serviceSpread)
    {
        var address = $"trucks:{trucks.Id}";
        var payload = calculation.Stated("P", trucks.Payload, address, "payload");
        var loading = calculation.StatedOr(AssumptionIds.Loading, "loading", trucks.Loading, address, "loading");
        var ticket = calculation.StatedOr(AssumptionIds.Ticket, "ticket", trucks.Ticket, address, "ticket");
        var cleaning = calculation.StatedOr(AssumptionIds.Cleaning, "cleaning", trucks.Cleaning, address, "cleaning");
        var before = trucks.LoadsBeforeStart ?? (int)calculation.Assumed(
            SimulationAssumptions.LoadsBeforeStart, "n0", address, new InputReference(address, "loads_before_start"));
        return new ShiftTrucks(
            trucks.Id,
            LineOf(trucks, payload, tonnages),
            Counted(trucks, address),
            payload,
            TimeSpread.Lognormal(loading, serviceSpread),
            Journey("out", trucks.HaulOut, trucks.HaulOutBad, address, "haul_out").Plus(ticket),
            Journey("back", trucks.HaulBack, trucks.HaulBackBad, address, "haul_back").Plus(cleaning),
            Math.Max(0, before));
    }

    private TimeSpread Journey(
        string symbol, Laygate.Model.Measures.IMeasure? usual, Laygate.Model.Measures.IMeasure? bad, string address, string key)
    {
        var time = calculation.Stated(symbol, usual, address, key);
        return bad is null
            ? TimeSpread.UsualAndVariation(time, calculation.Assumed(SimulationAssumptions.HaulSpread, "cv", address, new InputReference(address, $"{key}_bad")))
            : TimeSpread.UsualAndBad(
                time, calculation.Stated($"{symbol} bad", bad, address, $"{key}_bad"), calculation.Assumed(SimulationAssumptions.BadDayPoint, "p", address, null));
    }

    private int LineOf(TruckGroup trucks, double payload, IReadOnlyDictionary<string, double> tonnages)
    {
        var plants = plan.Supply!.Plants;
        var makers = plants.Where(plant => Makes(plant, trucks.Mix!)).ToList();
        var plant = trucks.Plant is { } named
            ? plants.FirstOrDefault(plant => PlanView.Same(plant.Id, named))
            : makers is [var only] ? only : plants is [var single] ? single : null;
        if (plant is null)
        {
            calculation.Miss(plants.Count == 0 ? "supply" : $"trucks:{trucks.Id}", plants.Count == 0 ? "plants" : "plant");
            return -1;
        }

        if (!Makes(plant, trucks.Mix!))
        {
            calculation.Block(AbsenceReason.NotComputable, Note.Of(SimulationNotes.PlantWithoutMix, ("plant", plant.Id), ("mix", trucks.Mix!)));
        }

        var known = lines.FindIndex(line => PlanView.Same(line.Plant, plant.Id) && PlanView.Same(line.Mix, trucks.Mix));
        if (known >= 0)
        {
            return known;
        }

        lines.Add(OfPlant(plant, trucks.Mix!, payload, tonnages));
        return lines.Count - 1;
    }

    /// <summary>One mix at a plant; a plant that makes several of the mixes gives each its share by tonnage, and trains that lay at the same time theirs by what each lays in an hour.</summary>
    private ShiftLine OfPlant(Plant plant, string mix, double payload, IReadOnlyDictionary<string, double> tonnages)
    {
        var address = $"plant:{plant.Id}";
        var made = tonnages.Where(tonnage => Makes(plant, tonnage.Key)).Sum(tonnage => tonnage.Value);
        var share = (made > 0 ? tonnages[mix] / made : 1) * (deal?.ShareOf(other => Makes(plant, other)) ?? 1);
        var rate = calculation.Stated("S0", plant.Planned, address, "planned");
        var stock = plant.SiloAtStart is null ? 0 : calculation.Stated("B", plant.SiloAtStart, address, "silo_at_start");
        var capacity = plant.SiloCapacity is null ? stock : calculation.Stated("Bmax", plant.SiloCapacity, address, "silo_capacity");
        return new ShiftLine(plant.Id, mix, rate * share, stock * share, Math.Max(capacity * share, payload), PlacesOf(calculation, plant));
    }

    /// <summary>Trucks that a plant loads with one mix at the same time.</summary>
    internal static int PlacesOf(Calculation calculation, Plant plant) => plant.LoadingPlaces is { } places
        ? Math.Max(1, calculation.Stated("s", places, $"plant:{plant.Id}", "loading_places"))
        : (int)calculation.Assumed(SimulationAssumptions.LoadingPlaces, "s", $"plant:{plant.Id}", new InputReference($"plant:{plant.Id}", "loading_places"));

    private bool Makes(Plant plant, string mix) =>
        plant.Mixes.Contains(mix, StringComparer.Ordinal) || (plant.Mixes.Count == 0 && plan.Supply!.Plants.Count == 1);
}

using System.Globalization;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of plants, trucks and feeder that cannot be.</summary>
internal static class SupplyRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        if (plan.Supply is not { } supply)
        {
            return;
        }

        var inside = at.Inside("supply");
        foreach (var (plant, where) in inside.Each("plants", supply.Plants))
        {
            Plant(plant, where);
        }

        foreach (var (trucks, where) in inside.Each("trucks", supply.Trucks))
        {
            Trucks(trucks, where);
        }

        if (supply.Feeder is { } feeder)
        {
            Feeder(feeder, inside.Inside("feeder"));
        }

        inside.AtLeast("waiting_places", supply.WaitingPlaces, 0);
    }

    private static void Plant(Plant plant, PlanPart at)
    {
        at.Positive("nameplate", plant.Nameplate);
        at.Positive("planned", plant.Planned);
        at.NotNegative("silo_at_start", plant.SiloAtStart);
        at.NotNegative("silo_capacity", plant.SiloCapacity);
        at.AtLeast("loading_places", plant.LoadingPlaces, 1);
        at.NotNegative("longest_stop", plant.LongestStop);
        at.Ascending(("silo_at_start", plant.SiloAtStart), ("silo_capacity", plant.SiloCapacity));
    }

    private static void Trucks(TruckGroup trucks, PlanPart at)
    {
        at.AtLeast("count", trucks.Count, 1);
        at.Positive("payload", trucks.Payload);
        at.CanBe("payload", trucks.Payload, Possible.Payload);
        Round(trucks, at);
        at.NotNegative("loading", trucks.Loading);
        at.NotNegative("ticket", trucks.Ticket);
        at.NotNegative("haul_out", trucks.HaulOut);
        at.NotNegative("haul_back", trucks.HaulBack);
        at.Ascending(("haul_out", trucks.HaulOut), ("haul_out_bad", trucks.HaulOutBad));
        at.Ascending(("haul_back", trucks.HaulBack), ("haul_back_bad", trucks.HaulBackBad));
        at.NotNegative("haul_out_bad", trucks.HaulOutBad);
        at.NotNegative("haul_back_bad", trucks.HaulBackBad);
        at.NotNegative("wait", trucks.Wait);
        at.NotNegative("cleaning", trucks.Cleaning);
        at.AtLeast("loads_before_start", trucks.LoadsBeforeStart, 0);
        if (trucks.LoadsBeforeStart > trucks.Count)
        {
            at.Fail("loads_before_start", string.Create(CultureInfo.InvariantCulture, $"{trucks.LoadsBeforeStart} loads cannot wait on {trucks.Count} trucks."), "Correct `loads_before_start` or `count`.");
        }
    }

    private static void Round(TruckGroup trucks, PlanPart at)
    {
        at.CanBe("loading", trucks.Loading, Possible.TruckTime);
        at.CanBe("ticket", trucks.Ticket, Possible.TruckTime);
        at.CanBe("haul_out", trucks.HaulOut, Possible.TruckTime);
        at.CanBe("haul_out_bad", trucks.HaulOutBad, Possible.TruckTime);
        at.CanBe("haul_back", trucks.HaulBack, Possible.TruckTime);
        at.CanBe("haul_back_bad", trucks.HaulBackBad, Possible.TruckTime);
        at.CanBe("wait", trucks.Wait, Possible.TruckTime);
        at.CanBe("cleaning", trucks.Cleaning, Possible.TruckTime);
    }

    private static void Feeder(Feeder feeder, PlanPart at)
    {
        at.Positive("rate", feeder.Rate);
        at.NotNegative("exchange", feeder.Exchange);
        at.NotNegative("changeover", feeder.Changeover);
        at.NotNegative("temperature_loss", feeder.TemperatureLoss);
        at.NotNegative("storage", feeder.Storage);
        at.Positive("mass_empty", feeder.MassEmpty);
        at.Positive("mass_full", feeder.MassFull);
        at.Ascending(("mass_empty", feeder.MassEmpty), ("mass_full", feeder.MassFull));
    }
}

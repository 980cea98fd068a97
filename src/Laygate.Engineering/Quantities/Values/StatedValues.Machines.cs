using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Values;

/// <summary>Numbers about plants, trucks, feeder, pavers and rollers.</summary>
internal sealed partial class StatedValues
{
    private void Supply(Model.Plans.Supply? supply)
    {
        foreach (var plant in supply?.Plants ?? [])
        {
            owner = $"plant:{plant.Id}";
            Add("nameplate", plant.Nameplate, ValueSort.PlantOutput);
            Add("planned", plant.Planned, ValueSort.PlantOutput);
            Add("silo_at_start", plant.SiloAtStart, ValueSort.Silo);
            Add("silo_capacity", plant.SiloCapacity, ValueSort.Silo);
            Add("loading_places", plant.LoadingPlaces, ValueSort.LoadingPlaces);
            Add("longest_stop", plant.LongestStop, ValueSort.PlantStop);
        }

        foreach (var trucks in supply?.Trucks ?? []) Trucks(trucks);
        if (supply?.Feeder is { } feeder) Feeder(feeder);
        owner = "supply";
        Add("waiting_places", supply?.WaitingPlaces, ValueSort.WaitingPlaces);
    }

    private void Trucks(TruckGroup trucks)
    {
        owner = $"trucks:{trucks.Id}";
        Add("count", trucks.Count, ValueSort.TruckCount);
        Add("payload", trucks.Payload, ValueSort.Payload);
        Add("loading", trucks.Loading, ValueSort.TruckLoading);
        Add("ticket", trucks.Ticket, ValueSort.TruckStep);
        Add("haul_out", trucks.HaulOut, ValueSort.Haul);
        Add("haul_out_bad", trucks.HaulOutBad, ValueSort.BadHaul);
        Add("haul_back", trucks.HaulBack, ValueSort.Haul);
        Add("haul_back_bad", trucks.HaulBackBad, ValueSort.BadHaul);
        Add("wait", trucks.Wait, ValueSort.TruckStep);
        Add("cleaning", trucks.Cleaning, ValueSort.TruckStep);
        Add("loads_before_start", trucks.LoadsBeforeStart, ValueSort.LoadsBeforeStart);
    }

    private void Feeder(Feeder feeder)
    {
        owner = $"feeder:{feeder.Id}";
        Add("rate", feeder.Rate, ValueSort.FeederRate);
        Add("exchange", feeder.Exchange, ValueSort.FeederStep);
        Add("changeover", feeder.Changeover, ValueSort.FeederStep);
        Add("temperature_loss", feeder.TemperatureLoss, ValueSort.FeederLoss);
        Add("storage", feeder.Storage, ValueSort.BufferPart);
        Add("mass_empty", feeder.MassEmpty, ValueSort.FeederMass);
        Add("mass_full", feeder.MassFull, ValueSort.FeederMass);
    }

    private void Pavers(Plan plan)
    {
        foreach (var paver in plan.Pavers)
        {
            owner = $"paver:{paver.Id}";
            Add("speed", paver.Speed, ValueSort.PaverSpeed);
            Add("availability", paver.Availability, ValueSort.Availability);
            Add("travel_speed", paver.TravelSpeed, ValueSort.TravelSpeed);
            Add("reset", paver.Reset, ValueSort.PaverReset);
            foreach (var screed in paver.Screeds)
            {
                Add($"screeds.{screed.Course}.width_lowest", screed.WidthLowest, ValueSort.MatWidth);
                Add($"screeds.{screed.Course}.width_highest", screed.WidthHighest, ValueSort.MatWidth);
            }

            foreach (var buffer in paver.Buffers)
            {
                Add($"buffers.{buffer.Course}.capacity", buffer.Capacity, ValueSort.Buffer);
                Add($"buffers.{buffer.Course}.lowest", buffer.Lowest, ValueSort.BufferPart);
                Add($"buffers.{buffer.Course}.call", buffer.Call, ValueSort.BufferPart);
            }

            foreach (var stop in paver.Stops)
            {
                Add($"stops.{stop.Id}.after", stop.After, ValueSort.RunStart);
                Add($"stops.{stop.Id}.length", stop.Length, ValueSort.StopLength);
            }

            Add("stop_limit", paver.StopLimit, ValueSort.StopLimit);
            Add("mass_empty", paver.MassEmpty, ValueSort.PaverMass);
        }
    }

    private void Rolling(Model.Plans.Rolling? rolling)
    {
        owner = "plan";
        Add("rolling.reversal", rolling?.Reversal, ValueSort.Reversal);
        Add("rolling.first_strip_from_edge", rolling?.FirstStripFromEdge, ValueSort.EdgeDistance);
        foreach (var phase in rolling?.Phases ?? [])
        {
            owner = $"phase:{phase.Id}";
            Add("passes", phase.Passes, ValueSort.Passes);
            Add("zone_from", phase.ZoneFrom, ValueSort.ZoneStart);
            Add("zone_to", phase.ZoneTo, ValueSort.ZoneEnd);
            Add("done_within", phase.DoneWithin, ValueSort.PhaseTime);
        }

        foreach (var roller in rolling?.Rollers ?? []) Roller(roller);
    }

    private void Roller(Roller roller)
    {
        owner = $"roller:{roller.Id}";
        Add("mass", roller.Mass, ValueSort.RollerMass);
        Add("linear_load", roller.LinearLoad, ValueSort.LinearLoad);
        Add("drum_width", roller.DrumWidth, ValueSort.DrumWidth);
        Add("drum_diameter", roller.DrumDiameter, ValueSort.DrumDiameter);
        Add("overlap", roller.Overlap, ValueSort.Overlap);
        Add("passes_in_mode", roller.PassesInMode, ValueSort.PassesInMode);
        Add("frequency", roller.Frequency, ValueSort.DrumFrequency);
        Add("amplitude", roller.Amplitude, ValueSort.Amplitude);
        Add("speed", roller.Speed, ValueSort.RollerSpeed);
    }
}

using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>A load with the truck that carries it.</summary>
/// <param name="Load">The load.</param>
/// <param name="Group">Position of the group.</param>
/// <param name="Number">Number of the load in its group, from 0.</param>
internal sealed record CarriedLoad(Load Load, int Group, int Number)
{
    /// <summary>Number of its truck in the group, from 0.</summary>
    public int Truck { get; set; }
}

/// <summary>
/// Tells which truck of which group carried each load. A truck belongs to the group that carries the mix of its loads from their plant with the nearest
/// payload; a load without a vehicle is carried by whichever truck of its group has been empty longest.
/// </summary>
internal sealed class TruckPlaces
{
    private readonly ShiftModel model;
    private readonly Dictionary<string, (int Group, int Truck)> known = new(StringComparer.Ordinal);
    private readonly int[] seen;
    private readonly int[] sent;
    private readonly List<(int Truck, DateTimeOffset Free)>[] nameless;

    public TruckPlaces(ShiftModel model, IEnumerable<Load> loads)
    {
        this.model = model;
        (seen, sent) = (new int[model.Trucks.Count], new int[model.Trucks.Count]);
        nameless = [.. model.Trucks.Select(_ => new List<(int, DateTimeOffset)>())];
        foreach (var load in loads.Where(load => load.Loaded is not null && load.State != LoadState.Void).OrderBy(load => load.Loaded).ThenBy(load => load.Place.File, StringComparer.Ordinal).ThenBy(load => load.Place.Line))
        {
            if (GroupOf(load) is not { } group)
            {
                Strange.Add(load);
                continue;
            }

            Loads.Add(new CarriedLoad(load, group, sent[group]++) { Truck = TruckOf(load, group) });
        }
    }

    /// <summary>Loads in the order in which they left.</summary>
    public List<CarriedLoad> Loads { get; } = [];

    /// <summary>Loads that no group of the train carries.</summary>
    public List<Load> Strange { get; } = [];

    /// <summary>Trucks of a group that were seen.</summary>
    public int Seen(int group) => seen[group];

    /// <summary>Loads that a group was sent with.</summary>
    public int Sent(int group) => sent[group];

    private int? GroupOf(Load load)
    {
        if (load.Vehicle is { } vehicle && known.TryGetValue(vehicle, out var before) && Carries(before.Group, load))
        {
            return before.Group;
        }

        return Enumerable.Range(0, model.Trucks.Count).Where(group => Carries(group, load))
            .OrderBy(group => Math.Abs(model.Trucks[group].Payload - load.Net)).Select(group => (int?)group).FirstOrDefault();
    }

    private bool Carries(int group, Load load)
    {
        var line = model.Lines[model.Trucks[group].Line];
        var mix = load.Mix ?? model.Buffers.FirstOrDefault(buffer => PlanView.Same(buffer.Course, load.Course))?.Mix ?? (model.Buffers.Select(buffer => buffer.Mix).Distinct(StringComparer.Ordinal).Count() == 1 ? model.Buffers[0].Mix : null);
        return PlanView.Same(line.Mix, mix) && (load.Plant is null || PlanView.Same(line.Plant, load.Plant));
    }

    private int TruckOf(Load load, int group)
    {
        if (load.Vehicle is { } vehicle)
        {
            var key = known.TryGetValue(vehicle, out var before) && before.Group == group ? before.Truck : seen[group]++;
            known[vehicle] = (group, key);
            return key;
        }

        var free = nameless[group].FindIndex(one => one.Free <= load.Loaded);
        var truck = free >= 0 ? nameless[group][free].Truck : seen[group]++;
        if (free >= 0)
        {
            nameless[group].RemoveAt(free);
        }

        // Until the site says that it is empty it carries this load.
        nameless[group].Add((truck, load.Emptied ?? (load.State == LoadState.Valid ? DateTimeOffset.MaxValue : load.Arrived ?? load.Loaded!.Value)));
        nameless[group].Sort((a, b) => a.Free.CompareTo(b.Free));
        return truck;
    }
}

using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Engineering.Onward;

/// <summary>Where each truck is: at its plant, on the road with mix, in the queue, unloading, or on its way back.</summary>
internal sealed class SiteLoads
{
    private readonly ShiftModel model;
    private readonly MixBalance balance;
    private readonly OnwardClock clock;
    private readonly DateTimeOffset from;
    private readonly ShiftPlan plan;
    private readonly List<(int Truck, int Mix, TimedLoad Load)> waiting = [];

    public SiteLoads(ShiftModel model, RecordedLoads loads, TruckStates trucks, MixBalance balance, OnwardClock clock, DateTimeOffset from)
    {
        (this.model, this.balance, this.clock, this.from, plan) = (model, balance, clock, from, new ShiftPlan(model));
        var docked = new Dictionary<TimedLoad, int>();
        var states = new List<TruckState>();
        foreach (var truck in trucks.Trucks)
        {
            if (truck.Last is { } load && balance.Docked.Contains(load))
            {
                docked[load] = states.Count;
            }

            states.Add(State(truck, states.Count));
        }

        Trucks = states;
        Docks = [.. Enumerable.Range(0, model.Unloading.OneForAll ? 1 : model.Buffers.Count).Select(d => Dock(d, docked, loads))];
    }

    /// <summary>Trucks, group by group.</summary>
    public IReadOnlyList<TruckState> Trucks { get; }

    /// <summary>Feeder or tipping places.</summary>
    public IReadOnlyList<UnloadingState> Docks { get; }

    /// <summary>Trucks with a mix that wait, in the order in which they came.</summary>
    public IReadOnlyList<int> Queue(int mix) => [.. waiting.Where(one => one.Mix == mix).OrderBy(one => one.Load.Arrived).ThenBy(one => one.Load.Left).ThenBy(one => one.Load.Carried.Number).Select(one => one.Truck)];

    private TruckState State(DrivenTruck truck, int index)
    {
        if (truck.Last is not { } load)
        {
            return new TruckState(HasMix: false, truck.At is { } at ? clock.Of(at) : plan.Network.Groups[truck.Group].Start) { LeavesTheJob = truck.Leaves };
        }

        var known = new TruckState(HasMix: true, null)
        {
            Number = load.Carried.Number,
            Load = load.Load.Laid,
            Carried = load.Load.Laid,
            LoadedAt = clock.Of(load.Left),
            ArrivedAt = load.Arrived is { } there ? clock.Of(there) : 0,
            LeavesTheJob = truck.Leaves,
        };
        if (!load.Counts || load.Emptied <= from)
        {
            return known with { HasMix = false, Load = 0, LeftAt = clock.Of((load.Counts ? load.Emptied : load.Arrived) ?? load.Left) };
        }

        if (!(load.Arrived <= from))
        {
            return load.Arrived is { } arrives ? known with { Due = clock.Of(arrives) } : known with { LeftAt = clock.Of(load.Left), NotBefore = clock.Of(clock.Now) };
        }

        if (balance.Docked.Contains(load))
        {
            return known with { Load = balance.Rest(load), Docked = 1 };
        }

        waiting.Add((index, plan.MixOfGroup[truck.Group], load));
        return known;
    }

    // A free feeder stands at the buffer that it served last.
    private UnloadingState Dock(int d, Dictionary<TimedLoad, int> docked, RecordedLoads loads)
    {
        foreach (var (load, truck) in docked)
        {
            if (model.Unloading.OneForAll || balance.BufferOf(load) == d)
            {
                return new UnloadingState(UnloadingStep.Feeding, balance.BufferOf(load), truck, Docked: clock.Of(load.Load.Started!.Value));
            }
        }

        var last = loads.Loads.Where(load => load.Counts && load.Emptied <= from).MaxBy(load => load.Emptied);
        return new UnloadingState(UnloadingStep.Idle, model.Unloading.OneForAll ? last is null ? 0 : balance.BufferOf(last) : d);
    }
}

using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// The paving site of a shift: queue, feeder or tipping places, buffers, paver. Levels change evenly between events, so
/// every moment at which something happens is known beforehand; nothing is stepped through.
/// </summary>
internal sealed partial class PavingSite
{
    /// <summary>Mass that counts as nothing, kg.</summary>
    public const double Tiny = 1e-6;

    private const double Instant = 1e-9;
    private const int MostReactions = 1000;

    private readonly ShiftModel model;
    private readonly ShiftPlan plan;
    private readonly HeldMix[] held;
    private readonly Dock[] docks;
    private readonly MixFlow[] mixes;
    private readonly TruckQueue[] queues;
    private readonly PlantLine[] lines;
    private readonly bool[] groupOpen;
    private readonly int[] arrivals;
    private readonly double[] load;
    private readonly double[] carried;
    private readonly double[] arrived;
    private readonly double[] loadedAt;
    private readonly int[] number;
    private readonly int[] docked;
    private readonly int[] loadsOf;
    private readonly StopCause[] cause;
    private readonly TruckQueue[] parked;
    private readonly ShiftTally record;
    private readonly List<FedLoad>? list;
    private readonly Sampler exchange;
    private readonly ulong[] streams;
    private readonly bool[] gone;
    private double nothingLeavesBefore;
    private double now;
    private bool gate;

    /// <summary>Creates the site of a shift.</summary>
    /// <param name="model">A model that <see cref="ShiftSimulator.Problem"/> finds nothing wrong with.</param>
    /// <param name="plan">The model's figures worked out beforehand.</param>
    /// <param name="record">Where results go.</param>
    /// <param name="list">Where every load is listed; null for none.</param>
    public PavingSite(ShiftModel model, ShiftPlan plan, ShiftTally record, List<FedLoad>? list)
    {
        (this.model, this.plan, this.record, this.list) = (model, plan, record, list);
        held = new HeldMix[model.Buffers.Count];
        docks = new Dock[model.Unloading.OneForAll ? 1 : held.Length];
        mixes = new MixFlow[plan.Mixes.Count];
        queues = [.. plan.Mixes.Select(_ => new TruckQueue(plan.GroupOf.Length))];
        lines = [.. model.Lines.Select((line, i) => new PlantLine(
            line, plan.LargestLoad(i), string.Equals(model.Stop?.Plant, line.Plant, StringComparison.Ordinal) ? model.Stop : null))];
        groupOpen = new bool[model.Trucks.Count];
        arrivals = new int[model.Trucks.Count];
        load = new double[plan.GroupOf.Length];
        carried = new double[load.Length];
        arrived = new double[load.Length];
        loadedAt = new double[load.Length];
        exchange = new Sampler(model.Unloading.Exchange);
        streams = new ulong[model.Trucks.Count];
        loadsOf = new int[model.Trucks.Count];
        number = new int[load.Length];
        docked = new int[load.Length];
        cause = new StopCause[load.Length];
        gone = new bool[load.Length];
        parked = [.. model.Lines.Select(_ => new TruckQueue(load.Length))];
    }

    /// <summary>Moment of the next event on site, s.</summary>
    public double Next { get; private set; }

    /// <summary>Whether laying has ended.</summary>
    public bool IsOver => motion == PaverMotion.Over;

    /// <summary>Puts everything at the beginning of a replication.</summary>
    public void Reset(ulong seed, int replication)
    {
        for (var group = 0; group < streams.Length; group++)
        {
            streams[group] = RandomStream.Start(seed, replication, 1_000_003 + group);
        }

        foreach (var queue in parked)
        {
            queue.Clear();
        }

        Array.Clear(loadsOf);
        Array.Clear(gone);
        (now, gate, Next, nothingLeavesBefore) = (plan.Opening, false, 0, double.NegativeInfinity);
        ResetPaver();
        for (var m = 0; m < mixes.Length; m++)
        {
            mixes[m] = new MixFlow { Needed = plan.Needed[m], Lowest = plan.Lowest[m], OpenGroups = plan.Groups[m] };
            queues[m].Clear();
        }

        Array.Fill(groupOpen, true);
        Array.Clear(arrivals);
        ResetPlaces();
        record.Begin(replication);
        EnterStretch(0);
    }

    private void ResetPlaces()
    {
        for (var i = 0; i < lines.Length; i++)
        {
            lines[i].Reset(plan.LineOpening[i]);
        }

        for (var i = 0; i < held.Length; i++)
        {
            held[i] = plan.Held(i);
        }

        for (var d = 0; d < docks.Length; d++)
        {
            docks[d] = model.Unloading.OneForAll ? new Dock { Last = held.Length - 1 } : new Dock { First = d, Last = d, Buffer = d };
        }
    }

    /// <summary>A loaded truck arrives.</summary>
    public void Arrive(int truck, double moment, HaulEngine engine)
    {
        Integrate(moment);
        var group = plan.GroupOf[truck];
        var mix = plan.MixOfGroup[group];
        arrived[truck] = now;
        arrivals[group]++;
        mixes[mix].Arrived += load[truck];
        queues[mix].Add(truck);
        Blame(truck, mix);
        record.Arrives(now, load[truck]);
        React(engine);
        record.Queue(queues);
    }

    /// <summary>Something happens on site.</summary>
    public void Continue(double moment, HaulEngine engine)
    {
        Integrate(moment);
        while (record.SampleTime <= now + Instant)
        {
            record.Sample(held, mixes);
        }

        React(engine);
    }

    private void React(HaulEngine engine)
    {
        gate = gate || GateOpens();
        for (var i = 0; i < MostReactions && motion != PaverMotion.Over; i++)
        {
            var changed = ServeDocks(engine);
            SetFlows();
            changed |= Drive(engine);
            if (!(CallTrucks(engine) || changed))
            {
                break;
            }
        }

        SetFlows();
        Next = Soonest();
    }

    /// <summary>Whether enough loads wait; never more than there can be.</summary>
    private bool GateOpens()
    {
        for (var group = 0; group < arrivals.Length; group++)
        {
            var trucks = model.Trucks[group];
            ref var mix = ref mixes[plan.MixOfGroup[group]];
            if (IsWanted(plan.MixOfGroup[group]) && arrivals[group] < Math.Min(trucks.BeforeStart, trucks.Count) && (mix.OpenGroups > 0 || mix.Arrived < mix.Loaded - Tiny))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a mix is laid in the pass under way.</summary>
    private bool IsWanted(int mix)
    {
        foreach (ref var buffer in held.AsSpan())
        {
            if (buffer.IsActive && buffer.Mix == mix)
            {
                return true;
            }
        }

        return false;
    }

    private void Integrate(double moment)
    {
        var time = moment - now;
        if (time <= 0)
        {
            return;
        }

        now = moment;
        for (var d = 0; d < docks.Length; d++)
        {
            ref var dock = ref docks[d];
            if (dock.State == UnloadingStep.Feeding)
            {
                Pass(ref dock, Math.Min(load[dock.Truck], held[dock.Buffer].Inflow * time));
            }
        }

        Travel(time);
    }

    /// <summary>Passes mix from a truck to a buffer.</summary>
    private void Pass(ref Dock dock, double mass)
    {
        ref var buffer = ref held[dock.Buffer];
        buffer.Level += mass;
        load[dock.Truck] -= mass;
        mixes[buffer.Mix].Fed += mass;
        dock.Busy += mass / model.Unloading.Rate;
    }
}

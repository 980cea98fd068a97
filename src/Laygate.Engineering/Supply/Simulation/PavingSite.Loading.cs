using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What the site has to say at the plant: how much a truck loads, and when it leaves.</summary>
internal sealed partial class PavingSite
{
    /// <summary>A truck is loaded: the moment at which it is full; infinite where nothing is left to carry, or where it waits to be called.</summary>
    /// <param name="truck">The truck.</param>
    /// <param name="group">Its group.</param>
    /// <param name="moment">When it comes to the loading place, or is called, s.</param>
    /// <param name="begin">When a loading place is free for it, s.</param>
    /// <param name="earliest">When loading alone would be done, s.</param>
    public double Load(int truck, int group, double moment, double begin, double earliest)
    {
        if (gone[truck])
        {
            return double.PositiveInfinity;
        }

        var m = plan.MixOfGroup[group];
        ref var mix = ref mixes[m];
        var trucks = model.Trucks[group];
        Integrate(moment);
        var rest = Math.Min(mix.Needed, plan.Reachable(m, Position, now) + mix.Lowest) - mix.Loaded;
        if (rest <= Tiny || earliest + trucks.Out.Expected > model.Duration)
        {
            mix.OpenGroups -= groupOpen[group] ? 1 : 0;
            groupOpen[group] = false;
            Next = Math.Min(Next, now); // The paver may have waited for this mix in vain.
            return double.PositiveInfinity;
        }

        if (MustWait(truck, group, m))
        {
            parked[trucks.Line].Add(truck);
            Next = Math.Min(Next, now);
            return double.PositiveInfinity;
        }

        var mass = plan.NextLoad(rest, trucks.Payload);
        var timetable = model.Dispatch == Dispatch.OnCall && IsUnderWay(group, m) ? double.NegativeInfinity : plan.LeaveAt(m, mix.Loaded, trucks.Out.Expected);
        var leave = Math.Max(Math.Max(plan.NotBefore[group], timetable), nothingLeavesBefore);
        var ready = lines[trucks.Line].Load(Math.Max(earliest, leave), mass);
        if (double.IsPositiveInfinity(ready))
        {
            return ready;
        }

        cause[truck] = CauseOf(truck, moment, begin, earliest, leave, ready);
        mix.Loaded += mass;
        mix.OpenGroups = mix.Loaded >= mix.Needed - Tiny ? 0 : mix.OpenGroups;
        (load[truck], carried[truck], loadedAt[truck]) = (mass, mass, ready);
        (number[truck], docked[truck], called) = (loadsOf[group]++, 0, -1);
        record.Leaves(ready, mass);
        return ready;
    }

    private const double NoTime = 1e-8;

    /// <summary>Truck that is being called; −1 for none.</summary>
    private int called = -1;

    /// <summary>What made a load come when it came, and not earlier: what it waited for last.</summary>
    private StopCause CauseOf(int truck, double moment, double begin, double earliest, double leave, double ready) =>
        ready > Math.Max(earliest, leave) + Instant ? StopCause.Plant
        : leave > earliest + Instant || truck == called ? StopCause.Dispatch
        : begin > moment + Instant ? StopCause.Loading
        : StopCause.Trucks;

    /// <summary>Whether the next load of a mix is one that leaves after the start, so that the site calls it.</summary>
    private bool IsUnderWay(int group, int mix) => CallAt(group, mix) > model.Begins;

    private double CallAt(int group, int mix) =>
        plan.CallAt(mix, mixes[mix].Loaded, model.Trucks[group].Out.Expected + model.Trucks[group].Loading.Expected);

    /// <summary>On call, a truck waits at its plant until the paver is far enough, behind those that wait already.</summary>
    private bool MustWait(int truck, int group, int mix) => model.Dispatch == Dispatch.OnCall && truck != called
        && (parked[model.Trucks[group].Line].Count > 0 || !IsCalled(group, mix));

    private bool IsCalled(int group, int mix) => Progress() >= CallAt(group, mix) - NoTime || IsWantedAtOnce(mix);

    /// <summary>How far the paver is, as the time at which it would be there if nothing were late, s; a move is way too.</summary>
    private double Progress() => motion == PaverMotion.Shifting
        ? plan.Starts[stretch] - Math.Max(0, pauseUntil - now)
        : plan.TimeAt(stretch, Position);

    /// <summary>Whether the paver stands, or cannot begin, for want of a mix of which too little is on its way to go on.</summary>
    private bool IsWantedAtOnce(int mix)
    {
        if (now < model.Begins - Instant || !(motion is PaverMotion.Wanting or PaverMotion.Waiting || (motion == PaverMotion.Shifting && now >= pauseUntil - Instant)))
        {
            return false;
        }

        var lacking = 0.0;
        for (var i = 0; i < held.Length; i++)
        {
            lacking += held[i].Mix == mix ? Math.Max(0, RestartOf(i) - held[i].Level) : 0;
        }

        return mixes[mix].Loaded - mixes[mix].Fed < lacking - Tiny;
    }

    /// <summary>Calls the next truck that waits at a plant, if its moment has come.</summary>
    private bool CallTrucks(HaulEngine engine)
    {
        for (var line = 0; line < parked.Length; line++)
        {
            if (parked[line].Count > 0 && plan.GroupOf[parked[line].Head] is var group && IsCalled(group, plan.MixOfGroup[group]))
            {
                called = parked[line].Take();
                engine.Call(called, now);
                called = -1;
                return true;
            }
        }

        return false;
    }

    /// <summary>When the paver is far enough to call the next truck, s.</summary>
    private double NextCall()
    {
        var next = double.PositiveInfinity;
        for (var line = 0; line < parked.Length; line++)
        {
            if (parked[line].Count > 0 && plan.GroupOf[parked[line].Head] is var group)
            {
                next = Math.Min(next, now + Math.Max(0, CallAt(group, plan.MixOfGroup[group]) - Progress()));
            }
        }

        return next;
    }
}

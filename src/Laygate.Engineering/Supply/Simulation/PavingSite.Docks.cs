namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The feeder, or the places where trucks tip.</summary>
internal sealed partial class PavingSite
{
    /// <summary>Times that one load may dock before its exchanges repeat.</summary>
    private const int MostDockings = 8;

    private bool ServeDocks(HaulEngine engine)
    {
        var changed = false;
        for (var d = 0; d < docks.Length; d++)
        {
            ref var dock = ref docks[d];
            changed |= dock.State switch
            {
                UnloadingStep.Idle => gate && Serve(ref dock),
                UnloadingStep.Feeding => Finish(ref dock, engine) || BreakOff(ref dock),
                _ => Reach(ref dock),
            };
        }

        return changed;
    }

    /// <summary>The end of turning or docking.</summary>
    private bool Reach(ref Dock dock)
    {
        if (dock.Until > now + Instant)
        {
            return false;
        }

        dock.State = dock.State == UnloadingStep.Turning ? UnloadingStep.Idle : UnloadingStep.Feeding;
        return true;
    }

    /// <summary>A truck is empty.</summary>
    private bool Finish(ref Dock dock, HaulEngine engine)
    {
        if (load[dock.Truck] > Tiny)
        {
            return false;
        }

        Pass(ref dock, load[dock.Truck]);
        list?.Add(new FedLoad(
            held[dock.Buffer].Mix, dock.Buffer, plan.GroupOf[dock.Truck], loadedAt[dock.Truck], arrived[dock.Truck], dock.Docked, now, Position, carried[dock.Truck]));
        dock.State = UnloadingStep.Idle;
        engine.Release(dock.Truck, now);
        return true;
    }

    /// <summary>
    /// A truck in front of a full buffer makes way with its rest: where the plan lets trucks unload in parts, and always
    /// where the paver stands, as nothing would ever move otherwise.
    /// </summary>
    private bool BreakOff(ref Dock dock)
    {
        if (dock.IsDirect && IsServed(dock.Buffer))
        {
            queues[held[dock.Buffer].Mix].PutFirst(dock.Truck); // The rest is for the other paver.
            outcome.BrokenOff++;
            dock.State = UnloadingStep.Idle;
            return true;
        }

        if (dock.IsDirect || !IsFull(held[dock.Buffer]) || (!model.Unloading.InParts && motion == PaverMotion.Moving))
        {
            return false;
        }

        var other = Choose(dock, except: dock.Buffer);
        if (other < 0)
        {
            return false;
        }

        queues[held[dock.Buffer].Mix].PutFirst(dock.Truck);
        outcome.BrokenOff++;
        Begin(ref dock, other);
        return true;
    }

    private bool Serve(ref Dock dock)
    {
        var buffer = Choose(dock, except: -1);
        if (buffer >= 0)
        {
            Begin(ref dock, buffer);
            return true;
        }

        var home = Home(dock);
        if (home == dock.Buffer)
        {
            return false;
        }

        dock.Buffer = home;
        dock.State = UnloadingStep.Turning;
        dock.Until = now + model.Unloading.Changeover;
        dock.Busy += model.Unloading.Changeover;
        return true;
    }

    /// <summary>The buffer at which an idle feeder waits: the first that is not called by level.</summary>
    private int Home(in Dock dock)
    {
        for (var i = dock.First; i <= dock.Last; i++)
        {
            if (!held[i].IsCalled && held[i].IsActive)
            {
                return i;
            }
        }

        return dock.Buffer;
    }

    private void Begin(ref Dock dock, int buffer)
    {
        dock.Truck = queues[held[buffer].Mix].Take();
        var delay = Exchange(dock.Truck) + (dock.Buffer == buffer ? 0 : model.Unloading.Changeover);
        dock.Buffer = buffer;
        dock.State = UnloadingStep.Docking;
        dock.Docked = now;
        dock.Until = now + delay;
        dock.Busy += delay;
        if (load[dock.Truck] >= carried[dock.Truck])
        {
            record.Waits(plan.GroupOf[dock.Truck], now - arrived[dock.Truck]);
        }
    }

    /// <summary>Exchange that belongs to a load, and to each time at which it docks.</summary>
    private double Exchange(int truck) =>
        exchange.Of(streams[plan.GroupOf[truck]], (number[truck] * MostDockings) + Math.Min(docked[truck]++, MostDockings - 1));

    /// <summary>The buffer to serve next, or −1: what the standing paver lacks, then what is called, then what a whole load fits into.</summary>
    private int Choose(in Dock dock, int except)
    {
        if (dock.IsDirect)
        {
            return except < 0 && HasTruck(dock.First) && !IsServed(dock.First) ? dock.First : -1;
        }

        var best = motion is PaverMotion.Waiting or PaverMotion.Wanting or PaverMotion.Shifting ? Lacking(dock, except) : -1;
        for (var i = dock.Last; i >= dock.First && best < 0; i--)
        {
            best = i != except && held[i].IsCalled && HasTruck(i) && held[i].Level <= held[i].Call + Tiny ? i : -1;
        }

        for (var i = dock.First; i <= dock.Last && best < 0; i++)
        {
            best = i != except && !held[i].IsCalled && HasTruck(i) && Takes(dock, i, except >= 0) ? i : -1;
        }

        return best;
    }

    /// <summary>The buffer below its restart level that is nearest to empty.</summary>
    private int Lacking(in Dock dock, int except)
    {
        var best = -1;
        var least = double.PositiveInfinity;
        for (var i = dock.First; i <= dock.Last; i++)
        {
            var share = (held[i].Level - held[i].Lowest) / Math.Max(held[i].Capacity - held[i].Lowest, Tiny);
            if (i != except && HasTruck(i) && held[i].Level < RestartOf(i) - Tiny && share < least)
            {
                (best, least) = (i, share);
            }
        }

        return best;
    }

    /// <summary>Whether a buffer holds all that its paver still lays, while another paver takes the same mix.</summary>
    private bool IsServed(int buffer) => Lacks(buffer) <= Tiny && HasSibling(buffer);

    /// <summary>What a paver still lays and its buffer does not hold, kg.</summary>
    private double Lacks(int buffer) => held[buffer].Lowest + held[buffer].Total - held[buffer].Laid - held[buffer].Level;

    private bool HasSibling(int buffer)
    {
        for (var i = 0; i < held.Length; i++)
        {
            if (i != buffer && held[i].IsActive && held[i].Mix == held[buffer].Mix && held[i].Dock != held[buffer].Dock)
            {
                return true;
            }
        }

        return false;
    }

    private bool HasTruck(int buffer) => held[buffer].IsActive && queues[held[buffer].Mix].Count > 0;

    /// <summary>Whether a buffer takes the next load: all of it, or a part of it where that is allowed.</summary>
    private bool Takes(in Dock dock, int buffer, bool another) => model.Unloading.InParts
        ? !another || held[buffer].Level <= Math.Max(held[buffer].Restart, FitLevel(dock, buffer)) + Tiny
        : held[buffer].Level <= FitLevel(dock, buffer) + Tiny;

    /// <summary>Level up to which the whole next load fits by the time it is fed, kg.</summary>
    private double FitLevel(in Dock dock, int buffer)
    {
        var mass = load[queues[held[buffer].Mix].Head];
        var time = model.Unloading.Exchange.Expected + (dock.Buffer == buffer ? 0 : model.Unloading.Changeover) + (mass / model.Unloading.Rate);
        return held[buffer].Capacity - mass + (motion == PaverMotion.Moving ? held[buffer].PerMetre * model.Speed * time : 0);
    }

    private static bool IsFull(in HeldMix buffer) => buffer.Level >= buffer.Capacity - Tiny;

    private void SetFlows()
    {
        for (var i = 0; i < held.Length; i++)
        {
            held[i].Taken = motion == PaverMotion.Moving ? held[i].PerMetre * model.Speed : 0;
            held[i].Inflow = 0;
        }

        for (var d = 0; d < docks.Length; d++)
        {
            if (docks[d].State == UnloadingStep.Feeding)
            {
                ref var buffer = ref held[docks[d].Buffer];
                buffer.Inflow = IsFull(buffer) ? Math.Min(model.Unloading.Rate, buffer.Taken) : model.Unloading.Rate;
            }
        }
    }
}

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>When the next thing happens on site.</summary>
internal sealed partial class PavingSite
{
    /// <summary>The next moment at which something on site changes.</summary>
    private double Soonest()
    {
        if (motion == PaverMotion.Over)
        {
            return double.PositiveInfinity;
        }

        var next = Math.Min(model.Duration, record.SampleTime);
        next = motion == PaverMotion.Waiting && now < model.Begins ? Math.Min(next, model.Begins) : next;
        if (motion is PaverMotion.Pausing or PaverMotion.Wanting or PaverMotion.Shifting && pauseUntil > now)
        {
            next = Math.Min(next, pauseUntil);
        }

        if (motion == PaverMotion.Moving)
        {
            next = Math.Min(next, now + ((stretchEnd - Position) / model.Speed));
        }

        if (motion == PaverMotion.Moving || (motion == PaverMotion.Shifting && pauseUntil > now))
        {
            next = Math.Min(next, NextCall());
        }

        if (motion is PaverMotion.Moving or PaverMotion.Wanting && pause < model.Pauses.Count)
        {
            next = Math.Min(next, Math.Max(now, outcome.Started + model.Pauses[pause].After));
        }

        for (var i = 0; i < held.Length; i++)
        {
            next = Math.Min(next, NextOf(i));
        }

        return next;
    }

    /// <summary>The next moment at which a level or its feeder matters.</summary>
    private double NextOf(int i)
    {
        ref var buffer = ref held[i];
        ref var dock = ref docks[buffer.Dock];
        var feeds = dock.State == UnloadingStep.Feeding && dock.Buffer == i;
        var next = dock.State is UnloadingStep.Turning or UnloadingStep.Docking ? dock.Until : double.PositiveInfinity;
        if (feeds && buffer.Inflow > 0)
        {
            next = now + (load[dock.Truck] / buffer.Inflow);
            next = dock.IsDirect && Lacks(i) > Tiny && HasSibling(i) ? Math.Min(next, now + (Lacks(i) / buffer.Inflow)) : next;
        }

        return buffer.Net switch
        {
            > 0 => Math.Min(next, NextRise(i, feeds)),
            < 0 => Math.Min(next, NextFall(i, feeds)),
            _ => next,
        };
    }

    /// <summary>A buffer that fills becomes full, or full enough to go on.</summary>
    private double NextRise(int i, bool feeds)
    {
        ref var buffer = ref held[i];
        var full = feeds && !IsFull(buffer) ? now + ((buffer.Capacity - buffer.Level) / buffer.Net) : double.PositiveInfinity;
        return motion is PaverMotion.Waiting or PaverMotion.Wanting or PaverMotion.Shifting ? Math.Min(full, Reaches(RestartOf(i), buffer.Level, buffer.Net)) : full;
    }

    /// <summary>A buffer that empties reaches its lowest level, or one at which a free feeder serves it.</summary>
    private double NextFall(int i, bool feeds)
    {
        ref var buffer = ref held[i];
        ref var dock = ref docks[buffer.Dock];
        var rate = -buffer.Net;
        var next = Reaches(buffer.Level, buffer.Lowest, rate);
        var isFree = dock.State == UnloadingStep.Idle || (dock.State == UnloadingStep.Feeding && !feeds && IsFull(held[dock.Buffer]));
        if (!isFree || dock.IsDirect || !HasTruck(i))
        {
            return next;
        }

        next = Math.Min(next, Reaches(buffer.Level, buffer.IsCalled ? buffer.Call : FitLevel(dock, i), rate));
        return model.Unloading.InParts ? Math.Min(next, Reaches(buffer.Level, buffer.Restart, rate)) : next;
    }

    /// <summary>When a level that changes evenly has crossed the way from high to low, or back; infinite where it is there already.</summary>
    private double Reaches(double high, double low, double rate) =>
        high > low + Tiny ? now + ((high - low) / rate) : double.PositiveInfinity;
}

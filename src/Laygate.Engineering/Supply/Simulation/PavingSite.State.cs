namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The state of the site: written while a shift runs, and gone on from.</summary>
internal sealed partial class PavingSite
{
    /// <summary>Writes the state.</summary>
    /// <param name="known">What the engine knows of the trucks.</param>
    /// <param name="free">When the loading places of each line are free.</param>
    public ShiftState Save(TruckState[] known, IReadOnlyList<IReadOnlyList<double?>> free) => new()
    {
        Now = now,
        NothingLeavesBefore = Finite(nothingLeavesBefore),
        Next = Finite(Next),
        Gate = gate,
        Paver = new PaverState(motion, Position, stretch, pause, Finite(pauseUntil), Finite(outcome.Started), wantSince, blamedUntil, wanted, blamed),
        Buffers = [.. held.Select(buffer => new BufferState(buffer.Level, buffer.Laid, buffer.Inflow))],
        Docks = [.. docks.Select(dock => new UnloadingState(dock.State, dock.Buffer, dock.Truck, dock.Until, dock.Docked, dock.Busy))],
        Mixes = [.. mixes.Select((mix, m) => new MixState(mix.Loaded, mix.Arrived, mix.Fed, mix.OpenGroups, queues[m].Save()))],
        Groups = [.. groupOpen.Select((open, group) => new GroupState(loadsOf[group], arrivals[group], open))],
        Trucks = [.. known.Select((truck, i) => truck with
        {
            Number = number[i], Docked = docked[i], Load = load[i], Carried = carried[i], LoadedAt = loadedAt[i], ArrivedAt = arrived[i], Cause = cause[i], LeavesTheJob = gone[i],
        })],
        Lines = [.. lines.Select((line, l) => new LineState(line.Save().Level, line.Save().Time, free[l], parked[l].Save()))],
        Tally = record.Save(outcome),
    };

    /// <summary>Goes on from a state; after <see cref="Reset"/>.</summary>
    public void Restore(ShiftState state)
    {
        (now, gate, Next, nothingLeavesBefore) = (state.Now, state.Gate, state.Next ?? double.PositiveInfinity, state.NothingLeavesBefore ?? double.NegativeInfinity);
        RestorePaver(state);
        for (var d = 0; d < docks.Length; d++)
        {
            var one = state.Docks[d];
            (docks[d].State, docks[d].Buffer, docks[d].Truck, docks[d].Until, docks[d].Docked, docks[d].Busy) = (one.Does, one.Buffer, one.Truck, one.Until, one.Docked, one.Busy);
        }

        for (var m = 0; m < mixes.Length; m++)
        {
            var one = state.Mixes[m];
            (mixes[m].Loaded, mixes[m].Arrived, mixes[m].Fed, mixes[m].OpenGroups) = (one.Loaded, one.Arrived, one.Fed, one.OpenGroups);
            queues[m].Restore(one.Queue);
        }

        for (var group = 0; group < groupOpen.Length; group++)
        {
            (loadsOf[group], arrivals[group], groupOpen[group]) = (state.Groups[group].Sent, state.Groups[group].Arrived, state.Groups[group].IsOpen);
        }

        for (var line = 0; line < lines.Length; line++)
        {
            lines[line].Restore(state.Lines[line].Level, state.Lines[line].Time);
            parked[line].Restore(state.Lines[line].Parked);
        }

        RestoreTrucks(state);
        record.Restore(ref outcome, state);
    }

    private void RestorePaver(ShiftState state)
    {
        var paver = state.Paver;
        EnterStretch(paver.Stretch);
        (motion, Position, pause, pauseUntil, wantSince) = (paver.Motion, paver.Position, paver.Pauses, paver.Until ?? double.NegativeInfinity, paver.WantsSince);
        (blamedUntil, wanted, blamed) = (paver.BlamedUntil, paver.Wanted, paver.Blamed);
        outcome.Started = paver.Started ?? double.NaN;
        SetFlows();
        for (var i = 0; i < held.Length; i++)
        {
            (held[i].Level, held[i].Laid, held[i].Inflow) = (state.Buffers[i].Level, state.Buffers[i].Laid, state.Buffers[i].Inflow);
        }
    }

    private void RestoreTrucks(ShiftState state)
    {
        for (var i = 0; i < load.Length; i++)
        {
            var one = state.Trucks[i];
            (number[i], docked[i], load[i], carried[i]) = (one.Number, one.Docked, one.Load, one.Carried);
            (loadedAt[i], arrived[i], cause[i], gone[i]) = (one.LoadedAt, one.ArrivedAt, one.Cause, one.LeavesTheJob);
        }
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The state of the trucks of a shift: written while it runs, and gone on from.</summary>
internal sealed partial class HaulEngine
{
    /// <summary>Writes the state of a shift that is under way.</summary>
    public ShiftState Save()
    {
        var trucks = new TruckState[at.Length];
        for (var truck = 0; truck < at.Length; truck++)
        {
            var due = calendar.TimeOf(truck);
            trucks[truck] = new TruckState(at[truck] != firstStop[groupOf[truck]], double.IsPositiveInfinity(due) ? null : due) { Number = load[truck] };
        }

        return site!.Save(trucks, [.. stations.Select(station => station.Save())]) with { Events = Events };
    }

    /// <summary>Goes on from a state; after <see cref="Reset"/>, so that the draws are those of the replication.</summary>
    public void Restore(ShiftState state)
    {
        Events = state.Events;
        for (var truck = 0; truck < at.Length; truck++)
        {
            var one = state.Trucks[truck];
            var plant = firstStop[groupOf[truck]];
            at[truck] = plant + (one.HasMix ? 1 : 0);
            load[truck] = one.Number;
            calendar.Set(truck, one.Due ?? (one.LeftAt is { } left ? Arrival(one, left, plant + (one.HasMix ? 0 : 1)) : double.PositiveInfinity));
        }

        for (var group = 0; group < loads.Length; group++)
        {
            loads[group] = state.Groups[group].Sent;
        }

        for (var line = 0; line < stations.Length; line++)
        {
            stations[line].Restore(state.Lines[line].Free);
        }

        site!.Restore(state);
    }

    /// <summary>When a truck arrives that left a stop and was not there yet at some later moment.</summary>
    private double Arrival(TruckState truck, double left, int from) => left
        + stops[from].Journey.Of(streams[(2 * from) + 1], truck.Number, truck.NotBefore is { } seen ? seen - left : double.NegativeInfinity);
}

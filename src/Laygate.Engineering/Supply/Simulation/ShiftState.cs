namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// A shift at a moment, all that the simulation needs to go on from it: times in s after the planned start of laying, masses in kg. It is
/// written while a shift runs, or read from the record of a shift; either way the same engine goes on. Trains, stops and mixes are those of
/// the model that it belongs to; what is drawn by chance is not in it, as each time belongs to a load.
/// </summary>
public sealed record ShiftState
{
    /// <summary>The moment up to which the levels hold.</summary>
    public required double Now { get; init; }

    /// <summary>Before this moment no load leaves a plant any more: what has left is known. Null in a state that the simulation wrote.</summary>
    public double? NothingLeavesBefore { get; init; }

    /// <summary>When something happens on site next; null where nothing does.</summary>
    public required double? Next { get; init; }

    /// <summary>Events so far.</summary>
    public long Events { get; init; }

    /// <summary>Whether the loads for the start are there, so that trucks are served.</summary>
    public required bool Gate { get; init; }

    /// <summary>The paver.</summary>
    public required PaverState Paver { get; init; }

    /// <summary>Buffers in the order of the model.</summary>
    public required IReadOnlyList<BufferState> Buffers { get; init; }

    /// <summary>Feeder or tipping places.</summary>
    public required IReadOnlyList<UnloadingState> Docks { get; init; }

    /// <summary>Mixes in the order in which the buffers name them.</summary>
    public required IReadOnlyList<MixState> Mixes { get; init; }

    /// <summary>Groups of trucks in the order of the model.</summary>
    public required IReadOnlyList<GroupState> Groups { get; init; }

    /// <summary>Trucks, group by group.</summary>
    public required IReadOnlyList<TruckState> Trucks { get; init; }

    /// <summary>Lines of the plants in the order of the model.</summary>
    public required IReadOnlyList<LineState> Lines { get; init; }

    /// <summary>What was counted so far; null: counting begins here.</summary>
    public TallyState? Tally { get; init; }

    /// <summary>Mix that left the plants: on trucks, in buffers, and laid, kg.</summary>
    public double Mass => Trucks.Sum(truck => truck.Load) + Buffers.Sum(buffer => buffer.Level + buffer.Laid);

    /// <summary>Whether it can be a state of a model: as many of everything, and no truck or place that is not there.</summary>
    /// <param name="model">The model.</param>
    public bool Fits(ShiftModel model) =>
        Buffers.Count == model.Buffers.Count && Groups.Count == model.Trucks.Count && Trucks.Count == model.Trucks.Sum(group => group.Count) && Lines.Count == model.Lines.Count
        && Docks.Count == (model.Unloading.OneForAll ? 1 : model.Buffers.Count) && Mixes.Count == model.Buffers.Select(buffer => buffer.Mix).Distinct(StringComparer.Ordinal).Count()
        && Paver.Stretch >= 0 && Paver.Stretch < model.Stretches.Count && double.IsFinite(Now)
        && Mixes.SelectMany(mix => mix.Queue).Concat(Lines.SelectMany(line => line.Parked)).Concat(Docks.Select(dock => dock.Truck)).All(truck => truck >= 0 && truck < Trucks.Count)
        && Docks.All(dock => dock.Buffer >= 0 && dock.Buffer < Buffers.Count);
}

/// <summary>The paver.</summary>
/// <param name="Motion">What it does.</param>
/// <param name="Position">Length laid, m.</param>
/// <param name="Stretch">Number of the stretch that it lays, or goes to.</param>
/// <param name="Pauses">Planned stops that lie behind it.</param>
/// <param name="Until">When a stop, or a move, ends; null where there was none.</param>
/// <param name="Started">When the first metre was laid; null before.</param>
/// <param name="WantsSince">Since when it stands for want of mix.</param>
/// <param name="BlamedUntil">Until when that time is accounted for.</param>
/// <param name="Wanted">Mix that it lacks.</param>
/// <param name="Blamed">What it waits for; null while that is not known.</param>
public sealed record PaverState(
    PaverMotion Motion, double Position, int Stretch, int Pauses, double? Until, double? Started, double WantsSince = 0, double BlamedUntil = 0, int Wanted = 0, StopCause? Blamed = null);

/// <summary>What a paver does.</summary>
public enum PaverMotion
{
    /// <summary>It has not started.</summary>
    Waiting,

    /// <summary>It lays.</summary>
    Moving,

    /// <summary>It stands for want of mix.</summary>
    Wanting,

    /// <summary>It stands as planned, or as somebody decided.</summary>
    Pausing,

    /// <summary>It goes to the next run and is set up there, or waits there for its first mix.</summary>
    Shifting,

    /// <summary>Laying has ended.</summary>
    Over,
}

/// <summary>A buffer.</summary>
/// <param name="Level">Mix in it, kg.</param>
/// <param name="Laid">Mix of its course that is laid, kg.</param>
/// <param name="Inflow">Mix that flows into it, kg/s; worked out anew where something happens at once.</param>
public sealed record BufferState(double Level, double Laid, double Inflow = 0);

/// <summary>A feeder or tipping place.</summary>
/// <param name="Does">What it does.</param>
/// <param name="Buffer">Buffer that it serves or stands at.</param>
/// <param name="Truck">Truck that it serves.</param>
/// <param name="Until">When turning or docking ends.</param>
/// <param name="Docked">When its truck began to dock.</param>
/// <param name="Busy">Time in which it was busy, s.</param>
public sealed record UnloadingState(UnloadingStep Does, int Buffer, int Truck = 0, double Until = 0, double Docked = 0, double Busy = 0);

/// <summary>What a feeder, or a place where trucks tip, does.</summary>
public enum UnloadingStep
{
    /// <summary>It is free.</summary>
    Idle,

    /// <summary>It turns to another buffer.</summary>
    Turning,

    /// <summary>A truck docks and raises its body.</summary>
    Docking,

    /// <summary>It passes mix on, or holds the truck in front of a full buffer.</summary>
    Feeding,
}

/// <summary>A mix, kg.</summary>
/// <param name="Loaded">What left the plants, or is being loaded.</param>
/// <param name="Arrived">What arrived on site.</param>
/// <param name="Fed">What was passed on to the paver.</param>
/// <param name="OpenGroups">Groups of trucks that may still bring some.</param>
/// <param name="Queue">Trucks with it that wait on site, in order.</param>
public sealed record MixState(double Loaded, double Arrived, double Fed, int OpenGroups, IReadOnlyList<int> Queue);

/// <summary>A group of trucks.</summary>
/// <param name="Sent">Loads that it was sent with.</param>
/// <param name="Arrived">Loads of it that arrived.</param>
/// <param name="IsOpen">Whether it may still be sent.</param>
public sealed record GroupState(int Sent, int Arrived, bool IsOpen);

/// <summary>A truck.</summary>
/// <param name="HasMix">Whether it was loaded and has not left the site: on the road to it, in the queue, or unloading.</param>
/// <param name="Due">When it comes to site or plant; null: not by itself, or it follows from when it left.</param>
public sealed record TruckState(bool HasMix, double? Due)
{
    /// <summary>When it left plant or site, where its journey has still to be drawn; null where the time of arrival is known.</summary>
    public double? LeftAt { get; init; }

    /// <summary>Moment at which it was seen not to have arrived, s; its journey takes at least until then.</summary>
    public double? NotBefore { get; init; }

    /// <summary>Number of its load in its group, from 0.</summary>
    public int Number { get; init; }

    /// <summary>Times that this load has docked.</summary>
    public int Docked { get; init; }

    /// <summary>What is still on it, kg.</summary>
    public double Load { get; init; }

    /// <summary>What it was loaded with, kg.</summary>
    public double Carried { get; init; }

    /// <summary>When it was loaded.</summary>
    public double LoadedAt { get; init; }

    /// <summary>When it arrived on site.</summary>
    public double ArrivedAt { get; init; }

    /// <summary>What made the load come when it came.</summary>
    public StopCause Cause { get; init; } = StopCause.Trucks;

    /// <summary>Whether it is not sent again.</summary>
    public bool LeavesTheJob { get; init; }
}

/// <summary>One mix at one plant.</summary>
/// <param name="Level">In the silo, kg.</param>
/// <param name="Time">Moment at which that level holds.</param>
/// <param name="Free">When each loading place is free; null: since ever.</param>
/// <param name="Parked">Trucks that wait to be called, in order.</param>
public sealed record LineState(double Level, double Time, IReadOnlyList<double?> Free, IReadOnlyList<int> Parked);

/// <summary>What was counted until then.</summary>
/// <param name="Stops">Stops for want of mix.</param>
/// <param name="Stopped">Time stopped, s.</param>
/// <param name="LongestStop">Longest stop, s.</param>
/// <param name="FirstStopAfterPlant">First stop after a plant stopped; null before.</param>
/// <param name="BrokenOff">Loads that left the feeder with a rest.</param>
/// <param name="QueueHighest">Most trucks in the queue.</param>
/// <param name="Moment">Number of moments at which levels were looked at.</param>
/// <param name="Road">Mix that came to and left the road, by moment, kg.</param>
/// <param name="Samples">Levels at those moments, kg.</param>
/// <param name="StoppedBy">Time stopped by cause, s.</param>
/// <param name="WaitSum">Waits of trucks by group, s.</param>
/// <param name="WaitCount">Trucks that waited by group.</param>
public sealed record TallyState(
    int Stops, double Stopped, double LongestStop, double? FirstStopAfterPlant, int BrokenOff, int QueueHighest, int Moment,
    IReadOnlyList<float> Road, IReadOnlyList<float> Samples, IReadOnlyList<double> StoppedBy, IReadOnlyList<double> WaitSum, IReadOnlyList<int> WaitCount);

using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>A stretch that the paver lays with constant width and thickness.</summary>
/// <param name="Length">Length, m.</param>
/// <param name="PerMetre">Mix for one metre of each course, in the order of the buffers, kg/m.</param>
public sealed record ShiftStretch(double Length, IReadOnlyList<double> PerMetre)
{
    /// <summary>Time in which the paver goes there and is set up again, s; 0 where it just goes on.</summary>
    public double Move { get; init; }

    /// <summary>Number of its pass: what is laid together. Mix of other passes is neither called nor fed meanwhile.</summary>
    public int Pass { get; init; }
}

/// <summary>Mix held for one course.</summary>
/// <param name="Course">Id of the course.</param>
/// <param name="Mix">Id of the mix.</param>
/// <param name="Capacity">Capacity, kg.</param>
/// <param name="Lowest">Lowest workable level, kg.</param>
/// <param name="Restart">Level at which a paver that stopped for want of mix goes on, kg.</param>
/// <param name="Call">Level at which the next load is called, kg; null: a load is fed whenever it fits.</param>
public sealed record ShiftBuffer(string Course, string Mix, double Capacity, double Lowest, double Restart, double? Call)
{
    /// <summary>Number of the paving train that it belongs to.</summary>
    public int Train { get; init; }
}

/// <summary>One mix made at one plant.</summary>
/// <param name="Plant">Id of the plant.</param>
/// <param name="Mix">Id of the mix.</param>
/// <param name="Rate">Output of this mix, kg/s.</param>
/// <param name="Stock">In the silo when the plant opens, kg.</param>
/// <param name="Capacity">Capacity of the silo for this mix, kg.</param>
/// <param name="Places">Trucks that are loaded with this mix at the same time, at least 1.</param>
public sealed record ShiftLine(string Plant, string Mix, double Rate, double Stock, double Capacity, int Places = 1);

/// <summary>Trucks that carry one mix from one plant.</summary>
/// <param name="Id">Id of the group.</param>
/// <param name="Line">Position of the line that loads them.</param>
/// <param name="Count">Number of trucks.</param>
/// <param name="Payload">Payload, kg.</param>
/// <param name="Loading">Loading of one truck.</param>
/// <param name="Out">Ticket and loaded journey.</param>
/// <param name="Back">Cleaning and empty journey.</param>
/// <param name="BeforeStart">Loads that must be on site before the buffers are filled and the paver starts.</param>
public sealed record ShiftTrucks(
    string Id, int Line, int Count, double Payload, TimeSpread Loading, TimeSpread Out, TimeSpread Back, int BeforeStart);

/// <summary>How trucks are unloaded.</summary>
/// <param name="OneForAll">One feeder serves all buffers in turn; else each buffer has its own place where trucks tip.</param>
/// <param name="Rate">Rate while it feeds, kg/s.</param>
/// <param name="Exchange">One truck leaves and the next docks and tips.</param>
/// <param name="Changeover">Turn from one buffer to another, each way, s.</param>
/// <param name="InParts">A truck may leave with a rest and come back.</param>
public sealed record ShiftUnloading(bool OneForAll, double Rate, TimeSpread Exchange, double Changeover, bool InParts);

/// <summary>A planned stop of the paver.</summary>
/// <param name="After">Time after the first metre, s.</param>
/// <param name="Length">Length, s.</param>
public sealed record ShiftPause(double After, double Length)
{
    /// <summary>Whether the plan has it, so that the timetable of the loads knows of it.</summary>
    public bool IsPlanned { get; init; } = true;
}

/// <summary>A plant that stops.</summary>
/// <param name="Plant">Id of the plant.</param>
/// <param name="At">When, after the planned start of laying, s.</param>
/// <param name="Length">How long, s; infinite for the rest of the shift.</param>
/// <param name="FromSilo">Whether trucks are still loaded from the silo meanwhile.</param>
public sealed record PlantStop(string Plant, double At, double Length, bool FromSilo);

/// <summary>A shift as the simulation needs it; SI units throughout. Time zero is the planned start of laying.</summary>
public sealed record ShiftModel
{
    /// <summary>Time from the planned start to the end of laying, s.</summary>
    public required double Duration { get; init; }

    /// <summary>When the train begins, s after the planned start of laying.</summary>
    public double Begins { get; init; }

    /// <summary>Average speed between stops and moves, m/s: speed while it moves · availability.</summary>
    public required double Speed { get; init; }

    /// <summary>What is laid, in order.</summary>
    public required IReadOnlyList<ShiftStretch> Stretches { get; init; }

    /// <summary>One buffer for each course and paver; at most two in one pass.</summary>
    public required IReadOnlyList<ShiftBuffer> Buffers { get; init; }

    /// <summary>Mixes at their plants.</summary>
    public required IReadOnlyList<ShiftLine> Lines { get; init; }

    /// <summary>Groups of trucks.</summary>
    public required IReadOnlyList<ShiftTrucks> Trucks { get; init; }

    /// <summary>How trucks are unloaded.</summary>
    public required ShiftUnloading Unloading { get; init; }

    /// <summary>Planned stops.</summary>
    public IReadOnlyList<ShiftPause> Pauses { get; init; } = [];

    /// <summary>A plant that stops; null for none.</summary>
    public PlantStop? Stop { get; init; }

    /// <summary>
    /// How loads are sent. By timetable: the first loads to be on site at the start, the others so that each arrives when the paver has
    /// laid as much as was sent after the first ones; a late truck leaves at once. On call: before the start by timetable, then by how
    /// far the paver is, and at once while it stands for want of mix. As loaded: trucks are loaded as fast as they come.
    /// </summary>
    public Dispatch Dispatch { get; init; } = Dispatch.Timetable;

    /// <summary>By how much loads leave later than by that timetable because somebody put it back, s; negative: earlier.</summary>
    public double TimetableLate { get; init; }

    /// <summary>Step in which loads below a full one are ordered, kg.</summary>
    public double LoadStep { get; init; } = 1000;

    /// <summary>Smallest useful load as a share of a full one, 0 to 1: a smaller last load is shared with the one before it.</summary>
    public double SmallestLoad { get; init; } = 0.5;

    /// <summary>Point of the spread of a journey that the first loads are sent out for, 0 to 1.</summary>
    public double BadDay { get; init; } = 0.95;

    /// <summary>Length to be laid, m.</summary>
    public double Length => Stretches.Sum(stretch => stretch.Length);

    /// <summary>Mix to be laid of one course, kg.</summary>
    public double Tonnage(int buffer) => Stretches.Sum(stretch => stretch.Length * stretch.PerMetre[buffer]);

    /// <summary>The same shift in which nothing varies.</summary>
    public ShiftModel WithoutSpread() => this with
    {
        Unloading = Unloading with { Exchange = Unloading.Exchange.WithoutSpread(median: false) },
        Trucks = [.. Trucks.Select(trucks => trucks with
        {
            Loading = trucks.Loading.WithoutSpread(median: false),
            Out = trucks.Out.WithoutSpread(median: true),
            Back = trucks.Back.WithoutSpread(median: true),
        })],
    };

    /// <summary>Whether a buffer belongs to the pass of a stretch.</summary>
    internal bool IsActive(int stretch, int buffer) =>
        Stretches.Any(other => other.Pass == Stretches[stretch].Pass && other.PerMetre[buffer] > 0);

    /// <summary>When the plant must begin with a group so that its first loads are on site and fed in time even on a bad day, s after they are needed first.</summary>
    internal double Opening(ShiftTrucks trucks)
    {
        var line = Lines[trucks.Line];
        var stretch = FirstStretch(line.Mix);
        var first = Buffers.Where((_, i) => IsActive(stretch, i)).ToList();
        var filling = first.Sum(buffer => Filling(buffer)) + (first.Count > 1 ? 2 * Unloading.Changeover : 0);
        var loads = Math.Min(Math.Max(1, trucks.BeforeStart), trucks.Count);
        var made = line.Rate > 0 ? Math.Max(0, (loads * trucks.Payload) - line.Stock) / line.Rate : 0;
        var away = trucks.Out.Kind == SpreadKind.Constant ? trucks.Out.Expected : trucks.Out.Point(BadDay);
        return -(filling + away + Math.Max(made, loads * trucks.Loading.Expected / Math.Max(1, line.Places)));
    }

    /// <summary>The first stretch in whose pass a mix is laid.</summary>
    internal int FirstStretch(string mix)
    {
        for (var k = 0; k < Stretches.Count; k++)
        {
            if (Buffers.Where((_, i) => IsActive(k, i)).Any(buffer => string.Equals(buffer.Mix, mix, StringComparison.Ordinal)))
            {
                return k;
            }
        }

        return 0;
    }

    private double Filling(ShiftBuffer buffer)
    {
        var payload = Trucks.Where(trucks => string.Equals(Lines[trucks.Line].Mix, buffer.Mix, StringComparison.Ordinal))
            .Select(trucks => trucks.Payload).DefaultIfEmpty(buffer.Capacity).Max();
        var loads = Math.Clamp(Math.Floor(buffer.Capacity / payload), 1, 10);
        return loads * (Unloading.Exchange.Expected + (Math.Min(payload, buffer.Capacity) / Unloading.Rate));
    }
}

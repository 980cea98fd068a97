using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Engineering.Onward;

/// <summary>
/// What the machine holds: what was discharged less what is laid. A load that is being discharged has given what its feeder passes on since it began. What a
/// buffer cannot hold, or would have to have less than nothing of, is not explained by the record, and is said.
/// </summary>
internal sealed class MixBalance
{
    private readonly ShiftModel model;
    private readonly OnwardKnown known;
    private readonly List<BufferState> buffers = [];
    private readonly double[] unexplained;

    public MixBalance(ShiftModel model, RecordedLoads loads, OnwardKnown known, DateTimeOffset from, double position)
    {
        (this.model, this.known, unexplained) = (model, known, new double[model.Buffers.Count]);
        var own = loads.Loads.FindAll(load => load.Counts);
        Docked = [.. own.Where(load => !(load.Emptied <= from) && load.Load.Started <= from).GroupBy(load => Dock(BufferOf(load))).Select(dock => dock.OrderBy(load => load.Load.Started).First())];
        for (var i = 0; i < model.Buffers.Count; i++)
        {
            var at = i;
            var mine = own.FindAll(load => BufferOf(load) == at);
            var given = mine.Where(load => load.Emptied <= from).Sum(load => load.Load.Laid);
            var docked = Docked.FirstOrDefault(load => BufferOf(load) == at);
            var passed = docked is null ? 0 : Math.Min(docked.Load.Laid, model.Unloading.Rate * (from - docked.Load.Started!.Value).TotalSeconds);
            buffers.Add(Balanced(i, given, passed, LaidUpTo(model, i, position), docked));
        }
    }

    /// <summary>Buffers.</summary>
    public IReadOnlyList<BufferState> Buffers => buffers;

    /// <summary>Loads that are being discharged, one for each feeder or tipping place at most.</summary>
    public IReadOnlyList<TimedLoad> Docked { get; }

    /// <summary>What is left on a load that is being discharged, kg.</summary>
    public double Rest(TimedLoad load) => rests.TryGetValue(load, out var rest) ? rest : load.Load.Laid;

    /// <summary>The buffer that a load is for: that of its course, else the first that lays its mix and is not done.</summary>
    public int BufferOf(TimedLoad load)
    {
        var mix = model.Lines[model.Trucks[load.Carried.Group].Line].Mix;
        var own = Enumerable.Range(0, model.Buffers.Count).Where(i => PlanView.Same(model.Buffers[i].Mix, mix)).ToList();
        return own.Find(i => PlanView.Same(model.Buffers[i].Course, load.Load.Course)) is var named && own.Contains(named) ? named : own[0];
    }

    /// <summary>Mix of one buffer that is laid up to a length, kg.</summary>
    public static double LaidUpTo(ShiftModel model, int buffer, double position)
    {
        var (start, laid) = (0.0, 0.0);
        foreach (var stretch in model.Stretches)
        {
            laid += stretch.PerMetre[buffer] * Math.Clamp(position - start, 0, stretch.Length);
            start += stretch.Length;
        }

        return laid;
    }

    /// <summary>Says what the masses do not explain.</summary>
    public void Note()
    {
        for (var i = 0; i < unexplained.Length; i++)
        {
            // A load is the least that a site loses count of; a tenth of one is a scale, judgement.
            if (Math.Abs(unexplained[i]) > 0.1 * model.Trucks.Max(trucks => trucks.Payload))
            {
                known.Notes.Add(new OnwardNote(OnwardNoteKind.Unexplained, model.Buffers[i].Course, 0, new LedgerFigure(unexplained[i], known.Units.Mass)));
            }
        }
    }

    private readonly Dictionary<TimedLoad, double> rests = [];

    private BufferState Balanced(int i, double given, double passed, double laid, TimedLoad? docked)
    {
        var capacity = model.Buffers[i].Capacity;
        var level = given + passed - laid;
        var back = docked is null ? 0 : Math.Clamp(level - capacity, 0, passed); // In front of a full buffer a truck waits with the rest.
        level -= back;
        if (docked is not null)
        {
            rests[docked] = docked.Load.Laid - passed + back;
        }

        var held = Math.Clamp(level, 0, capacity);
        unexplained[i] = level - held;
        return new BufferState(held, laid);
    }

    private int Dock(int buffer) => model.Unloading.OneForAll ? 0 : buffer;
}

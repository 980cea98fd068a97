using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>
/// Reads the state of one train from the record of its shift. It is that of the last moment at which somebody read how far the paver was; from there the
/// simulation goes on, with all that is known of trucks until now. Masses balance: what was discharged is laid, on the machine, or was thrown away.
/// </summary>
internal sealed class OnwardReader
{
    /// <summary>A yield beyond these bounds is a gap in the record, not a thick mat: judgement, a third too thin or two fifths too thick is seen by every foreman.</summary>
    private const double LeastYield = 0.7, MostYield = 1.4;

    /// <summary>A stop that begins as near to a planned one is that one: judgement, a crew takes its break within half an hour of the plan.</summary>
    private const double Near = 1800;

    private readonly OnwardKnown known;
    private readonly TrainWay way;
    private readonly IReadOnlyList<ReachedPlace> reached;
    private readonly RecordedLoads loads;
    private readonly PavingTrain train;
    private readonly PaverStop? standing;
    private readonly DateTimeOffset from;
    private readonly double position;
    private ShiftModel model;
    private List<ShiftPause> behind = [];

    public OnwardReader(PavingTrain train, ShiftModel model, OnwardKnown known)
    {
        (this.train, this.model, this.known) = (train, model, known);
        way = new TrainWay(train);
        var read = way.Reached(known.Record);
        reached = read.Count > 0 && read[^1].Position > 0 ? read : [];
        loads = new RecordedLoads(model, known);
        var last = reached.Count > 0 ? reached[^1].At : BeforeLaying();
        standing = known.Record.Stops.LastOrDefault(stop => IsOwn(stop) && reached.Count > 0 && stop.From <= known.Clock.Now && !(stop.To <= last) && (stop.To is null || stop.From <= last));
        from = standing is { From: var stopped } && stopped > last ? stopped : last;
        position = Math.Min(reached.Count > 0 ? reached[^1].Position + Since(last) : 0, model.Length);
    }

    /// <summary>Reads the state.</summary>
    public OnwardStart Read()
    {
        var speeds = new OnwardSpeed(reached, known, IsOwn);
        model = speeds.Into(model);
        model = Levels();
        model = Yields();
        model = new TimetableDelay(model, loads, known).Into();
        var trucks = new TruckStates(model, loads, known, from);
        model = model with { Trucks = trucks.Groups };
        model = Stops();
        var balance = new MixBalance(model, loads, known, from, position);
        var plan = new ShiftPlan(model);
        var onSite = new SiteLoads(model, loads, trucks, balance, known.Clock, from);
        var state = new ShiftState
        {
            Now = known.Clock.Of(from),
            NothingLeavesBefore = known.Clock.Of(known.Clock.Now),
            Next = known.Clock.Of(from),
            Gate = reached.Count > 0 || loads.Loads.Exists(load => load.Counts && (load.Emptied ?? load.Load.Started) <= from),
            Paver = Paver(plan),
            Buffers = balance.Buffers,
            Docks = onSite.Docks,
            Trucks = onSite.Trucks,
            Groups = [.. trucks.Groups.Select((_, g) => new GroupState(loads.Trucks.Sent(g), loads.Loads.Count(load => load.Carried.Group == g && load.Arrived <= from), trucks.IsOpen(g)))],
            Mixes = Mixes(plan, onSite, trucks, balance),
            Lines = new LineStates(model, plan, loads, known).Lines,
        };
        Note(trucks, balance);
        return new OnwardStart(model, state)
        {
            From = from,
            Place = reached.Count > 0 ? way.At(position) : null,
            Laid = position,
            StandsSince = standing is { To: null } ? standing.From : null,
            UnderWay = [.. loads.Loads.Where(load => load is { Counts: true, Emptied: null }).Select(load => (balance.BufferOf(load), load.Load))],
        };
    }

    // Before the first metre: when the last load was empty, else just before the first one came.
    private DateTimeOffset BeforeLaying()
    {
        var emptied = loads.Loads.Where(load => load.Counts).Select(load => load.Emptied).Where(time => time <= known.Clock.Now).Max();
        var arrived = loads.Loads.Where(load => load.Counts).Select(load => load.Arrived).Where(time => time <= known.Clock.Now).Min();
        return emptied ?? arrived?.AddSeconds(-1) ?? known.Clock.Now;
    }

    private bool IsOwn(PaverStop stop) => stop.Paver is null || train.Lanes.Any(lane => PlanView.Same(lane.Paver.Id, stop.Paver));

    // A stop without a station began after the last reading: until then the paver went on.
    private double Since(DateTimeOffset last) => standing is { From: var stopped } && stopped > last ? model.Speed * (stopped - last).TotalSeconds : 0;

    // A machine that was seen laying with less on it than the lowest level of the plan goes on to do so; the level at which it starts again moves with it.
    private ShiftModel Levels() => model with
    {
        Buffers = [.. model.Buffers.Select(buffer =>
        {
            var seen = known.Record.Stations.Where(reading => reading.OnMachine is not null && PlanView.Same(reading.Course ?? (model.Buffers.Count == 1 ? buffer.Course : null), buffer.Course) && IsLaying(reading.At)).Select(reading => reading.OnMachine!.Value).DefaultIfEmpty(buffer.Lowest).Min();
            var lowest = Math.Min(buffer.Lowest, Math.Max(0, seen));
            if (lowest < buffer.Lowest - PavingSite.Tiny)
            {
                known.Facts.Add(new OnwardFact(FactKind.Lowest, buffer.Course, FactBasis.Record, new LedgerFigure(lowest, known.Units.Mass) { PlanSi = buffer.Lowest }));
            }

            return buffer with { Lowest = lowest, Restart = lowest + ((buffer.Restart - buffer.Lowest) / (buffer.Capacity - buffer.Lowest) * (buffer.Capacity - lowest)) };
        })],
    };

    private bool IsLaying(DateTimeOffset at) => reached.Count > 0 && reached[0].At < at && at <= reached[^1].At && !known.Record.Stops.Any(stop => IsOwn(stop) && stop.From <= at && !(stop.To < at));

    // Mass laid against that of the plan for the same length goes on as it was so far; without a level on the machine it cannot be told.
    private ShiftModel Yields()
    {
        var yields = new double[model.Buffers.Count];
        for (var i = 0; i < yields.Length; i++)
        {
            var course = known.Ledger?.Courses.FirstOrDefault(one => PlanView.Same(one.Course, model.Buffers[i].Course));
            var isKnown = known.Ledger is { } ledger && ledger.Notes.All(note => note.Kind is not (LedgerNoteKind.NoLevel or LedgerNoteKind.NoDischarge) || !PlanView.Same(note.Course, model.Buffers[i].Course));
            var planned = course?.Shift is { } shift ? MixBalance.LaidUpTo(model, i, PositionAt(shift.To)) : 0;
            var yield = isKnown && planned > 0 ? course!.Shift!.Mass.Si / planned : double.NaN;
            var isUsed = yield is >= LeastYield and <= MostYield;
            yields[i] = isUsed ? yield : 1;
            known.Facts.Add(new OnwardFact(FactKind.Yield, model.Buffers[i].Course, isUsed ? FactBasis.Record : FactBasis.Plan, new LedgerFigure(yields[i], LedgerUnits.Percent)));
        }

        return model with { Stretches = [.. model.Stretches.Select(stretch => stretch with { PerMetre = [.. stretch.PerMetre.Select((mass, i) => mass * yields[i])] })] };
    }

    private double PositionAt(DateTimeOffset time)
    {
        var next = reached.Count;
        while (next > 0 && reached[next - 1].At > time)
        {
            next--;
        }

        if (next == 0 || next == reached.Count)
        {
            var since = next == 0 || standing?.From < time ? 0 : (time - reached[^1].At).TotalSeconds;
            return next == 0 ? 0 : Math.Min(model.Length, reached[^1].Position + (model.Speed * since));
        }

        var (a, b) = (reached[next - 1], reached[next]);
        return a.Position + ((b.Position - a.Position) * ((time - a.At) / (b.At - a.At)));
    }

    // Planned stops that were made, or whose time has passed without one, lie behind. Those that somebody wrote down after the last station, or says, are still made.
    private ShiftModel Stops()
    {
        if (reached.Count == 0)
        {
            return model;
        }

        var started = Started();
        behind = [.. model.Pauses.Where(pause => started + pause.After < known.Clock.Of(from) || Recorded(pause) is not null)];
        var own = PaverStops.Union(known.Record.Stops.Where(stop => IsOwn(stop) && !ReferenceEquals(stop, standing) && stop.From > from && stop.To is not null))
            .Select(stop => new ShiftPause(known.Clock.Of(stop.From) - started, (stop.To!.Value - stop.From).TotalSeconds) { IsPlanned = false });
        var said = standing is null && known.Events.StandsUntil is { } until && until > known.Clock.Now
            ? new[] { new ShiftPause(known.Clock.Of(known.Clock.Now) - started, (until - known.Clock.Now).TotalSeconds) { IsPlanned = false } }
            : [];
        return model with { Pauses = [.. behind, .. model.Pauses.Except(behind).Concat(own).Concat(said).OrderBy(pause => pause.After)] };
    }

    // The stop nearest to a planned one, as late as the paver is.
    private PaverStop? Recorded(ShiftPause pause) => known.Record.Stops.Where(IsOwn).Where(stop => Math.Abs(known.Clock.Of(stop.From) - Started() - pause.After) < Near).MinBy(stop => Math.Abs(known.Clock.Of(stop.From) - Started() - pause.After));

    private double Started()
    {
        var first = reached[0];
        return Math.Max(model.Begins, known.Clock.Of(first.At) - (first.Position / model.Speed));
    }

    private PaverState Paver(ShiftPlan plan)
    {
        if (reached.Count == 0)
        {
            return new PaverState(PaverMotion.Waiting, 0, 0, 0, null, null);
        }

        var now = known.Clock.Of(from);
        var stretch = Array.FindIndex(plan.End, end => end > position + 1e-9);
        stretch = stretch < 0 ? plan.End.Length - 1 : stretch;
        var started = Started();
        if (standing is not null)
        {
            // A planned stop that is under way lasts as planned.
            var planned = behind.Find(pause => ReferenceEquals(Recorded(pause), standing));
            var least = planned is null || standing.To is not null ? double.NegativeInfinity : known.Clock.Of(standing.From) + planned.Length;
            var until = Math.Max(least, known.Clock.Of(standing.To ?? Later(known.Clock.Now, known.Events.StandsUntil)));
            return new PaverState(PaverMotion.Wanting, position, stretch, behind.Count, until, started, known.Clock.Of(standing.From), known.Clock.Of(standing.From));
        }

        var begins = stretch > 0 && position <= plan.End[stretch - 1] + 1e-9 && model.Stretches[stretch].Move > 0;
        return new PaverState(begins ? PaverMotion.Shifting : PaverMotion.Moving, position, stretch, behind.Count, begins ? now + model.Stretches[stretch].Move : null, started);
    }

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset? b) => b > a ? b.Value : a;

    private List<MixState> Mixes(ShiftPlan plan, SiteLoads onSite, TruckStates trucks, MixBalance balance)
    {
        var mixes = new List<MixState>();
        for (var m = 0; m < plan.Mixes.Count; m++)
        {
            var fed = Enumerable.Range(0, model.Buffers.Count).Where(i => plan.Held(i).Mix == m).Sum(i => balance.Buffers[i].Level + balance.Buffers[i].Laid);
            var own = onSite.Trucks.Where((_, i) => plan.MixOfGroup[plan.GroupOf[i]] == m).Where(truck => truck.HasMix).ToList();
            var loaded = fed + own.Sum(truck => truck.Load);
            var open = Enumerable.Range(0, model.Trucks.Count).Count(g => plan.MixOfGroup[g] == m && trucks.IsOpen(g));
            mixes.Add(new MixState(loaded, fed + own.Where(truck => truck is { Due: null, LeftAt: null }).Sum(truck => truck.Load), fed, loaded >= plan.Needed[m] - PavingSite.Tiny ? 0 : open, onSite.Queue(m)));
        }

        return mixes;
    }

    private void Note(TruckStates trucks, MixBalance balance)
    {
        var (clock, units) = (known.Clock, known.Units);
        known.Facts.Add(new OnwardFact(FactKind.Laid, null, reached.Count > 0 ? FactBasis.Record : FactBasis.Assumed, new LedgerFigure(position, units.Length)) { At = from, IsStale = clock.Now - from > CourseLedgers.Window });
        for (var i = 0; i < model.Buffers.Count; i++)
        {
            known.Facts.Add(new OnwardFact(FactKind.OnMachine, model.Buffers[i].Course, FactBasis.Record, new LedgerFigure(balance.Buffers[i].Level, units.Mass)) { At = from });
        }

        if (reached.Count == 0)
        {
            known.Notes.Add(new OnwardNote(OnwardNoteKind.NotBegun, null, 0));
        }
        else if (clock.Now - from > CourseLedgers.Window)
        {
            known.Notes.Add(new OnwardNote(OnwardNoteKind.OldStation, null, (int)(clock.Now - from).TotalMinutes));
        }

        if (!loads.HasDeliveries)
        {
            known.Notes.Add(new OnwardNote(OnwardNoteKind.NoDeliveries, null, loads.Loads.Count));
        }

        if (loads.Trucks.Strange is { Count: > 0 } strange)
        {
            known.Notes.Add(new OnwardNote(OnwardNoteKind.NoGroup, null, strange.Count, null, strange[0].Place));
        }

        trucks.Note();
        balance.Note();
    }
}

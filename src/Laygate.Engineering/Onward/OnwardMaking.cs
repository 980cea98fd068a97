using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using ShiftRecord = Laygate.Model.Records.ShiftRecord;

namespace Laygate.Engineering.Onward;

/// <summary>Makes the re-plan of one moment.</summary>
internal sealed class OnwardMaking
{
    private readonly QuantityContext context;
    private readonly ShiftRecord record;
    private readonly OnwardClock clock;
    private readonly OnwardEvents events;
    private readonly IReadOnlyList<(PavingTrain Train, ShiftModel Model)> trains;
    private readonly LedgerUnits units;
    private readonly DateTimeOffset closing;
    private readonly double? limit;
    private readonly ShiftLedger? ledger;
    private readonly OnwardRolling rolled;
    private readonly double planned;

    public OnwardMaking(QuantityContext context, ShiftRecord record, OnwardClock clock, OnwardEvents events, IReadOnlyList<(PavingTrain Train, ShiftModel Model)> trains)
    {
        (this.context, this.record, this.clock, this.events, this.trains) = (context, record, clock, events, trains);
        units = new LedgerUnits(context.Plan, context.System);
        closing = events.Closing ?? PlanView.Of(context).Clock.End!.Value;
        var limits = context.Plan.Pavers.Select(paver => paver.StopLimit?.Si).OfType<double>().ToList();
        limit = limits.Count > 0 ? limits.Min() : null;
        planned = trains.Max(train => train.Model.Speed);
        rolled = new OnwardRolling(context, events, planned);
        ledger = ShiftLedgers.Of(context, record, clock.Now);
    }

    public OnwardResult? Make()
    {
        var knowns = Known();
        var starts = Starts(events, knowns);
        var runs = new OnwardRuns(clock, closing, limit, context.Seed, units, context.Cancel);
        var replications = ShiftSimulator.ReplicationsOf([.. starts.Select(start => start.Model)], ShiftSimulator.Replications);
        if (runs.Forecast(starts, replications) is not { } forecast)
        {
            return null;
        }

        var steady = starts.Select(start => ShiftSimulator.Steady(start.Model, start.State)).ToList();
        var stop = StopAt(starts, runs, replications);
        var speeds = (Math.Min(planned, rolled.Follows ?? planned), rolled.Follows ?? planned);
        var (best, tried) = new OnwardChanges(runs, other => Starts(other, Known()), events, starts, speeds, Late(starts), stop?.Reached.LowSi, new TrainWay(trains[0].Train).At).Search(forecast);
        var stands = starts.Select(start => start.StandsSince).OfType<DateTimeOffset>().Select(since => (DateTimeOffset?)since).Min();
        var weather = new OnwardWeather(context, record, clock.Now, events);
        var tonight = context.For(weather.Plan, withSpread: false);
        var windows = new OnwardWindows(tonight, events.RollersLost.Count == 0 ? tonight : context.For(rolled.Followed(weather.Plan, planned), withSpread: false), rolled.Phases);
        var last = forecast.End.Expected is { } end && end < closing ? end : closing;
        var courses = starts.Zip(steady, (start, run) => new OnwardCourses(windows, clock, last, units, start, run?.Loads ?? []).All()).SelectMany(all => all).ToList();
        var facts = knowns.SelectMany(known => known.Facts).ToList();
        facts.AddRange(weather.Facts);
        facts.Add(new OnwardFact(FactKind.Closing, null, events.Closing is null ? FactBasis.Plan : FactBasis.Said, null) { At = closing });
        return new OnwardResult
        {
            At = clock.Now,
            LastRow = record.Last,
            Events = events,
            Closing = closing,
            Starts = starts,
            LengthLeft = new LedgerFigure(starts.Sum(start => start.Model.Length - start.Laid), units.Length),
            Forecast = forecast,
            SteadyEnd = steady.TrueForAll(run => run is { Outcome.Finished: true }) ? clock.At(steady.Max(run => run!.Value.Outcome.Ended)) : null,
            AtRisk = new LedgerFigure(courses.Sum(course => course.OnMachine.Si + course.OnRoad.Mass.Si + course.OnSite.Mass.Si), units.Mass),
            StopAt = stop,
            StopLimit = limit,
            StandsSince = stands,
            JointBy = limit is not { } most ? null : stands is { } since ? since.AddSeconds(most) : courses.Select(course => course.LastsUntil).Where(lasts => lasts is not null).Min()?.AddSeconds(most),
            Courses = courses,
            Phases = rolled.Phases,
            PlannedSpeed = planned,
            SpeedLeft = events.RollersLost.Count > 0 && rolled.Follows is { } followed && followed < planned ? followed : null,
            Change = best,
            Tried = tried,
            Facts = facts,
            Notes = [.. Whole(), .. weather.IsKnown ? Array.Empty<OnwardNote>() : [new OnwardNote(OnwardNoteKind.OldWeather, null, 0)], .. knowns.SelectMany(known => known.Notes)],
        };
    }

    // A train sees the loads of its own mixes; one that no train lays is everybody's.
    private List<OnwardKnown> Known() => [.. trains.Select(train =>
    {
        var own = train.Model.Buffers.Select(buffer => buffer.Mix).ToHashSet(StringComparer.Ordinal);
        var courses = train.Model.Buffers.Select(buffer => buffer.Course).ToHashSet(StringComparer.Ordinal);
        var mine = trains.Count == 1 ? record : record with { Loads = [.. record.Loads.Where(load => load.Course is { } course ? courses.Contains(course) : load.Mix is null || own.Contains(load.Mix))] };
        return new OnwardKnown(mine, ledger, events, clock, units);
    })];

    private List<OnwardStart> Starts(OnwardEvents now, List<OnwardKnown> knowns) => [.. trains.Zip(knowns, (train, known) =>
    {
        var model = Shortened(train.Train, train.Model, now);
        var start = new OnwardReader(train.Train, model, known with { Events = Followed(now, model) }).Read();
        var stop = now.Plant is { } down && train.Model.Lines.Any(line => PlanView.Same(line.Plant, down.Plant))
            ? new PlantStop(down.Plant, clock.Of(clock.Now), down.Until is { } until ? Math.Max(0, (until - clock.Now).TotalSeconds) : double.PositiveInfinity, FromSilo: false)
            : null;
        return start with { Model = start.Model with { Stop = stop } };
    })];

    // With a roller less the paver goes no faster than those that are left can follow.
    private OnwardEvents Followed(OnwardEvents now, ShiftModel model) => now.RollersLost.Count > 0 && rolled.Follows is { } most && most < (now.Speed ?? model.Speed) ? now with { Speed = most } : now;

    private static ShiftModel Shortened(PavingTrain train, ShiftModel model, OnwardEvents now)
    {
        var end = now.EndsAfter ?? (now.EndsAt is var (run, station) ? new TrainWay(train).DistanceOf(run, station) : null);
        if (end is not { } length || length >= model.Length || length <= 0)
        {
            return model;
        }

        var (start, kept) = (0.0, new List<ShiftStretch>());
        foreach (var stretch in model.Stretches.TakeWhile(_ => start < length))
        {
            kept.Add(stretch with { Length = Math.Min(stretch.Length, length - start) });
            start += stretch.Length;
        }

        return model with { Stretches = kept };
    }

    private IEnumerable<OnwardNote> Whole()
    {
        if (record.Plan is { } named && !PlanView.Same(named, context.Plan.Identity.Id))
        {
            yield return new OnwardNote(OnwardNoteKind.OtherPlan, null, 0);
        }

        if (events.Plant is { } down && !trains.Any(train => train.Model.Lines.Any(line => PlanView.Same(line.Plant, down.Plant))))
        {
            yield return new OnwardNote(OnwardNoteKind.OtherPlant, down.Plant, 0);
        }
    }

    // How much later the paver is where it is than it would have been without a stop and at the speed of the plan.
    private double Late(IReadOnlyList<OnwardStart> starts)
    {
        var (start, model) = (starts[0], trains[0].Model);
        return start.State.Now - new ShiftPlan(model).TimeAt(start.State.Paver.Stretch, start.Laid);
    }

    private StopAt? StopAt(IReadOnlyList<OnwardStart> starts, OnwardRuns runs, int replications)
    {
        var isRain = events.RainAt is { } rain && rain < closing;
        var at = isRain ? events.RainAt!.Value : closing;
        if (runs.StoppedAt(starts, at, replications) is not var (left, metres))
        {
            return null;
        }

        var only = starts.Count == 1 ? starts[0] : null;
        return new StopAt(
            at, isRain, Figure(left, units.Mass), Figure(metres, units.Length), only is null ? null : new TrainWay(trains[0].Train).At(Math.Min(metres.Expected, only.Model.Length)),
            [.. starts.SelectMany(start => start.Model.Trucks.Where(trucks => trucks.Count > 0).Select(trucks => (trucks.Id, LastLoad(start.Model, trucks, at))))]);
    }

    // A load is laid when its journey, its exchange and its own mass lie between.
    private static DateTimeOffset LastLoad(ShiftModel model, ShiftTrucks trucks, DateTimeOffset at)
    {
        var perMetre = model.Buffers.Select((buffer, i) => (buffer.Mix, Most: model.Stretches.Max(stretch => stretch.PerMetre[i]))).Where(one => PlanView.Same(one.Mix, model.Lines[trucks.Line].Mix)).Sum(one => one.Most);
        return at.AddSeconds(-(trucks.Out.Expected + model.Unloading.Exchange.Expected + (perMetre > 0 ? trucks.Payload / (perMetre * model.Speed) : 0)));
    }

    private static LedgerFigure Figure(Band band, Laygate.Model.Measures.Unit unit) => new(band.Expected, unit) { LowSi = band.Low, HighSi = band.High };
}

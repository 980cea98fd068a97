using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.SheetData;

/// <summary>One load with its truck, times and place.</summary>
/// <param name="Load">The load.</param>
/// <param name="Course">Its course.</param>
/// <param name="Trucks">Its group of trucks.</param>
/// <param name="TipsBy">When it tips: as simulated, or at the latest when the mix before it is used up; null without times.</param>
/// <param name="LeavesAt">When it leaves the plant: as simulated, or journey and planned wait before it tips; null without times.</param>
/// <param name="Ends">Place at which it is used up.</param>
public sealed record PlannedLoad(
    OrderedLoad Load, Course Course, TruckGroup Trucks, DateTimeOffset? TipsBy, DateTimeOffset? LeavesAt, PlaceAlong? Ends)
{
    /// <summary>Number of the paving train that lays it.</summary>
    public int Train { get; init; }
}

/// <summary>What a site sheet needs and no rule asks for: loads in order, times, strips, mix under way.</summary>
public sealed class SheetQuantities
{
    private readonly QuantityContext context;
    private readonly PlanView view;

    /// <summary>Reads one plan.</summary>
    /// <param name="context">Its context.</param>
    public SheetQuantities(QuantityContext context)
    {
        this.context = context;
        view = PlanView.Of(context);
        Timeline = ShiftTimeline.Of(context);
    }

    /// <summary>Start of the shift; null where it is not stated.</summary>
    public DateTimeOffset? Start => view.Clock.Start;

    /// <summary>End of the shift.</summary>
    public DateTimeOffset? End => view.Clock.End;

    /// <summary>When half of the length is laid; null without times, or where mix comes so late that the planned speed does not tell it.</summary>
    public DateTimeOffset? HalfWay => Timeline is { } timeline && LastMetre is { } last && timeline.LastMetre is { } planned && last - planned < TimeSpan.FromMinutes(1)
        ? timeline.At(timeline.When(0.5))
        : null;

    /// <summary>When the last metre is laid as planned, all runs and trains counted; null without times.</summary>
    public DateTimeOffset? LastMetre => context.Get("shift.last_metre", context.Elements.Find("shift")!).Value is MomentValue moment ? moment.At : null;

    /// <summary>When the first metre is laid as planned; null without times.</summary>
    public DateTimeOffset? FirstMetre => Timeline is { } timeline ? timeline.At(timeline.Strips.Min(strip => strip.Begins)) : null;

    /// <summary>Length of all strips, m; 0 where it is not known.</summary>
    public double Length => Timeline?.Length ?? 0;

    /// <summary>Whether times can be given.</summary>
    public bool HasTimes => Timeline is not null && Start is not null;

    private ShiftTimeline? Timeline { get; }

    /// <summary>When a stated moment is.</summary>
    public DateTimeOffset At(Moment moment) => view.Clock.At(moment);

    /// <summary>Whether order and times of the loads are those of the simulated shift.</summary>
    public bool IsSimulated => HasTimes && ShiftSimulation.Of(context).Steady is { Count: > 0 } trains && trains.All(train => train.Loads.Count > 0);

    /// <summary>
    /// Loads in order: as the shift in which nothing varies feeds them, buffers and feeder counted; where it cannot be simulated,
    /// in the order in which they are needed.
    /// </summary>
    public IReadOnlyList<PlannedLoad> Loads() => InTime(IsSimulated
        ? [.. ShiftSimulation.Of(context).Steady.SelectMany(Simulated)]
        : Timeline is { } timeline ? [.. timeline.Trains.SelectMany(Loads)] : [.. view.Passes.SelectMany(pass => Loads(pass, null))]);

    // Trains send for their loads at the same time; where there is only one, its own order stays.
    private static IReadOnlyList<PlannedLoad> InTime(IReadOnlyList<PlannedLoad> loads) =>
        loads.Select(load => load.Train).Distinct().Count() > 1 ? [.. loads.OrderBy(load => load.LeavesAt)] : loads;

    /// <summary>Mix that covers one metre at the first station, kg/m; NaN where it is not known.</summary>
    public double PerMetre(Course course) => Along(course)?.PerMetreAtStart ?? double.NaN;

    /// <summary>How long a course can be densified, by the hour in which it is laid; none where that is not known.</summary>
    public IReadOnlyList<HourWindow> Windows(Course course) => WindowsByHour.Of(context, course);

    /// <summary>Thickness behind the screed, m: final thickness · degree of compaction / density behind the screed; null where either is not stated.</summary>
    public double? BehindScreed(Course course) =>
        view.MixOf(course)?.Density?.Degree is { } degree && course.DensityBehindScreed?.Value is { Si: > 0 } behind
            ? course.Thickness.Si * degree.Si / behind.Si
            : null;

    /// <summary>Speed that the planned supply of a course carries, m/s; null where it is not known.</summary>
    public double? SpeedOfSupply(Course course, Paver paver)
    {
        var element = view.Of(ElementKind.Course, course.Id)!;
        return context.Get("course.supply", element).Value is NumberValue supply
            && context.Get("course.demand", element).Value is NumberValue { Si: > 0 } demand && paver.Speed is { } speed
            ? speed.Si * supply.Si / demand.Si
            : null;
    }

    /// <summary>Strips of a roller across the widest mat.</summary>
    public IReadOnlyList<(double From, double To)> StripsOf(Roller roller)
    {
        var calculation = new Calculation(context);
        var run = context.Plan.Runs.Where(run => run.WidthAlong.Count > 0).MaxBy(run => run.WidthAlong.Max(width => width.Value.Si));
        return run is not null && RollerStrips.Most(calculation, roller) is { } strips && roller.DrumWidth is { } drum
            ? StripLayout.Of(run.WidthAlong.Max(width => width.Value.Si), RollerStrips.LeftReach(new Calculation(context), run), RollerStrips.RightReach(new Calculation(context), run), drum.Si, strips)
            : [];
    }

    /// <summary>
    /// Most mix of a group that has left its plant and has not tipped, kg: in the shift in which nothing varies; where it cannot be
    /// simulated, demand · (ticket + out + wait). Null where it is not known.
    /// </summary>
    public double? OnTheWay(TruckGroup trucks)
    {
        if (IsSimulated)
        {
            var own = ShiftSimulation.Of(context).Steady.SelectMany(train => train.Loads.Where(load => PlanView.Same(train.Model.Trucks[load.Group].Id, trucks.Id))).ToList();
            return own.Count == 0 ? 0 : own.Max(at => own.Where(load => load.Loaded <= at.Loaded && load.Docked > at.Loaded).Sum(load => load.Mass));
        }

        var calculation = new Calculation(context);
        var address = $"trucks:{trucks.Id}";
        var seconds = calculation.StatedOr(AssumptionIds.Ticket, "ticket", trucks.Ticket, address, "ticket")
            + calculation.Stated("out", trucks.HaulOut, address, "haul_out")
            + calculation.StatedOr(AssumptionIds.Wait, "wait", trucks.Wait, address, "wait");
        var interval = calculation.Quantity("T", "trucks.interval", context.Elements.Find(address));
        var mass = calculation.Stated("P", trucks.Payload, address, "payload") * seconds / interval;
        return calculation.Stopped is null && double.IsFinite(mass) ? mass : null;
    }

    // In the order of laying where that is known; one train, or all.
    private MassAlong? Along(Course course, IReadOnlyList<LaidStrip>? strips = null)
    {
        var calculation = new Calculation(context);
        var density = CourseQuantities.MixDensity(calculation, course);
        var runs = (strips ?? Timeline?.Strips)?.Where(strip => strip.Courses.Contains(course)).Select(strip => strip.Run) ?? view.RunsOf(course);
        return calculation.Stopped is null && density > 0 ? new MassAlong(runs, course, density) : null;
    }

    private List<PlannedLoad> Simulated(SteadyTrain train)
    {
        var (model, fedLoads) = (train.Model, train.Loads);
        var sent = new double[model.Buffers.Count];
        var number = new int[model.Buffers.Count];
        var last = Enumerable.Range(0, sent.Length).Select(buffer => fedLoads.LastOrDefault(load => load.Buffer == buffer)).ToList();
        var along = model.Buffers.Select((_, i) => Along(CourseOf(model, i), StripsOf(model, i))).ToList();
        var loads = new List<PlannedLoad>();
        foreach (var fed in fedLoads)
        {
            if (along[fed.Buffer] is not { } way)
            {
                return [];
            }

            var from = Math.Min(sent[fed.Buffer], way.Total);
            sent[fed.Buffer] += fed.Mass;
            var to = Math.Min(sent[fed.Buffer], way.Total); // The lowest level of the buffer is sent too and is not laid.
            var course = CourseOf(model, fed.Buffer);
            var trucks = context.Plan.Supply!.Trucks.First(trucks => PlanView.Same(trucks.Id, model.Trucks[fed.Group].Id));
            var series = new LoadSeries(course.Id, way.Total, _ => fed.Mass, way.Reached);
            loads.Add(new PlannedLoad(
                new OrderedLoad(series, number[fed.Buffer]++, fed.Mass, way.Reached(from), way.Reached(to), ReferenceEquals(fed, last[fed.Buffer])),
                course, trucks, Start!.Value.AddSeconds(fed.Docked), Start.Value.AddSeconds(fed.Loaded), way.PlaceAt(way.Reached(to)))
            {
                Train = model.Buffers[fed.Buffer].Train,
            });
        }

        return loads;
    }

    private Course CourseOf(ShiftModel model, int buffer) => context.Plan.Courses.First(course => PlanView.Same(course.Id, model.Buffers[buffer].Course));

    private List<LaidStrip> StripsOf(ShiftModel model, int buffer) => [.. Timeline!.Strips.Where(strip => strip.Train == model.Buffers[buffer].Train)];

    // Pass by pass in the order of the train; each pass counts its own way.
    private IEnumerable<PlannedLoad> Loads(IReadOnlyList<LaidStrip> strips) =>
        strips.Select(strip => strip.Pass).Distinct().SelectMany(pass => Loads(pass, [.. strips.Where(strip => ReferenceEquals(strip.Pass, pass))]));

    private List<PlannedLoad> Loads(PavingPass pass, IReadOnlyList<LaidStrip>? strips)
    {
        var courses = strips is null ? pass.Courses : [.. pass.Courses.Where(course => strips.Any(strip => strip.Courses.Contains(course)))];
        var sources = courses.Select(course => Source(course, strips)).ToList();
        if (sources.Exists(source => source is null))
        {
            return [];
        }

        var order = LoadsByNeed.By([.. sources.Select(source => source!.Series)]);
        return [.. order.Select(load => Planned(load, sources.Find(source => ReferenceEquals(source!.Series, load.Series))!, strips))];
    }

    private PlannedLoad Planned(OrderedLoad load, SourceOfLoads source, IReadOnlyList<LaidStrip>? strips)
    {
        var trucks = source.Trucks(load.OfSeries);
        var tips = NeededAt(source, load.NeededAt, strips);
        var journey = (trucks.HaulOut?.Si ?? double.NaN) + (trucks.Wait?.Si ?? 0);
        return new PlannedLoad(
            load, source.Course, trucks, tips, double.IsFinite(journey) ? tips?.AddSeconds(-journey) : null, source.Along.PlaceAt(load.EndsAt))
        {
            Train = strips is { Count: > 0 } ? strips[0].Train : 0,
        };
    }

    /// <summary>When the mix before a load is used up; at the end of a run that is when the next is begun.</summary>
    private DateTimeOffset? NeededAt(SourceOfLoads source, double distance, IReadOnlyList<LaidStrip>? strips)
    {
        var before = 0.0;
        foreach (var strip in (strips ?? []).Where(strip => strip.Courses.Contains(source.Course)))
        {
            if (distance < before + strip.Length - 1e-9)
            {
                return Timeline?.At(strip.At(Math.Max(0, distance - before)));
            }

            before += strip.Length;
        }

        return null;
    }

    private SourceOfLoads? Source(Course course, IReadOnlyList<LaidStrip>? strips)
    {
        var groups = (context.Plan.Supply?.Trucks ?? [])
            .Where(trucks => PlanView.Same(trucks.Mix, course.Mix) && trucks.Payload is { Si: > 0 })
            .ToList();
        if (groups.Count == 0 || Along(course, strips) is not { Total: > 0 } along)
        {
            return null;
        }

        var turns = Turns(groups);
        TruckGroup Trucks(int number) => turns[number % turns.Count];
        var assumed = new Calculation(context);
        return new SourceOfLoads(course, along, Trucks, new LoadSeries(
            course.Id, along.Total, number => Trucks(number).Payload!.Si, along.Reached,
            assumed.Assumed(SimulationAssumptions.LoadStep, "step", "supply", null), assumed.Assumed(SimulationAssumptions.SmallestLoad, "q", "supply", null)));
    }

    // Groups of one mix take turns by their number of trucks.
    private static List<TruckGroup> Turns(List<TruckGroup> groups)
    {
        var turns = new List<TruckGroup>();
        var taken = new int[groups.Count];
        var length = groups.Sum(Trucks);
        for (var i = 0; i < length; i++)
        {
            var next = Enumerable.Range(0, groups.Count).MinBy(at => (taken[at] + 1.0) / Trucks(groups[at]));
            taken[next]++;
            turns.Add(groups[next]);
        }

        return turns;

        static int Trucks(TruckGroup group) => Math.Clamp(group.Count ?? 1, 1, 1000);
    }

    private sealed record SourceOfLoads(Course Course, MassAlong Along, Func<int, TruckGroup> Trucks, LoadSeries Series);
}

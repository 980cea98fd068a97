using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;
using Laygate.Engineering.Supply.Simulation;
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
    OrderedLoad Load, Course Course, TruckGroup Trucks, DateTimeOffset? TipsBy, DateTimeOffset? LeavesAt, PlaceAlong? Ends);

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
        var paver = view.Passes.Select(pass => view.AnyPaverOf(pass.Top)).FirstOrDefault(found => found is not null);
        Way = HasTimes && paver?.Speed is { } speed
            ? new ShiftCourse(Start!.Value, speed.Si * (paver.Availability?.Si ?? 1), [.. paver.Stops.Select(Stop).OfType<StopAfter>()])
            : null;
    }

    /// <summary>Start of the shift; null where it is not stated.</summary>
    public DateTimeOffset? Start => view.Clock.Start;

    /// <summary>End of the shift.</summary>
    public DateTimeOffset? End => view.Clock.End;

    /// <summary>Way of the paver; null where the plan has more than one pass or says too little: then there are no times.</summary>
    public ShiftCourse? Way { get; }

    /// <summary>Length of the first pass, m.</summary>
    public double Length => view.Passes is [var pass, ..] ? Along(pass.Courses[0])?.Length ?? 0 : 0;

    /// <summary>Whether times can be given: one pass in a shift that has a start.</summary>
    public bool HasTimes => view.Passes.Count == 1 && Start is not null;

    /// <summary>When a stated moment is.</summary>
    public DateTimeOffset At(Moment moment) => view.Clock.At(moment);

    /// <summary>Whether order and times of the loads are those of the simulated shift.</summary>
    public bool IsSimulated => HasTimes && ShiftSimulation.Of(context).Loads is { Count: > 0 };

    /// <summary>
    /// Loads in order: as the shift in which nothing varies feeds them, buffers and feeder counted; where it cannot be simulated,
    /// pass by pass in the order in which they are needed.
    /// </summary>
    public IReadOnlyList<PlannedLoad> Loads() => IsSimulated ? Simulated(ShiftSimulation.Of(context)) : [.. view.Passes.SelectMany(Loads)];

    /// <summary>Mix that covers one metre at the first station, kg/m; NaN where it is not known.</summary>
    public double PerMetre(Course course) => Along(course)?.PerMetreAtStart ?? double.NaN;

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
        var run = context.Plan.Runs.Where(run => run.Width.Count > 0).MaxBy(run => run.Width.Max(width => width.Value.Si));
        return run is not null && RollerStrips.Most(calculation, roller) is { } strips && roller.DrumWidth is { } drum
            ? StripLayout.Of(run.Width.Max(width => width.Value.Si), RollerStrips.LeftReach(new Calculation(context), run), RollerStrips.RightReach(new Calculation(context), run), drum.Si, strips)
            : [];
    }

    /// <summary>
    /// Most mix of a group that has left its plant and has not tipped, kg: in the shift in which nothing varies; where it cannot be
    /// simulated, demand · (ticket + out + wait). Null where it is not known.
    /// </summary>
    public double? OnTheWay(TruckGroup trucks)
    {
        if (IsSimulated && ShiftSimulation.Of(context) is { Loads: { } fed, Model: { } model })
        {
            var own = fed.Where(load => PlanView.Same(model.Trucks[load.Group].Id, trucks.Id)).ToList();
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

    private static StopAfter? Stop(PlannedStop stop) =>
        stop is { After: { } after, Length: { } length } ? new StopAfter(after.Si, length.Si) : null;

    private MassAlong? Along(Course course)
    {
        var calculation = new Calculation(context);
        var density = CourseQuantities.MixDensity(calculation, course);
        return calculation.Stopped is null && density > 0 ? new MassAlong(view.RunsOf(course), course, density) : null;
    }

    private List<PlannedLoad> Simulated(ShiftSimulation simulation)
    {
        var model = simulation.Model!;
        var sent = new double[model.Buffers.Count];
        var number = new int[model.Buffers.Count];
        var last = Enumerable.Range(0, sent.Length).Select(buffer => simulation.Loads!.LastOrDefault(load => load.Buffer == buffer)).ToList();
        var along = model.Buffers.Select(buffer => Along(context.Plan.Courses.First(course => PlanView.Same(course.Id, buffer.Course)))).ToList();
        var loads = new List<PlannedLoad>();
        foreach (var fed in simulation.Loads!)
        {
            if (along[fed.Buffer] is not { } way)
            {
                return [];
            }

            var from = Math.Min(sent[fed.Buffer], way.Total);
            sent[fed.Buffer] += fed.Mass;
            var to = Math.Min(sent[fed.Buffer], way.Total); // The lowest level of the buffer is sent too and is not laid.
            var course = context.Plan.Courses.First(course => PlanView.Same(course.Id, model.Buffers[fed.Buffer].Course));
            var trucks = context.Plan.Supply!.Trucks.First(trucks => PlanView.Same(trucks.Id, model.Trucks[fed.Group].Id));
            var series = new LoadSeries(course.Id, way.Total, _ => fed.Mass, way.Reached);
            loads.Add(new PlannedLoad(
                new OrderedLoad(series, number[fed.Buffer]++, fed.Mass, way.Reached(from), way.Reached(to), ReferenceEquals(fed, last[fed.Buffer])),
                course, trucks, Start!.Value.AddSeconds(fed.Docked), Start.Value.AddSeconds(fed.Loaded), way.PlaceAt(way.Reached(to))));
        }

        return loads;
    }

    private List<PlannedLoad> Loads(PavingPass pass)
    {
        var sources = pass.Courses.Select(Source).ToList();
        if (sources.Exists(source => source is null))
        {
            return [];
        }

        var order = LoadsByNeed.By([.. sources.Select(source => source!.Series)]);
        return [.. order.Select(load => Planned(load, sources.Find(source => ReferenceEquals(source!.Series, load.Series))!))];
    }

    private PlannedLoad Planned(OrderedLoad load, SourceOfLoads source)
    {
        var trucks = source.Trucks(load.OfSeries);
        var tips = Way?.At(load.NeededAt);
        var journey = (trucks.HaulOut?.Si ?? double.NaN) + (trucks.Wait?.Si ?? 0);
        return new PlannedLoad(
            load, source.Course, trucks, tips, double.IsFinite(journey) ? tips?.AddSeconds(-journey) : null, source.Along.PlaceAt(load.EndsAt));
    }

    private SourceOfLoads? Source(Course course)
    {
        var groups = (context.Plan.Supply?.Trucks ?? [])
            .Where(trucks => PlanView.Same(trucks.Mix, course.Mix) && trucks.Payload is { Si: > 0 })
            .ToList();
        if (groups.Count == 0 || Along(course) is not { Total: > 0 } along)
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

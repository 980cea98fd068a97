using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Supply;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records;

/// <summary>Makes the ledger of one course.</summary>
internal sealed class CourseLedgers
{
    /// <summary>Window of the present rate: a foreman sets his speed by it each quarter to half hour (common practice, no published source).</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(30);

    /// <summary>Loads whose mean is compared with the plan: Florida Department of Transportation, Standard Specifications 330-2.2, takes the average of five loads (read).</summary>
    public const int MeanOf = 5;

    /// <summary>Beyond this an end is none, the work stands still: judgement, many times what a shift can last.</summary>
    private static readonly TimeSpan NoEnd = TimeSpan.FromDays(30);

    private readonly QuantityContext context;
    private readonly ShiftRecord record;
    private readonly LedgerUnits units;
    private readonly List<LedgerNote> notes;
    private readonly Course course;
    private readonly IReadOnlyList<Load> loads;
    private readonly IReadOnlyList<Load> emptied;
    private readonly LayingProgress progress;
    private readonly List<TruckGroup> trucks;
    private readonly double planDensity;
    private readonly double density;

    public CourseLedgers(QuantityContext context, ShiftRecord record, LedgerUnits units, List<LedgerNote> notes, Course course, IReadOnlyList<Load> loads)
    {
        (this.context, this.record, this.units, this.notes, this.course) = (context, record, units, notes, course);
        trucks = [.. (context.Plan.Supply?.Trucks ?? []).Where(group => PlanView.Same(group.Mix, course.Mix))];
        this.loads = WithDischarge(loads);
        emptied = [.. this.loads.Where(load => load.Emptied is not null).OrderBy(load => load.Emptied)];
        planDensity = CourseQuantities.MixDensity(new Calculation(context), course);
        density = Density();
        var view = PlanView.Of(context);
        var ordered = ShiftTimeline.Of(context)?.Of(course).Select(strip => strip.Run).ToList() ?? [];
        progress = new LayingProgress(ordered.Count > 0 ? ordered : view.RunsOf(course), course, planDensity, Stations());
        Note();
    }

    public CourseLedger Make(DateTimeOffset at, bool isStanding)
    {
        var last = progress.Last;
        var done = last is { } read ? progress.At(read) : default;
        var left = progress.Whole - done;
        var shift = Interval(null);
        var five = LastLoads();
        var yield = Ratio(shift) ?? 1;
        var needed = left.Mass * yield;
        var onHand = Math.Max(0, loads.Sum(load => load.Laid) - (done.Mass * yield));
        var order = LedgerFormulas.ToLoad(needed, onHand) ?? 0;
        double[] orders = [.. new[] { 1, yield, Ratio(five) ?? yield }.Select(one => LedgerFormulas.ToLoad(left.Mass * one, onHand) ?? 0)];
        var ends = Ends(isStanding ? at : last ?? at, needed, left.Mass, yield, shift);
        var end = Moment(ends);
        return new CourseLedger(course.Id, course.Mix)
        {
            Discharged = emptied.Count,
            Tickets = Mass(loads.Sum(load => load.Net)),
            Shift = shift,
            LastLoads = five,
            Laid = Length(done.Length) with { PlanSi = progress.Whole.Length },
            LengthLeft = Length(left.Length),
            LeftByPlan = Mass(left.Mass),
            LeftByYield = Mass(needed),
            OnHand = Mass(onHand),
            ToOrder = Mass(order) with { LowSi = orders.Min(), HighSi = orders.Max() },
            LoadsToOrder = Payload is { } payload ? order > 0 ? ShiftTonnage.Loads(order, payload) : 0 : null,
            LastLoad = LastLoad(order),
            LastLeaves = end is null || order <= 0 ? null : Leaves(end.Expected),
            UnderWay = [.. loads.Where(load => load.Emptied is null).Select(load => new LoadUnderWay(load.Ticket, Mass(load.Laid), load.Loaded, load.Arrived is not null))],
            End = end,
            Ends = ends,
            Working =
            [
                new("Mp: mass of the plan for the length that is left", Mass(left.Mass)),
                new("My = Mp · M / M0", Mass(needed)),
                new("H = tickets − M: on the machine, on the road and waiting", Mass(onHand)),
                new("O = max(0, My − H)", Mass(order)),
            ],
        };
    }

    private double? Payload => trucks.Select(group => group.Payload?.Si).OfType<double>().Where(payload => payload > 0).Select(payload => (double?)payload).Max();

    private LedgerFigure Mass(double kilograms) => new(kilograms, units.Mass);

    private LedgerFigure Length(double metres) => new(metres, units.Length);

    // Where nobody wrote down when trucks were empty, the journey of the plan tells when they were at the paver.
    private IReadOnlyList<Load> WithDischarge(IReadOnlyList<Load> given)
    {
        var journey = trucks.Select(group => group.HaulOut?.Si).FirstOrDefault(haul => haul is not null);
        if (given.Count == 0 || journey is null || given.Any(load => load.Emptied is not null || load.Arrived is not null))
        {
            return given;
        }

        notes.Add(new LedgerNote(LedgerNoteKind.NoDischarge, course.Id, given.Count, given[0].Place));
        return [.. given.Select(load => load.Loaded is { } loaded && loaded.AddSeconds(journey.Value) is var there && there <= record.Last ? load with { Emptied = there } : load)];
    }

    private IEnumerable<StationReading> Stations()
    {
        var read = record.Stations.Where(reading => reading.Course is null || PlanView.Same(reading.Course, course.Id));
        var ofLoads = loads.Where(load => load is { StationAtEnd: not null, Emptied: not null }).Select(load => new StationReading(load.Place, load.Emptied!.Value, load.StationAtEnd!.Value) { Run = load.Run });
        return read.Concat(ofLoads).OrderBy(reading => reading.At).ThenBy(reading => reading.Station);
    }

    private double Density()
    {
        var bulks = record.Cores.Where(core => PlanView.Same(core.Course, course.Id) && !core.AtJoint).Select(core => core.Bulk).OfType<double>().ToList();
        notes.Add(new LedgerNote(bulks.Count > 0 ? LedgerNoteKind.DensityOfCores : LedgerNoteKind.DensityOfPlan, course.Id, bulks.Count));
        return bulks.Count > 0 ? bulks.Average() : planDensity;
    }

    private void Note()
    {
        if (progress.Last is null)
        {
            notes.Add(new LedgerNote(LedgerNoteKind.NoStation, course.Id, 0));
        }

        if (progress.Unplaced.Count > 0)
        {
            notes.Add(new LedgerNote(LedgerNoteKind.NoRun, course.Id, progress.Unplaced.Count, progress.Unplaced[0].Place));
        }

        if (progress.Backwards.Count > 0)
        {
            notes.Add(new LedgerNote(LedgerNoteKind.Backwards, course.Id, progress.Backwards.Count, progress.Backwards[0].Place));
        }

        if (emptied.Count > 0 && OnMachine(emptied.Count - 1) is null)
        {
            notes.Add(new LedgerNote(LedgerNoteKind.NoLevel, course.Id, 0));
        }
    }

    // The level counts at the end of a load: read since the load before it was empty, and no later than its own end.
    private double? OnMachine(int index)
    {
        var from = index > 0 ? emptied[index - 1].Emptied : null;
        var to = emptied[index].Emptied;
        return record.Stations.LastOrDefault(reading => reading.OnMachine is not null && reading.At <= to && !(reading.At <= from)
            && (PlanView.Same(reading.Course, course.Id) || (reading.Course is null && context.Plan.Courses.Count == 1)))?.OnMachine;
    }

    private LedgerInterval? LastLoads()
    {
        var end = EndIndex();
        var count = Math.Min(MeanOf, end + 1);
        while (count > 0 && end - count >= 0 && !(progress.First <= emptied[end - count].Emptied))
        {
            count--;
        }

        return count > 0 ? Interval(count) : null;
    }

    // The last load that was empty when a station had been read.
    private int EndIndex()
    {
        var end = emptied.Count - 1;
        while (end >= 0 && !(emptied[end].Emptied <= progress.Last))
        {
            end--;
        }

        return end;
    }

    private LedgerInterval? Interval(int? count)
    {
        var end = EndIndex();
        if (end < 0)
        {
            return null;
        }

        var first = count is { } some ? end - some + 1 : 0;
        var from = first > 0 ? emptied[first - 1].Emptied : null;
        var laid = progress.At(emptied[end].Emptied!.Value) - (from is { } begun ? progress.At(begun) : default);
        var (atEnd, atStart) = (OnMachine(end), first > 0 ? OnMachine(first - 1) : 0);
        var tickets = emptied.Skip(first).Take(end - first + 1).Sum(load => load.Net);
        var notLaid = emptied.Skip(first).Take(end - first + 1).Sum(load => load.Net - load.Laid);
        var held = atEnd is { } last && atStart is { } before ? last - before : 0;
        var mass = tickets - notLaid - held;
        return mass > 0 && laid is { Length: > 0, Area: > 0 } ? Interval(end - first + 1, from, emptied[end].Emptied!.Value, (tickets, notLaid, held, mass), laid) : null;
    }

    private LedgerInterval? Interval(int count, DateTimeOffset? from, DateTimeOffset to, (double Tickets, double NotLaid, double Held, double Laid) mass, LaidSoFar laid)
    {
        var (q, r, t) = (LedgerFormulas.PerLength(mass.Laid, laid.Length), LedgerFormulas.PerArea(mass.Laid, laid.Area), LedgerFormulas.Thickness(mass.Laid, density, laid.Area));
        if (q is not { } perLength || r is not { } perArea || t is not { } thickness || !(laid.Mass > 0))
        {
            return null;
        }

        var u = record.Uncertainty is { Mass: { } uM, Density: { } uD, Width: { } uW, Length: { } uL } ? LedgerFormulas.Uncertainty(uM, uD, uW, uL) : null;
        var planned = laid.Mass / planDensity;
        return new LedgerInterval(
            count, from, to, Mass(mass.Laid), Length(laid.Length),
            new LedgerFigure(perLength, units.PerLength) { PlanSi = laid.Mass / laid.Length },
            new LedgerFigure(perArea, units.PerArea) { PlanSi = laid.Mass / laid.Area },
            new LedgerFigure(thickness, LedgerUnits.Thickness(course)) { PlanSi = planned / laid.Area, UncertaintySi = 2 * u * thickness },
            [
                new("S: tickets that were discharged", Mass(mass.Tickets)), new("W: went back or was thrown away", Mass(mass.NotLaid)), new("B: more on the machine than at the beginning", Mass(mass.Held)),
                new("M = S − W − B", Mass(mass.Laid)), new("L: length from the stations", Length(laid.Length)), new("A: area", new LedgerFigure(laid.Area, units.Area)), new("ρ: density", new LedgerFigure(density, units.Density)),
                new("q = M / L", new LedgerFigure(perLength, units.PerLength)), new("r = M / A", new LedgerFigure(perArea, units.PerArea)), new("t = M / (ρ · A)", new LedgerFigure(thickness, LedgerUnits.Thickness(course))),
                .. u is { } relative ? new LedgerStep[] { new("u = √(uM² + uρ² + uW² + uL²)", new LedgerFigure(relative, LedgerUnits.Percent)), new("U = 2 · u · t", new LedgerFigure(2 * relative * thickness, LedgerUnits.Thickness(course))) } : [],
            ]);
    }

    // Mass against that of the plan for the same length.
    private static double? Ratio(LedgerInterval? interval) => interval is { PerLength: { PlanSi: > 0 and var plan } q } ? q.Si / plan : null;

    private List<ReckonedEnd> Ends(DateTimeOffset from, double needed, double planned, double yield, LedgerInterval? shift)
    {
        var ends = new List<ReckonedEnd>();
        var stops = StopsAfter(from);
        if (shift is not null && progress is { First: { } first, Last: { } last })
        {
            var begun = emptied[0].Started ?? first;
            var (half, whole) = (Rate(Later(last - Window, first), last, yield), Rate(begun < first ? begun : first, last, yield));
            ends.AddRange(new[] { (EndBasis.LastHalfHour, half), (EndBasis.Shift, whole) }.Where(one => one.Item2 is not null)
                .Select(one => new ReckonedEnd(one.Item1, new LedgerFigure(one.Item2!.Value, units.Rate), After(from, LedgerFormulas.TimeLeft(needed, one.Item2.Value, stops)))));
        }

        if (PlanView.Of(context).Of(ElementKind.Course, course.Id) is { } element && context.Get("course.demand_average", element).Value is NumberValue { Si: > 0 } demand)
        {
            ends.Add(new ReckonedEnd(EndBasis.Plan, new LedgerFigure(demand.Si, units.Rate), After(from, LedgerFormulas.TimeLeft(planned, demand.Si, 0))));
        }

        return ends;
    }

    private double? Rate(DateTimeOffset from, DateTimeOffset to, double yield) =>
        to > from ? (progress.At(to) - progress.At(from)).Mass * yield / (to - from).TotalSeconds : null;

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private static DateTimeOffset? After(DateTimeOffset from, double? seconds) =>
        seconds is { } left && left < NoEnd.TotalSeconds ? from.AddSeconds(left) : null;

    // Expected is the mean of the shift; before there is one, the plan.
    private static LedgerMoment? Moment(List<ReckonedEnd> ends)
    {
        var expected = ends.Find(end => end.Basis == EndBasis.Shift) ?? ends.Find(end => end.Basis == EndBasis.Plan);
        var all = ends.Select(end => end.End).OfType<DateTimeOffset>().ToList();
        return expected?.End is { } moment ? new LedgerMoment(moment, all.Min(), all.Max()) : null;
    }

    private double StopsAfter(DateTimeOffset from)
    {
        var paver = PlanView.Of(context).AnyPaverOf(course);
        var stops = PlanView.Of(context).Clock.Start is { } start
            ? (paver?.Stops ?? []).Where(stop => stop.After is { } after && start.AddSeconds(after.Si) >= from).Sum(stop => stop.Length?.Si ?? 0)
            : 0;
        var moves = ShiftTimeline.Of(context)?.Of(course).Where(strip => !progress.IsBegun(strip.Run)).Sum(strip => strip.Move) ?? 0;
        return stops + moves;
    }

    private LedgerFigure? LastLoad(double order)
    {
        if (Payload is not { } payload || order <= 0 || ShiftTonnage.Loads(order, payload) is not { } count)
        {
            return null;
        }

        return Mass(order - ((count - 1) * payload));
    }

    private DateTimeOffset? Leaves(DateTimeOffset end)
    {
        if (trucks.Count == 0 || trucks[0] is not { HaulOut.Si: var haul, Payload.Si: var payload } group || PlanView.Of(context).Of(ElementKind.Course, course.Id) is not { } element
            || context.Get("course.demand", element).Value is not NumberValue { Si: > 0 } demand)
        {
            return null;
        }

        return end.AddSeconds(-(haul + (payload / demand.Si) + (group.Ticket?.Si ?? 0)));
    }
}

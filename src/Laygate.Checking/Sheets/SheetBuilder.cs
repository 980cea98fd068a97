using System.Collections.Frozen;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.SheetData;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sheets;

/// <summary>Gathers what the cards of a site sheet show, from a plan and its report. It decides nothing: every figure is stated, computed, assumed or a limit, and says which.</summary>
internal sealed class SheetBuilder
{
    /// <summary>Quantities whose missed limit means that the first aid for burns, as stated, does harm: a card must not hand it to the crew.</summary>
    private static readonly FrozenSet<string> FirstAid = FrozenSet.Create(
        StringComparer.Ordinal, "site.first_aid_harms", "site.first_aid_ice", "site.burn_cooling", "site.eye_flushing");

    private readonly Plan plan;
    private readonly Report report;
    private readonly QuantityContext context;
    private readonly RuleBook book;
    private readonly SheetQuantities quantities;
    private readonly SheetFigures figures;
    private readonly IReadOnlyList<PlannedLoad> loads;

    public SheetBuilder(QuantityContext context, Report report, RuleBook book)
    {
        (this.context, this.book) = (context, book);
        plan = context.Plan;
        this.report = report;
        quantities = new SheetQuantities(context);
        figures = new SheetFigures(context, report);
        loads = quantities.Loads();
    }

    public SiteSheet Build(DateOnly issued, bool draft)
    {
        var machines = new SheetMachines(plan, quantities, figures);
        var proof = new SheetProof(context, report, book, course => RunPerLoad(course, PayloadOf(course)));
        return new SiteSheet
        {
            PlanId = report.PlanId,
            PlanTitle = report.PlanTitle,
            Revision = report.Revision,
            Language = plan.Identity.Language,
            PlanHash = report.PlanHash,
            BookHash = report.BookHash,
            ProgramVersion = report.ProgramVersion,
            Issued = issued,
            IsDraft = draft,
            Failing = [.. report.Findings.Where(finding => finding.Status == Status.Fail)],
            Warnings = [.. report.Findings.Where(finding => finding is { Status: Status.Warn, Outcome: Outcome.Met or Outcome.Missed })],
            ShiftStart = quantities.Start,
            ShiftEnd = quantities.End,
            Moments = new SheetMoments(plan, quantities, figures, loads).All(),
            Courses = [.. plan.Courses.Select(OfCourse)],
            Loads = [.. loads.Select(OfLoad)],
            Widths = Widths(),
            Speeds = machines.Speeds(),
            Buffers = machines.Buffers(),
            Feeder = machines.Feeder(),
            Rollers = machines.Rollers(),
            Plants = [.. (plan.Supply?.Plants ?? []).Select(OfPlant)],
            Committed = [.. Committed()],
            GritWindow = figures.Of("early-friction.grit_window", "early-friction"),
            Limits = proof.Limits(),
            Trucks = machines.Trucks(),
            Joints = Joints(),
            BondCoats = BondCoats(),
            Grit = OfGrit(),
            Mixes = [.. plan.Mixes.Select(OfMix)],
            Obstacles = Obstacles(),
            OverheadLines = OverheadLines(),
            Opening = new SheetOpening(
                SheetFigures.Stated(plan.Opening?.Below?.Value), plan.Opening?.ReleasedBy, plan.Site?.Closure?.To is { } end ? quantities.At(end) : null),
            People = plan.Identity.People,
            HoldPoints = plan.HoldPoints,
            Contingencies = plan.Contingencies,
            Tests = proof.Tests(),
            Measures = proof.Measures(plan.Measures.Where(measure => measure.Kind is not MeasureKind.BurnsFirstAid || !report.Findings.Any(IsWrongFirstAid))),
            Wrong = [.. report.Findings.Where(IsWrong)],
        };
    }

    private IReadOnlyList<SheetWidth> Widths() => [.. plan.Runs.SelectMany(run => run.WidthAlong.Select(width => new SheetWidth(
        run.Id, SheetFigures.Stated(width.At).Value, SheetFigures.Stated(width.Value).Value!)))];

    private IReadOnlyList<SheetJoint> Joints() => [.. plan.Joints.Select(joint => new SheetJoint(
        joint.Id, joint.Kind, joint.Where, SheetFigures.Stated(joint.OffsetBelow), joint.Form, joint.Height, SheetFigures.Stated(joint.Removed), joint.Coated))];

    private IReadOnlyList<SheetBondCoat> BondCoats() => [.. plan.BondCoats.Select(coat => new SheetBondCoat(
        coat.Below, coat.Applied, coat.Reason, coat.Binder, SheetFigures.Stated((IMeasure?)coat.MassRate ?? coat.VolumeRate), coat.Basis,
        SheetFigures.Stated(coat.Residue), coat.Sprayed is { } sprayed ? quantities.At(sprayed) : null, coat.Trafficked))];

    private SheetGrit? OfGrit() => plan.EarlyFriction is { Grit: true } grit
        ? new SheetGrit(grit.GritSize, SheetFigures.Stated(grit.Rate), grit.GritBy is { } by ? new SheetFigure(SheetFigures.Shown(by.Si, UnitTable.Find("min")), FigureKind.Stated) : SheetFigures.Stated(null), SheetFigures.Stated(plan.Mixes.FirstOrDefault(IsOnTop)?.GritEmbedment?.Value))
        : null;

    private IReadOnlyList<SheetObstacle> Obstacles() => [.. plan.Runs.SelectMany(run => run.Obstacles.Select(obstacle => new SheetObstacle(
        run.Id, SheetFigures.Stated(obstacle.At), obstacle.What, obstacle.Treatment, obstacle.Who, obstacle.When)))];

    private IReadOnlyList<SheetOverheadLine> OverheadLines() => [.. (plan.Site?.OverheadLines ?? []).Select(line => new SheetOverheadLine(
        line.Id, SheetFigures.Stated(line.At), SheetFigures.Stated(line.Height)))];

    // What is stated and misses its limit; what is not stated is no wrong instruction.
    private static bool IsWrong(Finding finding) => finding is { Outcome: Outcome.Missed, Check: not CheckKind.Present, Status: Status.Fail or Status.Warn }
        && finding.RuleName.StartsWith("safety/", StringComparison.Ordinal);

    private static bool IsWrongFirstAid(Finding finding) => IsWrong(finding) && FirstAid.Contains(finding.Quantity);

    private bool IsOnTop(Mix mix) => plan.Courses.Count > 0 && Same(mix.Id, plan.Courses[^1].Mix);

    private SheetCourse OfCourse(Course course)
    {
        var address = $"course:{course.Id}";
        var mix = plan.Mixes.FirstOrDefault(mix => Same(mix.Id, course.Mix));
        var own = loads.Where(load => ReferenceEquals(load.Course, course)).ToList();
        var payload = PayloadOf(course);
        return new SheetCourse(
            course.Id,
            mix?.Name ?? course.Mix,
            SheetFigures.Stated(course.Thickness),
            figures.Computed(quantities.BehindScreed(course), course.Thickness.Unit, ("mm", "in")),
            plan.Pavers.SelectMany(paver => paver.Screeds).FirstOrDefault(screed => Same(screed.Course, course.Id))?.LevelledOn,
            figures.Of("course.tonnage_computed", address),
            SheetFigures.Stated(course.Tonnage),
            figures.Of("course.demand", address),
            own.Count,
            SheetFigures.Stated(payload),
            RunPerLoad(course, payload),
            figures.Computed(own.Count > 0 ? own[^1].Load.Size : null, payload?.Unit, ("t", "short ton")),
            own.Count > 0 ? figures.Of("trucks.interval", $"trucks:{own[0].Trucks.Id}") : SheetFigures.None,
            figures.Of("course.densification_window", address))
        {
            MixId = course.Mix,
            PerArea = figures.Of("course.spread", address),
            PerLength = figures.PerLength(quantities.PerMetre(course)),
            Hours = [.. quantities.Windows(course).Select(hour => new SheetHour(hour.From, SheetFigures.Shown(hour.Seconds, UnitTable.Find("min"))))],
        };
    }

    private IMeasure? PayloadOf(Course course) => loads.FirstOrDefault(load => ReferenceEquals(load.Course, course))?.Trucks.Payload;

    private SheetFigure RunPerLoad(Course course, IMeasure? payload) => figures.Computed(payload?.Si / quantities.PerMetre(course), null, ("m", "ft"));

    private SheetLoad OfLoad(PlannedLoad load, int index) => new(
        index + 1,
        load.Load.OfSeries + 1,
        load.Course.Id,
        load.Course.Mix,
        load.Trucks.Plant,
        load.Trucks.Id,
        SheetFigures.Shown(load.Load.Size, load.Trucks.Payload!.Unit),
        load.Load.IsLast,
        load.LeavesAt,
        load.TipsBy,
        load.Ends?.Run.Id,
        load.Ends is { } ends ? SheetFigures.Shown(ends.Station, ends.Run.From?.Unit ?? figures.UnitOf(("m", "ft"))) : null);

    private static SheetMix OfMix(Mix mix) => new(
        mix.Id,
        mix.Name ?? mix.Id,
        SheetFigures.Stated(mix.Loading?.Lowest),
        SheetFigures.Stated(mix.Loading?.Expected),
        SheetFigures.Stated(mix.Loading?.Highest),
        SheetFigures.Stated(mix.RefuseBelow?.Value));

    private SheetPlant OfPlant(Plant plant) => new(
        plant.Id,
        [.. plan.Mixes.Where(mix => plant.Mixes.Contains(mix.Id, StringComparer.Ordinal) || (plant.Mixes.Count == 0 && plan.Supply!.Plants.Count == 1)).Select(OfMix)],
        SheetFigures.Stated(plant.Planned),
        plant.Spare);

    private IEnumerable<SheetCommitted> Committed()
    {
        foreach (var mix in plan.Mixes)
        {
            var groups = (plan.Supply?.Trucks ?? []).Where(trucks => Same(trucks.Mix, mix.Id)).ToList();
            var unit = groups.FirstOrDefault()?.Payload?.Unit;
            var under = groups.Select(quantities.OnTheWay).ToList();
            var buffers = plan.Pavers.SelectMany(paver => paver.Buffers)
                .Where(buffer => plan.Courses.Any(course => Same(course.Id, buffer.Course) && Same(course.Mix, mix.Id)))
                .ToList();
            yield return new SheetCommitted(
                mix.Id,
                figures.Computed(under.Count == 0 || under.Contains(null) ? null : under.Sum(), unit, ("t", "short ton")),
                figures.Computed(buffers.Count == 0 || buffers.Exists(buffer => buffer.Capacity is null) ? null : buffers.Sum(buffer => buffer.Capacity!.Si), unit, ("t", "short ton")));
        }
    }

    private static bool Same(string? a, string? b) => a is not null && string.Equals(a, b, StringComparison.Ordinal);
}

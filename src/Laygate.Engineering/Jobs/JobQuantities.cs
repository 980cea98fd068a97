using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>What lies between the shifts of a job, and what they come to together.</summary>
internal static class JobQuantities
{
    private static readonly Define OfInterval = new(ElementKind.Interval);
    private static readonly Define OfCourse = new(ElementKind.JobCourse);
    private static readonly Define OfRun = new(ElementKind.JobRun);
    private static readonly Define OfPlant = new(ElementKind.JobPlant);
    private static readonly Define OfJoint = new(ElementKind.JobJoint);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        OfRun.Number("shifts", Shape.None, "Shifts that lay the run.", (c, e) => Number(c, "job-run.shifts", "N", "N = shifts that name the run", c.Job!.Of((Run)e.Subject!).Count()), Counted),
        OfRun.Flag("lies_on_earlier", "Whether another shift lays what the run lies upon.", (c, e) => Answers.Follows(Grounds(c, e).Count > 0)),
        OfRun.Number("age_below", Shape.Hours, "Time from the last metre of what the run lies upon, laid in another shift, to the start of the shift that lays the run; below zero where that comes later.", AgeBelow, new Method(
            "Δt = start of the shift − end of the shift that lays what is below, the least", Sources.Definition, "runs that share stations; strips side by side lie upon each other in the same order where there are as many of both; a shift lays its last metre at its end, or later where its runs need longer")),
        OfRun.Number("cooling_below", Shape.Minutes, "Time from the last metre of what the run lies upon until that has cooled enough for hauling and for the next course; its upper end is the slow one.", CoolingBelow, CoolingMethods.OverlaidFrom),
        OfRun.Flag("lies_beside_another", "Whether the run is laid beside one that an earlier shift has laid.", JobLanes.LiesBeside),
        OfRun.Presence("joint_to_neighbour", "A joint to each run of an earlier shift beside which the run is laid.", JobLanes.Joint),
        OfInterval.Flag("alongside", "Whether both shifts lay at the same time.", (c, e) => Of(e) is { Earlier: { Start: not null, End: not null }, Later: { Start: not null, End: not null } } pair
            ? Answers.Follows(pair.Earlier.IsAlongside(pair.Later), Date(e)) : Answer.Missing(Date(e))),
        OfInterval.Flag("shares_people", "Whether somebody is named for both shifts.", (_, e) => Answers.Follows(People(Of(e)).Any(), Date(e))),
        OfInterval.Number("rest", Shape.Hours, "Time from the end of laying of one shift to the start of set-up of the next.", Rest, new Method(
            "Δt = start − set-up − end", Sources.Definition, "what each shift clears away after laying, and the way home, are not in it: the rest is shorter still")),
        OfInterval.Number("machines_shared", Shape.None, "Machines that both shifts need: pavers of their runs, rollers, a feeder.", Machines, Counted),
        OfCourse.Flag("tonnage_is_stated", "Whether the job states the tonnage ordered for the course.", (_, e) => Answers.Follows(((Course)e.Subject!).Tonnage is not null, new InputReference(e.Address, "tonnage"))),
        OfCourse.Stated<Course>("tonnage_stated", Shape.Mass, "tonnage", "Tonnage ordered for the course in the whole job.", course => course.Tonnage),
        OfCourse.Number("tonnage_computed", Shape.Mass, "Mix that the course takes in all shifts together.", Tonnage, new Method(
            "M = Σ M of the shifts", Sources.Navedtra14080, "as the tonnage of a course in one shift: no allowance for waste")),
        OfPlant.Flag("shared", "Whether two shifts take mix from the plant at the same time.", (c, e) => Answers.Follows(JobPlants.Busiest(c.Job!, (Plant)e.Subject!).Count > 1, new InputReference(e.Address, "mixes"))),
        OfPlant.Number("demand_together", Shape.Flow, "Mix that the shifts which lay at the same time take from the plant on average, when it is most.", JobPlants.Demand, new Method(
            "R = Σ Rm over the courses of the shifts that lay at one time, the largest", Sources.Balance, "a mix that several plants make is counted at each of them by its share: one part for each plant")),
        OfJoint.Flag("offset_compared", "Whether the distance to the joint of the course below is stated and two lanes of both courses tell how far it can be.", JointOffsets.IsCompared),
        OfJoint.Stated<Joint>("offset_below", Shape.Thickness, "offset_below", "Distance to the nearest parallel joint of the course below, as stated.", joint => joint.OffsetBelow),
        OfJoint.Number("offset_largest", Shape.Thickness, "Largest distance to the joint of the course below that the widths of the lanes of both courses allow.", JointOffsets.Largest, new Method(
            "d = max |s + Wu − Wl|, s between 0 and ΣWl − ΣWu", Sources.Balance, "two lanes of both courses over the same stations, each of one width; one course lies within the edges of the other")),
        OfPlant.Stated<Plant>("nameplate", Shape.Flow, "nameplate", "Output on the name plate of the plant.", plant => plant.Nameplate),
        .. JobOpenings.All(),
        .. LotQuantities.All(),
    ];

    private static Method Counted { get; } = new("count", Sources.Definition, "whole numbers");

    private static Interval Of(Element element) => (Interval)element.Subject!;

    // A later date is what there is to change.
    private static InputReference Date(Element element) => new(element.Address, "date");

    private static Answer Number(QuantityContext context, string quantity, string symbol, string expression, double value) =>
        new Calculation(context).Result(quantity, symbol, expression, value);

    // Shifts that lay what a run lies upon, other than its own.
    internal static List<(JobShift Own, JobShift Ground)> Grounds(QuantityContext context, Element element)
    {
        var (job, run) = (context.Job!, (Run)element.Subject!);
        return job.Of(run).FirstOrDefault() is not { } own ? []
            : [.. JobView.Below(job.Whole, run).SelectMany(lower => job.Of(lower).Take(1)).Where(ground => !ReferenceEquals(ground, own)).Distinct().Select(ground => (own, ground))];
    }

    private static (JobShift Own, JobShift Ground)? Youngest(QuantityContext context, Element element) =>
        Grounds(context, element).OrderBy(one => one.Own.Start - one.Ground.End).Cast<(JobShift, JobShift)?>().FirstOrDefault();

    private static Answer AgeBelow(QuantityContext context, Element element)
    {
        if (Youngest(context, element) is not { } found)
        {
            return Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.LaidCold));
        }

        var (own, ground) = found;
        var calculation = new Calculation(context);
        calculation.Show("t1", "end of laying", $"job-shift:{ground.Id}", Moment(ground.End));
        calculation.Show("t2", "start of laying", $"job-shift:{own.Id}", Moment(own.Start));
        return calculation.Result("job-run.age_below", "Δt", "Δt = t2 − t1", (own.Start - ground.End)?.TotalSeconds) with { Input = new InputReference($"job-shift:{own.Id}", "date") };
    }

    private static Answer CoolingBelow(QuantityContext context, Element element) =>
        Youngest(context, element) is { Ground.Cooled: { } cooled } ? cooled : Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.LaidCold));

    internal static string Moment(DateTimeOffset? at) => at?.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture) ?? "not known";

    private static Answer Rest(QuantityContext context, Element element)
    {
        var (earlier, later) = (Of(element).Earlier, Of(element).Later);
        var calculation = new Calculation(context);
        calculation.Show("t1", "end of laying", $"job-shift:{earlier.Id}", Moment(earlier.End));
        calculation.Show("t2", "start of laying", $"job-shift:{later.Id}", Moment(later.Start));
        var setUp = later.Plan.Shift?.SetUp is { } stated ? calculation.Stated("ts", stated, $"job-shift:{later.Id}", "set_up") : 0;
        return calculation.Result("interval.rest", "Δt", "Δt = t2 − ts − t1", (later.Start - earlier.End)?.TotalSeconds - setUp) with { Input = Date(element) };
    }

    private static IEnumerable<string> People(Interval pair) =>
        pair.Earlier.Plan.Identity.People.Select(person => person.Name).OfType<string>().Intersect(pair.Later.Plan.Identity.People.Select(person => person.Name).OfType<string>(), StringComparer.OrdinalIgnoreCase);

    private static Answer Machines(QuantityContext context, Element element)
    {
        var pair = Of(element);
        var both = Needed(pair.Earlier).Intersect(Needed(pair.Later), StringComparer.Ordinal).ToList();
        var calculation = new Calculation(context);
        foreach (var machine in both)
        {
            calculation.Show("N", "needed by both", machine, machine);
        }

        return calculation.Result("interval.machines_shared", "N", "N = machines that both shifts need", both.Count) with { Input = Date(element) };
    }

    private static IEnumerable<string> Needed(JobShift shift) =>
    [
        .. shift.Pavers.Select(id => $"paver:{id}"),
        .. (shift.Plan.Rolling?.Rollers ?? []).Where(roller => roller.Spare is not true).Select(roller => $"roller:{roller.Id}"),
        .. shift.Plan.Supply?.Feeder is { } feeder ? [$"feeder:{feeder.Id}"] : Array.Empty<string>(),
    ];

    private static Answer Tonnage(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var sum = 0.0;
        foreach (var shift in context.Job!.Shifts)
        {
            foreach (var course in shift.Courses.Where(course => string.Equals(course.Course.Id, element.Id, StringComparison.Ordinal)))
            {
                calculation.Take(course.Mass);
                if (course.Mass.Value is NumberValue mass)
                {
                    sum += mass.Si;
                    calculation.Show("M", "course.tonnage_computed", $"job-shift:{shift.Id}", mass.Si, UnitTable.Find(context.System == UnitSystem.UnitedStates ? "short ton" : "t"));
                }
            }
        }

        return calculation.Result("job-course.tonnage_computed", "M", "M = Σ M of the shifts", sum > 0 || calculation.Stopped is not null ? sum : null);
    }
}

using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>Traffic on what one shift has laid, while another lays upon it or beside it.</summary>
internal static class JobOpenings
{
    private static readonly Define OfRun = new(ElementKind.JobRun);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        OfRun.Flag("opened_with_below", "Whether what the run lies upon is opened to traffic after the shift has begun that lays the run: traffic then comes onto the run.", (c, e) =>
            Answers.Follows(Lower(c, e) is not null, Lower(c, e) is { } lower ? Opening(lower.Ground) : null)),
        OfRun.Number("open_after", Shape.Hours, "Time from the last metre of the shift that lays the run to the opening of what it lies upon; below zero where it is laid later.", OpenAfter, new Method(
            "Δt = opening of the shift below − end of the shift that lays the run, the least", Sources.Definition, "a shift lays its last metre at its end, or later where its runs need longer")),
        OfRun.Number("soft_until", Shape.Minutes, "Minutes from the last metre of the shift that lays the run until its whole hot body is below the opening temperature; its upper end is the slow one.", (c, e) =>
            Lower(c, e)?.Own.SoftUntil ?? Nothing, CoolingMethods.SoftUntil),
        OfRun.Flag("hours_asked", "Whether the plan of the shift that lays the run, or its specification, asks for hours before its opening.", (c, e) => Answers.Follows(Lower(c, e) is { Own.HoursAsked: not null })),
        OfRun.Number("hours_closed", Shape.Hours, "Hours for which the shift that lays the run is to stay closed, as its plan or its specification says.", (c, e) =>
            Lower(c, e) is { Own: { HoursAsked: { } hours } own } ? Answers.Measure(hours, new InputReference($"job-shift:{own.Id}", "opening.after")) : Nothing),
        OfRun.Flag("beside_opened_lane", "Whether a lane beside which the run is laid is opened to traffic before the shift begins that lays the run.", (c, e) =>
            Answers.Follows(Beside(c, e, (own, other) => other.OpensAt < own.Start) is not null)),
        OfRun.Flag("step_planned", "Whether the shift that opens the lane beside the run plans a step under traffic.", StepPlanned),
        OfRun.Flag("beside_open_lane", "Whether a lane beside which the run is laid is open to traffic while that goes on, the place not being closed in full.", (c, e) =>
            Answers.Follows(Beside(c, e, IsOpen) is not null)),
        OfRun.Category("traffic_planned", Words.Of<TrafficAlongside>(), "Traffic beside the works, as the shift that lays the run states it.", TrafficPlanned),
    ];

    private static Answer Nothing => Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.LaidCold));

    private static InputReference Opening(JobShift shift) => new($"job-shift:{shift.Id}", "opening");

    // The shift that lays the run, and the one below whose opening comes soonest after it.
    private static (JobShift Own, JobShift Ground)? Lower(QuantityContext context, Element element) => JobQuantities.Grounds(context, element)
        .Where(pair => pair.Ground.Start < pair.Own.Start && pair.Ground.OpensAt > pair.Own.Start).OrderBy(pair => pair.Ground.OpensAt).Cast<(JobShift, JobShift)?>().FirstOrDefault();

    private static Answer OpenAfter(QuantityContext context, Element element)
    {
        if (Lower(context, element) is not var (own, ground))
        {
            return Nothing;
        }

        var calculation = new Calculation(context);
        calculation.Show("t1", "end of laying", $"job-shift:{own.Id}", JobQuantities.Moment(own.End));
        calculation.Show("t2", "opening", $"job-shift:{ground.Id}", JobQuantities.Moment(ground.OpensAt));
        return calculation.Result("job-run.open_after", "Δt", "Δt = t2 − t1", (ground.OpensAt - own.End)?.TotalSeconds) with { Input = Opening(ground) };
    }

    private static bool IsOpen(JobShift own, JobShift other) => other.OpensAt < own.End && own.Plan.Site?.Closure?.Kind is not ClosureKind.Full;

    private static (JobShift Own, JobShift Other)? Beside(QuantityContext context, Element element, Func<JobShift, JobShift, bool> holds)
    {
        var (job, run) = (context.Job!, (Run)element.Subject!);
        return job.Of(run).FirstOrDefault() is { } own
            && JobLanes.Earlier(job, run).SelectMany(lane => job.Of(lane).Take(1)).FirstOrDefault(other => holds(own, other)) is { } found ? (own, found) : null;
    }

    private static Answer StepPlanned(QuantityContext context, Element element) => Beside(context, element, (own, other) => other.OpensAt < own.Start) is var (_, other)
        ? Answers.Flag(other.Plan.Site?.Conditions?.StepLeft, new InputReference($"job-shift:{other.Id}", "site.conditions.step_left")) : Nothing;

    private static Answer TrafficPlanned(QuantityContext context, Element element) => Beside(context, element, IsOpen) is var (own, _)
        ? Answers.Word(own.Plan.Site?.Traffic is { } traffic ? Words.Of(traffic) : null, new InputReference($"job-shift:{own.Id}", "site.traffic")) : Nothing;
}

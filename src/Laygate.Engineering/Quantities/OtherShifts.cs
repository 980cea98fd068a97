using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;

namespace Laygate.Engineering.Quantities;

/// <summary>What a plan says of the courses that other shifts lay.</summary>
internal static class OtherShifts
{
    private static readonly Define OfPlan = new(ElementKind.Plan);
    private static readonly Define OfExisting = new(ElementKind.Existing);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        OfPlan.Number("courses_in_no_shift", Shape.None, "Courses that no run of this plan lays and of which nothing says when they are laid.", InNoShift, new Method(
            "number of courses without a run and without `laid_at`", Sources.Definition, "plans with runs; where no run is stated yet, every course counts as laid in this shift")),
        OfExisting.Flag("is_course_of_job", "Whether this shift lays upon a course that another shift lays, and the plan says when.", (c, _) =>
            Answers.Follows(c.Scope.Below is [.., { LaidAt: not null }], c.Scope.Below is [.., var top] ? new InputReference($"course:{top.Id}", "laid_at") : null)),
        OfExisting.Number("course_age", Shape.Hours, "Time from the last metre of the course below, which another shift lays, to the start of laying; below zero where it is laid later.", CourseAge, new Method(
            "Δt = start of laying − last metre of the course below", Sources.Definition, "needs date and start of the shift, and when the course below is laid")),
    ];

    private static Answer InNoShift(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var silent = context.Scope.Elsewhere.Where(course => course.LaidAt is null).ToList();
        foreach (var course in silent)
        {
            calculation.Show("N", "course without a run", $"course:{course.Id}", course.Id);
        }

        var answer = calculation.Result("plan.courses_in_no_shift", "N", "N = courses without a run and without a moment", silent.Count);
        return answer with { Input = silent is [var first, ..] ? new InputReference($"course:{first.Id}", string.Empty) : new InputReference("plan", "courses") };
    }

    private static Answer CourseAge(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        calculation.Miss(ShiftTimes.Missing(context.Plan.Shift, end: false));
        if (context.Scope.Below is not [.., { LaidAt: { } laid } top])
        {
            return Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.LaidCold));
        }

        var clock = PlanView.Of(context).Clock;
        var input = new InputReference($"course:{top.Id}", "laid_at");
        calculation.Show("t1", "laid_at", input.Address, laid.Local.ToString("yyyy-MM-dd'T'HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        return calculation.Result("existing.course_age", "Δt", "Δt = start of laying − last metre of the course below", (clock.Start - clock.At(laid))?.TotalSeconds) with { Input = input };
    }
}

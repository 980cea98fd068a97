using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What a plan holds ready to control the work: releases, tests with a measure, approval.</summary>
internal static class ControlQuantities
{
    private static readonly Define Plan = new(ElementKind.Plan);
    private static readonly Define Test = new(ElementKind.Test);
    private static readonly Define Pair = new(ElementKind.Pair);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Plan.Presence("hold_before_laying", "A hold point before the first mix is laid, with criterion, evidence, owner and who releases.", (c, _) => HoldSteps.Of(c, HoldStep.BeforeLaying)),
        Plan.Presence("hold_before_opening", "A hold point before traffic, with criterion, evidence, owner and who releases.", (c, _) => HoldSteps.Of(c, HoldStep.BeforeOpening)),
        Plan.Presence("approval", "Who approved the plan, and when.", (c, _) => Answers.Fields(
            new InputReference("plan", "plan.approved"),
            ("plan.approved.name", Answers.Given(c.Plan.Identity.Approved?.Name)),
            ("plan.approved.date", c.Plan.Identity.Approved?.Date is not null))),
        Plan.Presence("finish_rolling", "A phase of finish rolling.", (c, _) => Answers.Fields(
            new InputReference("plan", "rolling.phases"), ("rolling.phases", c.Plan.Rolling?.Phases.Any(phase => phase.Kind == PhaseKind.Finish) == true))),
        Plan.Flag("several_mixes", "Whether the courses of the plan take more than one mix.", (c, _) => Answers.Follows(MixesOf(c.Plan.Courses) > 1, new InputReference("plan", "courses"))),
        Plan.Flag("two_mixes_fed", "Whether one feeder passes on the mixes of two courses that are laid together.", (c, _) =>
            Answers.Follows(c.Plan.Supply?.Feeder is not null && CourseQuantities.Pairs(c).Any(TwoMixes), new InputReference("supply", "feeder"))),
        Plan.Flag("slippery_when_new", "Whether a surface course is of a mix whose fresh binder film is slippery: stone mastic or a thin layer.", SlipperyWhenNew),
        Test.Presence("criterion", "The criterion by which the result of the test is judged.", (_, e) => Answers.Fields(
            new InputReference(e.Address, "criterion"), ("criterion", Answers.Given(((Test)e.Subject!).Criterion)))),
        Test.Presence("rate", "How many tests are made, or how often.", (_, e) => Answers.Fields(
            new InputReference(e.Address, "how_many"), ("how_many", Answers.Given(((Test)e.Subject!).HowMany) || ((Test)e.Subject!).Cores?.Count is not null))),
        Pair.Flag("two_mixes", "Whether the two courses take different mixes.", (_, e) =>
            Answers.Follows(TwoMixes((Pair)e.Subject!), new InputReference("plan", "courses"))),
        Pair.Presence("feeder", "A feeder that passes the mixes of the pair to the paver.", (c, _) => Answers.Fields(
            new InputReference("supply", "feeder"), ("supply.feeder", c.Plan.Supply?.Feeder is not null))),
    ];

    private static bool TwoMixes(Pair pair) => MixesOf([pair.Lower, pair.Upper]) > 1;

    private static int MixesOf(IEnumerable<Course> courses) => courses.Select(course => course.Mix).Distinct(StringComparer.Ordinal).Count();

    // A course or mix of which the kind is not stated may be the slippery one.
    private static Answer SlipperyWhenNew(QuantityContext context, Element element)
    {
        var view = PlanView.Of(context);
        var surfaces = context.Plan.Courses.Where(course => course.Kind == CourseKind.Surface).ToList();
        if (surfaces.Exists(course => view.MixOf(course)?.Kind is MixKind.StoneMastic or MixKind.ThinLayer))
        {
            return Answers.Follows(flag: true, new InputReference("plan", "courses"));
        }

        InputReference[] silent =
        [
            .. context.Plan.Courses.Where(course => course.Kind is null).Select(course => new InputReference($"course:{course.Id}", "kind")),
            .. surfaces.Where(course => view.MixOf(course)?.Kind is null).Select(course => new InputReference($"mix:{course.Mix}", "kind")),
        ];
        return silent.Length > 0 ? Answer.Missing(silent) : Answers.Follows(flag: false, new InputReference("plan", "courses"));
    }
}

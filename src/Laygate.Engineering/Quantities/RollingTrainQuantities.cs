using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>The rolling as a whole, and what it does to a course, a run and a mix.</summary>
internal static class RollingTrainQuantities
{
    private static readonly Define Plan = new(ElementKind.Plan);
    private static readonly Define Run = new(ElementKind.Run);
    private static readonly Define Mix = new(ElementKind.Mix);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Plan.Number("rollers_working", Shape.None, "Rollers that work in a phase; spares and plates do not count.", (c, _) => Count(c, null), Counted),
        Plan.Number("rubber_tyred_rollers", Shape.None, "Rubber-tyred rollers that work in a phase.", (c, _) => Count(c, RollerKind.Pneumatic), Counted),
        Plan.Category("turning_places", Words.Of<TurningPlaces>(), "How the places at which the rollers turn back lie to each other.", (c, _) =>
            Answers.Word(Word(c.Plan.Rolling?.TurningPlaces), Input("turning_places"))),
        Plan.Category("rollers_wait", Words.Of<WaitingPlace>(), "Where rollers stand while they wait.", (c, _) =>
            Answers.Word(Word(c.Plan.Rolling?.RollersWait), Input("rollers_wait"))),
        Mix.StatedTemperature<Mix>("start", "start.value", "Temperature above which a course of it shoves under the roller.", mix => (mix.Start?.Value, mix.Start?.Place)),
        Mix.Flag("start_stated", "Whether the plan states a start temperature.", (_, e) => Answers.Follows(((Mix)e.Subject!).Start?.Value is not null)),
        Run.Number("crossfall_highest", Shape.Share, "Steepest crossfall along the run, to whichever side.", Crossfall),
        Run.Category("start_side", Words.Of<FallSide>(), "Side of the crossfall at which the rolling begins.", (c, _) =>
            Answers.Word(Word(c.Plan.Rolling?.StartSide), Input("start_side"))),
        Run.Flag("has_open_edge", "Whether an edge has no support: free, or cut back later.", HasOpenEdge),
        Run.Number("hot_thickness", Shape.Thickness, "Thickness that is rolled at a time: the thickest hot body of the run.", HotThickness, new Method(
            "t = largest sum of the courses laid together", Sources.Definition, "nominal thicknesses")),
        Run.Stated<Run>("first_strip_from_edge", Shape.Thickness, "rolling.first_strip_from_edge", "Distance of the first strip from an edge without support.", _ => null)
            with { Compute = (c, _) => Answers.Measure(c.Plan.Rolling?.FirstStripFromEdge, Input("first_strip_from_edge")) },
        .. CourseRolling.All(),
    ];

    private static Method Counted { get; } = new("n = rollers with a phase", Sources.Definition, "needs the kind of each roller where one kind is counted");

    private static InputReference Input(string key) => new("plan", $"rolling.{key}");

    private static string? Word<T>(T? word)
        where T : struct, Enum => word is { } known ? Words.Of(known) : null;

    private static Answer Count(QuantityContext context, RollerKind? kind)
    {
        var calculation = new Calculation(context);
        var working = (context.Plan.Rolling?.Rollers ?? []).Where(roller => roller is { Phase: not null, Spare: not true }).ToList();
        foreach (var roller in working.Where(roller => roller.Kind is null))
        {
            calculation.Miss($"roller:{roller.Id}", "kind");
        }

        if (context.Plan.Rolling is null)
        {
            calculation.Miss("plan", "rolling.rollers");
        }

        var counted = working.Count(roller => kind is null ? roller.Kind != RollerKind.Plate : roller.Kind == kind);
        return calculation.Result(kind is null ? "plan.rollers_working" : "plan.rubber_tyred_rollers", "n", "n = rollers with a phase", counted);
    }

    private static Answer Crossfall(QuantityContext context, Element element)
    {
        var steepest = ((Run)element.Subject!).CrossfallAlong.MaxBy(at => Math.Abs(at.Value.Si))?.Value;
        var answer = Answers.Measure(steepest, new InputReference(element.Address, "crossfall"));
        return steepest is null ? answer : answer with { Value = new NumberValue(Math.Abs(steepest.Si)) };
    }

    private static Answer HasOpenEdge(QuantityContext context, Element element)
    {
        var run = (Run)element.Subject!;
        (string Key, EdgeKind? Kind)[] edges = [("left_edge", run.LeftEdge), ("right_edge", run.RightEdge)];
        var open = Array.Find(edges, edge => edge.Kind is EdgeKind.Free or EdgeKind.Cut);
        return open.Kind is not null
            ? Answers.Follows(flag: true, new InputReference(element.Address, open.Key))
            : Array.Exists(edges, edge => edge.Kind is null)
                ? Answer.Missing([.. edges.Where(edge => edge.Kind is null).Select(edge => new InputReference(element.Address, edge.Key))])
                : Answers.Follows(flag: false, new InputReference(element.Address, "left_edge"));
    }

    private static Answer HotThickness(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var view = PlanView.Of(context);
        var run = (Run)element.Subject!;
        double? thickest = null;
        foreach (var body in view.Passes)
        {
            var here = body.Courses.Where(course => PlanView.Lays(run, course)).ToList();
            var sum = here.Sum(course => calculation.Stated("t", course.Thickness, $"course:{course.Id}", "thickness"));
            thickest = here.Count > 0 && !(sum <= thickest) ? sum : thickest;
        }

        if (thickest is null)
        {
            calculation.Miss(element.Address, "courses");
        }

        return calculation.Result("run.hot_thickness", "t", "t = largest sum of the courses laid together", thickest);
    }
}

using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What a pair is made of, what its upper paver runs on, and what is agreed about its tests.</summary>
internal static class PairBuildQuantities
{
    private static Answer OneMachine(QuantityContext context, Element element)
    {
        var pair = (Pair)element.Subject!;
        var view = PlanView.Of(context);
        var paver = view.AnyPaverOf(pair.Upper);
        return Answers.Follows(
            paver is not null && ReferenceEquals(paver, view.AnyPaverOf(pair.Lower)) && paver.Screeds.Count > 1, new InputReference($"course:{pair.Upper.Id}", "distance"));
    }

    private static Answer ScreedDistance(QuantityContext context, Element element)
    {
        var upper = ((Pair)element.Subject!).Upper;
        if (upper.Distance is { } stated)
        {
            return Answers.Measure(stated, new InputReference($"course:{upper.Id}", "distance"));
        }

        var calculation = new Calculation(context);
        var delay = PairQuantities.StatedDelayOf(calculation, upper);
        var speed = PaverQuantities.SpeedOf(calculation, PlanView.Of(context).AnyPaverOf(upper));
        return calculation.Result("pair.screed_distance", "a", "a = v · Δt", speed * delay);
    }

    private static readonly Define Pair = new(ElementKind.Pair);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Pair.Flag("one_machine", "Whether one paver with a screed for each lays both courses.", OneMachine),
        Pair.Number("screed_distance", Shape.Length, "Distance between the screeds of the two courses.", ScreedDistance, new Method(
            "stated, else a = v · Δt", Sources.Definition, "needs distance or delay of the upper course")),
        Pair.Number("thickness", Shape.Thickness, "Nominal thickness of both courses together.", Thickness, new Method(
            "h = h1 + h2", Sources.Definition, "both thicknesses above zero")),
        Pair.Flag("porous", "Whether both courses are of porous asphalt.", Porous),
        Pair.Flag("has_free_edge", "Whether an edge of the pair is unsupported.", HasFreeEdge),
        Pair.Flag("upper_runs_on_lower", "Whether the paver of the upper course runs on the hot lower course.", UpperRunsOnLower),
        Pair.Presence("evenness_test", "Where, when and by whom the evenness of the pair is tested, and by what criterion.", EvennessTest),
        Pair.Presence("density_method", "How the density of the cores of the pair is found: stated when every test on cores says it.", DensityMethod),
    ];

    private static Answer Thickness(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var pair = (Pair)element.Subject!;
        return calculation.Result(
            "pair.thickness", "h", "h = h1 + h2",
            calculation.Stated("h1", pair.Lower.Thickness, $"course:{pair.Lower.Id}", "thickness")
            + calculation.Stated("h2", pair.Upper.Thickness, $"course:{pair.Upper.Id}", "thickness"));
    }

    // One course of another kind decides; both must be porous for a yes.
    private static Answer Porous(QuantityContext context, Element element)
    {
        var (view, pair) = (PlanView.Of(context), (Pair)element.Subject!);
        (MixKind? Kind, InputReference Input)[] mixes =
            [.. new[] { pair.Lower, pair.Upper }.Select(course => (view.MixOf(course)?.Kind, new InputReference($"mix:{course.Mix}", "kind")))];
        if (Array.Find(mixes, mix => mix.Kind is not null and not MixKind.Porous) is { Kind: not null } other)
        {
            return Answers.Follows(flag: false, other.Input);
        }

        InputReference[] silent = [.. mixes.Where(mix => mix.Kind is null).Select(mix => mix.Input).Distinct()];
        return silent.Length > 0 ? Answer.Missing(silent) : Answers.Follows(flag: true, mixes[0].Input);
    }

    private static Answer HasFreeEdge(QuantityContext context, Element element)
    {
        var (view, pair) = (PlanView.Of(context), (Pair)element.Subject!);
        Answer[] edges = [.. view.RunsOf(pair.Lower).Intersect(view.RunsOf(pair.Upper))
            .Select(run => context.Get("run.has_free_edge", view.Of(ElementKind.Run, run.Id)!))];
        return edges.Length == 0 ? Answer.Missing(new InputReference("plan", "runs"))
            : Array.Find(edges, edge => edge.Value is FlagValue { Yes: true })
                ?? Array.Find(edges, edge => edge.Value is null)
                ?? edges[0];
    }

    private static Answer UpperRunsOnLower(QuantityContext context, Element element)
    {
        var pair = (Pair)element.Subject!;
        if (PlanView.Of(context).AnyPaverOf(pair.Upper) is not { } paver)
        {
            return Answer.Missing(new InputReference("plan", "pavers"));
        }

        var input = new InputReference($"paver:{paver.Id}", "carried_by");
        return Answers.Flag(paver.CarriedBy is { } carrier ? carrier == CarriedBy.LowerCourse : null, input);
    }

    private static Answer EvennessTest(QuantityContext context, Element element) => Answers.Fullest(
        context.Plan.Tests
            .Where(test => test.Kind == TestKind.Evenness && (test.Course is null || PlanView.Same(test.Course, ((Pair)element.Subject!).Upper.Id)))
            .Select(test => Answers.Fields(
                new InputReference($"test:{test.Id}", string.Empty),
                ("where", Answers.Given(test.Where)),
                ("when", Answers.Given(test.When)),
                ("by", Answers.Given(test.By)),
                ("criterion", Answers.Given(test.Criterion)))),
        new InputReference("plan", "tests"), Words.Of(TestKind.Evenness), "where", "when", "by", "criterion");

    private static Answer DensityMethod(QuantityContext context, Element element)
    {
        Answer[] tests = [.. PairQuantities.CoredTests(context, element).Select(test => Answers.Fields(
            new InputReference($"test:{test.Id}", string.Empty), ("cores.density_method", Answers.Given(test.Cores!.DensityMethod))))];
        return tests.Length == 0 ? Answer.Missing(new InputReference("plan", "tests")) : Answers.Weakest(tests);
    }
}

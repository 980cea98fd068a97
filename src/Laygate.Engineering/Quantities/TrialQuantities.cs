using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What a trial length showed for a course, and how far the plan is like it.</summary>
internal static class TrialQuantities
{
    private static readonly Define Course = new(ElementKind.Course);
    private static readonly Define Test = new(ElementKind.Test);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Course.Flag("in_pair", "Whether the course is one of two laid hot-on-hot.", (c, e) => Answers.Follows(
            CourseQuantities.Pairs(c).Any(pair => ReferenceEquals(pair.Lower, e.Subject) || ReferenceEquals(pair.Upper, e.Subject)))),
        Course.Presence("trial_length", "A trial length that speaks for the course.", Planned),
        Test.Presence("trial_result", "Passes of a trial length and the density that they reached.", (_, e) => Result((Test)e.Subject!)),
        Course.Flag("has_trial_result", "Whether a trial length states what it reached for the course.", (c, e) => Answers.Follows(Of(c, e)?.Reached is not null)),
        Course.Number("trial_density", Shape.Share, "Density that the trial length reached, as a share of the reference density.", (c, e) =>
            Answers.Measure(Of(c, e)?.Reached?.Density, Input(c, e, "density"))),
        Course.Number("trial_density_behind_screed", Shape.Share, "Density behind the screed in the trial length, as a share of the reference density.", (c, e) =>
            Answers.Measure(Of(c, e)?.Reached?.DensityBehindScreed, Input(c, e, "density_behind_screed"))),
        Course.Number("trial_thickness", Shape.Thickness, "Compacted thickness of the trial length.", (c, e) =>
            Answers.Measure(Of(c, e)?.Reached?.Thickness, Input(c, e, "thickness"))),
        Course.Number("passes_over_trial", Shape.None, "Planned passes less those of the trial length: the least over its phases.", PassesOver, new Method(
            "Δn = least of n − n(trial)", Sources.Definition, "below zero where the plan rolls less often than the trial did")),
        Course.Number("temperature_over_trial", Shape.Difference, "Temperature behind the screed less that of the trial length.", TemperatureOver, new Method(
            "ΔT = T − T(trial)", Sources.Definition, "lowest temperature of the plan where it is stated, else the expected one; one place for both")),
        Course.Flag("same_mix_as_trial", "Whether the trial length was laid with the mix of the course.", SameMix),
        Course.Flag("same_rollers_as_trial", "Whether the rollers of the initial and main phases are those of the trial length.", SameRollers),
    ];

    /// <summary>The trial length that speaks for a course: the one that names it, or one that names none where the plan has a single course; one with a result first.</summary>
    private static Test? Of(QuantityContext context, Element element) => context.Plan.Tests
        .Where(test => test.Kind == TestKind.TrialLength
            && (PlanView.Same(test.Course, element.Id) || (test.Course is null && context.Plan.Courses.Count == 1)))
        .OrderBy(test => test.Reached is null)
        .FirstOrDefault();

    private static InputReference Input(QuantityContext context, Element element, string key) =>
        Of(context, element) is { } test ? new InputReference($"test:{test.Id}", $"reached.{key}") : new InputReference("plan", "tests");

    private static Answer Planned(QuantityContext context, Element element)
    {
        var input = new InputReference("plan", "tests");
        return Of(context, element) is { } test
            ? new() { Value = new PresenceValue(PresenceLevel.Stated, []), Input = new InputReference($"test:{test.Id}", string.Empty) }
            : new()
            {
                Value = new PresenceValue(PresenceLevel.Absent, []) { Remarks = Unproved(context, element) },
                Input = input,
                Note = Note.Of(NoteIds.EntryMissing, ("list", "tests"), ("kind", "trial-length"), ("fields", "course, done and reached")),
            };
    }

    private static Answer Result(Test test) => Answers.Fields(
        new InputReference($"test:{test.Id}", string.Empty),
        ("reached.passes", test.Reached?.Passes.Count > 0),
        ("reached.density", test.Reached?.Density is not null));

    // What is asked of the rollers, where the plan states it: nothing but a trial shows that they reach it.
    private static IReadOnlyList<Note> Unproved(QuantityContext context, Element element)
    {
        var course = (Course)element.Subject!;
        var target = PlanView.Of(context).MixOf(course)?.Density?.Degree;
        return target is not null && course.DensityBehindScreed?.Value is { } behind && context.Get("course.densifying_passes", element).Value is NumberValue passes
            ? [new Note(NoteIds.PassesUnproved,
            [
                new("passes", null, passes.Si, string.Empty),
                new("behind", null, behind.Number, behind.Unit.Spelling),
                new("target", null, target.Number, target.Unit.Spelling),
            ])]
            : [];
    }

    private static Answer PassesOver(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var trial = Of(context, element)?.Reached?.Passes ?? [];
        if (trial.Count == 0)
        {
            calculation.Miss(Input(context, element, "passes").Address, Input(context, element, "passes").Key);
        }

        double? least = null;
        foreach (var shown in trial)
        {
            var phase = (context.Plan.Rolling?.Phases ?? []).FirstOrDefault(phase => PlanView.Same(phase.Id, shown.Phase));
            var planned = calculation.Stated("n", phase?.Passes, $"phase:{shown.Phase}", "passes");
            var needed = calculation.Stated("n(trial)", shown.Passes, Input(context, element, "passes").Address, "reached.passes");
            least = least < planned - needed ? least : planned - needed;
        }

        return calculation.Result("course.passes_over_trial", "Δn", "Δn = least of n − n(trial)", least) with { Input = new InputReference("plan", "rolling.phases") };
    }

    private static Answer TemperatureOver(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var planned = ((Course)element.Subject!).LayingTemperature;
        var input = Input(context, element, "laying_temperature");
        var laid = planned?.Lowest is { } lowest
            ? calculation.Stated("T", lowest, element.Address, "laying_temperature.lowest")
            : calculation.Stated("T", planned?.Expected, element.Address, "laying_temperature.expected");
        var trial = calculation.Stated("T(trial)", Of(context, element)?.Reached?.LayingTemperature, input.Address, input.Key);
        return calculation.Result("course.temperature_over_trial", "ΔT", "ΔT = T − T(trial)", laid - trial);
    }

    private static Answer SameMix(QuantityContext context, Element element)
    {
        var input = Input(context, element, "mix");
        return Of(context, element)?.Reached?.Mix is { } mix ? Answers.Follows(PlanView.Same(mix, ((Course)element.Subject!).Mix), input) : Answer.Missing(input);
    }

    private static Answer SameRollers(QuantityContext context, Element element)
    {
        var input = Input(context, element, "rollers");
        if (Of(context, element)?.Reached?.Rollers is not { Count: > 0 } trial)
        {
            return Answer.Missing(input);
        }

        var densifying = (context.Plan.Rolling?.Phases ?? []).Where(phase => phase.Kind is PhaseKind.Initial or PhaseKind.Main).Select(phase => phase.Id);
        var working = densifying.SelectMany(phase => PhaseQuantities.Working(context, phase)).Select(roller => roller.Id).ToHashSet(StringComparer.Ordinal);
        return working.Count == 0 ? Answer.Missing(new InputReference("plan", "rolling.rollers")) : Answers.Follows(working.IsSubsetOf(trial), input);
    }
}

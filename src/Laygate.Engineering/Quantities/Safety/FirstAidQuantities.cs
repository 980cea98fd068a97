using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Steps of first aid for burns, by kind; what they say is never read.</summary>
internal static class FirstAidQuantities
{
    private static readonly Define Site = new(ElementKind.Site);

    /// <summary>Steps that every burn card that was read forbids.</summary>
    private static readonly FirstAidStep[] Forbidden =
        [FirstAidStep.PullBinderOff, FirstAidStep.PullStuckClothingOff, FirstAidStep.SolventOnSkin, FirstAidStep.Ointment];

    private static readonly InputReference Steps = new("site", "first_aid.steps");

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Site.Presence("first_aid_steps", "Steps of first aid for burns that the plan names.", List) with
        {
            Words = Words.Of<FirstAidStep>(),
            EntryNeeds = ["steps"],
        },
        Site.Flag("first_aid_named", "Steps of first aid for burns are named.", (c, _) => Answers.Follows(c.Plan.Site?.FirstAid?.Steps.Count > 0, Steps)),
        Site.Flag("first_aid_harms", "A step of first aid that burn cards forbid: binder or stuck clothing pulled off, solvent or ointment on the burn.", (c, _) =>
            Named(c, steps => steps.Any(Forbidden.Contains))),
        Site.Flag("first_aid_ice", "Ice on the burn.", (c, _) => Named(c, steps => steps.Contains(FirstAidStep.Ice))),
        Site.Stated<Site>("burn_cooling", Shape.Minutes, "first_aid.cooling", "How long a burn is cooled with water.", site => site.FirstAid?.Cooling),
        Site.Stated<Site>("eye_flushing", Shape.Minutes, "first_aid.eye_flushing", "How long an eye is flushed.", site => site.FirstAid?.EyeFlushing),
    ];

    private static Answer Named(QuantityContext context, Func<IReadOnlyList<FirstAidStep>, bool> read) =>
        context.Plan.Site?.FirstAid?.Steps is { Count: > 0 } steps ? Answers.Follows(read(steps), Steps) : Answer.Missing(Steps);

    private static Answer List(QuantityContext context, Element element) => new()
    {
        Value = new PresenceValue(PresenceLevel.Stated, [])
        {
            Entries = [.. (context.Plan.Site?.FirstAid?.Steps ?? []).Select(step => new ListEntry("site", Words.Of(step), ["steps"]))],
        },
        Input = Steps,
    };
}

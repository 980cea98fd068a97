using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Conditions of the site on which safety rules depend: stated, or following from what the plan states elsewhere. What is not known is never no.</summary>
internal static class ConditionQuantities
{
    private static readonly Define Site = new(ElementKind.Site);
    private static readonly Define Condition = new(ElementKind.Condition);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        .. SiteConditionTable.All.Select(condition => Site.Flag(condition.Key, condition.Meaning, (c, _) => condition.Holds(c))),
        .. StatedConditions(),
        Site.Flag("silica_dust", "Old pavement is milled, sawn, ground or swept dry.", (c, _) => Either(c, "milling", "dust")),
        Site.Flag("tiring", "The work is at night, or the shift is long, one of several nights in a row, or followed by a long way home.", (c, _) =>
            Either(c, "night", "long_shift")),
        Site.Flag("unsocial_hours", "The works go on at night, at a weekend or outside the usual hours for noise.", (c, _) =>
            Either(c, "night", "out_of_hours")),
        Site.Flag("fall_or_water", "Water, the edge of a structure or a bridge deck lies beside or below the works.", (c, _) =>
            Either(c, "water_edge", "bridge_deck")),
        Site.Flag("solvent_or_cut_back", "Cut-back binder or a solvent is used.", (c, _) => Either(c, "solvents")),
        Site.Flag("lasting_exposure", "Silica dust or vibrating tools act on the crew.", (c, _) =>
            Either(c, "milling", "dust", "vibrating_tools")),
        Site.Flag("hot_lower_course", "A course is laid on one that is still hot, so that people could walk between two screeds or on hot mix.", HotLowerCourse),
        Site.Flag("weak_ground", "Machines cross a bridge deck, or run on a course that is still hot.", (c, e) => AnyOf(
            Either(c, "bridge_deck"), HotLowerCourse(c, e))),
    ];

    private static IEnumerable<QuantityDefinition> StatedConditions() =>
    [
        Condition.Category("key", SiteConditionTable.Keys, "Key of a condition of the site that the plan states.", (_, e) =>
            Answers.Follows(((StatedCondition)e.Subject!).Key, SiteConditionTable.Of(e.Id).Input)),
        Condition.Flag("shown", "The plan's own data show that the condition holds.", (c, e) =>
            Answers.Follows(Shown(c, e) is { Yes: true }, Shown(c, e)?.By ?? SiteConditionTable.Of(e.Id).Input)),
        Condition.Flag("stated", "What the plan says about a condition of the site.", (c, e) =>
            Answers.Flag(((StatedCondition)e.Subject!).Yes, SiteConditionTable.Of(e.Id).Input) with { Note = ShownBy(Shown(c, e), SiteConditionTable.Of(e.Id)) }),
        Condition.Flag("left_open", "The plan begins to speak of the condition elsewhere and says too little to deny it.", LeftOpen),
    ];

    private static Answer LeftOpen(QuantityContext context, Element element)
    {
        var condition = SiteConditionTable.Of(element.Id);
        var open = Shown(context, element) is null ? condition.LeftOpen?.Invoke(context) : null;
        return Answers.Follows(open is not null, condition.Input) with
        {
            Note = open is null ? null : Note.Of(NoteIds.LeftOpen, ("meaning", condition.Meaning), (NoteArgument.At, $"{open.Address}/{open.Key}")),
        };
    }

    private static ShownCondition? Shown(QuantityContext context, Element element) => SiteConditionTable.Of(element.Id).Shown?.Invoke(context);

    private static Note? ShownBy(ShownCondition? shown, SiteCondition condition) => shown is not { Yes: true } ? null : Note.Of(
        NoteIds.ShownByData, ("meaning", condition.Meaning), (NoteArgument.At, $"{shown.By.Address}/{shown.By.Key}"));

    private static Answer Either(QuantityContext context, params string[] keys) => AnyOf([.. keys.Select(key => SiteConditionTable.Of(key).Holds(context))]);

    // Yes as soon as one is yes, no only when all are no.
    private static Answer AnyOf(params Answer[] answers)
    {
        if (Array.Find(answers, answer => answer.Value is FlagValue { Yes: true }) is { } yes)
        {
            return yes with { Origin = Origin.Computed };
        }

        var unknown = answers.Where(answer => answer.Value is null).SelectMany(answer => answer.Absence!.Missing).Distinct().ToArray();
        return unknown.Length > 0 ? Answer.Missing(unknown) : Answers.Follows(false, answers[0].Input);
    }

    private static Answer HotLowerCourse(QuantityContext context, Element element)
    {
        Answer[] courses = [.. context.Plan.Courses.Skip(1).Select(course => course.Laid is { } laid
            ? Answers.Follows(laid != Laying.Separately, new InputReference($"course:{course.Id}", "laid"))
            : Answer.Missing(new InputReference($"course:{course.Id}", "laid")))];
        return courses.Length == 0 ? Answers.Follows(false, new InputReference("plan", "courses")) : AnyOf(courses);
    }
}

using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What a plan says once for the whole job: people, codes, hold points, tests, actions.</summary>
internal static class PlanQuantities
{
    private static readonly Define Plan = new(ElementKind.Plan);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Plan.Flag("governing_named", "Whether a governing document is named.", (c, _) => Answers.Follows(
            c.Plan.Documents.Any(document => document.Kind is DocumentKind.GoverningCode or DocumentKind.Specification), new InputReference("plan", "documents"))),
        Plan.Flag("edition_is_one", "Whether each governing title is named in one edition only.", GoverningEdition.IsOne),
        Plan.Presence("people", "People on the shift with role and how they are reached.", (c, _) => Answers.Fullest(
            c.Plan.Identity.People.Select(person => Answers.Fields(
                Input("plan.people"), ("role", Answers.Given(person.Role)), ("call", Answers.Given(person.Call)))),
            Input("plan.people"), "person", "role", "call")),
        Plan.Presence("governing_code", "A governing code or specification with its edition.", (c, _) => Answers.Fullest(
            c.Plan.Documents.Where(document => document.Kind is DocumentKind.GoverningCode or DocumentKind.Specification)
                .Select(document => Answers.Fields(
                    Input("documents"), ("title", Answers.Given(document.Title)), ("edition", Answers.Given(document.Edition)))),
            Input("documents"), Words.Of(DocumentKind.Specification), "title", "edition")),
        Plan.Flag("edition_holds", "Whether the edition of each governing code and specification holds on the day of the shift.", GoverningEdition.Holds),
        Plan.Presence("spare_roller", "A roller that stands by as a spare.", SpareRoller),
        Plan.Presence("hold_points", "Hold points with criterion, evidence, owner and who releases: stated when every one has them.", HoldPoints),
        .. Enum.GetValues<TestKind>().Select(TestOf),
        .. Enum.GetValues<ContingencyEvent>().Select(ActionOn),
    ];

    /// <summary>A word of the plan as part of a quantity's name.</summary>
    internal static string Underscored(string word) => word.Replace('-', '_');

    // Any roller may be the spare; the last one stands for the place where it is said.
    private static Answer SpareRoller(QuantityContext context, Element element)
    {
        var rollers = context.Plan.Rolling?.Rollers ?? [];
        var isThere = rollers.Any(roller => roller.Spare == true);
        var missing = rollers.Count == 0 ? Input("rolling.rollers") : new InputReference($"roller:{rollers[^1].Id}", "spare");
        return new() { Value = new PresenceValue(isThere ? PresenceLevel.Stated : PresenceLevel.Absent, []) { MissingAt = isThere ? [] : [missing] }, Input = Input("rolling.rollers") };
    }

    private static QuantityDefinition TestOf(TestKind kind) => Plan.Presence(
        $"test_{Underscored(Words.Of(kind))}",
        $"A test of the kind {Words.Of(kind)}: where, when and by whom.",
        (c, _) => Answers.Fullest(
            c.Plan.Tests.Where(test => test.Kind == kind).Select(QualityQuantities.Complete), Input("tests"), Words.Of(kind), "where", "when", "by"));

    private static QuantityDefinition ActionOn(ContingencyEvent kind) => Plan.Presence(
        $"action_{Underscored(Words.Of(kind))}",
        $"An action held ready for the event {Words.Of(kind)}, and who decides.",
        (c, _) => Answers.Fullest(
            c.Plan.Contingencies.Where(action => action.Event == kind).Select(action => Answers.Fields(
                new InputReference($"contingency:{action.Id}", string.Empty),
                ("action", Answers.Given(action.Action)),
                ("decided_by", Answers.Given(action.DecidedBy)))),
            Input("contingencies"), Words.Of(kind), "action", "decided_by"));

    private static Answer HoldPoints(QuantityContext context, Element element)
    {
        Answer[] points = [.. context.Plan.HoldPoints.Select(QualityQuantities.Complete)];
        var incomplete = Array.Find(points, point => ((PresenceValue)point.Value!).Level != PresenceLevel.Stated);
        if (points.Length == 0)
        {
            return Answers.Fields(Input("hold_points"), ("criterion", false), ("evidence", false), ("owner", false), ("released_by", false));
        }

        return incomplete is null
            ? points[0] with { Input = Input("hold_points") }
            : incomplete with { Value = new PresenceValue(PresenceLevel.Thin, ((PresenceValue)incomplete.Value!).MissingFields) };
    }

    private static InputReference Input(string key) => new("plan", key);
}

using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Sections of the method statement.</summary>
internal static class SectionQuantities
{
    private static readonly Define Plan = new(ElementKind.Plan);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Plan.Presence("sections", "Sections of the method statement by kind, with what they say and where they stand.", List) with
        {
            Words = Words.Of<SectionKind>(),
            EntryNeeds = ["what"],
            EntryMay = ["reference"],
        },
        Plan.Flag("has_method_statement", "The plan names a method statement or lists its sections.", HasStatement),
    ];

    private static Answer HasStatement(QuantityContext context, Element element)
    {
        var plan = context.Plan;
        var documents = new InputReference("plan", "documents");
        return plan.Sections.Count == 0 && plan.Documents.Count == 0
            ? Answer.Missing(documents)
            : Answers.Follows(plan.Sections.Count > 0 || plan.Documents.Any(document => document.Kind == DocumentKind.MethodStatement), documents);
    }

    private static Answer List(QuantityContext context, Element element) => new()
    {
        Value = new PresenceValue(PresenceLevel.Stated, [])
        {
            Entries = [.. context.Plan.Sections.Where(section => section.Kind is not null).Select(section => new ListEntry(
                "plan", Words.Of(section.Kind!.Value), [.. Given(section)]))],
        },
        Input = new InputReference("plan", "sections"),
    };

    private static IEnumerable<string> Given(Section section) => new[] { ("what", section.What), ("reference", section.Reference) }
        .Where(field => Answers.Given(field.Item2)).Select(field => field.Item1);
}

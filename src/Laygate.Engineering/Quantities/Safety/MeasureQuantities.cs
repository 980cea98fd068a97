using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Safety, health and environment measures as the plan lists them.</summary>
internal static class MeasureQuantities
{
    private static readonly Define Site = new(ElementKind.Site);
    private static readonly Define Measure = new(ElementKind.Measure);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Site.Presence("measures", "The measures of the plan by kind. Each says what, where and who; a measure without a kind is not judged.", List) with
        {
            Words = Words.Of<MeasureKind>(),
            EntryNeeds = ["what", "where", "who"],
            EntryMay = ["when", "checked", "reference"],
        },
        Measure.StatedWord<SafetyMeasure, MeasureKind>("kind", "kind", "Kind of the measure.", measure => measure.Kind),
    ];

    private static Answer List(QuantityContext context, Element element) => new()
    {
        Value = new PresenceValue(PresenceLevel.Stated, [])
        {
            Entries = [.. context.Plan.Measures.Where(measure => measure.Kind is not null).Select(measure => new ListEntry(
                $"measure:{measure.Id}", Words.Of(measure.Kind!.Value), [.. Given(measure)], Answers.Given(measure.Who) ? measure.Who : null))],
        },
        Input = new InputReference("plan", "measures"),
    };

    private static IEnumerable<string> Given(SafetyMeasure measure) => new[]
    {
        ("what", measure.What), ("where", measure.Where), ("who", measure.Who), ("when", measure.When), ("checked", measure.Checked), ("reference", measure.Reference),
    }.Where(field => Answers.Given(field.Item2)).Select(field => field.Item1);
}

using Laygate.Engineering.Formulas;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Strips laid end to end.</summary>
internal static class RunQuantities
{
    private static readonly Define Run = new(ElementKind.Run);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Run.Number("length", Shape.Length, "Length of the run.", Length, new Method("L = |to − from|", Sources.Definition, "needs both stations")),
        Run.Number("width_highest", Shape.Length, "Largest width along the run.", (_, e) => Width(e, highest: true)),
        Run.Number("width_lowest", Shape.Length, "Smallest width along the run.", (_, e) => Width(e, highest: false)),
    ];

    private static Answer Length(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var run = (Run)element.Subject!;
        calculation.Stated("from", run.From, element.Address, "from");
        calculation.Stated("to", run.To, element.Address, "to");
        return calculation.Result("run.length", "L", "L = |to − from|", RunProfile.Length(run));
    }

    private static Answer Width(Element element, bool highest)
    {
        var widths = ((Run)element.Subject!).Width;
        var width = highest ? widths.MaxBy(at => at.Value.Si) : widths.MinBy(at => at.Value.Si);
        return Answers.Measure(width?.Value, new InputReference(element.Address, "width"));
    }
}

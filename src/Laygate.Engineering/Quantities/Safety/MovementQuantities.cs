using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>How often trucks move at the paver.</summary>
internal static class MovementQuantities
{
    private static readonly Define Site = new(ElementKind.Site);

    /// <summary>What any of the codes that were read accepts beside a reversing truck; which of them is enough differs by place.</summary>
    private static readonly MeasureKind[] Guards = [MeasureKind.ReversingSpotter, MeasureKind.ReversingCamera, MeasureKind.ReversingBarrier, MeasureKind.ReversingAlarm];

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Site.Flag("reversing_named", "A spotter, camera, barrier or alarm for reversing trucks is named; without any the general rule speaks alone.", (c, _) =>
            Answers.Follows(c.Plan.Measures.Any(measure => measure.Kind is { } kind && Guards.Contains(kind)), new InputReference("plan", "measures"))),
        Site.Number("reversing_per_hour", Shape.None, "Trucks that reverse to paver or feeder in an hour while the paver moves, one movement for each load.", PerHour, new Method(
            "n = Σ 60 / T", Formulas.Sources.Balance, "one load, one movement; of the groups that carry one mix the one that comes most often counts")),
    ];

    private static Answer PerHour(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var trucks = context.Elements.Of(ElementKind.Trucks).ToList();
        if (trucks.Count == 0)
        {
            calculation.Miss("supply", "trucks");
        }

        // Each group of one mix could carry its whole demand, so the intervals of one mix are not added up.
        var perHour = trucks
            .GroupBy(element => ((TruckGroup)element.Subject!).Mix ?? element.Id, StringComparer.Ordinal)
            .Sum(mix => 3600 / mix.Min(element => calculation.Quantity("T", "trucks.interval", element)));
        return calculation.Result("site.reversing_per_hour", "n", "n = Σ 60 / T", perHour);
    }
}

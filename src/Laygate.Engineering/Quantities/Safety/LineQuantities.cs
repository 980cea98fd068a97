using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Overhead lines against raised bodies and conveyors.</summary>
internal static class LineQuantities
{
    private const string UsSource = "29 CFR 1910.333(c)(3), as given in training papers (second-hand)";
    private const double Foot = 0.3048;
    private const double FourInches = 4 * 0.0254;
    private const double LowVolts = 50_000;
    private const double StepVolts = 10_000;

    private static readonly Define Line = new(ElementKind.OverheadLine);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Line.Stated<OverheadLine>("voltage", Shape.Voltage, "voltage", "Voltage of the line.", line => line.Voltage),
        Line.Stated<OverheadLine>("height", Shape.Length, "height", "Height of the lowest conductor above the surface.", line => line.Height),
        Line.Stated<OverheadLine>("away", Shape.Length, "away", "Level distance from its outermost conductor to the nearest place where bodies are raised.", line => line.Away),
        Line.Number("gap", Shape.Length, "Distance from the highest raised body or conveyor to the conductor.", Gap, new Method(
            "d = √(a² + (h − r)²), h − r not below 0", Formulas.Sources.Definition,
            "straight line; where the plan does not say how far away it is raised, it counts as beneath the line; sag and sway of the conductor are not added")),
        Line.Number("gap_us", Shape.Length, "Clearance for raised parts by voltage, as a US rule states it.", GapUs, new Method(
            "10 ft up to 50 kV, 4 in more for each 10 kV above", UsSource, "any voltage above 0; a part of 10 kV counts by its share")),
    ];

    private static Answer Gap(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var line = (OverheadLine)element.Subject!;
        var height = calculation.Stated("h", line.Height, element.Address, "height");
        var raised = calculation.Stated("r", context.Plan.Site?.RaisedHeight, "site", "raised_height");
        var away = line.Away is null ? 0 : calculation.Stated("a", line.Away, element.Address, "away");
        var above = Math.Max(0, height - raised);
        return calculation.Result("overhead-line.gap", "d", "d = √(a² + (h − r)²)", Math.Sqrt((away * away) + (above * above)));
    }

    private static Answer GapUs(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var volts = calculation.Quantity("U", "overhead-line.voltage", element);
        return calculation.Result("overhead-line.gap_us", "c", "c = 10 ft + 4 in · (U − 50 kV) / 10 kV", (10 * Foot) + (FourInches * Math.Max(0, volts - LowVolts) / StepVolts));
    }
}

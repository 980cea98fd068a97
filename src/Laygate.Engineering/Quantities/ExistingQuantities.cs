using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What is laid upon.</summary>
internal static class ExistingQuantities
{
    private static readonly Define Existing = new(ElementKind.Existing);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Existing.StatedWord<Existing, ExistingSurface>("surface", "surface", "Kind of surface that is laid upon.", existing => existing.Surface),
        Existing.StatedWord<Existing, Moisture>("condition", "condition", "State of the surface at laying.", existing => existing.Condition),
        Existing.Number("cooled_for_overlay", Shape.Minutes, "Minutes from the last metre laid until what this plan has laid has cooled enough for hauling and for the next course; its upper end is the slow one.", GritAndOpeningCooling.OverlaidFrom, CoolingMethods.OverlaidFrom),
        Existing.StatedFlag<Existing>("clean", "clean", "Whether the surface is swept and clean.", existing => existing.Clean),
        Existing.Stated<Existing>(
            "left_above_interface", Shape.Thickness, "milling.left_above_interface",
            "Thickness left above the next interface after milling; 0 when milled to it.", existing => existing.Milling?.LeftAboveInterface),
    ];
}

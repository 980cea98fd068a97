namespace Laygate.Engineering.Cooling;

/// <summary>Whether a layer belongs to the hot body that is laid or to what was there before.</summary>
public enum LayerRole
{
    /// <summary>Part of the ground or pavement that the courses are laid on.</summary>
    Existing,

    /// <summary>A course that is laid hot; the hot body is all courses together.</summary>
    Course,
}

/// <summary>One layer of the stack.</summary>
/// <param name="Name">Name used in failures, such as the course's address in the plan.</param>
/// <param name="Role">Course or existing layer.</param>
/// <param name="Thickness">Thickness in m; positive. For the lowest layer of a half-space: the least thickness modelled.</param>
/// <param name="Material">Conduction and surface properties.</param>
/// <param name="Initial">Temperature when the layer joins, in °C.</param>
/// <param name="LaidAt">Time in s from the start of the solve at which the layer is laid; 0 for what is there from the start.
/// Never later than the layer above it.</param>
public sealed record StackLayer(
    string Name,
    LayerRole Role,
    double Thickness,
    LayerMaterial Material,
    InitialTemperature Initial,
    double LaidAt = 0)
{
    /// <summary>
    /// Thermal resistance of the contact with the layer below, such as d/k of a membrane, in m² K/W; not negative.
    /// Zero (perfect contact) is usual for courses laid hot.
    /// </summary>
    public double ResistanceBelow { get; init; }

    /// <summary>A course laid at one temperature in °C at a time in s.</summary>
    public static StackLayer Course(string name, double thickness, LayerMaterial material, double celsius, double laidAt = 0) =>
        new(name, LayerRole.Course, thickness, material, InitialTemperature.Constant(celsius), laidAt);

    /// <summary>An existing layer at one temperature in °C.</summary>
    public static StackLayer Existing(string name, double thickness, LayerMaterial material, double celsius) =>
        new(name, LayerRole.Existing, thickness, material, InitialTemperature.Constant(celsius));
}

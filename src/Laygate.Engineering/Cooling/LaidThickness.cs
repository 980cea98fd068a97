namespace Laygate.Engineering.Cooling;

/// <summary>One course of a hot body with its densities before and after rolling, in one unit (kg/m³ or % of one reference).</summary>
/// <param name="Final">Thickness after rolling in m.</param>
/// <param name="FinalDensity">Density after rolling.</param>
/// <param name="ScreedDensity">Density behind the screed, in the same unit.</param>
public sealed record RolledCourse(double Final, double FinalDensity, double ScreedDensity);

/// <summary>Thickness behind the screed: rolling changes the volume, never the mass per area.</summary>
/// <remarks>Source: conservation of mass, rho L = constant. Densities decide, never a fixed percentage of thickness.</remarks>
public static class LaidThickness
{
    /// <summary>Thickness behind the screed in m: final thickness · final density / density behind the screed.</summary>
    /// <returns>NaN where a density is not positive.</returns>
    public static double BehindScreed(RolledCourse course) =>
        course is { FinalDensity: > 0, ScreedDensity: > 0 } ? course.Final * course.FinalDensity / course.ScreedDensity : double.NaN;

    /// <summary>Roll-down in m: thickness behind the screed minus final thickness; below zero if the mat were to loosen.</summary>
    public static double RollDown(RolledCourse course) => BehindScreed(course) - course.Final;

    /// <summary>Total roll-down in m of courses that are rolled together.</summary>
    public static double RollDown(IEnumerable<RolledCourse> courses) => courses.Sum(RollDown);

    /// <summary>
    /// A course as it lies behind the screed: thicker and looser with the same mass and heat, conducting less.
    /// </summary>
    /// <param name="rolled">The course with its final thickness and the properties of the compacted mix.</param>
    /// <param name="looseness">Density behind the screed over final density; above 0.</param>
    /// <param name="conductivityShare">Conductivity of the loose mix over that of the compacted one; 0.8 to 0.9, judgement.</param>
    public static StackLayer AsLaid(StackLayer rolled, double looseness, double conductivityShare) => rolled with
    {
        Thickness = rolled.Thickness / looseness,
        Initial = rolled.Initial.Stretched(1 / looseness),
        Material = rolled.Material with
        {
            Density = rolled.Material.Density * looseness,
            Conductivity = rolled.Material.Conductivity * conductivityShare,
        },
    };
}

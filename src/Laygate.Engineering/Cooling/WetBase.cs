namespace Laygate.Engineering.Cooling;

/// <summary>What a film of water on the base takes from the course that is laid on it.</summary>
/// <param name="Course">The course as it lies once the film has boiled off.</param>
/// <param name="Loss">By how much its mean temperature has fallen, K.</param>
/// <param name="Boiled">Depth of water that boiled off, mm; less than the film if the course would have fallen below 100 °C.</param>
public sealed record WetLaying(StackLayer Course, double Loss, double Boiled);

/// <summary>Water on the base at the moment of laying.</summary>
public static class WetBase
{
    private const double Boiling = 100;

    /// <summary>Heat to warm and boil off a film: w (4.19 (100 − Tw) + 2257) kJ/m², w in mm.</summary>
    /// <remarks>Source: steam table (4.19 kJ/(kg K), 2257 kJ/kg at 100 °C); 1 mm on 1 m² is 1 kg.</remarks>
    /// <param name="millimetres">Depth w of the film in mm; not negative.</param>
    /// <param name="water">Temperature Tw of the film in °C.</param>
    /// <returns>Heat in J/m².</returns>
    public static double Heat(double millimetres, double water) => 1000 * millimetres * ((4.19 * (Boiling - water)) + 2257);

    /// <summary>
    /// Lays a course on a wet base: the heat to boil the film off is taken from the course at once, evenly over its
    /// thickness. In truth the lowest millimetres give it first; for the mean it is the same, and no more water boils than
    /// brings the mean down to 100 °C.
    /// </summary>
    /// <param name="course">The course as it would lie on a dry base.</param>
    /// <param name="millimetres">Depth of the film in mm; below zero counts as none.</param>
    /// <param name="water">Temperature of the film in °C.</param>
    public static WetLaying Lay(StackLayer course, double millimetres, double water)
    {
        var film = Math.Max(0, millimetres);
        var mass = course.Material.Density * course.Thickness;
        var mean = course.Initial.Mean(0, course.Thickness);
        var before = course.Material.HeatContent(mean);
        var spare = Math.Max(0, mass * (before - course.Material.HeatContent(Boiling)));
        var wanted = Heat(film, water);
        var taken = Math.Min(wanted, spare);
        var loss = taken > 0 ? mean - course.Material.TemperatureAt(before - (taken / mass)) : 0;
        var boiled = wanted > 0 ? film * taken / wanted : 0;
        return new(course with { Initial = course.Initial.Lowered(loss) }, loss, boiled);
    }
}

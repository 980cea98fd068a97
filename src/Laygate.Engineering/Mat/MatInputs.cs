using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Mat;

/// <summary>A course of the hot body, or a warm one below it.</summary>
/// <param name="Id">Id of the course.</param>
/// <param name="Thickness">Compacted thickness in m.</param>
/// <param name="Density">Density in kg/m³.</param>
/// <param name="Material">Class of its mix.</param>
/// <param name="Celsius">Expected temperature when it is laid, °C.</param>
/// <param name="Coldest">Low end of that temperature, °C.</param>
/// <param name="Hottest">High end of that temperature, °C.</param>
/// <param name="LaidAt">When its screed passes, s after the first course that counts.</param>
/// <param name="Looseness">Density behind the screed over final density; 1 for a course that is rolled already.</param>
internal sealed record MatCourse(
    string Id, double Thickness, double Density, MaterialClass Material, double Celsius, double Coldest, double Hottest, double LaidAt, double Looseness)
{
    /// <summary>Conductivity where it was learnt, W/(m·K); null where that of the material is assumed.</summary>
    public MatRange? Conductivity { get; init; }
}

/// <summary>A layer below the hot body.</summary>
/// <param name="Material">Class.</param>
/// <param name="Thickness">Thickness in m.</param>
/// <param name="IsAssumed">Whether the build-up is assumed: a bound layer may be thinner or thicker, an unbound one dry or moist.</param>
internal sealed record MatLayer(MaterialClass Material, double Thickness, bool IsAssumed = false)
{
    /// <summary>Whether it is crushed rock.</summary>
    public bool IsUnbound => Material is MaterialClass.CrushedRockMoist or MaterialClass.CrushedRockFrozen;

    /// <summary>Whether it is frozen and thaws under the mat.</summary>
    public bool IsFrozen => Material == MaterialClass.CrushedRockFrozen;
}

/// <summary>Water on the surface on which the lowest course is laid.</summary>
/// <param name="Assumption">Id of the assumption that gives its depth in mm.</param>
/// <param name="IsIce">Whether it has to melt first.</param>
internal sealed record MatFilm(string Assumption, bool IsIce);

/// <summary>What the plan gives to the cooling of one hot body.</summary>
/// <param name="Courses">Courses from bottom to top; warm ones below the hot body first.</param>
/// <param name="HotFrom">Index of the first course of the hot body.</param>
/// <param name="Below">Layers below, from top to bottom; the last one goes on without end unless it is a deck.</param>
/// <param name="Gathered">Inputs and assumptions as gathered.</param>
internal sealed record MatInputs(
    IReadOnlyList<MatCourse> Courses, int HotFrom, IReadOnlyList<MatLayer> Below, Calculation Gathered)
{
    /// <summary>Water below the lowest course; null where the base is dry or not said to be otherwise.</summary>
    public MatFilm? Film { get; init; }

    /// <summary>Temperatures below the surface that is laid upon.</summary>
    public required MatBase Base { get; init; }

    /// <summary>Whether the lowest layer is a bridge deck with air below.</summary>
    public bool OnDeck => Below[^1].Material is MaterialClass.SteelDeck or MaterialClass.ConcreteDeck;

    /// <summary>Layer of a course in the solver's order, from top to bottom.</summary>
    public int LayerOf(string course)
    {
        for (var i = 0; i < Courses.Count; i++)
        {
            if (string.Equals(Courses[i].Id, course, StringComparison.Ordinal))
            {
                return Courses.Count - 1 - i;
            }
        }

        return -1;
    }

    /// <summary>When the last screed passes, s.</summary>
    public double LastScreed => Courses[^1].LaidAt;
}

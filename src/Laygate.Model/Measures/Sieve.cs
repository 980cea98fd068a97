using System.Collections.Frozen;

namespace Laygate.Model.Measures;

/// <summary>A sieve by its designation. Its size is tabled in mm and in inches; a ratio takes the one in the unit system of the thickness.</summary>
/// <param name="Name">Designation, for example <c>1/2 in</c> or <c>16 mm</c>.</param>
/// <param name="Millimetres">Opening in mm.</param>
/// <param name="Inches">Nominal size in inches; null for sieves of the metric series that have no inch name.</param>
public sealed record Sieve(string Name, double Millimetres, double? Inches)
{
    private static readonly FrozenDictionary<string, Sieve> Tabled = new Sieve[]
    {
        new("No. 4", 4.75, 0.187),
        new("3/8 in", 9.5, 3.0 / 8),
        new("1/2 in", 12.5, 1.0 / 2),
        new("3/4 in", 19.0, 3.0 / 4),
        new("1 in", 25.0, 1),
        new("1-1/2 in", 37.5, 1.5),
        new("4.75 mm", 4.75, 0.187),
        new("9.5 mm", 9.5, 3.0 / 8),
        new("12.5 mm", 12.5, 1.0 / 2),
        new("19 mm", 19.0, 3.0 / 4),
        new("25 mm", 25.0, 1),
        new("37.5 mm", 37.5, 1.5),
        new("4 mm", 4, null),
        new("5 mm", 5, null),
        new("5.6 mm", 5.6, null),
        new("6 mm", 6, null),
        new("6.3 mm", 6.3, null),
        new("7 mm", 7, null),
        new("8 mm", 8, null),
        new("10 mm", 10, null),
        new("11 mm", 11, null),
        new("11.2 mm", 11.2, null),
        new("13.2 mm", 13.2, null),
        new("14 mm", 14, null),
        new("15 mm", 15, null),
        new("16 mm", 16, null),
        new("20 mm", 20, null),
        new("22 mm", 22, null),
        new("22.4 mm", 22.4, null),
        new("31.5 mm", 31.5, null),
        new("32 mm", 32, null),
        new("40 mm", 40, null),
    }.ToFrozenDictionary(sieve => sieve.Name, StringComparer.Ordinal);

    /// <summary>
    /// The sieves that a plan may name. Inch designations with their openings: ASTM E11 (recalled); metric series: ISO 565 and the EN 13043 sets (recalled).
    /// </summary>
    public static IReadOnlyCollection<string> Names => Tabled.Keys;

    /// <summary>Finds a sieve by its designation.</summary>
    /// <returns>The sieve, or null when it is not tabled.</returns>
    public static Sieve? Find(string name) => Tabled.GetValueOrDefault(name);

    /// <summary>Size in m in the unit system of the thickness that it is compared with; the tabled mm opening where there is no inch name.</summary>
    public double MetresIn(UnitSystem system) =>
        system == UnitSystem.UnitedStates && Inches is { } inches ? inches * 0.0254 : Millimetres / 1000;
}

using Laygate.Engineering.Quantities;
using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Course-mean temperature below which rolling no longer densifies, by binder.</summary>
internal static class CessationAssumptions
{
    private const string Viscosity =
        "temperature at which the binder has 50 Pa·s (criterion read: J. Mater. Civ. Eng. 20(6), 2008, abstract), with US design-guide coefficients from memory";

    public static IReadOnlyList<Assumption> All { get; } =
    [
        new(CessationUnknown, "Cessation temperature of dense mix with unmodified or unknown binder.", 79, "°C", 70, 90,
            "Pavement Interactive, glossary, \"cessation temperature\" (read): about 175 °F, shifted by binder grade; range from field trials (abstract read) and recalled national rules",
            Evidence.Read),
        new(CessationModified, "Cessation temperature with polymer-modified binder.", 95, "°C", 90, 100,
            "national rules and practice, from memory: 90 to 100 °C", Evidence.Recalled),
        Grade(58, 28, 72.0),
        Grade(64, 22, 78.3),
        Grade(64, 28, 79.3),
        Grade(70, 22, 85.5),
        Grade(70, 28, 86.4),
        Grade(76, 22, 93.0),
        Grade(76, 28, 94.0),
        Grade(82, 22, 100.5),
    ];

    /// <summary>Range: 8 K either way, one grade step.</summary>
    private static Assumption Grade(int high, int low, double celsius) =>
        new(CessationOfGrade(high, low), $"Cessation temperature with binder PG {high}-{low}.", celsius, "°C", celsius - 8, celsius + 8, Viscosity, Evidence.Recalled);
}

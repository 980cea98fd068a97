using Laygate.Engineering.Formulas;
using Laygate.Model.Measures;

namespace Laygate.Engineering.Layers;

/// <summary>Thickness of a course against its stones and before rolling.</summary>
public static class CourseThickness
{
    /// <summary>Thickness as a multiple of the aggregate size; the size is the tabled one of the sieve in the unit system of the thickness.</summary>
    /// <param name="thickness">t, m: compacted thickness.</param>
    /// <param name="sieve">D, m: largest aggregate as a sieve designation, on the basis upper sieve or nominal maximum.</param>
    /// <param name="system">Unit system in which the thickness is stated; picks the tabled size, in mm or in inches.</param>
    /// <returns>n, 1; null outside the range.</returns>
    [Formula("n", "n = t / D", Sources.Definition, "t above zero; a size stated as maximum size needs the sieve series and is not treated")]
    public static double? ToAggregateSize(double thickness, Sieve sieve, UnitSystem system) =>
        Finite.Positive(thickness) && Finite.Positive(sieve.MetresIn(system))
            ? thickness / sieve.MetresIn(system)
            : null;

    /// <summary>Thickness behind the screed that gives the compacted thickness: the mass of a column stays the same.</summary>
    /// <param name="compacted">t, m: compacted thickness.</param>
    /// <param name="final">D1, 1: degree of compaction of the finished course.</param>
    /// <param name="behindScreed">D0, 1: degree behind the screed, of the same reference density.</param>
    /// <returns>t0, m; null outside the range.</returns>
    [Formula("t0", "t0 = t · D1 / D0", Sources.Balance, "0.6 ≤ D0 ≤ D1 ≤ 1.1, one reference density for both; otherwise no result")]
    public static double? BehindScreed(double compacted, double final, double behindScreed) =>
        Finite.Positive(compacted) && behindScreed >= 0.6 && final >= behindScreed && final <= 1.1
            ? Finite.OrNull(compacted * final / behindScreed)
            : null;
}

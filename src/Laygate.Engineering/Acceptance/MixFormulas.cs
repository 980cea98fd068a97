using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Acceptance;

/// <summary>Volumes of a compacted mix from specific gravities and its binder content, as the results of a laboratory state them.</summary>
public static class MixFormulas
{
    private const string Texts = "Volumes of a compacted mix as textbooks of mix design have them (recalled), which agree with the published examples of docs/verification";

    /// <summary>Effective specific gravity of the aggregate.</summary>
    /// <param name="maximum">Gm, 1: maximum specific gravity of the mix.</param>
    /// <param name="binder">b, 1: binder content, by mass of the mix.</param>
    /// <param name="binderGravity">Gb, 1: specific gravity of the binder.</param>
    /// <returns>Ge, 1; null outside the range.</returns>
    [Formula("Ge", "Ge = (1 − b) / (1 / Gm − b / Gb)", Texts, "gravities above zero, b from 0 to below 0.5, result above zero; otherwise no result")]
    public static double? Effective(double maximum, double binder, double binderGravity) =>
        Gravities(maximum, binderGravity) && IsContent(binder) && Finite.Positive((1 / maximum) - (binder / binderGravity)) ? (1 - binder) / ((1 / maximum) - (binder / binderGravity)) : null;

    /// <summary>Effective specific gravity of the aggregate from the binder that it absorbs.</summary>
    /// <param name="aggregate">Ga, 1: bulk specific gravity of the aggregate.</param>
    /// <param name="absorbed">a, 1: binder absorbed, by mass of the aggregate.</param>
    /// <param name="binderGravity">Gb, 1: specific gravity of the binder.</param>
    /// <returns>Ge, 1; null outside the range.</returns>
    [Formula("Ge", "Ge = 1 / (1 / Ga − a / Gb)", Texts, "gravities above zero, a from 0 to below 0.5, result above zero; otherwise no result")]
    public static double? EffectiveOfAbsorbed(double aggregate, double absorbed, double binderGravity) =>
        Gravities(aggregate, binderGravity) && IsContent(absorbed) && Finite.Positive((1 / aggregate) - (absorbed / binderGravity)) ? 1 / ((1 / aggregate) - (absorbed / binderGravity)) : null;

    /// <summary>Binder that the aggregate absorbs, by mass of the aggregate.</summary>
    /// <param name="effective">Ge, 1: effective specific gravity of the aggregate.</param>
    /// <param name="aggregate">Ga, 1: its bulk specific gravity.</param>
    /// <param name="binderGravity">Gb, 1: specific gravity of the binder.</param>
    /// <returns>a, 1; null outside the range.</returns>
    [Formula("a", "a = Gb · (Ge − Ga) / (Ge · Ga)", Texts, "gravities above zero, Ge at least Ga; otherwise no result")]
    public static double? Absorbed(double effective, double aggregate, double binderGravity) =>
        Gravities(effective, aggregate) && Finite.Positive(binderGravity) && effective >= aggregate ? binderGravity * (effective - aggregate) / (effective * aggregate) : null;

    /// <summary>Maximum specific gravity of a mix at a binder content.</summary>
    /// <param name="effective">Ge, 1: effective specific gravity of the aggregate.</param>
    /// <param name="binder">b, 1: binder content, by mass of the mix.</param>
    /// <param name="binderGravity">Gb, 1: specific gravity of the binder.</param>
    /// <returns>Gm, 1; null outside the range.</returns>
    [Formula("Gm", "Gm = 1 / ((1 − b) / Ge + b / Gb)", Texts, "gravities above zero, b from 0 to below 0.5; otherwise no result")]
    public static double? Maximum(double effective, double binder, double binderGravity) =>
        Gravities(effective, binderGravity) && IsContent(binder) ? 1 / (((1 - binder) / effective) + (binder / binderGravity)) : null;

    /// <summary>Voids in the mineral aggregate, by volume of the mix.</summary>
    /// <param name="bulk">G, 1: bulk specific gravity of the compacted mix.</param>
    /// <param name="binder">b, 1: binder content, by mass of the mix.</param>
    /// <param name="aggregate">Ga, 1: bulk specific gravity of the aggregate.</param>
    /// <returns>M, 1; null outside the range.</returns>
    [Formula("M", "M = 1 − G · (1 − b) / Ga", Texts, "gravities above zero, b from 0 to below 0.5, result from 0 to 1; otherwise no result")]
    public static double? VoidsInAggregate(double bulk, double binder, double aggregate) =>
        Gravities(bulk, aggregate) && IsContent(binder) && 1 - (bulk * (1 - binder) / aggregate) is >= 0 and <= 1 and var voids ? voids : null;

    /// <summary>Share of the voids in the mineral aggregate that binder fills.</summary>
    /// <param name="inAggregate">M, 1: voids in the mineral aggregate.</param>
    /// <param name="air">V, 1: air voids.</param>
    /// <returns>F, 1; null outside the range.</returns>
    [Formula("F", "F = (M − V) / M", Texts, "M above zero, V from 0 to M; otherwise no result")]
    public static double? Filled(double inAggregate, double air) => Finite.Positive(inAggregate) && air >= 0 && air <= inAggregate ? (inAggregate - air) / inAggregate : null;

    private static bool Gravities(double one, double other) => Finite.Positive(one) && Finite.Positive(other);

    private static bool IsContent(double share) => share is >= 0 and < 0.5;
}

namespace Laygate.Engineering.Quantities.Values;

/// <summary>What stated numbers measure, in words; numbers of one sort are usual within one range, which rules name.</summary>
public static class ValueSorts
{
    internal const string HotMix = "hot-mix";
    internal const string MasticMix = "mastic-mix";
    internal const string Base = "base";
    internal const string WarmBase = "warm-base";
    internal const string RunLength = "run-length";
    internal const string BondCoatMass = "bond-coat-mass";
    internal const string BondCoatVolume = "bond-coat-volume";

    /// <summary>All sorts: those that the plan schema names, and those that follow from what else a plan states.</summary>
    public static IReadOnlyList<string> All { get; } = [.. StatedValues.SortsOfKeys, WarmBase, MasticMix, RunLength, BondCoatVolume];
}

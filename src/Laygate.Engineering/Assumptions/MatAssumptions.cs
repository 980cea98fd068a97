using Laygate.Engineering.Quantities;
using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Thermal properties of the mat. Nobody states them in a plan; their ranges are carried into low and high.</summary>
internal static class MatAssumptions
{
    public static IReadOnlyList<Assumption> All { get; } =
    [
        new(Emissivity, "Emissivity of a fresh mat.", 0.95, string.Empty, 0.85, 0.95,
            "road weather model of the Finnish Meteorological Institute, default (read); range from pavement heat models (read)", Evidence.Read),
        new(Absorptivity, "Share of the sun that a fresh mat absorbs.", 0.93, string.Empty, 0.80, 0.96,
            "fresh black mat, albedo 0.04 to 0.06 (memory); road models 0.85 to 0.90 (read)", Evidence.Recalled),
        new(Conductivity, "Conductivity of hot dense mix.", 1.2, "W/(m·K)", 0.8, 1.7,
            "CIBSE Guide A table 3.36 as reproduced; laboratory slabs 1.06 to 1.17, Byzyka et al. 2018 (read)", Evidence.SecondHand),
        new(ConductivityPorous, "Conductivity of hot porous mix.", 0.85, "W/(m·K)", 0.7, 1.0, "scaled by voids, from memory", Evidence.Recalled),
        new(SpecificHeat, "Specific heat of hot mix.", 920, "J/(kg·K)", 850, 1100,
            "mixtures of binder and stone, derived and from memory: 850 cold to 990 at 150 °C", Evidence.Recalled),
        LaygateAssumptions.Judged(LayingLoss, "Temperature lost between delivery in the load and the mat behind the screed.", 10, "K", 4, 18),
        LaygateAssumptions.Judged(BuildUpThickness, "Thickness of the existing upper layer where the build-up is not stated.", 0.15, "m", 0.05, 0.30),
    ];
}

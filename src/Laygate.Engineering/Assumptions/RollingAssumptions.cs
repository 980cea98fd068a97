using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Edges, overlap and reversals. A reach below zero means that the drum stays off the edge.</summary>
internal static class RollingAssumptions
{
    private const string Reach = "rolling.reach.";

    public static IReadOnlyList<Assumption> All { get; } =
    [
        LaygateAssumptions.Judged(Reversal, "Time that one reversal of direction costs a roller.", 10, "s", 5, 15),
        LaygateAssumptions.Judged(DrumShare, "Share of the mass of a tandem roller on its heavier drum.", 50, "%", 50, 55),
        new(Overlap, "Overlap of neighbouring strips.", 0.15, "m", 0.075, 0.30,
            "trade article on strips, 6 in (recalled); lower end: " + Sources.Navedtra14081, Evidence.Recalled),
        LaygateAssumptions.Judged($"{Reach}free", "Reach of the drum over a free edge.", 0.10, "m", 0.05, 0.15),
        LaygateAssumptions.Judged($"{Reach}formed", "Reach of the drum over an edge that is pressed or formed.", 0, "m", -0.05, 0.10),
        LaygateAssumptions.Judged($"{Reach}cut", "Reach of the drum over an edge that is cut back later.", 0.10, "m", 0.05, 0.15),
        LaygateAssumptions.Judged($"{Reach}existing_cold", "Reach of the drum over a cold lane.", 0.125, "m", 0.10, 0.15),
        LaygateAssumptions.Judged($"{Reach}hot", "Distance that the drum keeps from a hot edge that is rolled with the next strip.", -0.15, "m", -0.20, -0.10),
        LaygateAssumptions.Judged($"{Reach}kerb", "Distance that the drum keeps from a kerb; a plate compacts the rest.", -0.05, "m", -0.10, 0),
        LaygateAssumptions.Judged($"{Reach}gutter", "Distance that the drum keeps from a gutter; a plate compacts the rest.", -0.05, "m", -0.10, 0),
        LaygateAssumptions.Judged($"{Reach}unknown", "Reach of the drum over an edge of unknown kind.", 0.10, "m", -0.15, 0.15),
    ];
}

using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Density, degree of compaction and stones of mixes.</summary>
internal static class MixAssumptions
{
    private const string Unit = "kg/m3";
    private const string NavyRange = Sources.Navedtra14080 + ": 146 lb/ft3, planning range 140 to 160 lb/ft3";

    public static IReadOnlyList<Assumption> All { get; } =
    [
        new($"{MixDensity}.unknown", "Density of a compacted mix of unknown kind.", 2339, Unit, 2243, 2563, NavyRange, Evidence.Read),
        new($"{MixDensity}.asphalt_concrete", "Density of compacted asphalt concrete.", 2339, Unit, 2243, 2563, NavyRange, Evidence.Read),
        new($"{MixDensity}.stone_mastic", "Density of compacted stone mastic asphalt.", 2350, Unit, 2250, 2500, "property tables, from memory: as dense mix", Evidence.Recalled),
        LaygateAssumptions.Judged($"{MixDensity}.hot_rolled", "Density of compacted hot rolled asphalt, taken as dense mix.", 2339, Unit, 2243, 2563),
        new($"{MixDensity}.porous", "Density of compacted porous asphalt with about 20 % voids.", 1925, Unit, 1850, 2000, "scaled by voids, from memory", Evidence.Recalled),
        LaygateAssumptions.Judged($"{MixDensity}.mastic_asphalt", "Density of mastic asphalt.", 2330, Unit, 2100, 2500),
        LaygateAssumptions.Judged($"{MixDensity}.thin_layer", "Density of a compacted mix for thin layers, taken as dense mix.", 2339, Unit, 2150, 2563),
        LaygateAssumptions.Judged($"{MixDensity}.other", "Density of a compacted mix of another kind.", 2339, Unit, 1850, 2563),
        LaygateAssumptions.Judged(MixDegree, "Degree of compaction of the finished course against the laboratory reference.", 98, "%", 96, 100),
        new(SizeBases, "Nominal maximum size over EN upper sieve size D: both let 90 to 100 % pass.", 1, string.Empty, 1, 1, "EN 13108-1 and EN 13043, from memory; Asphalt Institute SP-2 as quoted", Evidence.Recalled),
        LaygateAssumptions.Judged(TenderLimit, "Skin temperature below which vibrating steel can shove a mat with a hot core.", 115, "°C", 90, 115),
        LaygateAssumptions.Judged(GritEmbedment, "Skin temperature below which grit is no longer pressed in.", 100, "°C", 90, 110),
        LaygateAssumptions.Judged(DegreeBehindScreed, "Density behind the screed as a share of the reference density, where neither trial nor maker's statement is given.", 86, "%", 78, 94),
        new(MarkingHot, "Skin temperature from which finish rolling takes out marks.", 85, "°C", 80, 95, "trade page on finish rolling, 185 °F; a stable mix may be finished hotter", Evidence.Recalled),
        new(MarkingCold, "Skin temperature below which finish rolling no longer takes out marks.", 71, "°C", 66, 75, "trade page on finish rolling, 160 °F; low end 150 °F from Caltrans 2006 to 2015, from memory", Evidence.Recalled),
        new(OverlayLimit, "Temperature of the hottest point below which hauling and the next course may go on a new course.", 60, "°C", 50, 65, "UFGS 02749, no hauling on the new pavement before it has cooled to 60 °C (140 °F) (read); range judged", Evidence.Read),
        LaygateAssumptions.Judged(BondBinderDensity, "Density of bond-coat binder and emulsion.", 1000, Unit, 980, 1030),
        LaygateAssumptions.Judged(HotBinderResidue, "Binder that stays of hot binder sprayed without water or solvent.", 100, "%", 99, 100),
    ];
}

using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Thermal properties, from the catalogue of the cooling kernel. Nobody states them in a plan; their ranges are carried into low and high.</summary>
internal static class MatAssumptions
{
    public static IReadOnlyList<Assumption> All { get; } =
    [
        .. ThermalProperties.All.SelectMany(Properties),
        LaygateAssumptions.Judged(LayingLoss, "Temperature lost between delivery in the load and the mat behind the screed.", 10, "K", 4, 18),
        LaygateAssumptions.Judged(LayingSpread, "How far the temperature behind the screed strays from the expected one, where no band is stated.", 0, "K", -6, 6),
        LaygateAssumptions.Judged(BuildUpThickness, "Thickness of the bound layer below the mat where the build-up is not stated.", 0.15, "m", 0.05, 0.30),
        new(HeatRise, "Rise of the specific heat of a hot mix per kelvin; the specific heat itself is taken at 85 °C, half way between cold and laid.", 1.12, "J/(kg·K²)", 0.9, 1.3,
            "bitumen 1685 + 3.39 T and aggregate 800 at 20 °C to 930 at 150 °C, J/(kg K), at 5 % binder; from memory", Evidence.Recalled),
        new(LooseConductivity, "Conductivity of the mix behind the screed over that of the compacted mix.", 0.85, string.Empty, 0.8, 0.9, Sources.Judgement, Evidence.Judgement),
        LaygateAssumptions.Judged(FilmDamp, "Depth of water on a damp base.", 0.2, "mm", 0.1, 0.3),
        LaygateAssumptions.Judged(FilmWet, "Depth of water on a wet base without puddles.", 0.5, "mm", 0.3, 1.0),
        LaygateAssumptions.Judged(FilmIce, "Depth, as water, of rime or ice on a frozen base.", 0.2, "mm", 0, 0.5),
        LaygateAssumptions.Judged(FrozenMoisture, "Water by mass of dry rock in a frozen unbound layer.", 4, "%", 2, 8),
        new(DeckUnderside, "Heat transfer at the underside of a bridge deck, long-wave exchange included.", 10, "W/(m2·K)", 5.9, 25,
            "EN ISO 6946 surface resistances from memory: 0.17 m² K/W for heat flow downwards in still air, 0.04 outdoors at 4 m/s; value between them judged", Evidence.Judgement),
    ];

    private static IEnumerable<Assumption> Properties(MaterialRow row)
    {
        var name = Words.Of(row.Class).Replace('-', ' ');
        yield return Of(ConductivityOf(row.Class), $"Conductivity of {name}.", row.Conductivity);
        yield return Of(DensityOfMaterial(row.Class), $"Density of {name}, where it is not a mix of the plan.", row.Density);
        yield return Of(SpecificHeatOf(row.Class), $"Specific heat of {name}.", row.SpecificHeat);
        if (row.Emissivity is { } emissivity)
        {
            yield return Of(EmissivityOf(row.Class), $"Long-wave emissivity of the surface of {name}.", emissivity);
        }

        if (row.Absorptivity is { } absorptivity)
        {
            yield return Of(AbsorptivityOf(row.Class), $"Share of the sun that {name} absorbs.", absorptivity);
        }
    }

    private static Assumption Of(string id, string meaning, MaterialProperty property) => new(
        id, meaning, property.Value, UnitOf(property.Unit), property.Low, property.High, property.Source, EvidenceOf(property.Evidence));

    private static string UnitOf(string unit) => unit switch
    {
        "kg/m³" => "kg/m3",
        "W/(m K)" => "W/(m·K)",
        "J/(kg K)" => "J/(kg·K)",
        _ => unit,
    };

    private static Evidence EvidenceOf(SourceEvidence evidence) => evidence switch
    {
        SourceEvidence.Read => Evidence.Read,
        SourceEvidence.SecondHand => Evidence.SecondHand,
        SourceEvidence.Derived => Evidence.Derived,
        SourceEvidence.Judgement => Evidence.Judgement,
        _ => Evidence.Recalled,
    };
}

using Laygate.Engineering.Cooling.Catalogues;
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

namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>Classes of material with thermal properties of their own.</summary>
public enum MaterialClass
{
    /// <summary>Asphalt concrete, hot.</summary>
    AsphaltConcrete,

    /// <summary>Stone-mastic asphalt, hot.</summary>
    StoneMastic,

    /// <summary>Porous asphalt of about 20 % voids, hot.</summary>
    PorousAsphalt,

    /// <summary>Mastic asphalt, poured.</summary>
    MasticAsphalt,

    /// <summary>Existing asphalt, cold.</summary>
    ExistingAsphalt,

    /// <summary>Concrete pavement.</summary>
    Concrete,

    /// <summary>Crushed rock, dry.</summary>
    CrushedRockDry,

    /// <summary>Crushed rock, moist.</summary>
    CrushedRockMoist,

    /// <summary>Crushed rock, frozen.</summary>
    CrushedRockFrozen,

    /// <summary>Soil, moist.</summary>
    Soil,

    /// <summary>Bridge deck of steel.</summary>
    SteelDeck,

    /// <summary>Bridge deck of concrete.</summary>
    ConcreteDeck,
}

/// <summary>One property of one material.</summary>
/// <param name="Value">Central value.</param>
/// <param name="Low">Low end of the range.</param>
/// <param name="High">High end of the range.</param>
/// <param name="Unit">Unit; empty for a share.</param>
/// <param name="Source">Where value and range come from.</param>
/// <param name="Evidence">How they are known; the weaker of value and range.</param>
public sealed record MaterialProperty(double Value, double Low, double High, string Unit, string Source, SourceEvidence Evidence);

/// <summary>Thermal properties of one class.</summary>
/// <param name="Class">The class.</param>
/// <param name="Conductivity">k in W/(m K).</param>
/// <param name="Density">rho in kg/m³, compacted.</param>
/// <param name="SpecificHeat">c in J/(kg K).</param>
/// <param name="Emissivity">Long-wave emissivity of the bare surface; null where no source is at hand.</param>
/// <param name="Absorptivity">Absorbed share of the sun's irradiance; null where no source is at hand.</param>
public sealed record MaterialRow(
    MaterialClass Class,
    MaterialProperty Conductivity,
    MaterialProperty Density,
    MaterialProperty SpecificHeat,
    MaterialProperty? Emissivity,
    MaterialProperty? Absorptivity)
{
    /// <summary>
    /// The central values as a material. Where the class has no surface properties, those of existing asphalt stand in;
    /// they matter only while such a layer lies bare within the time solved for.
    /// </summary>
    public LayerMaterial ToMaterial() => new(
        Conductivity.Value,
        Density.Value,
        SpecificHeat.Value,
        (Emissivity ?? ThermalProperties.RoadEmissivity).Value,
        (Absorptivity ?? ThermalProperties.OldAbsorptivity).Value);

    /// <summary>
    /// The central values of a hot mix with its specific heat by <see cref="HeatLaws.Mix"/>, brought to this row's central
    /// value where the law gives 920 J/(kg K), the value of a dense mix.
    /// </summary>
    /// <param name="binderShare">Mass of binder per mass of mix, 0 to 1.</param>
    public LayerMaterial ToMaterial(double binderShare) =>
        ToMaterial().WithHeatLaw(HeatLaws.Mix(binderShare).Scaled(SpecificHeat.Value / DenseMixHeat), 100);

    private const double DenseMixHeat = 920;
}

/// <summary>
/// Thermal properties by class of material. Ranges are wide because published measurements differ; the hot mix is
/// taken at paving temperature. One textbook table gives asphalt k = 0.062 W/(m K), an order too low: a compacted mix
/// below 0.3 W/(m K) is not credible.
/// </summary>
public static class ThermalProperties
{
    private const string PhoenixProfiles = "layer profiles of a public pavement heat model (Phoenix), surface courses 1.2 / 1.7 / 2.2 W/(m K), 2350 kg/m³, 800 to 1000 J/(kg K)";
    private const string CoteKonrad = "range as in Côté and Konrad 2005";
    private const string Cibse = "CIBSE Guide A, table 3.36, poured and roofing mastic asphalt";

    /// <summary>Emissivity of a road surface.</summary>
    internal static MaterialProperty RoadEmissivity { get; } = new(0.95, 0.85, 0.95, string.Empty, "default of the public road weather model of the Finnish Meteorological Institute; range of a public pavement heat model", SourceEvidence.Read);

    /// <summary>Absorbed share of the sun on a weathered road.</summary>
    internal static MaterialProperty OldAbsorptivity { get; } = new(0.88, 0.75, 0.90, string.Empty, "1 − albedo: Herb and others 2008 0.12; Finnish Meteorological Institute 0.10; aged surfaces of a public pavement heat model 0.15 to 0.25", SourceEvidence.SecondHand);

    private static MaterialProperty FreshAbsorptivity { get; } = new(0.92, 0.80, 0.96, string.Empty, "1 − albedo of a fresh black mat, 0.04 to 0.06, Pomerantz and others; low end allows for a matt or dusty mat", SourceEvidence.Recalled);

    private static MaterialProperty MixConductivity { get; } = K(1.2, 0.8, 1.7, "Corlew and Dickson 1968 1.21; laboratory slabs 1.06 to 1.17, Byzyka and others 2018; CIBSE Guide A table 3.36 1.20", SourceEvidence.Recalled);

    private static MaterialProperty ConcreteConductivity { get; } = K(1.5, 1.2, 2.0, "public pavement heat model 1.2 to 1.8 (read); EN ISO 10456 1.35 and 2.0 (recalled); value: middle of the range read", SourceEvidence.Recalled);

    private static MaterialProperty ConcreteDensity { get; } = Rho(2250, 2000, 2400, "public pavement heat model 2250 (read); EN ISO 10456 2000 and 2400 (recalled)", SourceEvidence.Recalled);

    private static MaterialProperty ConcreteHeat { get; } = C(900, 850, 1000, "public pavement heat model 850 to 950 (read); EN ISO 10456 1000 (recalled)", SourceEvidence.Recalled);

    private static MaterialProperty ConcreteEmissivity { get; } = new(0.93, 0.90, 0.96, string.Empty, "public pavement heat model, middle of its range", SourceEvidence.Read);

    private static MaterialProperty ConcreteAbsorptivity { get; } = new(0.675, 0.60, 0.75, string.Empty, "1 − albedo 0.25 to 0.40, public pavement heat model, middle of its range", SourceEvidence.Read);

    private static MaterialProperty RockHeat(double value) => C(value, 800, 1050, CoteKonrad, SourceEvidence.Recalled);

    /// <summary>All rows, in the order of the classes.</summary>
    public static IReadOnlyList<MaterialRow> All { get; } =
    [
        new(MaterialClass.AsphaltConcrete, MixConductivity, Rho(2350, 2300, 2400, "compacted dense mix, general range", SourceEvidence.Recalled), C(920, 850, 1100, "Corlew and Dickson 1968 921 (0.22 Btu/(lb °F)); rises from about 850 cold to 990 at 150 °C", SourceEvidence.Recalled), RoadEmissivity, FreshAbsorptivity),
        new(MaterialClass.StoneMastic, MixConductivity, Rho(2350, 2300, 2400, "as asphalt concrete within 5 %", SourceEvidence.Recalled), C(950, 850, 1100, "as asphalt concrete, 3 % more for the richer binder", SourceEvidence.Derived), RoadEmissivity, FreshAbsorptivity),
        new(MaterialClass.PorousAsphalt, K(0.8, 0.7, 1.0, "scaled from the dense mix by voids", SourceEvidence.Derived), Rho(1900, 1850, 2000, "at about 20 % voids", SourceEvidence.Recalled), C(920, 850, 1100, "as asphalt concrete", SourceEvidence.Recalled), RoadEmissivity, FreshAbsorptivity),
        new(MaterialClass.MasticAsphalt, K(1.20, 1.15, 1.20, Cibse, SourceEvidence.SecondHand), Rho(2100, 2100, 2330, Cibse, SourceEvidence.SecondHand), C(920, 840, 920, Cibse, SourceEvidence.SecondHand), RoadEmissivity, FreshAbsorptivity),
        new(MaterialClass.ExistingAsphalt, K(1.5, 1.2, 2.2, PhoenixProfiles + "; value: judged between its lower two", SourceEvidence.Judgement), Rho(2350, 2100, 2350, PhoenixProfiles + "; EN ISO 10456 2100 (recalled)", SourceEvidence.Recalled), C(900, 800, 1000, PhoenixProfiles, SourceEvidence.Read), RoadEmissivity, OldAbsorptivity),
        new(MaterialClass.Concrete, ConcreteConductivity, ConcreteDensity, ConcreteHeat, ConcreteEmissivity, ConcreteAbsorptivity),
        new(MaterialClass.CrushedRockDry, K(0.7, 0.5, 0.9, CoteKonrad, SourceEvidence.Recalled), Rho(2000, 2000, 2200, CoteKonrad, SourceEvidence.Recalled), RockHeat(850), null, null),
        new(MaterialClass.CrushedRockMoist, K(1.9, 1.5, 2.3, CoteKonrad, SourceEvidence.Recalled), Rho(2200, 2000, 2200, CoteKonrad, SourceEvidence.Recalled), RockHeat(1000), null, null),
        new(MaterialClass.CrushedRockFrozen, K(2.5, 2.0, 3.0, CoteKonrad + "; without the heat of thawing, for which see ThermalProperties.FrozenRock", SourceEvidence.Recalled), Rho(2200, 2000, 2200, CoteKonrad, SourceEvidence.Recalled), RockHeat(900), null, null),
        new(MaterialClass.Soil, K(1.5, 1.0, 3.0, "EN ISO 10456 clay or silt 1.5 (recalled); public pavement heat model, dry soil 1.0 to 3.0 (read)", SourceEvidence.Recalled), Rho(1800, 1200, 1800, "EN ISO 10456 clay or silt", SourceEvidence.Recalled), C(1500, 1500, 2500, "public pavement heat model 1500 (read); EN ISO 10456 1670 to 2500 (recalled)", SourceEvidence.Recalled), null, null),
        new(MaterialClass.SteelDeck, K(50, 50, 50, "structural steel, EN ISO 10456", SourceEvidence.Recalled), Rho(7850, 7800, 7850, "structural steel, EN ISO 10456 and handbooks", SourceEvidence.Recalled), C(460, 450, 460, "structural steel, EN ISO 10456 and handbooks", SourceEvidence.Recalled), null, null),
        new(MaterialClass.ConcreteDeck, ConcreteConductivity, ConcreteDensity, ConcreteHeat, ConcreteEmissivity, ConcreteAbsorptivity),
    ];

    /// <summary>Frozen moist crushed rock that thaws under the mat, latent heat included: the condition of frozen moisture in the base.</summary>
    /// <remarks>Conductivity and density of <see cref="MaterialClass.CrushedRockFrozen"/>, the density being that of the
    /// moist rock; heat by <see cref="HeatLaws.ThawingGround"/>. Conductivity stays that of the frozen state, which errs to
    /// the fast-cooling side.</remarks>
    /// <param name="water">Mass of water per mass of dry rock; 0.02 to 0.08 is usual (judgement).</param>
    public static LayerMaterial FrozenRock(double water)
    {
        var rock = Of(MaterialClass.CrushedRockFrozen).ToMaterial();
        return (rock with { Density = rock.Density / (1 + water) }).WithHeatLaw(HeatLaws.ThawingGround(water), 20);
    }

    /// <summary>The row of a class.</summary>
    public static MaterialRow Of(MaterialClass materialClass) => All[(int)materialClass];

    private static MaterialProperty K(double value, double low, double high, string source, SourceEvidence evidence) => new(value, low, high, "W/(m K)", source, evidence);

    private static MaterialProperty Rho(double value, double low, double high, string source, SourceEvidence evidence) => new(value, low, high, "kg/m³", source, evidence);

    private static MaterialProperty C(double value, double low, double high, string source, SourceEvidence evidence) => new(value, low, high, "J/(kg K)", source, evidence);
}

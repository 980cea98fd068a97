using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Assumptions;

/// <summary>Ids of the assumptions that quantities use.</summary>
public static class AssumptionIds
{
#pragma warning disable CS1591 // The catalogue itself says what each means.
    public const string MixDensity = "mix.density";
    public const string MixDegree = "mix.degree";
    public const string SizeBases = "mix.upper_sieve_as_nominal";
    public const string CessationUnknown = "mix.cessation.unknown";
    public const string CessationModified = "mix.cessation.modified";
    public const string TenderLimit = "mix.tender_limit";
    public const string GritEmbedment = "mix.grit_embedment";
    public const string LayingLoss = "mat.laying_loss";
    public const string LayingSpread = "mat.laying_spread";
    public const string Loading = "trucks.loading";
    public const string Ticket = "trucks.ticket";
    public const string Wait = "trucks.wait";
    public const string Cleaning = "trucks.cleaning";
    public const string Exchange = "trucks.exchange";
    public const string PaverTravel = "paver.travel_speed";
    public const string PaverReset = "paver.reset";
    public const string Reversal = "rolling.reversal";
    public const string Overlap = "rolling.overlap";
    public const string DrumShare = "rolling.drum_share";
    public const string BondBinderDensity = "bond.binder_density";
    public const string HotBinderResidue = "bond.hot_binder_residue";
    public const string WindHeight = "weather.wind_height";
    public const string MatHeight = "weather.mat_height";
    public const string OpenCountry = "weather.open_country";
    public const string SkyBelowAir = "weather.sky_below_air";
    public const string Sun = "weather.sun";
    public const string CalmShare = "weather.calm_share";
    public const string WindSpread = "weather.wind_spread";
    public const string BuildUpThickness = "existing.thickness";
    public const string BaseSpread = "weather.base_spread";
    public const string AirSpread = "weather.air_spread";
    public const string DayRange = "weather.day_range";
    public const string BaseDepthShare = "existing.depth_share";
    public const string BaseDepthDifference = "existing.depth_difference";
    public const string SunShare = "weather.sun_share";
    public const string ConvectionForm = "weather.convection_form";
    public const string SkyForm = "weather.sky_form";
    public const string HeatRise = "mix.heat_rise";
    public const string DegreeBehindScreed = "mix.degree_behind_screed";
    public const string LooseConductivity = "mix.loose_conductivity";
    public const string MarkingHot = "mix.marking_hot";
    public const string MarkingCold = "mix.marking_cold";
    public const string OverlayLimit = "mix.overlay_limit";
    public const string FilmDamp = "existing.film_damp";
    public const string FilmWet = "existing.film_wet";
    public const string FilmIce = "existing.film_ice";
    public const string FrozenMoisture = "existing.frozen_moisture";
    public const string DeckUnderside = "existing.deck_underside";
    public const string MarkedGradient = "site.marked_gradient";
    public const string LongDay = "site.long_day_shift";
    public const string LongNight = "site.long_night_shift";
#pragma warning restore CS1591

    /// <summary>Density of a kind of mix.</summary>
    public static string DensityOf(MixKind? kind) => kind is { } known ? $"{MixDensity}.{Underscored(Words.Of(known))}" : $"{MixDensity}.unknown";

    /// <summary>Reach of a drum over an edge.</summary>
    public static string ReachOver(EdgeKind? edge) => $"rolling.reach.{(edge is { } known ? Underscored(Words.Of(known)) : "unknown")}";

    /// <summary>Whether an assumption is the reach of a drum over an edge; at zero the drum covers the mat and nothing beyond it.</summary>
    public static bool IsReach(string id) => id.StartsWith("rolling.reach.", StringComparison.Ordinal);

    /// <summary>Whether it was learnt from recorded shifts, and stands in no catalogue.</summary>
    public static bool IsLearnt(string id) => id.StartsWith("learnt_", StringComparison.Ordinal);

    /// <summary>Whether an assumption is a property of a material, which only what is solved from the cooling of the mat uses.</summary>
    public static bool IsOfMaterial(string id) => id.StartsWith("material.", StringComparison.Ordinal);

    /// <summary>Cessation temperature of a US performance grade, such as <c>PG 64-22</c>.</summary>
    public static string CessationOfGrade(int high, int low) => $"mix.cessation.pg_{high}_{low}";

    /// <summary>Conductivity of a material.</summary>
    public static string ConductivityOf(MaterialClass material) => $"{Material(material)}.conductivity";

    /// <summary>Density of a material.</summary>
    public static string DensityOfMaterial(MaterialClass material) => $"{Material(material)}.density";

    /// <summary>Specific heat of a material.</summary>
    public static string SpecificHeatOf(MaterialClass material) => $"{Material(material)}.specific_heat";

    /// <summary>Long-wave emissivity of a material.</summary>
    public static string EmissivityOf(MaterialClass material) => $"{Material(material)}.emissivity";

    /// <summary>Absorptivity of a material for the sun.</summary>
    public static string AbsorptivityOf(MaterialClass material) => $"{Material(material)}.absorptivity";

    private static string Material(MaterialClass material) => $"material.{Underscored(Words.Of(material))}";

    private static string Underscored(string word) => word.Replace('-', '_');
}

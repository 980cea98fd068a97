using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Weather at the mat where a plan leaves it out.</summary>
internal static class WeatherAssumptions
{
    public static IReadOnlyList<Assumption> All { get; } =
    [
        new(WindHeight, "Height at which a weather station measures wind.", 10, "m", 2, 10, "height of the standard station, " + Sources.WindProfile, Evidence.SecondHand),
        LaygateAssumptions.Judged(MatHeight, "Height at which the wind cools the mat.", 2, "m", 1, 2),
        new(OpenCountry, "Exponent of the wind profile over open country, the windiest terrain.", 0.14, string.Empty, 0.14, 0.14, Sources.WindProfile, Evidence.SecondHand),
        LaygateAssumptions.Judged(SkyBelowAir, "How far the sky's long-wave temperature lies below the air's, where dew point or cloud is not stated.", 6, "K", 0, 20),
        LaygateAssumptions.Judged(Sun, "Sun on the mat in questions of fast cooling where none is stated: none, the unfavourable end.", 0, "W/m2", 0, 0),
        LaygateAssumptions.Judged(CalmShare, "Wind, as a share of the highest one planned, in which the mat cools when slow cooling is asked for and only an envelope is stated.", 50, "%", 0, 100),
        LaygateAssumptions.Judged(WindSpread, "Spread of the wind at the mat about its planned value.", 0, "%", -35, 35),
    ];
}

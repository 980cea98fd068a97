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
        LaygateAssumptions.Judged(Sun, "Sun on the mat in questions of fast cooling where neither it nor cloud and latitude are stated: none, the unfavourable end.", 0, "W/m2", 0, 0),
        LaygateAssumptions.Judged(CalmShare, "Wind, as a share of the highest one planned, in which the mat cools when slow cooling is asked for and only an envelope is stated.", 50, "%", 0, 100),
        LaygateAssumptions.Judged(SunShare, "Share of the computed sun that reaches the mat; the rest is shade, and the clear-sky formula, which runs high.", 100, "%", 50, 100),
        LaygateAssumptions.Judged(ConvectionForm, "Convection form by number: 1 EN ISO 6946, 2 Nusselt and Juerges, 3 McAdams, 4 Vehrencamp, 5 Ryan and Herb. None holds long-wave exchange; samples take each as likely.", 1, string.Empty, 1, 5),
        LaygateAssumptions.Judged(SkyForm, "Form of the sky's emissivity by number, where cloud and dew point are stated: 1 Clark and Allen, 2 Brunt 2017, 3 Idso 2017; samples take each as likely.", 1, string.Empty, 1, 3),
        LaygateAssumptions.Judged(WindSpread, "Spread of the wind at the mat about its planned value.", 0, "%", -35, 35),
        LaygateAssumptions.Judged(AirSpread, "Spread of the air temperature about its planned value, at every hour alike.", 0, "K", -2, 2),
        LaygateAssumptions.Judged(BaseSpread, "Spread of the temperature of the surface that is laid upon about its planned value, with all that lies below it.", 0, "K", -3, 3),
        LaygateAssumptions.Judged(DayRange, "How much warmer the air is at 15:00 than at 03:00 on the days before the first stated hour; sets what they leave in the base.", 10, "K", 4, 16),
        LaygateAssumptions.Judged(BaseDepthShare, "How much of the computed difference between the surface that is laid upon and the depth below it is there: none where it was milled or shaded shortly before, more after days warmer or colder than assumed.", 100, "%", 0, 150),
        LaygateAssumptions.Judged(BaseDepthDifference, "How much warmer the base is at depth than at its surface, where temperatures at depth are not stated and the day before is not known; 63 % of it at 130 mm.", 0, "K", -10, 5),
    ];
}

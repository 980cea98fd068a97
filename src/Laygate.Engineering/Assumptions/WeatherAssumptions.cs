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
    ];
}

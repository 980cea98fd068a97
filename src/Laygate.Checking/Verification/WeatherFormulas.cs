using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of the surface balance: convection, sky, sun, wind.</summary>
internal static class WeatherFormulas
{
    private static readonly CaseInput Air = new("air", CaseDimension.Temperature);
    private static readonly CaseInput DewPoint = new("dew_point", CaseDimension.Temperature);
    private static readonly CaseInput Altitude = new("altitude", CaseDimension.Angle);
    private static readonly CaseInput Sky = new("form", null, Words: [.. SkyForms.All.Select(form => form.Id)]);

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("convection-coefficient", CaseDimension.Coefficient,
            [new("form", null, Words: [.. ConvectionForms.All.Select(form => form.Id)]), new("wind", CaseDimension.Speed), new CaseInput("skin", CaseDimension.Temperature).Optional(), Air.Optional()],
            i => Convection(i.Word("form")).Coefficient(i["wind"], i["skin"], i["air"])),
        new("sky-temperature", CaseDimension.Temperature, [Sky, Air, DewPoint], i => SkyTemperature(i)),
        new("sky-radiation", CaseDimension.Irradiance, [Sky, Air, DewPoint], i => CoolingPhysics.LongWaveLoss(1, SkyTemperature(i), -CoolingPhysics.ZeroCelsius)),
        new("sky-emissivity", CaseDimension.Plain, [Sky, Air, DewPoint], i => Form(i).ClearEmissivity(i["air"], i["dew_point"])),
        new("cloudy-sky-emissivity", CaseDimension.Plain, [new("clear_emissivity", CaseDimension.Plain), new("opaque_tenths", CaseDimension.Plain)],
            i => SkyForms.WithOpaqueCover(i["clear_emissivity"], i["opaque_tenths"])),
        new("long-wave-loss", CaseDimension.Irradiance,
            [new("emissivity", CaseDimension.Plain), new("surface", CaseDimension.Temperature), new("surroundings", CaseDimension.Temperature)],
            i => CoolingPhysics.LongWaveLoss(i["emissivity"], i["surface"], i["surroundings"])),
        new("wind-at-height", CaseDimension.Speed,
            [new("station_wind", CaseDimension.Speed), new("height", CaseDimension.Length), new("exposure", null, Words: ["open", "wooded", "town"])],
            i => WindHeight.At(i["station_wind"], i["height"], Exposure(i.Word("exposure")))),
        new("clear-sky-sun", CaseDimension.Irradiance, [new("month", CaseDimension.Count), Altitude], i => Sun.Clear(i.Whole("month"), i["altitude"])),
        new("clear-sky-sun-haurwitz", CaseDimension.Irradiance, [Altitude], i => Sun.Haurwitz(i["altitude"])),
        new("cloud-transmission", CaseDimension.Plain, [new("oktas", CaseDimension.Plain)], i => Sun.CloudShare(i["oktas"])),
        new("rain-heat-loss", CaseDimension.Irradiance,
            [new("rain", CaseDimension.RainRate), new("skin", CaseDimension.Temperature), Air, new("wind", CaseDimension.Speed), DewPoint],
            i => RainHeat.Loss(new WeatherPoint(0, i["air"], i["wind"], i["air"], 0, 0, i["rain"], i["dew_point"]), i["skin"])),
    ];

    private static double SkyTemperature(CaseInputs i) => Form(i).Temperature(i["air"], i["dew_point"]);

    private static SkyForm Form(CaseInputs i) => SkyForms.All.First(form => string.Equals(form.Id, i.Word("form"), StringComparison.Ordinal));

    private static ConvectionForm Convection(string id) => ConvectionForms.All.First(form => string.Equals(form.Id, id, StringComparison.Ordinal));

    private static WindExposure Exposure(string word) => word switch
    {
        "wooded" => WindExposure.Wooded,
        "town" => WindExposure.Town,
        _ => WindExposure.Open,
    };
}

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
            i => i["wind"] >= 0 ? Convection(i.Word("form")).Coefficient(i["wind"], i["skin"], i["air"]) : null),
        new("sky-temperature", CaseDimension.Temperature, [Sky, Air, DewPoint], i => SkyTemperature(i)),
        new("sky-radiation", CaseDimension.Irradiance, [Sky, Air, DewPoint], i => SkyTemperature(i) is { } sky ? CoolingPhysics.LongWaveLoss(1, sky, -CoolingPhysics.ZeroCelsius) : null),
        new("sky-emissivity", CaseDimension.Plain, [Sky, Air, DewPoint], i => HasTemperatures(i) ? Form(i).ClearEmissivity(i["air"], i["dew_point"]) : null),
        new("cloudy-sky-emissivity", CaseDimension.Plain, [new("clear_emissivity", CaseDimension.Plain), new("opaque_tenths", CaseDimension.Plain)],
            i => i["clear_emissivity"] is >= 0 and <= 1 && i["opaque_tenths"] is >= 0 and <= 10 ? SkyForms.WithOpaqueCover(i["clear_emissivity"], i["opaque_tenths"]) : null),
        new("long-wave-loss", CaseDimension.Irradiance,
            [new("emissivity", CaseDimension.Plain), new("surface", CaseDimension.Temperature), new("surroundings", CaseDimension.Temperature)],
            i => i["emissivity"] is >= 0 and <= 1 && IsTemperature(i["surface"]) && IsTemperature(i["surroundings"]) ? CoolingPhysics.LongWaveLoss(i["emissivity"], i["surface"], i["surroundings"]) : null),
        new("wind-at-height", CaseDimension.Speed,
            [new("station_wind", CaseDimension.Speed), new("height", CaseDimension.Length), new("exposure", null, Words: ["open", "wooded", "town"])],
            i => i["station_wind"] >= 0 && i["height"] > 0 ? WindHeight.At(i["station_wind"], i["height"], Exposure(i.Word("exposure"))) : null),
        new("clear-sky-sun", CaseDimension.Irradiance, [new("month", CaseDimension.Count), Altitude], i => i.Whole("month") is >= 1 and <= 12 && IsAltitude(i) ? Sun.Clear(i.Whole("month"), i["altitude"]) : null),
        new("clear-sky-sun-haurwitz", CaseDimension.Irradiance, [Altitude], i => IsAltitude(i) ? Sun.Haurwitz(i["altitude"]) : null),
        new("cloud-transmission", CaseDimension.Plain, [new("oktas", CaseDimension.Plain)], i => i["oktas"] is >= 0 and <= 8 ? Sun.CloudShare(i["oktas"]) : null),
        new("rain-heat-loss", CaseDimension.Irradiance,
            [new("rain", CaseDimension.RainRate), new("skin", CaseDimension.Temperature), Air, new("wind", CaseDimension.Speed), DewPoint],
            i => i["rain"] >= 0 && i["wind"] >= 0 && HasTemperatures(i) && IsTemperature(i["skin"])
                ? RainHeat.Loss(new WeatherPoint(0, i["air"], i["wind"], i["air"], 0, 0, i["rain"], i["dew_point"]), i["skin"])
                : null),
    ];

    private static double? SkyTemperature(CaseInputs i) => HasTemperatures(i) ? Form(i).Temperature(i["air"], i["dew_point"]) : null;

    private static bool HasTemperatures(CaseInputs i) => IsTemperature(i["air"]) && IsTemperature(i["dew_point"]);

    private static bool IsTemperature(double celsius) => celsius > -CoolingPhysics.ZeroCelsius;

    private static bool IsAltitude(CaseInputs i) => i["altitude"] is >= -90 and <= 90;

    private static SkyForm Form(CaseInputs i) => SkyForms.All.First(form => string.Equals(form.Id, i.Word("form"), StringComparison.Ordinal));

    private static ConvectionForm Convection(string id) => ConvectionForms.All.First(form => string.Equals(form.Id, id, StringComparison.Ordinal));

    private static WindExposure Exposure(string word) => word switch
    {
        "wooded" => WindExposure.Wooded,
        "town" => WindExposure.Town,
        _ => WindExposure.Open,
    };
}

using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Engineering.Cooling;

/// <summary>Heat that falling rain takes from the skin of a mat: a bound, not a model of the film.</summary>
/// <remarks>
/// Rain arrives at the temperature of the air and is warmed to the skin, at most to 100 °C; of it evaporates what the air
/// can carry off, at most all of it. From 100 °C on everything boils: 4.19 (100 − Tr) + 2257 kJ/kg, 731.7 W/m² for 1 mm/h
/// at 10 °C. Below, the air takes m = rho (0.0015 v + 0.0015 dTv^(1/3)) (q_s − q_a) kg/(m² s), rho 1.2041 kg/m³, dTv the
/// difference of virtual temperatures in K, q specific humidity (form of Ryan and Harleman after Herb and others 2008, in
/// the coefficients of a public road surface model, second-hand); heat of evaporation 2501 − 2.44 T kJ/kg, a line through
/// the steam table at 0 and 100 °C. Water that runs off or soaks into open mix is not followed.
/// </remarks>
public static class RainHeat
{
    private const double WaterHeat = 4190;
    private const double Boiling = 100;
    private const double Pressure = 1013.25;

    /// <summary>Heat loss in W/m² of a skin that rain falls on.</summary>
    /// <param name="weather">Weather with rain in mm/h, wind at mat level, air temperature and dew point.</param>
    /// <param name="skin">Skin temperature in °C.</param>
    public static double Loss(in WeatherPoint weather, double skin)
    {
        var rate = weather.Rain / 3600;
        var reached = Math.Min(skin, Boiling);
        var evaporated = skin >= Boiling ? rate : Math.Min(rate, Evaporation(weather, skin));
        return (rate * WaterHeat * (reached - weather.Air)) + (evaporated * HeatOfEvaporation(reached));
    }

    /// <summary>Water that the air can take up from a wet skin, kg/(m² s); never negative.</summary>
    /// <param name="weather">Wind at mat level, air temperature and dew point.</param>
    /// <param name="skin">Skin temperature in °C; held at 100 °C at most.</param>
    public static double Evaporation(in WeatherPoint weather, double skin)
    {
        var dew = double.IsNaN(weather.DewPoint) ? weather.Air : Math.Min(weather.DewPoint, weather.Air);
        var (wet, moist) = (Vapour(Math.Min(skin, Boiling)), Vapour(dew));
        var lift = Virtual(Math.Min(skin, Boiling), wet) - Virtual(weather.Air, moist);
        var speed = 0.0015 * (weather.Wind + Math.Cbrt(Math.Max(0, lift)));
        return Math.Max(0, 1.2041 * speed * (Humidity(wet) - Humidity(moist)));
    }

    private static double HeatOfEvaporation(double celsius) => 1000 * (2501 - (2.44 * Math.Max(0, celsius)));

    private static double Vapour(double celsius) => Math.Min(Pressure, SkyForms.VapourPressure(celsius));

    private static double Humidity(double vapour) => 0.622 * vapour / (Pressure - (0.378 * vapour));

    private static double Virtual(double celsius, double vapour) =>
        (celsius + CoolingPhysics.ZeroCelsius) / (1 - (0.378 * vapour / Pressure));
}

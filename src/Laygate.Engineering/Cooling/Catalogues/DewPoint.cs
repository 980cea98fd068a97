namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>Dew point of the air, and how far a surface stays above it.</summary>
public static class DewPoint
{
    /// <summary>
    /// Dew point: Td = 237.3 g/(17.27 − g), g = ln(RH/100) + 17.27 T/(237.3 + T), T in °C; inverse of
    /// <see cref="SkyForms.VapourPressure"/>.
    /// </summary>
    /// <remarks>Source: Magnus form with the coefficients of Tetens 1930 and Murray 1967 (recalled). Over water, about −35 to
    /// 50 °C; within 0.1 K of psychrometric tables there.</remarks>
    /// <param name="air">Air temperature T in °C.</param>
    /// <param name="humidity">Relative humidity RH in %, above 0; above 100 counts as 100.</param>
    /// <returns>Dew point in °C.</returns>
    public static double Of(double air, double humidity)
    {
        var g = Math.Log(Math.Min(100, humidity) / 100) + (17.27 * air / (237.3 + air));
        return 237.3 * g / (17.27 - g);
    }

    /// <summary>Relative humidity in % from air temperature and dew point in °C; inverse of <see cref="Of"/>.</summary>
    public static double Humidity(double air, double dewPoint) =>
        100 * SkyForms.VapourPressure(dewPoint) / SkyForms.VapourPressure(air);

    /// <summary>Dew-point margin in K: surface temperature minus dew point. At or below zero water condenses on the surface.</summary>
    /// <param name="surface">Temperature of the surface in °C.</param>
    /// <param name="dewPoint">Dew point of the air in °C.</param>
    public static double Margin(double surface, double dewPoint) => surface - dewPoint;
}

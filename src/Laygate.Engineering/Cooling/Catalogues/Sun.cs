namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>Irradiance of the sun on level ground.</summary>
public static class Sun
{
    private static readonly (double A, double B, double C)[] Months =
    [
        (1202, 0.141, 0.103), (1187, 0.142, 0.104), (1164, 0.149, 0.109), (1130, 0.164, 0.120),
        (1106, 0.177, 0.130), (1092, 0.185, 0.137), (1093, 0.186, 0.138), (1107, 0.182, 0.134),
        (1136, 0.165, 0.121), (1166, 0.152, 0.111), (1190, 0.144, 0.106), (1204, 0.141, 0.103),
    ];

    /// <summary>Clear sky: direct A exp(−B/sin b), diffuse C times direct; on level ground direct · (sin b + C).</summary>
    /// <remarks>Source: ASHRAE clear sky model as given in the EnergyPlus Engineering Reference
    /// (NREL), climate calculations (second-hand), which says that it runs high. Zero with the sun at or below the horizon;
    /// a month outside 1 to 12 is brought to the nearest.</remarks>
    /// <param name="month">Month, 1 to 12, of the northern hemisphere.</param>
    /// <param name="altitude">Height b of the sun above the horizon in degrees.</param>
    /// <returns>Global irradiance in W/m².</returns>
    public static double Clear(int month, double altitude)
    {
        var sine = Math.Sin(altitude * Math.PI / 180);
        if (!(sine > 0))
        {
            return 0;
        }

        var (a, b, c) = Months[Math.Clamp(month, 1, 12) - 1];
        return a * Math.Exp(-b / sine) * (sine + c);
    }

    /// <summary>Clear sky after Haurwitz: 1098 sin b exp(−0.057/sin b) W/m².</summary>
    /// <remarks>Source: Haurwitz 1945 (recalled). Zero with the sun at or below the horizon.</remarks>
    /// <param name="altitude">Height b of the sun above the horizon in degrees.</param>
    public static double Haurwitz(double altitude)
    {
        var sine = Math.Sin(altitude * Math.PI / 180);
        return sine > 0 ? 1098 * sine * Math.Exp(-0.057 / sine) : 0;
    }

    /// <summary>Share of the clear-sky irradiance that comes straight from the disc: sin b/(sin b + C), the rest comes from the sky.</summary>
    /// <remarks>Source: as <see cref="Clear"/> (derived). Zero with the sun at or below the horizon.</remarks>
    /// <param name="month">Month, 1 to 12.</param>
    /// <param name="altitude">Height b of the sun above the horizon in degrees.</param>
    public static double DirectShare(int month, double altitude)
    {
        var sine = Math.Sin(altitude * Math.PI / 180);
        return sine > 0 ? sine / (sine + Months[Math.Clamp(month, 1, 12) - 1].C) : 0;
    }

    /// <summary>True solar time in h: clock brought to the longitude, plus the equation of time.</summary>
    /// <remarks>Equation of time in minutes: 229.2 (0.000075 + 0.001868 cos B − 0.032077 sin B − 0.014615 cos 2B
    /// − 0.04089 sin 2B), B = 360° (n − 1)/365. Source: Spencer 1971 as in Duffie and Beckman, Solar Engineering of Thermal
    /// Processes, chapter 1 (recalled); good to about half a minute.</remarks>
    /// <param name="at">Moment with its offset from UTC.</param>
    /// <param name="longitude">Longitude in degrees, east positive.</param>
    /// <returns>0 to 24, 12 at noon.</returns>
    public static double SolarHour(DateTimeOffset at, double longitude)
    {
        var hour = at.UtcDateTime.TimeOfDay.TotalHours + (longitude / 15) + (EquationOfTime(at.DayOfYear) / 60);
        return hour - (24 * Math.Floor(hour / 24));
    }

    /// <summary>Sundial minus mean time in minutes; see <see cref="SolarHour"/>.</summary>
    /// <param name="dayOfYear">Day n of the year, 1 to 366.</param>
    public static double EquationOfTime(int dayOfYear)
    {
        var b = 2 * Math.PI * (dayOfYear - 1) / 365;
        return 229.2 * (0.000075 + (0.001868 * Math.Cos(b)) - (0.032077 * Math.Sin(b)) - (0.014615 * Math.Cos(2 * b)) - (0.04089 * Math.Sin(2 * b)));
    }

    /// <summary>Share of the clear-sky irradiance that clouds let through: 1 − 0.75 (n/8)^3.4.</summary>
    /// <remarks>Source: Kasten and Czeplak 1980 (recalled). n is held between 0 and 8.</remarks>
    /// <param name="oktas">Cloud cover n in eighths.</param>
    public static double CloudShare(double oktas) => 1 - (0.75 * Math.Pow(Math.Clamp(oktas, 0, 8) / 8, 3.4));

    /// <summary>
    /// Height of the sun: sin b = sin f sin d + cos f cos d cos h, declination d = 23.45° sin(360° (284 + n)/365),
    /// hour angle h = 15° (t − 12).
    /// </summary>
    /// <remarks>Source: spherical astronomy with Cooper's 1969 declination, as in Duffie and Beckman, Solar Engineering of
    /// Thermal Processes, chapter 1 (recalled). Declination good to about half a degree.</remarks>
    /// <param name="latitude">Latitude f in degrees, north positive.</param>
    /// <param name="dayOfYear">Day n of the year, 1 to 366.</param>
    /// <param name="solarHour">True solar time t in h, 12 at noon.</param>
    /// <returns>Height in degrees, negative below the horizon.</returns>
    public static double Altitude(double latitude, int dayOfYear, double solarHour)
    {
        const double Degree = Math.PI / 180;
        var d = 23.45 * Degree * Math.Sin(2 * Math.PI * (284 + dayOfYear) / 365);
        var f = latitude * Degree;
        var h = 15 * Degree * (solarHour - 12);
        return Math.Asin(Math.Clamp((Math.Sin(f) * Math.Sin(d)) + (Math.Cos(f) * Math.Cos(d) * Math.Cos(h)), -1, 1)) / Degree;
    }
}

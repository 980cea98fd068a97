namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>How clouds enter the emissivity of the sky.</summary>
public enum CloudForm
{
    /// <summary>Clark and Allen's polynomial in tenths of opaque cover; the house default.</summary>
    OpaqueCover,

    /// <summary>Campbell and Norman: eps (1 − 0.84 n) + 0.84 n.</summary>
    CloudShare,

    /// <summary>Clouds radiate as a black body: eps (1 − n) + n, as Edinger and Herb have it.</summary>
    BlackShare,
}

/// <summary>A published form of the emissivity of the clear sky.</summary>
/// <param name="Id">Short name.</param>
/// <param name="Name">Author and year.</param>
/// <param name="Formula">Formula; Ta air and Td dew point in K unless °C is said, e vapour pressure in hPa.</param>
/// <param name="ClearEmissivity">Emissivity (no unit) from air temperature in °C and dew point in °C.</param>
/// <param name="Source">Document, edition, place.</param>
/// <param name="Evidence">How the formula is known.</param>
public sealed record SkyForm(
    string Id,
    string Name,
    string Formula,
    Func<double, double, double> ClearEmissivity,
    string Source,
    SourceEvidence Evidence)
{
    /// <summary>How clouds enter where the form has no say of its own.</summary>
    public CloudForm Clouds { get; init; } = CloudForm.OpaqueCover;

    /// <summary>Amplitude of a daily term amplitude · cos(pi hour/12); zero for forms without.</summary>
    public double DailyTerm { get; init; }

    /// <summary>Emissivity of the sky with clouds, at an hour of the day.</summary>
    /// <param name="air">Air temperature in °C.</param>
    /// <param name="dewPoint">Dew point in °C.</param>
    /// <param name="oktas">Cloud cover in eighths; held between 0 and 8. All of it counts as opaque.</param>
    /// <param name="hour">Hour of the day, 0 to 24; only forms with a daily term use it.</param>
    /// <returns>Emissivity, at most 1.</returns>
    public double Emissivity(double air, double dewPoint, double oktas, double hour)
    {
        var clear = ClearEmissivity(air, dewPoint) + (DailyTerm * Math.Cos(Math.PI * hour / 12));
        var n = Math.Clamp(oktas, 0, 8) / 8;
        return Clouds switch
        {
            CloudForm.CloudShare => SkyForms.WithCloudShare(clear, n),
            CloudForm.BlackShare => (clear * (1 - n)) + n,
            _ => SkyForms.WithOpaqueCover(clear, 10 * n),
        };
    }

    /// <summary>Sky temperature under a clear sky: Tsky = Ta eps^(1/4).</summary>
    /// <param name="air">Air temperature in °C.</param>
    /// <param name="dewPoint">Dew point in °C, not above the air temperature.</param>
    /// <returns>Sky temperature in °C. Fitted near screen level between about −20 and 35 °C; evaluated as it stands outside.</returns>
    public double Temperature(double air, double dewPoint) => SkyForms.Temperature(air, ClearEmissivity(air, dewPoint));
}

/// <summary>
/// Published forms of long-wave radiation from the sky. They differ by 12 to 42 W/m² from measurements (root mean
/// square), which is below 2 % of what a mat at 80 °C loses.
/// </summary>
public static class SkyForms
{
    private const string Note2019 = "Alternative Models for Clear Sky Emissivity, design note of EnergyPlus (NREL) 2019";

    /// <summary>Swinbank: Tsky = 0.0552 Ta^1.5.</summary>
    public static SkyForm Swinbank { get; } = new("swinbank", "Swinbank 1963", "Tsky = 0.0552 Ta^1.5", (ta, _) => Math.Pow(0.0552 * Math.Sqrt(K(ta)), 4), "Swinbank 1963", SourceEvidence.Recalled);

    /// <summary>Brunt: 0.52 + 0.065 √e.</summary>
    public static SkyForm Brunt { get; } = new("brunt", "Brunt 1932", "0.52 + 0.065 √e", (_, td) => 0.52 + (0.065 * Math.Sqrt(VapourPressure(td))), "Brunt 1932", SourceEvidence.Recalled);

    /// <summary>Brunt with coefficients of 2017: 0.618 + 0.056 √e.</summary>
    public static SkyForm BruntRecalibrated { get; } = new("brunt-2017", "Brunt, recalibrated by Li and others 2017", "0.618 + 0.056 √e", (_, td) => 0.618 + (0.056 * Math.Sqrt(VapourPressure(td))), Note2019, SourceEvidence.SecondHand);

    /// <summary>Idso with coefficients of 2017: 0.685 + 3.2e-5 e exp(1699/Ta).</summary>
    public static SkyForm IdsoRecalibrated { get; } = new("idso-2017", "Idso, recalibrated by Li and others 2017", "0.685 + 3.2e-5 e exp(1699/Ta)", (ta, td) => 0.685 + (3.2e-5 * VapourPressure(td) * Math.Exp(1699 / K(ta))), Note2019, SourceEvidence.SecondHand);

    /// <summary>Clark and Allen: 0.787 + 0.764 ln(Td/273); the house default, with its cloud factor.</summary>
    public static SkyForm ClarkAllen { get; } = new("clark-allen", "Clark and Allen 1978", "0.787 + 0.764 ln(Td/273)", (_, td) => 0.787 + (0.764 * Math.Log(K(td) / 273)), "Clark and Allen 1978, in: EnergyPlus Engineering Reference (NREL), climate calculations", SourceEvidence.SecondHand);

    /// <summary>Brutsaert: 1.24 (e/Ta)^(1/7).</summary>
    public static SkyForm Brutsaert { get; } = new("brutsaert", "Brutsaert 1975", "1.24 (e/Ta)^(1/7)", (ta, td) => 1.24 * Math.Pow(VapourPressure(td) / K(ta), 1.0 / 7), "Brutsaert 1975, in the code of a public climate programme", SourceEvidence.SecondHand);

    /// <summary>Bliss: 0.8 + 0.004 Td in °C.</summary>
    public static SkyForm Bliss { get; } = new("bliss", "Bliss 1961 type", "0.8 + 0.004 Td, Td in °C", (_, td) => 0.8 + (0.004 * td), "Bliss 1961, in the code of a public pavement heat model after Gui and others 2007", SourceEvidence.SecondHand);

    /// <summary>Berdahl and Martin: 0.711 + 0.56 (Td/100) + 0.73 (Td/100)², Td in °C, daily mean; <see cref="BerdahlMartinHourly"/> adds its hourly term.</summary>
    public static SkyForm BerdahlMartin { get; } = new("berdahl-martin", "Berdahl and Martin 1984", "0.711 + 0.56 Td/100 + 0.73 (Td/100)², Td in °C", (_, td) => 0.711 + (0.0056 * td) + (0.73e-4 * td * td), "Berdahl and Martin 1984", SourceEvidence.Recalled);

    /// <summary>Berdahl and Martin with the hourly term 0.013 cos(pi hour/12), highest at midnight.</summary>
    public static SkyForm BerdahlMartinHourly { get; } = BerdahlMartin with { Id = "berdahl-martin-hourly", Name = "Berdahl and Martin 1984, hourly", Formula = "0.711 + 0.56 Td/100 + 0.73 (Td/100)² + 0.013 cos(pi hour/12), Td in °C", DailyTerm = 0.013 };

    /// <summary>Berdahl and Fromberg, day: 0.727 + 0.0060 Td in °C.</summary>
    public static SkyForm BerdahlFrombergDay { get; } = new("berdahl-fromberg-day", "Berdahl and Fromberg 1982, day", "0.727 + 0.0060 Td, Td in °C", (_, td) => 0.727 + (0.0060 * td), "Berdahl and Fromberg 1982", SourceEvidence.Recalled);

    /// <summary>Edinger after Herb: 0.67 e^0.08, clouds as a black body.</summary>
    public static SkyForm EdingerHerb { get; } = new("edinger-herb", "Edinger after Herb 2008", "n + 0.67 (1 − n) e^0.08, n cloud share", (_, td) => 0.67 * Math.Pow(VapourPressure(td), 0.08), "Edinger after Herb and others 2008, in the coefficients of a public road surface model", SourceEvidence.SecondHand) { Clouds = CloudForm.BlackShare };

    /// <summary>Berdahl and Fromberg, night: 0.741 + 0.0062 Td in °C.</summary>
    public static SkyForm BerdahlFrombergNight { get; } = new("berdahl-fromberg-night", "Berdahl and Fromberg 1982, night", "0.741 + 0.0062 Td, Td in °C", (_, td) => 0.741 + (0.0062 * td), "Berdahl and Fromberg 1982", SourceEvidence.Recalled);

    /// <summary>Idso and Jackson: 1 − 0.261 exp(−7.77e-4 (273 − Ta)²).</summary>
    public static SkyForm IdsoJackson { get; } = new("idso-jackson", "Idso and Jackson 1969", "1 − 0.261 exp(−7.77e-4 (273 − Ta)²)", (ta, _) => 1 - (0.261 * Math.Exp(-7.77e-4 * (273 - K(ta)) * (273 - K(ta)))), "Idso and Jackson 1969", SourceEvidence.Recalled);

    /// <summary>All forms.</summary>
    public static IReadOnlyList<SkyForm> All { get; } =
        [Swinbank, Brunt, BruntRecalibrated, IdsoRecalibrated, ClarkAllen, Brutsaert, Bliss, BerdahlMartin, BerdahlMartinHourly, BerdahlFrombergNight, BerdahlFrombergDay, IdsoJackson, EdingerHerb];

    /// <summary>Sky temperature in °C from air temperature in °C and sky emissivity: Tsky = Ta eps^(1/4), Ta in K. Definition.</summary>
    public static double Temperature(double air, double emissivity) =>
        (K(air) * Math.Sqrt(Math.Sqrt(Math.Max(0, emissivity)))) - CoolingPhysics.ZeroCelsius;

    /// <summary>Clouds after Clark and Allen: eps (1 + 0.0224 N − 0.0035 N² + 0.00028 N³), N in tenths of opaque cover.</summary>
    /// <remarks>Source: as <see cref="ClarkAllen"/> (second-hand). N is held between 0 and 10, the result at 1 at most.</remarks>
    public static double WithOpaqueCover(double clearEmissivity, double tenths)
    {
        var n = Math.Clamp(tenths, 0, 10);
        return Math.Min(1, clearEmissivity * (1 + (0.0224 * n) - (0.0035 * n * n) + (0.00028 * n * n * n)));
    }

    /// <summary>Clouds, linear: eps (1 − 0.84 n) + 0.84 n, n cloud share 0 to 1.</summary>
    /// <remarks>Source: Campbell and Norman 1998, in the code of a public hydrology package (second-hand). n is held between 0 and 1.</remarks>
    public static double WithCloudShare(double clearEmissivity, double share)
    {
        var n = 0.84 * Math.Clamp(share, 0, 1);
        return (clearEmissivity * (1 - n)) + n;
    }

    /// <summary>Saturation vapour pressure at the dew point: e = 6.1078 exp(17.27 Td/(Td + 237.3)) hPa, Td in °C.</summary>
    /// <remarks>Source: Tetens 1930 with the coefficients of Murray 1967 (recalled). Over water, about −35 to 50 °C; evaluated as it stands outside.</remarks>
    public static double VapourPressure(double dewPoint) => 6.1078 * Math.Exp(17.27 * dewPoint / (dewPoint + 237.3));

    private static double K(double celsius) => celsius + CoolingPhysics.ZeroCelsius;
}

namespace Laygate.Engineering.Safety;

/// <summary>Lengths of temporary traffic control, in SI outside and in the units of their source inside.</summary>
internal static class TrafficSpaceFormulas
{
    public const string TaperExpression = "L = W · S² / 60 up to 40 mph, L = W · S above";
    public const string TaperSource = "FHWA, Manual on Uniform Traffic Control Devices, edition 2003, table 6H-4 (read)";
    public const string StoppingExpression = "SSD = 1.47 · V · t + 1.075 · V² / a";
    public const string StoppingSource = "TxDOT, Roadway Design Manual 4.11.1 (read); its use as length of the buffer: MUTCD part 6 (recalled)";

    private const double Foot = 0.3048;
    private const double MilePerHour = 5280 * Foot / 3600;
    private const double SlowMph = 40;
    private const double ReactionSeconds = 2.5;
    private const double DecelerationFeet = 11.2;
    private const double Rounding = 1e-9;

    /// <summary>Merging taper, m. Source: MUTCD 2003 table 6H-4, with W in ft, S in mph and L in ft; between 40 and 45 mph, where the table is silent, the longer form.</summary>
    /// <param name="shift">Sideways shift W, m, above 0.</param>
    /// <param name="speed">Posted speed S, m/s, above 0.</param>
    /// <returns>Length, m; null where an input is not above 0.</returns>
    public static double? Taper(double shift, double speed)
    {
        if (!(shift > 0 && speed > 0))
        {
            return null;
        }

        var mph = speed / MilePerHour;
        return shift * (mph <= SlowMph + Rounding ? mph * mph / 60 : mph);
    }

    /// <summary>Stopping sight distance on a level road, m. Source: TxDOT Roadway Design Manual 4.11.1, with V in mph, t = 2.5 s, a = 11.2 ft/s².</summary>
    /// <param name="speed">Speed V, m/s, above 0.</param>
    /// <returns>Length, m; null where the speed is not above 0.</returns>
    public static double? Stopping(double speed)
    {
        if (!(speed > 0))
        {
            return null;
        }

        var mph = speed / MilePerHour;
        return Foot * ((1.47 * mph * ReactionSeconds) + (1.075 * mph * mph / DecelerationFeet));
    }
}

using System.Globalization;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Plots;

/// <summary>Numbers of plots and their tables, with no more digits than they deserve.</summary>
internal static class Digits
{
    /// <summary>To whole units.</summary>
    public static string Whole(double? number) => number is { } known ? Math.Round(known, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture) : "—";

    /// <summary>To a tenth.</summary>
    public static string Tenth(double? number) => number is { } known ? Rounding.Plain(Math.Round(known, 1, MidpointRounding.AwayFromZero)) : "—";

    /// <summary>Minutes: to 1 below 20, to 5 above.</summary>
    public static string Minutes(double? number) => number is { } known ? Rounding.Text(known, RoundingKind.Minutes, 0) : "—";

    /// <summary>A time of day; with the day where it is another one than that of the start.</summary>
    public static string Clock(DateTimeOffset at, DateTimeOffset start) =>
        at.ToString(at.Date == start.Date ? "HH:mm" : "ddd HH:mm", CultureInfo.InvariantCulture);
}

using System.Globalization;
using Laygate.Exchange;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Text;

/// <summary>How a number is rounded before it is shown.</summary>
internal enum RoundingKind
{
    /// <summary>As it was written: all its digits.</summary>
    Exact,

    /// <summary>Predicted minutes: to 1 below 20, to 5 above.</summary>
    Minutes,

    /// <summary>Computed minutes without a spread: to 0.1 below 10, to 1 above.</summary>
    PlainMinutes,

    /// <summary>Predicted temperatures: to 1 degree.</summary>
    Temperature,

    /// <summary>
    /// Probabilities in per cent: to 5 %, and to 1 % near 0 and 100 %, where 500 simulated shifts tell that much and the limits
    /// lie: 1.7 % and 4.3 % must not read as "under 5" and "5" beside a warning of 2.2 to 5.1 %.
    /// </summary>
    Probability,

    /// <summary>Three significant digits, or fewer when the band deserves no more.</summary>
    General,
}

/// <summary>Rounds numbers for reading. A level above 0 gives one more digit each, for values that must not look equal to their limit.</summary>
internal static class Rounding
{
    /// <summary>Finest level: the number with all its digits.</summary>
    public const int FinestLevel = 9;

    /// <summary>The number with the twelve significant digits that a JSON report keeps, so that a stored report is worded as on its first day.</summary>
    public static double Kept(double number) => NumberToken.Kept(number);

    /// <summary>The value with its numbers as a JSON report keeps them.</summary>
    public static ShownValue? Kept(ShownValue? value) =>
        value is null ? null : value with { Number = Kept(value.Number), Low = Kept(value.Low), High = Kept(value.High) };

    /// <summary>The rounded number.</summary>
    /// <param name="number">The number.</param>
    /// <param name="kind">How to round.</param>
    /// <param name="level">Digits more than the kind deserves.</param>
    /// <param name="band">Width of the band; 0 without one.</param>
    public static double Round(double number, RoundingKind kind, int level, double band = 0)
    {
        var kept = Kept(number);
        return kept == 0 || !double.IsFinite(kept) || kind == RoundingKind.Exact || level >= FinestLevel
            ? kept
            : ToStep(kept, Step(Math.Abs(kept), kind, level, band));
    }

    /// <summary>The rounded number as text: no exponent, no grouping, at most 12 significant digits.</summary>
    public static string Text(double number, RoundingKind kind, int level, double band = 0)
    {
        var rounded = Round(number, kind, level, band);
        if (kind == RoundingKind.Probability && level == 0 && number > 0 && rounded == 0)
        {
            return "under 1";
        }

        return kind == RoundingKind.Probability && level == 0 && number < 100 && rounded == 100 ? "over 99" : Plain(rounded);
    }

    /// <summary>A number without exponent and without the noise of binary fractions.</summary>
    public static string Plain(double number)
    {
        if (!double.IsFinite(number))
        {
            return "not a number";
        }

        number = Kept(number);
        var magnitude = Math.Abs(number);
        if (magnitude is (>= 1e15 or < 1e-12) && magnitude != 0)
        {
            return number.ToString("G4", CultureInfo.InvariantCulture);
        }

        var decimals = magnitude == 0 ? 0 : Math.Clamp(11 - (int)Math.Floor(Math.Log10(magnitude)), 0, 15);
        return decimal.Round((decimal)Math.Round(number, decimals), decimals)
            .ToString("0.###############", CultureInfo.InvariantCulture);
    }

    private static double? Kept(double? number) => number is { } known ? Kept(known) : null;

    private static double Step(double magnitude, RoundingKind kind, int level, double band) => kind switch
    {
        RoundingKind.Minutes when level == 0 => magnitude < 20 ? 1 : 5,
        RoundingKind.Minutes => Power(1 - level),
        RoundingKind.PlainMinutes => Power((magnitude < 10 ? -1 : 0) - level),
        RoundingKind.Temperature => Power(-level),
        RoundingKind.Probability when level == 0 => magnitude is > 20 and < 80 ? 5 : 1,
        RoundingKind.Probability => Power(1 - level),
        _ => Power(GeneralExponent(magnitude, band) - level),
    };

    private static int GeneralExponent(double magnitude, double band)
    {
        var threeDigits = (int)Math.Floor(Math.Log10(magnitude)) - 2;
        return band > 0 ? Math.Max(threeDigits, (int)Math.Floor(Math.Log10(band / 2))) : threeDigits;
    }

    private static double Power(int exponent) => Math.Pow(10, exponent);

    // Dividing by the inverse keeps 0.1 steps exact where multiplying by 0.1 would not.
    private static double ToStep(double number, double step) => step >= 1
        ? Math.Round(number / step, MidpointRounding.AwayFromZero) * step
        : Math.Round(number * Math.Round(1 / step), MidpointRounding.AwayFromZero) / Math.Round(1 / step);
}

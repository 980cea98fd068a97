namespace Laygate.Engineering.Acceptance;

/// <summary>How a dropped digit of exactly 5 is rounded.</summary>
public enum HalfRule
{
    /// <summary>Away from zero: 4.65 is 4.7.</summary>
    HalfUp,

    /// <summary>To the even digit: 4.65 is 4.6, 4.75 is 4.8.</summary>
    HalfEven,
}

/// <summary>Rounding as publications mean it: in decimal digits, since 4.65 has no binary form and would fall on the wrong side.</summary>
public static class Decimals
{
    /// <summary>A number rounded to some decimals.</summary>
    /// <param name="number">The number; one that no decimal holds stays as it is.</param>
    /// <param name="decimals">Decimals; null: not rounded.</param>
    /// <param name="rule">The rule.</param>
    public static double Round(double number, int? decimals, HalfRule rule) =>
        decimals is { } places && double.IsFinite(number) && Math.Abs(number) < 1e15
            ? (double)decimal.Round((decimal)number, places, rule == HalfRule.HalfEven ? MidpointRounding.ToEven : MidpointRounding.AwayFromZero)
            : number;
}

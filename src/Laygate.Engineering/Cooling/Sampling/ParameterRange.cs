namespace Laygate.Engineering.Cooling.Sampling;

/// <summary>How the samples of a range are spread.</summary>
public enum RangeShape
{
    /// <summary>Every value between low and high is as likely: what to take when only the ends are known.</summary>
    Even,

    /// <summary>Likeliest at the expected value, falling in straight lines to zero at low and high.</summary>
    Triangular,

    /// <summary>Whole numbers from low to high, each as likely, such as the index of a published form.</summary>
    Choice,
}

/// <summary>A property that is known to lie in a range.</summary>
/// <param name="Name">Name for reports.</param>
/// <param name="Low">Low end, in the unit that the builder of the problem expects.</param>
/// <param name="Expected">Expected value, between low and high.</param>
/// <param name="High">High end.</param>
/// <param name="Shape">How samples spread.</param>
public sealed record ParameterRange(string Name, double Low, double Expected, double High, RangeShape Shape = RangeShape.Even)
{
    /// <summary>A property without a range.</summary>
    public static ParameterRange Fixed(string name, double value) => new(name, value, value, value);

    /// <summary>One of several forms by index, the first being the expected one.</summary>
    public static ParameterRange Choice(string name, int count) => new(name, 0, 0, count - 1, RangeShape.Choice);

    /// <summary>The value below which a share of the samples lies; share from 0 to 1.</summary>
    public double At(double share) => Shape switch
    {
        RangeShape.Choice => Math.Min(High, Low + Math.Floor(share * (High - Low + 1))),
        RangeShape.Triangular when High > Low => Triangular(share),
        _ => Low + (share * (High - Low)),
    };

    private double Triangular(double share)
    {
        var rising = (Expected - Low) / (High - Low);
        return share < rising
            ? Low + Math.Sqrt(share * (High - Low) * (Expected - Low))
            : High - Math.Sqrt((1 - share) * (High - Low) * (High - Expected));
    }
}

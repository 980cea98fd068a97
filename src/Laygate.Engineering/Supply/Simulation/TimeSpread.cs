using System.Runtime.InteropServices;
using MathNet.Numerics.Distributions;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>How a time varies from one time to the next.</summary>
public enum SpreadKind
{
    /// <summary>It does not vary.</summary>
    Constant,

    /// <summary>Exponential: the pessimistic shape of queueing theory.</summary>
    Exponential,

    /// <summary>Lognormal: never negative, with a long tail to the slow side.</summary>
    Lognormal,
}

/// <summary>A time and its spread: a fixed part, and a part that varies.</summary>
/// <param name="Kind">Shape of the part that varies.</param>
/// <param name="Mean">Mean of the part that varies, s.</param>
/// <param name="Variation">Standard deviation of that part as a share of its mean; 1 for the exponential.</param>
/// <param name="Fixed">Fixed part, s.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TimeSpread(SpreadKind Kind, double Mean, double Variation, double Fixed)
{
    /// <summary>Mean of the whole time, s.</summary>
    public double Expected => Fixed + Mean;

    /// <summary>Whether the time can be sampled: nothing negative, nothing infinite.</summary>
    public bool IsUsable => double.IsFinite(Mean) && double.IsFinite(Variation) && double.IsFinite(Fixed) && Mean >= 0 && Variation >= 0 && Fixed >= 0;

    /// <summary>A time that does not vary.</summary>
    public static TimeSpread Constant(double seconds) => new(SpreadKind.Constant, 0, 0, seconds);

    /// <summary>An exponential time.</summary>
    public static TimeSpread Exponential(double mean) => new(SpreadKind.Exponential, mean, 1, 0);

    /// <summary>A lognormal time by its mean and its coefficient of variation; without variation a constant.</summary>
    public static TimeSpread Lognormal(double mean, double variation) =>
        variation > 0 && mean > 0 ? new(SpreadKind.Lognormal, mean, variation, 0) : Constant(mean);

    /// <summary>A lognormal time by its usual value, taken as the median, and its value on a bad day, taken as a high point of the spread.</summary>
    /// <param name="usual">Usual day, s.</param>
    /// <param name="bad">Bad day, s; not above the usual day means no spread.</param>
    /// <param name="point">Point of the spread that the bad day is, 0.5 to 1, for example 0.95.</param>
    public static TimeSpread UsualAndBad(double usual, double bad, double point)
    {
        if (!(bad > usual) || !(usual > 0))
        {
            return Constant(usual);
        }

        var deviation = Math.Log(bad / usual) / Normal.InvCDF(0, 1, point);
        var square = deviation * deviation;
        return Lognormal(usual * Math.Exp(square / 2), Math.Sqrt(Math.Exp(square) - 1));
    }

    /// <summary>A lognormal time by its usual value, taken as the median, and its coefficient of variation.</summary>
    public static TimeSpread UsualAndVariation(double usual, double variation) =>
        Lognormal(usual * Math.Sqrt(1 + (variation * variation)), variation);

    /// <summary>The same time with a fixed part added.</summary>
    public TimeSpread Plus(double seconds) => this with { Fixed = Fixed + seconds };

    /// <summary>The same time without spread.</summary>
    /// <param name="median">Whether the median stands for it, else the mean.</param>
    public TimeSpread WithoutSpread(bool median) =>
        Constant(Fixed + (median && Kind == SpreadKind.Lognormal ? Mean / Math.Sqrt(1 + (Variation * Variation)) : Mean));

    /// <summary>Point of a lognormal or constant time below which a share of the samples lies, s.</summary>
    public double Point(double share) => Kind switch
    {
        SpreadKind.Exponential => Fixed - (Mean * Math.Log(1 - share)),
        SpreadKind.Lognormal => Fixed + Math.Exp(LogMean + (LogDeviation * Normal.InvCDF(0, 1, share))),
        _ => Expected,
    };

    /// <summary>Mean of the logarithm.</summary>
    internal double LogMean => Math.Log(Mean) - (LogDeviation * LogDeviation / 2);

    /// <summary>Standard deviation of the logarithm.</summary>
    internal double LogDeviation => Math.Sqrt(Math.Log(1 + (Variation * Variation)));
}

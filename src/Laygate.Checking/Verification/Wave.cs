using System.Runtime.InteropServices;
using Laygate.Engineering.Cooling;

namespace Laygate.Checking.Verification;

/// <summary>Amplitude and lag of a place under a skin whose temperature swings, by projection on sine and cosine over the last period.</summary>
/// <param name="Ratio">Amplitude as a share of that at the skin.</param>
/// <param name="Lag">Lag behind the skin in s, below one period.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Wave(double? Ratio, double? Lag)
{
    private const int Samples = 288;

    public static Wave At(CoolingCurve curve, CoolingPlace place, CoolingProblem problem)
    {
        var skin = (TopBoundary.GivenTemperature)problem.Top;
        var omega = 2 * Math.PI / skin.Period;
        var (sine, cosine) = (0.0, 0.0);
        for (var i = 0; i < Samples; i++)
        {
            var time = curve.End - (skin.Period * (Samples - i) / Samples);
            if (curve.Value(place, time) is not { } value)
            {
                return default;
            }

            sine += (value - skin.Mean) * Math.Sin(omega * time) * 2 / Samples;
            cosine += (value - skin.Mean) * Math.Cos(omega * time) * 2 / Samples;
        }

        var phase = Math.Atan2(-cosine, sine);
        // At the skin itself rounding may put the phase a hair below zero; that is no lag of a whole period.
        phase += phase < -1e-6 ? 2 * Math.PI : 0;
        return new Wave(Math.Sqrt((sine * sine) + (cosine * cosine)) / skin.Amplitude, phase / omega);
    }
}

using Laygate.Engineering.Cooling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>
/// Half-space under a daily sine; T = m + A exp(−x/d) sin(w t − x/d) (Carslaw and Jaeger, 2nd ed. 1959, section 2.6, recalled).
/// Derived: d = √(2 a/w), amplitude exp(−x/d), lag x/(d w).
/// </summary>
public class PeriodicTests
{
    private const double Day = 86400;
    private const double Omega = 2 * Math.PI / Day;

    [Theory]
    [InlineData("HOT", 0.449002, 0.0905199, 3.05856)]
    [InlineData("OLD", 0.488691, 0.116709, 2.73501)]
    [InlineData("CONC", 0.528831, 0.147894, 2.43349)]
    [InlineData("GRAN", 0.445298, 0.0882985, 3.09019)]
    [InlineData("SOIL", 0.445298, 0.0882985, 3.09019)]
    public void Amplitude_and_lag(string name, double at100, double at300, double lagHours)
    {
        const double Amplitude = 20;
        var material = Named(name);
        var d = Math.Sqrt(2 * material.Diffusivity / Omega);
        var points = Enumerable.Range(0, 1000).Select(i => 0.002 * i).Select(x => (x, 10 - (Amplitude * Math.Exp(-x / d) * Math.Sin(x / d)))).ToArray();
        var layer = new StackLayer("ground", LayerRole.Existing, 2, material, InitialTemperature.Profile(points));
        var curve = Solve([layer], new TopBoundary.GivenTemperature(10, Amplitude, Day), HalfSpace, 2 * Day);

        var (shallow, lag) = Wave(curve, 0.1);
        var (deep, _) = Wave(curve, 0.3);
        Near(at100, shallow / Amplitude, 0.005 * at100);
        Near(at300, deep / Amplitude, 0.005 * at300);
        Near(lagHours, lag, 0.02);
        for (var t = Day; t <= 2 * Day; t += 3000)
        {
            Near(10 + (Amplitude * Math.Exp(-0.1 / d) * Math.Sin((Omega * t) - (0.1 / d))), curve.Value(CoolingPlace.Depth(0.1), t), 0.05);
        }
    }

    /// <summary>Amplitude and lag in h of the daily wave at a depth, by projection on sine and cosine over the second day.</summary>
    private static (double Amplitude, double Lag) Wave(CoolingCurve curve, double depth)
    {
        var (sine, cosine) = (0.0, 0.0);
        const int Samples = 288;
        for (var i = 0; i < Samples; i++)
        {
            var t = Day + (Day * i / Samples);
            var value = curve.Value(CoolingPlace.Depth(depth), t)!.Value;
            sine += value * Math.Sin(Omega * t) * 2 / Samples;
            cosine += value * Math.Cos(Omega * t) * 2 / Samples;
        }

        return (Math.Sqrt((sine * sine) + (cosine * cosine)), Math.Atan2(-cosine, sine) / Omega / 3600);
    }
}

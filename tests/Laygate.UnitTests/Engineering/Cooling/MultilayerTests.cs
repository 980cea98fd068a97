using Laygate.Engineering.Cooling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>Layered half-spaces under linear convection, solved by the Laplace transform (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, chapter 12, recalled), inverted in two ways
/// that agree to 8 digits. Source: derived with tests/Tools/transform.py (mpmath 1.3.0).</summary>
public class MultilayerTests
{
    private const double Kelvin = 0.1;
    private const double Share = 0.005;

    private static readonly CoolingProblem V1 = new(
        [StackLayer.Course("hot", 0.050, Hot, 150), StackLayer.Existing("old", 0.1, Old, 10)],
        new TopBoundary.ConstantCoefficient(25, 10),
        HalfSpace,
        3600);

    private static readonly CoolingProblem V3 = new(
        [StackLayer.Course("upper", 0.025, Hot, 155), StackLayer.Course("lower", 0.085, Bind, 150), StackLayer.Existing("base", 0.1, Gran, 12)],
        new TopBoundary.ConstantCoefficient(25, 12),
        HalfSpace,
        7200);

    [Theory]
    [InlineData(60, 132.69504, 149.80382, 76.10728, 10.44488, 138.45556)]
    [InlineData(300, 114.73686, 133.28570, 76.01353, 24.90909, 120.06100)]
    [InlineData(600, 98.48431, 113.88886, 74.82344, 35.77521, 104.46673)]
    [InlineData(900, 84.91228, 99.74293, 72.49732, 41.40830, 92.51608)]
    [InlineData(1200, 74.23251, 88.74922, 69.59370, 44.44744, 82.98589)]
    [InlineData(1800, 59.18181, 72.68520, 63.35549, 46.55476, 68.79312)]
    [InlineData(3600, 37.57500, 47.50709, 48.08141, 42.70980, 45.92322)]
    public void V1_single_course(double time, double surface, double middle, double contact, double below, double mean)
    {
        var curve = Solve(V1);
        Near(surface, curve.Value(CoolingPlace.Skin, time), Kelvin);
        Near(middle, curve.Value(CoolingPlace.MidDepth(0), time), Kelvin);
        Near(contact, curve.Value(CoolingPlace.BottomFace(0), time), Kelvin);
        Near(below, curve.Value(CoolingPlace.Depth(0.075), time), Kelvin);
        Near(mean, curve.Value(CoolingPlace.Mean(0), time), Kelvin);
    }

    [Theory]
    [InlineData(130, 5.7316)]
    [InlineData(120, 8.2283)]
    [InlineData(110, 11.2405)]
    [InlineData(100, 14.8962)]
    [InlineData(90, 19.3702)]
    [InlineData(80, 24.9495)]
    [InlineData(70, 32.1222)]
    public void V1_minutes_to_mid_depth(double celsius, double minutes) =>
        Near(minutes * 60, Solve(V1).FirstBelow(CoolingPlace.MidDepth(0), celsius), Share * minutes * 60);

    [Theory]
    [InlineData(100, 703.838)]
    [InlineData(90, 973.136)]
    [InlineData(80, 1308.493)]
    public void V1_seconds_to_mean(double celsius, double seconds) =>
        Near(seconds, Solve(V1).FirstBelow(CoolingPlace.Mean(0), celsius), Share * seconds);

    [Theory]
    [InlineData(300, 119.13446, 140.03403, 148.67621, 148.40172, 88.28049, 137.96062, 138.96496)]
    [InlineData(900, 100.68864, 120.71459, 134.26628, 136.96040, 88.28962, 119.62901, 128.15288)]
    [InlineData(1800, 85.99091, 103.24531, 115.99669, 122.05579, 87.77654, 102.49278, 115.16288)]
    [InlineData(3600, 66.80057, 79.83022, 90.06699, 100.54380, 83.36764, 79.36366, 95.84928)]
    [InlineData(7200, 46.48258, 54.89997, 62.04186, 74.04448, 70.47968, 54.68702, 71.41316)]
    public void V3_hot_on_hot(double time, double surface, double midUpper, double contact, double midLower, double bottom, double upper, double lower)
    {
        var curve = Solve(V3);
        Near(surface, curve.Value(CoolingPlace.Skin, time), Kelvin);
        Near(midUpper, curve.Value(CoolingPlace.MidDepth(0), time), Kelvin);
        Near(contact, curve.Value(CoolingPlace.TopFace(1), time), Kelvin);
        Near(midLower, curve.Value(CoolingPlace.MidDepth(1), time), Kelvin);
        Near(bottom, curve.Value(CoolingPlace.BottomFace(1), time), Kelvin);
        Near(upper, curve.Value(CoolingPlace.Mean(0), time), Kelvin);
        Near(lower, curve.Value(CoolingPlace.Mean(1), time), Kelvin);
        Near(((25 * upper) + (85 * lower)) / 110, curve.Value(CoolingPlace.HotBodyMean, time), Kelvin);
    }

    [Theory]
    [InlineData(0, 110, 1413.61)]
    [InlineData(0, 100, 2003.08)]
    [InlineData(0, 90, 2711.55)]
    [InlineData(0, 80, 3583.38)]
    [InlineData(1, 110, 2720.99)]
    [InlineData(1, 100, 3655.48)]
    [InlineData(1, 90, 4789.78)]
    [InlineData(1, 80, 6192.71)]
    public void V3_seconds_to_mid_depth(int layer, double celsius, double seconds) =>
        Near(seconds, Solve(V3).FirstBelow(CoolingPlace.MidDepth(layer), celsius), Share * seconds);

    /// <summary>A sharper aim: crossing times of the exact solution (tests/Tools/transform.py) within 0.1 %.</summary>
    [Fact]
    public void Crossing_times_are_within_a_thousandth()
    {
        Near(1308.493, Solve(V1).FirstBelow(CoolingPlace.Mean(0), 80), 1.3);
        Near(24.9495 * 60, Solve(V1).FirstBelow(CoolingPlace.MidDepth(0), 80), 1.5);
        Near(3583.38, Solve(V3).FirstBelow(CoolingPlace.MidDepth(0), 80), 3.5);
    }
}

using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>Surface balance of convection and long-wave exchange, which is not linear (EnergyPlus Engineering Reference (NREL), read, outside surface heat balance).</summary>
public class RadiationTests
{
    /// <summary>Source: derived with another program, finite volumes of 0.125 mm, converged to about 1e-3 K; tests/Tools/cooling.py gives it within 0.02 K
    /// on docs/verification/conduction-radiation/non-linear.yaml.</summary>
    [Theory]
    [InlineData(60, 133.162, 158.600, 80.831, 143.41)]
    [InlineData(300, 106.303, 128.148, 80.088, 115.98)]
    [InlineData(600, 83.238, 102.088, 75.990, 94.359)]
    [InlineData(900, 67.694, 84.873, 70.497, 79.474)]
    [InlineData(1800, 43.713, 56.512, 55.444, 54.158)]
    public void Hot_course_under_convection_and_long_wave_exchange(double time, double surface, double middle, double contact, double mean)
    {
        var top = new TopBoundary.Weather(WeatherSeries.Constant(10, 5, 10), ConvectionForms.Barber);
        var curve = Solve([StackLayer.Course("hot", 0.040, Hot, 160), StackLayer.Existing("old", 0.1, Old, 10)], top, HalfSpace, 1800);
        Near(surface, curve.Value(CoolingPlace.Skin, time), 0.1);
        Near(middle, curve.Value(CoolingPlace.MidDepth(0), time), 0.1);
        Near(contact, curve.Value(CoolingPlace.BottomFace(0), time), 0.1);
        Near(mean, curve.Value(CoolingPlace.Mean(0), time), 0.1);
    }

    /// <summary>
    /// Lumped slab: radiation only by the closed form ln|(T+Ts)/(T−Ts)| + 2 atan(T/Ts) (Heat Transfer
    /// Handbook, eq. 3.283), convection only by the exponential, both by Simpson's rule: derived, t = L rho c ∫ dT/(h (T − Ta) + eps sigma (T⁴ − Ta⁴)).
    /// </summary>
    [Theory]
    [InlineData(0, 0.95, 3603.93)]
    [InlineData(25, 0, 1173.36)]
    [InlineData(25, 0.95, 883.61)]
    public void Lumped_slab(double h, double emissivity, double seconds)
    {
        var slab = StackLayer.Course("slab", 0.020, Hot with { Conductivity = 1000 }, 150);
        var top = new TopBoundary.ConstantCoefficient(h, 10, emissivity, 10);
        var curve = Solve([slab], top, new BottomBoundary.Insulated(), 5000);
        Near(seconds, curve.FirstBelow(CoolingPlace.Mean(0), 80), 0.001 * seconds);
    }

    /// <summary>Law of Stefan and Boltzmann, 5.670e-8 W/(m² K⁴) (CODATA, recalled): losses at emissivity 0.95 to surroundings of 10 °C and to a sky of −10.145 °C.</summary>
    [Theory]
    [InlineData(60, 10, 317.32)]
    [InlineData(100, 10, 698.15)]
    [InlineData(150, 10, 1380.8)]
    [InlineData(60, -10.145, 405.84)]
    [InlineData(100, -10.145, 786.66)]
    [InlineData(150, -10.145, 1469.3)]
    public void Long_wave_loss(double surface, double surroundings, double expected) =>
        Near(expected, CoolingPhysics.LongWaveLoss(0.95, surface, surroundings), 0.05);
}

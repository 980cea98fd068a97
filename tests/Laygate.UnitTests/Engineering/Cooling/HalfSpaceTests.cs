using Laygate.Engineering.Cooling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>
/// Closed solutions for half-spaces (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed.,
/// chapters 2 and 10, recalled), evaluated at 30 digits.
/// </summary>
public class HalfSpaceTests
{
    private const double Kelvin = 0.05;

    /// <summary>Two half-spaces in contact: temperature (e1 T1 + e2 T2)/(e1 + e2) and flux k1 (T1 − Ti)/√(pi alpha1 t).</summary>
    [Theory]
    [InlineData("HOT", 150, 10, 80.000, 8124.49)]
    [InlineData("OLD", 150, 10, 76.10728, 8576.29)]
    [InlineData("CONC", 150, 10, 70.18768, 9263.34)]
    [InlineData("GRAN", 150, 10, 86.00629, 7427.37)]
    [InlineData("SOIL", 150, 10, 71.86671, 9068.47)]
    [InlineData("STEEL", 150, 10, 24.84249, 14526.29)]
    [InlineData("HOT", 160, -5, 77.500, 9575.29)]
    [InlineData("OLD", 160, -5, 72.91215, 10107.77)]
    [InlineData("CONC", 160, -5, 65.93549, 10917.51)]
    [InlineData("GRAN", 160, -5, 84.57884, 8753.69)]
    [InlineData("SOIL", 160, -5, 67.91434, 10687.84)]
    [InlineData("STEEL", 160, -5, 12.49293, 17120.27)]
    public void Two_half_spaces_in_contact(string baseName, double hot, double cold, double contact, double flux)
    {
        var curve = Solve([StackLayer.Course("hot", 0.2, Hot, hot), StackLayer.Existing("base", 0.1, Named(baseName), cold)], Insulated, HalfSpace, 300);
        foreach (var time in new[] { 60.0, 300.0 })
        {
            Near(contact, curve.Value(CoolingPlace.BottomFace(0), time), Kelvin);
            var expected = flux * Math.Sqrt(60 / time);
            Near(expected, curve.FluxBelow(0, time), 0.001 * expected);
        }
    }

    /// <summary>Two half-spaces: profile of HOT 150 on OLD 10 at 300 s.</summary>
    [Theory]
    [InlineData(-0.005, 91.89470)]
    [InlineData(-0.010, 106.57036)]
    [InlineData(-0.020, 129.43842)]
    [InlineData(-0.040, 147.77408)]
    [InlineData(0.005, 63.44659)]
    [InlineData(0.010, 51.50486)]
    [InlineData(0.020, 31.96598)]
    [InlineData(0.040, 13.47014)]
    public void Profile_of_two_half_spaces(double belowContact, double expected)
    {
        var curve = Solve([StackLayer.Course("hot", 0.2, Hot, 150), StackLayer.Existing("base", 0.1, Old, 10)], Insulated, HalfSpace, 300);
        Near(expected, curve.Value(CoolingPlace.Depth(0.2 + belowContact), 300), Kelvin);
    }

    /// <summary>By images: slab of 50 mm at 150 °C, closed above, on a half-space at 10 °C.</summary>
    [Theory]
    [InlineData("HOT", 300, 149.05967, 137.72384, 80.000, 22.27281, 129.39482)]
    [InlineData("HOT", 600, 142.26076, 126.06455, 79.99115, 33.65251, 120.86095)]
    [InlineData("HOT", 1200, 125.45439, 112.19602, 79.52984, 44.81058, 108.89541)]
    [InlineData("HOT", 1800, 112.41391, 102.60998, 78.11801, 50.20768, 100.1233)]
    [InlineData("HOT", 3600, 89.24911, 84.47083, 71.76841, 55.16250, 83.13604)]
    [InlineData("OLD", 300, 149.00738, 137.04116, 76.10728, 24.91004, 128.24896)]
    [InlineData("OLD", 900, 132.62131, 116.53891, 75.98525, 41.99445, 112.34998)]
    [InlineData("OLD", 1800, 110.33114, 99.99833, 74.23115, 50.56474, 97.38459)]
    [InlineData("CONC", 300, 148.92786, 136.00302, 70.18768, 26.90635, 126.50646)]
    [InlineData("CONC", 900, 131.22913, 113.85893, 70.06769, 42.10236, 109.33588)]
    [InlineData("CONC", 1800, 107.16540, 96.03164, 68.34277, 49.16368, 93.22694)]
    [InlineData("GRAN", 300, 149.14035, 138.77719, 86.00628, 22.98974, 131.16282)]
    [InlineData("GRAN", 900, 134.94939, 121.02068, 85.88478, 42.61540, 117.39098)]
    [InlineData("GRAN", 1800, 115.62905, 106.64453, 84.13810, 53.40414, 104.35622)]
    public void Slab_on_half_space(string baseName, double time, double top, double middle, double contact, double below, double mean)
    {
        var curve = Solve([StackLayer.Course("slab", 0.05, Hot, 150), StackLayer.Existing("base", 0.1, Named(baseName), 10)], Insulated, HalfSpace, 3600);
        Near(top, curve.Value(CoolingPlace.Skin, time), Kelvin);
        Near(middle, curve.Value(CoolingPlace.MidDepth(0), time), Kelvin);
        Near(contact, curve.Value(CoolingPlace.BottomFace(0), time), Kelvin);
        Near(below, curve.Value(CoolingPlace.Depth(0.075), time), Kelvin);
        Near(mean, curve.Value(CoolingPlace.Mean(0), time), Kelvin);
    }

    /// <summary>Convection: half-space HOT at 150 °C under convection to 10 °C.</summary>
    [Theory]
    [InlineData(10, 300, 134.35700, 142.63042, 147.14777, 149.95778)]
    [InlineData(10, 1800, 116.17921, 124.35156, 131.14506, 143.88290)]
    [InlineData(25, 60, 132.69504, 147.54713, 149.88447, 150.0000)]
    [InlineData(25, 300, 115.62470, 133.47666, 143.50127, 149.90073)]
    [InlineData(25, 900, 98.34623, 114.93147, 127.69074, 146.26648)]
    [InlineData(25, 1800, 85.55971, 100.30828, 112.90219, 137.48166)]
    [InlineData(25, 3600, 72.18243, 84.63494, 95.97825, 122.48909)]
    [InlineData(50, 300, 93.16854, 121.91834, 138.70429, 149.81952)]
    [InlineData(50, 900, 72.18243, 95.97825, 114.93475, 143.83841)]
    [InlineData(50, 3600, 47.59397, 62.82912, 77.02358, 111.48065)]
    public void Half_space_under_convection(double h, double time, double surface, double at10, double at20, double at50)
    {
        var curve = Solve([StackLayer.Existing("half-space", 0.1, Hot, 150)], new TopBoundary.ConstantCoefficient(h, 10), HalfSpace, 3600);
        Near(surface, curve.Value(CoolingPlace.Skin, time), Kelvin);
        Near(at10, curve.Value(CoolingPlace.Depth(0.010), time), Kelvin);
        Near(at20, curve.Value(CoolingPlace.Depth(0.020), time), Kelvin);
        Near(at50, curve.Value(CoolingPlace.Depth(0.050), time), Kelvin);
    }

    /// <summary>Constant flux of 500 W/m² into HOT.</summary>
    [Theory]
    [InlineData(600, 8.672658, 2.770249, 0.230104)]
    [InlineData(3600, 21.24359, 13.94238, 6.601082)]
    public void Half_space_under_constant_flux(double time, double surface, double at20, double at50)
    {
        var curve = Solve([StackLayer.Existing("half-space", 0.1, Hot, 20)], new TopBoundary.GivenFlux(500), HalfSpace, 3600);
        Near(20 + surface, curve.Value(CoolingPlace.Skin, time), Kelvin);
        Near(20 + at20, curve.Value(CoolingPlace.Depth(0.020), time), Kelvin);
        Near(20 + at50, curve.Value(CoolingPlace.Depth(0.050), time), Kelvin);
    }

    /// <summary>Geankoplis, Transport Processes and Unit Operations, example 5.3-1 (second-hand, from a unit test of a public library; evaluated again here): soil after 5 h of frost.</summary>
    [Fact]
    public void Soil_under_sudden_frost()
    {
        var soil = new LayerMaterial(0.865, 1, 0.865 / 4.65e-7);
        var curve = Solve([StackLayer.Existing("soil", 0.1, soil, 15.6)], new TopBoundary.ConstantCoefficient(11.36, -17.8), HalfSpace, 5 * 3600);
        Near(267.98212 - 273.15, curve.Value(CoolingPlace.Skin, 5 * 3600), Kelvin);
        Near(0, curve.Value(CoolingPlace.Depth(0.033120), 5 * 3600), Kelvin);
    }

    /// <summary>TMAP8, verification case ver-1fd, after Incropera (read): k 401, rho c 3.439e6, h 200, 100 to 500, at 50 mm.</summary>
    [Theory]
    [InlineData(100, 114.98102)]
    [InlineData(500, 140.76485)]
    [InlineData(1000, 158.59802)]
    [InlineData(1500, 171.37430)]
    public void Copper_under_convection(double time, double expected)
    {
        var curve = Solve([StackLayer.Existing("copper", 0.1, new(401, 1, 3.439e6), 100)], new TopBoundary.ConstantCoefficient(200, 500), HalfSpace, 1500);
        Near(expected, curve.Value(CoolingPlace.Depth(0.05), time), Kelvin);
    }

    /// <summary>
    /// Half-space whose skin is held at 10 °C: T = Ts + (Ti − Ts) erf(x/(2 √(alpha t))) (Incropera, chapter 5; Carslaw and
    /// Jaeger, 2nd ed., 2.4), error function by MathNet.Numerics.
    /// </summary>
    [Theory]
    [InlineData("HOT", 60)]
    [InlineData("HOT", 1800)]
    [InlineData("CONC", 600)]
    public void Half_space_with_given_skin_temperature(string name, double time)
    {
        var material = Named(name);
        var curve = Solve([StackLayer.Existing("half-space", 0.1, material, 150)], new TopBoundary.GivenTemperature(10), HalfSpace, 1800);
        Near(10, curve.Value(CoolingPlace.Skin, time), 1e-9);
        foreach (var x in new[] { 0.002, 0.005, 0.010, 0.020, 0.050, 0.100 })
        {
            var expected = 10 + (140 * MathNet.Numerics.SpecialFunctions.Erf(x / (2 * Math.Sqrt(material.Diffusivity * time))));
            Near(expected, curve.Value(CoolingPlace.Depth(x), time), Kelvin);
        }
    }

    /// <summary>Steady state of a layered wall: q = (T1 − T2)/Σ(L/k), straight lines in each layer (Fourier's law; any textbook).</summary>
    [Fact]
    public void Layered_wall_reaches_its_steady_state()
    {
        const double End = 40 * 86400;
        var curve = Solve(
            [StackLayer.Existing("a", 0.05, Hot, 20), StackLayer.Existing("b", 0.10, Conc, 20), StackLayer.Existing("c", 0.20, Gran, 20)],
            new TopBoundary.GivenTemperature(60), new BottomBoundary.GivenTemperature(5), End);
        var flux = 55 / ((0.05 / 1.2) + (0.10 / 2.0) + (0.20 / 1.0));
        Near(flux, curve.FluxBelow(0, End), 0.001 * flux);
        Near(flux, curve.FluxBelow(2, End), 0.001 * flux);
        Near(60 - (flux * 0.05 / 1.2), curve.Value(CoolingPlace.BottomFace(0), End), Kelvin);
        Near(5 + (flux * 0.10), curve.Value(CoolingPlace.MidDepth(2), End), Kelvin);
        Near(5, curve.Value(CoolingPlace.BottomFace(2), End), 1e-9);
    }
}

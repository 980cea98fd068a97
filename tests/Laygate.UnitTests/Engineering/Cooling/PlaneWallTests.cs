using Laygate.Engineering.Cooling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>
/// Plane wall, one face convective, the other closed; series solution with 40 terms (Incropera and
/// others, Fundamentals of Heat and Mass Transfer, chapter 5, recalled).
/// </summary>
public class PlaneWallTests
{
    [Theory]
    [InlineData(0.5, 0.05, 0.9998706, 0.9927555, 0.8853652, 0.9769563)]
    [InlineData(0.5, 0.2, 0.9726004, 0.9313720, 0.7901466, 0.9146229)]
    [InlineData(0.5, 1, 0.6983832, 0.6614595, 0.5545891, 0.6497601)]
    [InlineData(1, 0.05, 0.9997510, 0.9863002, 0.7903768, 0.9573100)]
    [InlineData(1, 0.2, 0.9506418, 0.8792548, 0.6433908, 0.8515955)]
    [InlineData(1, 0.5, 0.7725264, 0.7025973, 0.5045219, 0.6811046)]
    [InlineData(1, 1, 0.5338594, 0.4852241, 0.3481769, 0.4703972)]
    [InlineData(2, 0.1, 0.9877789, 0.9154197, 0.5536042, 0.8663721)]
    [InlineData(2, 0.5, 0.6596184, 0.5666330, 0.3131327, 0.5396156)]
    [InlineData(2, 1, 0.3695557, 0.3172682, 0.1752007, 0.3021587)]
    [InlineData(5, 0.1, 0.9773091, 0.8543220, 0.3087902, 0.7814166)]
    [InlineData(5, 0.5, 0.5231091, 0.4143618, 0.1330321, 0.3851748)]
    [InlineData(5, 1, 0.2207207, 0.1747838, 0.0560940, 0.1624812)]
    public void Full_series(double biot, double fourier, double closed, double middle, double convective, double mean)
    {
        const double L = 0.05;
        const double Start = 150;
        const double Air = 10;
        var time = fourier * L * L / Hot.Diffusivity;
        var curve = Solve(
            [StackLayer.Course("wall", L, Hot, Start)],
            new TopBoundary.ConstantCoefficient(biot * Hot.Conductivity / L, Air),
            new BottomBoundary.Insulated(),
            time);
        Near(Air + (closed * (Start - Air)), curve.Value(CoolingPlace.BottomFace(0), time), 0.05);
        Near(Air + (middle * (Start - Air)), curve.Value(CoolingPlace.MidDepth(0), time), 0.05);
        Near(Air + (convective * (Start - Air)), curve.Value(CoolingPlace.Skin, time), 0.05);
        Near(Air + (mean * (Start - Air)), curve.Value(CoolingPlace.Mean(0), time), 0.05);
    }

    /// <summary>The same series with dimensions: HOT 50 mm, h 25, 150 to 10 °C.</summary>
    [Theory]
    [InlineData(600, 147.29558, 138.99044, 105.22276, 134.70251)]
    [InlineData(1200, 136.81584, 125.84658, 92.87352, 122.15075)]
    [InlineData(1800, 124.93233, 114.33753, 84.11481, 111.04426)]
    [InlineData(3600, 94.31412, 86.40707, 64.16581, 84.00274)]
    public void Dimensional(double time, double closed, double middle, double convective, double mean)
    {
        var curve = Solve([StackLayer.Course("wall", 0.05, Hot, 150)], new TopBoundary.ConstantCoefficient(25, 10), new BottomBoundary.Insulated(), 3600);
        Near(closed, curve.Value(CoolingPlace.Core, time), 0.05);
        Near(middle, curve.Value(CoolingPlace.MidDepth(0), time), 0.05);
        Near(convective, curve.Value(CoolingPlace.Skin, time), 0.05);
        Near(mean, curve.Value(CoolingPlace.Mean(0), time), 0.05);
        Near(closed - convective, curve.Value(CoolingPlace.CoreSkinDifference, time), 0.05);
    }

    /// <summary>A wall of twice the thickness that loses heat on both faces alike is closed in its middle: the same series.</summary>
    [Theory]
    [InlineData(600, 147.29558, 138.99044, 105.22276, 134.70251)]
    [InlineData(3600, 94.31412, 86.40707, 64.16581, 84.00274)]
    public void Open_on_both_faces(double time, double closed, double middle, double convective, double mean)
    {
        var curve = Solve([StackLayer.Course("wall", 0.10, Hot, 150)], new TopBoundary.ConstantCoefficient(25, 10), new BottomBoundary.ConstantCoefficient(25, 10), 3600);
        Near(closed, curve.Value(CoolingPlace.MidDepth(0), time), 0.05);
        Near(middle, curve.Value(CoolingPlace.Depth(0.075), time), 0.05);
        Near(convective, curve.Value(CoolingPlace.BottomFace(0), time), 0.05);
        Near(convective, curve.Value(CoolingPlace.Skin, time), 0.05);
        Near(mean, curve.Value(CoolingPlace.Mean(0), time), 0.05);
        Near(25 * (convective - 10), curve.FluxBelow(0, time), 0.001 * 25 * (convective - 10));
        Near(0, curve.Balance().Gap, 1e-9 * curve.Balance().Brought);
    }

    /// <summary>A steel deck in air below cools a mat slower than one whose underside is held at the air's temperature, faster than a closed one.</summary>
    [Fact]
    public void Deck_in_air_lies_between_closed_and_held()
    {
        double Window(BottomBoundary bottom) => Solve(
            [StackLayer.Course("hot", 0.040, Hot, 160), StackLayer.Existing("deck", 0.012, Steel, 10)], new TopBoundary.ConstantCoefficient(25, 10), bottom, 7200)
            .FirstBelow(CoolingPlace.Mean(0), 80)!.Value;
        var open = Window(new BottomBoundary.ConstantCoefficient(10, 10));
        Assert.True(open > Window(new BottomBoundary.GivenTemperature(10)) + 10);
        Assert.True(open < Window(new BottomBoundary.Insulated()) - 10);
        Near(Window(new BottomBoundary.Insulated()), Window(new BottomBoundary.ConstantCoefficient(0, 10)), 1e-6);
    }

    /// <summary>Incropera and others, example 5.4 (second-hand): wall of 40 mm, exterior 42.9 °C after 8 min; printed to 0.1 K from a one-term series.</summary>
    [Fact]
    public void Textbook_pipe_wall()
    {
        var steel = new LayerMaterial(63.9, 1, 63.9 / 18.8e-6);
        var curve = Solve([StackLayer.Course("wall", 0.040, steel, -20)], new TopBoundary.ConstantCoefficient(500, 60), new BottomBoundary.Insulated(), 480);
        Near(42.9, curve.Value(CoolingPlace.BottomFace(0), 480), 0.2);
    }
}

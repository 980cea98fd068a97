using Laygate.Engineering.Cooling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

public class LaidThicknessTests
{
    /// <summary>The mass stays (Laygate, Relations derived from mass balance and kinematics): lower 85 mm at 98 % from 93 %: +4.6 mm, from 88 %: +9.7 mm; upper 25 mm from 90 %: +2.2 mm.</summary>
    [Theory]
    [InlineData(85, 93, 4.6)]
    [InlineData(85, 88, 9.7)]
    [InlineData(25, 90, 2.2)]
    public void Roll_down(double final, double screed, double millimetres) =>
        Near(millimetres, 1000 * LaidThickness.RollDown(new RolledCourse(final / 1000, 98, screed)), 0.05);

    /// <summary>The same relation for a pair, by hand: 85 · 98/93 and 25 · 98/90, behind the screeds 89.6 and 27.2 mm, total roll-down 6.8 mm.</summary>
    [Fact]
    public void Roll_down_of_a_pair()
    {
        RolledCourse[] pair = [new(0.085, 98, 93), new(0.025, 98, 90)];
        Near(89.6, 1000 * LaidThickness.BehindScreed(pair[0]), 0.05);
        Near(27.2, 1000 * LaidThickness.BehindScreed(pair[1]), 0.05);
        Near(6.8, 1000 * LaidThickness.RollDown(pair), 0.05);
    }

    [Fact]
    public void Mass_and_heat_are_kept()
    {
        var rolled = StackLayer.Course("hot", 0.040, Hot, 160);
        var laid = LaidThickness.AsLaid(rolled, 0.88, 0.85);
        Near(rolled.Thickness * rolled.Material.Density, laid.Thickness * laid.Material.Density, 1e-9);
        Near(rolled.Thickness * rolled.Material.VolumetricHeat, laid.Thickness * laid.Material.VolumetricHeat, 1e-6);
        Near(0.85 * 1.2, laid.Material.Conductivity, 1e-12);
        Near(40 / 0.88, 1000 * laid.Thickness, 1e-9);
        var profile = LaidThickness.AsLaid(rolled with { Initial = InitialTemperature.Profile((0, 120), (0.040, 160)) }, 0.88, 0.85);
        // By hand: the mean of a line from 120 to 160 °C.
        Near(140, profile.Initial.Mean(0, profile.Thickness), 1e-9);
    }

    [Fact]
    public void Nothing_is_made_of_impossible_densities() =>
        Assert.True(double.IsNaN(LaidThickness.BehindScreed(new(0.04, 98, 0))));
}

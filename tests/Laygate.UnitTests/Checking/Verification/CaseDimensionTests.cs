using Laygate.Checking.Verification;

namespace Laygate.UnitTests.Checking.Verification;

/// <summary>Units that only verification needs, in SI. Derived from the exact foot, pound, US gallon and mile (NIST SP 811, 2008, appendix B, as the table of units has them).</summary>
public sealed class CaseDimensionTests
{
    // By hand: a square yard is 9 ft² = 0.83612736 m², an inch 0.0254 m: 0.45359237 / (0.83612736 · 0.0254) = 21.3580 kg/m³. A pound per gallon is 0.45359237 / 0.003785412 = 119.826 kg/m³.
    [Theory]
    [InlineData("lb/(yd2 in)", 21.3580)]
    [InlineData("kg/(m2 mm)", 1000)]
    [InlineData("kg/(m2 cm)", 100)]
    [InlineData("lb/gal", 119.826)]
    [InlineData("lb/ft", 1.48816)]
    [InlineData("in/mi", 1.57828e-5)]
    [InlineData("m2/h", 2.77778e-4)]
    public void Units_of_the_trade_are_what_their_names_say(string spelling, double si)
    {
        CaseDimension[] all = [CaseDimension.RatePerThickness, CaseDimension.DensityByGallon, CaseDimension.MassPerLength, CaseDimension.Roughness, CaseDimension.AreaPerTime];
        Assert.Equal(si, all.SelectMany(one => one.Units).First(unit => string.Equals(unit.Spelling, spelling, StringComparison.Ordinal)).ToSi(1), si * 1e-5);
    }
}

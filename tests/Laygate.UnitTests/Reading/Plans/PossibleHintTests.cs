namespace Laygate.UnitTests.Reading.Plans;

/// <summary>What is refused as impossible names the unit that could be meant: the one that comes nearest to an ordinary value, or none.</summary>
public class PossibleHintTests
{
    [Theory]
    [InlineData("haul_out: 31 min", "haul_out: 31 h", "31 min")]
    [InlineData("haul_out: 31 min", "haul_out: 1600 min", "1600 s")]
    [InlineData("    thickness: 45 mm\n    thickness_lowest", "    thickness: 45 m\n    thickness_lowest", "45 mm")]
    [InlineData("    thickness: 45 mm\n    thickness_lowest", "    thickness: 4.5 m\n    thickness_lowest", "4.5 cm")]
    [InlineData("air_highest: 27 °C", "air_highest: 64 °C", "64 °F")]
    [InlineData("speed: 12 ft/min", "speed: 3 m/s", "3 m/min")]
    [InlineData("payload: 22 t", "payload: 22000 t", "22000 kg")]
    [InlineData("voltage: 20 kV", "voltage: 20000 kV", "20000 V")]
    public void One_unit_is_named_that_could_be_meant(string old, string replacement, string meant)
    {
        var hint = PlanFiles.Contradictions(PlanFiles.Changed(old, replacement)).Select(problem => problem.Hint).First(hint => hint?.Contains("possible", StringComparison.Ordinal) == true);
        Assert.Equal($"Check the unit: {meant} would be possible.", hint);
    }

    [Fact]
    public void No_unit_is_named_where_none_fits() => Assert.Contains(
        PlanFiles.Contradictions(PlanFiles.Changed("frequency: 45 Hz", "frequency: 45000 Hz")), problem => problem.Hint == "Check the unit and the point.");
}

using Laygate.Reading.Schema;

namespace Laygate.UnitTests.Reading.Schema;

public class PatternTrialTests
{
    [Fact]
    public void Patterns_of_the_sample_schema_are_quick()
    {
        var (pattern, time) = PatternTrial.Slowest(SchemaSample.Schema, Patience.Longest);
        Assert.True(time < Patience.Longest, $"{pattern} took {time}");
    }

    [Theory]
    [InlineData("^(a+)+$")]
    [InlineData("^([0-9]+ ?)+m$")]
    public void A_pattern_that_backtracks_without_bound_is_caught(string pattern)
    {
        var schema = SchemaLoader.Load($$"""{"pattern":"{{pattern}}"}""");
        Assert.Equal(TimeSpan.FromMilliseconds(100), PatternTrial.Slowest(schema, TimeSpan.FromMilliseconds(100)).Time);
    }
}

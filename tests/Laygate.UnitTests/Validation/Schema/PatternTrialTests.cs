using Laygate.Validation.Schema;

namespace Laygate.UnitTests.Validation.Schema;

public class PatternTrialTests
{
    [Fact]
    public void Patterns_of_the_sample_schema_come_to_an_end() => Assert.Empty(PatternTrial.Endless(SchemaSample.Schema, Patience.Longest));

    [Theory]
    [InlineData("^(a+)+$")]
    [InlineData("^([0-9]+ ?)+m$")]
    public void A_pattern_that_backtracks_without_bound_is_caught(string pattern)
    {
        var schema = SchemaLoader.Load($$"""{"pattern":"{{pattern}}"}""");
        Assert.Single(PatternTrial.Endless(schema, TimeSpan.FromMilliseconds(100)));
    }
}

using Laygate.Reading;
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

    /// <summary>The reader matches them without a clock. Schemas of what is only written are none of its own.</summary>
    [Theory]
    [InlineData("plan")]
    [InlineData("job")]
    [InlineData("parts")]
    [InlineData("import")]
    [InlineData("record")]
    [InlineData("departures")]
    [InlineData("baseline")]
    [InlineData("settings")]
    [InlineData("rule")]
    [InlineData("cases")]
    [InlineData("sources")]
    [InlineData("specification")]
    [InlineData("acceptance")]
    [InlineData("verification-case")]
    public void Patterns_of_what_is_read_are_quick(string name)
    {
        var (pattern, time) = PatternTrial.Slowest(SchemaLoader.Load(EmbeddedSchemas.Find(name)!), Patience.Longest);
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

using Laygate.Reading.RuleFiles;
using Laygate.Rules.Binding;

namespace Laygate.UnitTests.Reading.RuleFiles;

/// <summary>A mistake in a definition that stands in no file is named by what it belongs to.</summary>
public sealed class DefinitionPositionsTests
{
    [Theory]
    [InlineData("state", "LAY-001", "LAY-001")]
    [InlineData("state", null, "state")]
    [InlineData(null, null, "")]
    public void What_was_not_read_from_text_is_named_by_its_rule_else_by_its_specification(string? specification, string? rule, string name) =>
        Assert.Equal((name, null), new DefinitionPositions().Find(new BookPlace(specification, rule, "bounds/0")));
}

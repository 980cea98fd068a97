using Laygate.Rules.Definitions;

namespace Laygate.UnitTests.Rules;

/// <summary>The text of a book is what a person compares: each rule at the margin, what belongs to it two blanks further in, each limit four.</summary>
public sealed class CanonicalTextTests
{
    [Fact]
    public void What_belongs_to_a_rule_stands_below_it_and_what_belongs_to_a_bound_below_that()
    {
        var rules = new[]
        {
            TestBook.Rule("course.thickness", CheckKind.AtLeast, TestBook.AtLeast(40, "mm")) with { Holds = "holds", OnSite = null, NotIn = ["DE"], When = [new Condition("course.laid", ["separately"], null, null)] },
            TestBook.Rule("mix.kind", CheckKind.Agrees, TestBook.Of(new WordsLimit(["porous", "stone-mastic"]))) with { Id = "LAY-002", Name = "other-rule", AppliesTo = Laygate.Engineering.Quantities.ElementKind.Mix },
        };
        var lines = TestBook.Book(TestBook.General(rules)).Text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal([2, 4, 4], new[] { "life: in-use 0.1.0", "at least 40 mm", "porous or stone-mastic" }.Select(text => Depth(lines.First(line => line.Contains(text, StringComparison.Ordinal)))));
        Assert.All(lines, line => Assert.Equal(line.TrimStart().Split(' ')[0] is "rule" or "layer" or "assume" || line.StartsWith("source manual: ", StringComparison.Ordinal), Depth(line) == 0));
    }

    private static int Depth(string line) => line.Length - line.TrimStart().Length;
}

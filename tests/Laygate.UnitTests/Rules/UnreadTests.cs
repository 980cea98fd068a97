using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;

namespace Laygate.UnitTests.Rules;

/// <summary>A specification counts as unread only where nothing that it sets or adds was read.</summary>
public sealed class UnreadTests
{
    [Theory]
    [InlineData(Evidence.Recalled, Evidence.Recalled, true)]
    [InlineData(Evidence.Judgement, Evidence.CommonPractice, true)]
    [InlineData(Evidence.Read, Evidence.Recalled, false)]
    [InlineData(Evidence.Recalled, Evidence.Read, false)]
    [InlineData(Evidence.Recalled, Evidence.SecondHand, false)]
    public void A_limit_that_was_read_counts_whether_it_is_set_or_stands_in_a_rule_of_its_own(Evidence set, Evidence added, bool unread)
    {
        var specification = TestBook.Specification() with
        {
            Set = [new LimitOverride("LAY-001", [TestBook.AtLeast(40, "mm", evidence: set)], "reason")],
            Rules = [TestBook.Rule("course.thickness", CheckKind.AtLeast, TestBook.AtLeast(30, "mm", evidence: added))],
        };
        Assert.Equal(unread, specification.IsUnread);
        Assert.False((specification with { Layer = Layer.ParticularSpecification }).IsUnread);
    }

    [Fact]
    public void One_that_sets_nothing_is_not_unread() => Assert.False(TestBook.Specification().IsUnread);
}

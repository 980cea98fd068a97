using Laygate.Model.Plans;

namespace Laygate.UnitTests.Model;

public class WordsTests
{
    [Fact]
    public void A_word_is_the_name_in_lower_case_with_hyphens()
    {
        Assert.Equal("hot-on-hot", Words.Of(Laying.HotOnHot));
        Assert.Equal(["separately", "hot-on-warm", "hot-on-hot"], Words.Of<Laying>());
    }

    [Fact]
    public void Every_word_finds_its_member_again() =>
        Assert.All(Enum.GetValues<MeasureKind>(), kind => Assert.Equal(kind, Words.Find<MeasureKind>(Words.Of(kind))));

    [Theory]
    [InlineData("Hot-On-Hot")]
    [InlineData("hot on hot")]
    [InlineData("2")]
    [InlineData("")]
    public void Any_other_text_is_no_word(string text) => Assert.Null(Words.Find<Laying>(text));
}

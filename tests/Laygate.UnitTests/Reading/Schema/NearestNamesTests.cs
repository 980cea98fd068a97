using Laygate.Reading.Schema;

namespace Laygate.UnitTests.Reading.Schema;

public class NearestNamesTests
{
    [Theory]
    [InlineData("widht", "width")]
    [InlineData("Width", "width")]
    [InlineData("haul-usual", "haul_usual")]
    [InlineData("thicknss", "thickness")]
    [InlineData("xx", "")]
    [InlineData("quite_another", "")]
    public void The_nearest_names_are_found_and_weak_ones_are_not(string typed, string expected) =>
        Assert.Equal(expected, string.Join(' ', NearestNames.Of(typed, ["width", "thickness", "haul_usual", "id"])));

    [Fact]
    public void At_most_three_nearest_first() =>
        Assert.Equal("abcde abcdx abcdy", string.Join(' ', NearestNames.Of("abcdef", ["abcdz", "abcdy", "abcdx", "abcde"])));
}

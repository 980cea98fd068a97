using Laygate.Reading.Yaml;

namespace Laygate.ConformanceTests.Plans;

/// <summary>A message bears no text without end, and what is cut stays text.</summary>
public sealed class LongTextTests
{
    [Theory]
    [InlineData(60, 60)]
    [InlineData(59, 59)] // The 60th place is the first half of a letter of two: it goes too.
    [InlineData(58, 60)]
    public void A_long_quotation_is_cut_behind_sixty_places_and_never_within_a_letter(int before, int kept)
    {
        var quoted = new string('a', before) + "\U0001F6A7" + new string('b', 200);
        Assert.Equal($"It says `{quoted[..kept]}…`, not `c`.", ShownProblems.Short($"It says `{quoted}`, not `c`."));
    }

    [Theory]
    [InlineData(200, false)]
    [InlineData(201, true)]
    public void What_is_no_longer_than_advice_may_be_stays_whole(int length, bool cut) =>
        Assert.Equal(cut, ShownProblems.Short($"Write `{new string('a', length)}`.").Contains('…', StringComparison.Ordinal));
}

using Laygate.Service.Pages;

namespace Laygate.ServiceTests.Service;

/// <summary>Two texts side by side: nothing is lost, and as much as possible stands together.</summary>
public sealed class SideBySideTests
{
    // The reference is the textbook recursion for the length of the longest common subsequence (Wagner and Fischer 1974, recalled), on a table that a test can afford.
    [Fact]
    public void Both_texts_are_whole_and_the_most_lines_stand_together()
    {
        var random = new Random(20261129);
        for (var round = 0; round < 2000; round++)
        {
            var (left, right) = (Lines(random), Lines(random));
            var pairs = SideBySide.Of(left, right);
            Assert.Equal(left, pairs.Where(pair => pair.Left is not null).Select(pair => pair.Left!.Value.Text), StringComparer.Ordinal);
            Assert.Equal(right, pairs.Where(pair => pair.Right is not null).Select(pair => pair.Right!.Value.Text), StringComparer.Ordinal);
            Assert.Equal(Enumerable.Range(1, left.Length), pairs.Where(pair => pair.Left is not null).Select(pair => pair.Left!.Value.Number));
            Assert.Equal(Enumerable.Range(1, right.Length), pairs.Where(pair => pair.Right is not null).Select(pair => pair.Right!.Value.Number));
            Assert.All(pairs.Where(pair => !pair.Differs), pair => Assert.Equal(pair.Left!.Value.Text, pair.Right!.Value.Text));
            Assert.Equal(Longest(left, right), pairs.Count(pair => !pair.Differs));
        }
    }

    [Fact]
    public void What_is_gone_stands_before_what_is_new()
    {
        var pairs = SideBySide.Of(["a", "old", "z"], ["a", "new", "z"]);
        Assert.Equal(["a/a", "old/", "/new", "z/z"], pairs.Select(pair => $"{pair.Left?.Text}/{pair.Right?.Text}"), StringComparer.Ordinal);
    }

    [Fact]
    public void A_line_that_changes_in_a_long_text_is_found()
    {
        var left = Enumerable.Range(0, 100_000).Select(i => $"line {i}").ToList();
        var right = left.Select((text, i) => i == 70_000 ? "other" : text).ToList();
        Assert.Equal([70_001], SideBySide.Of(left, right).Where(pair => pair is { Differs: true, Left: not null }).Select(pair => pair.Left!.Value.Number));
    }

    // Without a bound this would take some 10¹⁰ steps: a text of a plan may have half a million lines.
    [Fact]
    public void Texts_that_differ_everywhere_cost_no_more_than_their_lines()
    {
        var pairs = SideBySide.Of([.. Enumerable.Range(0, 100_000).Select(i => $"{i}")], [.. Enumerable.Range(0, 100_000).Select(i => $"-{i}")]);
        Assert.Equal(200_000, pairs.Count);
        Assert.All(pairs, pair => Assert.True(pair.Differs));
    }

    private static string[] Lines(Random random) => [.. Enumerable.Range(0, random.Next(15)).Select(_ => random.Next(5) is var i and > 0 ? $"{(char)('a' + i)}" : string.Empty)];

    private static int Longest(string[] left, string[] right)
    {
        var lengths = new int[left.Length + 1, right.Length + 1];
        for (var i = 1; i <= left.Length; i++)
        {
            for (var j = 1; j <= right.Length; j++)
            {
                lengths[i, j] = left[i - 1] == right[j - 1] ? lengths[i - 1, j - 1] + 1 : Math.Max(lengths[i - 1, j], lengths[i, j - 1]);
            }
        }

        return lengths[left.Length, right.Length];
    }
}

using Laygate.Service.Pages;

namespace Laygate.ServiceTests.Service;

/// <summary>Equal lines are folded, and nothing is lost by it.</summary>
public sealed class TextPartsTests
{
    [Fact]
    public void Every_line_stands_in_one_part_and_every_difference_is_shown_with_three_lines_around_it()
    {
        var random = new Random(20261129);
        for (var round = 0; round < 500; round++)
        {
            var left = Enumerable.Range(0, random.Next(60)).Select(i => $"{i}").ToList();
            var right = left.Where(_ => random.Next(12) > 0).SelectMany(line => random.Next(15) == 0 ? [line, "new"] : new[] { line }).ToList();
            var pairs = SideBySide.Of(left, right);
            var file = Assert.Single(TextParts.Of([(string.Empty, pairs)]));
            Assert.Equal(pairs, file.Parts.SelectMany(part => part.Pairs));
            Assert.Equal(Enumerable.Range(1, file.Parts.Count(part => part.Change is not null)), file.Parts.Select(part => part.Change).OfType<int>());
            Assert.All(file.Parts.Where(part => part.Change is null), part => Assert.DoesNotContain(part.Pairs, pair => pair.Differs));
            Assert.Equal(pairs.Count(pair => pair.Differs), file.Differs);
            var shown = file.Parts.Where(part => part.Change is not null).SelectMany(part => part.Pairs).ToHashSet();
            for (var at = 0; at < pairs.Count; at++)
            {
                var near = pairs.Skip(Math.Max(0, at - 3)).Take(Math.Min(at, 3) + 4).Any(pair => pair.Differs);
                Assert.Equal(near, shown.Contains(pairs[at]));
            }
        }
    }

    [Fact]
    public void Differences_are_numbered_through_all_files_and_named_by_their_lines()
    {
        var files = TextParts.Of([("", SideBySide.Of(["a", "b"], ["a", "c"])), ("x.yaml", SideBySide.Of(["same"], ["same"])), ("y.yaml", SideBySide.Of([], ["n"]))]);
        Assert.Equal([1, null, 2], files.SelectMany(file => file.Parts).Select(part => part.Change));
        Assert.Equal(["lines 1 to 2", "line 1", "line 1"], files.SelectMany(file => file.Parts).Select(part => part.Lines), StringComparer.Ordinal);
    }
}

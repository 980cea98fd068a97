using DiffPlex;
using DiffPlex.Chunkers;
using DiffPlex.Model;

namespace Laygate.Service.Pages;

/// <summary>A line of two texts side by side.</summary>
/// <param name="Left">Number and text on the left; null where the line is new.</param>
/// <param name="Right">Number and text on the right; null where the line is gone.</param>
public sealed record LinePair((int Number, string Text)? Left, (int Number, string Text)? Right)
{
    /// <summary>Whether the two sides differ.</summary>
    public bool Differs => Left is null || Right is null;
}

/// <summary>Sets two texts side by side, line by line.</summary>
internal static class SideBySide
{
    // The work grows with the lines between the first and the last that differ, times the differences; where the product of both sides is beyond this, all of them count as changed.
    private const long Largest = 4_000_000;

    /// <summary>Pairs of lines: equal ones together, others alone, what is gone before what is new.</summary>
    /// <param name="left">Lines without line ends.</param>
    /// <param name="right">Lines without line ends.</param>
    public static IReadOnlyList<LinePair> Of(IReadOnlyList<string> left, IReadOnlyList<string> right)
    {
        var pairs = new List<LinePair>(Math.Max(left.Count, right.Count));
        var (l, r) = (0, 0);
        foreach (var change in Changes(left, right).Append(new DiffBlock(left.Count, 0, right.Count, 0)))
        {
            while (l < change.DeleteStartA)
            {
                pairs.Add(new LinePair((l + 1, left[l++]), (r + 1, right[r++])));
            }

            pairs.AddRange(left.Skip(l).Take(change.DeleteCountA).Select((text, i) => new LinePair((l + i + 1, text), null)));
            pairs.AddRange(right.Skip(r).Take(change.InsertCountB).Select((text, i) => new LinePair(null, (r + i + 1, text))));
            (l, r) = (l + change.DeleteCountA, r + change.InsertCountB);
        }

        return pairs;
    }

    /// <summary>The files of two sets side by side, by their names: the plan first, then those of the right in their order, then those that are gone.</summary>
    /// <param name="left">Names and lines.</param>
    /// <param name="right">Names and lines.</param>
    public static IReadOnlyList<(string Name, IReadOnlyList<LinePair> Pairs)> Of(IReadOnlyList<(string Name, IReadOnlyList<string> Lines)> left, IReadOnlyList<(string Name, IReadOnlyList<string> Lines)> right)
    {
        var (before, after) = (left.ToDictionary(file => file.Name, file => file.Lines, StringComparer.Ordinal), right.ToDictionary(file => file.Name, file => file.Lines, StringComparer.Ordinal));
        return [.. right.Concat(left).Select(file => file.Name).Distinct(StringComparer.Ordinal).Select(name => (name, Of(before.GetValueOrDefault(name, []), after.GetValueOrDefault(name, []))))];
    }

    private static IEnumerable<DiffBlock> Changes(IReadOnlyList<string> left, IReadOnlyList<string> right)
    {
        var start = Same(left, right);
        var end = Same(left.Skip(start).Reverse(), right.Skip(start).Reverse());
        var (gone, come) = (left.Count - start - end, right.Count - start - end);
        return (long)gone * come > Largest
            ? [new DiffBlock(start, gone, start, come)]
            : Differ.Instance.CreateDiffs(Text(left), Text(right), ignoreWhiteSpace: false, ignoreCase: false, LineChunker.Instance).DiffBlocks;
    }

    // A blank before each line: DiffPlex takes an empty text for no line at all.
    private static string Text(IEnumerable<string> lines) => string.Join('\n', lines.Select(line => ' ' + line));

    private static int Same(IEnumerable<string> left, IEnumerable<string> right) =>
        left.Zip(right).TakeWhile(pair => string.Equals(pair.First, pair.Second, StringComparison.Ordinal)).Count();
}

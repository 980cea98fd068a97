namespace Laygate.Service.Pages;

/// <summary>Lines of two texts that stand together: a difference with what is around it, or equal lines between two.</summary>
/// <param name="Change">Number of the difference on the page, from 1; null for equal lines.</param>
/// <param name="Pairs">The lines.</param>
public sealed record TextPart(int? Change, IReadOnlyList<LinePair> Pairs)
{
    /// <summary>Where it stands, such as <c>lines 3 to 9</c>, by the later text where that has some.</summary>
    public string Lines
    {
        get
        {
            List<int> right = [.. Pairs.Where(pair => pair.Right is not null).Select(pair => pair.Right!.Value.Number)];
            List<int> lines = right.Count > 0 ? right : [.. Pairs.Select(pair => pair.Left!.Value.Number)];
            return FormattableString.Invariant(lines.Count == 1 ? (FormattableString)$"line {lines[0]}" : $"lines {lines[0]} to {lines[^1]}");
        }
    }
}

/// <summary>Two files side by side, in parts.</summary>
/// <param name="Name">Name of the file; empty for the plan.</param>
/// <param name="Differs">Number of lines that stand on one side only.</param>
/// <param name="Parts">The parts in order.</param>
public sealed record FilePair(string Name, int Differs, IReadOnlyList<TextPart> Parts);

/// <summary>Folds what is equal on both sides.</summary>
internal static class TextParts
{
    // Equal lines that are shown before and after a difference.
    private const int Around = 3;

    /// <summary>Files in parts; differences are numbered through.</summary>
    /// <param name="files">Names and pairs of lines.</param>
    public static IReadOnlyList<FilePair> Of(IReadOnlyList<(string Name, IReadOnlyList<LinePair> Pairs)> files)
    {
        var change = 0;
        return [.. files.Select(file => new FilePair(file.Name, file.Pairs.Count(pair => pair.Differs), [.. Parts(file.Pairs, () => ++change)]))];
    }

    private static IEnumerable<TextPart> Parts(IReadOnlyList<LinePair> pairs, Func<int> next)
    {
        var near = Near(pairs);
        for (var at = 0; at < pairs.Count;)
        {
            var end = at + 1;
            while (end < pairs.Count && near[end] == near[at])
            {
                end++;
            }

            yield return new TextPart(near[at] ? next() : null, [.. pairs.Skip(at).Take(end - at)]);
            at = end;
        }
    }

    // Whether a line differs or has a difference within reach.
    private static bool[] Near(IReadOnlyList<LinePair> pairs)
    {
        var near = new bool[pairs.Count];
        var (before, after) = (int.MinValue / 2, int.MinValue / 2);
        for (var at = 0; at < pairs.Count; at++)
        {
            before = pairs[at].Differs ? at : before;
            after = pairs[^(at + 1)].Differs ? at : after;
            near[at] |= at - before <= Around;
            near[pairs.Count - 1 - at] |= at - after <= Around;
        }

        return near;
    }
}

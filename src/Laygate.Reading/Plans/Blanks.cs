using System.Globalization;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>Places that a scaffold leaves for a person to fill in.</summary>
public static class Blanks
{
    /// <summary>How a scaffold marks a place that must be filled in; what still holds it is refused where it matters.</summary>
    public const string Mark = "TO FILL IN";

    /// <summary>Blanks that are told one by one, at most.</summary>
    private const int MostListed = 5;

    /// <summary>Stretches of lines that are named, at most.</summary>
    private const int MostSpans = 20;

    /// <summary>Whether a text still holds the mark.</summary>
    public static bool IsBlank(string? text) => text?.Contains(Mark, StringComparison.Ordinal) == true;

    /// <summary>The places of a document that still hold the mark.</summary>
    internal static IReadOnlyList<ReadingProblem> In(YamlToken root)
    {
        var found = new List<ReadingProblem>();
        Collect(root, string.Empty, found);
        return found;
    }

    /// <summary>The blanks of a document as few problems: a plan that was begun today has hundreds.</summary>
    /// <param name="blanks">All blanks, as <see cref="In"/> finds them.</param>
    internal static IReadOnlyList<ReadingProblem> Told(IReadOnlyList<ReadingProblem> blanks) => blanks.Count <= MostListed
        ? blanks
        : [.. blanks.GroupBy(blank => blank.Position.File, StringComparer.Ordinal).Select(file => new ReadingProblem(
            string.Create(CultureInfo.InvariantCulture, $"{file.Count()} places are still blanks, on lines {Lines([.. file.Select(blank => blank.Position.Line).Distinct()])}."),
            file.First().Position,
            "Fill them in, or remove the lines that nobody can know yet."))];

    // Lines that follow each other are named by the first and the last of them.
    private static string Lines(IReadOnlyList<int> lines)
    {
        var spans = new List<(int From, int To)>();
        foreach (var line in lines)
        {
            if (spans.Count > 0 && spans[^1].To == line - 1)
            {
                spans[^1] = (spans[^1].From, line);
            }
            else
            {
                spans.Add((line, line));
            }
        }

        var shown = spans.Take(MostSpans).Select(span => span.From == span.To ? Number(span.From) : $"{Number(span.From)} to {Number(span.To)}");
        return $"{string.Join(", ", shown)}{(spans.Count > MostSpans ? $" and more, up to {Number(lines[^1])}" : string.Empty)}";
    }

    private static string Number(int line) => line.ToString(CultureInfo.InvariantCulture);

    // A document is at most 64 levels deep; the reader sees to it.
    private static void Collect(YamlToken token, string key, List<ReadingProblem> found)
    {
        switch (token)
        {
            case ScalarToken scalar when IsBlank(scalar.Text):
                found.Add(new ReadingProblem(key.Length > 0 ? $"`{key}` is still a blank." : "This is still a blank.", scalar.Span, "Fill it in, or remove the key if nobody knows yet."));
                break;
            case ListToken list:
                foreach (var item in list.Items)
                {
                    Collect(item, key, found);
                }

                break;
            case MapToken map:
                foreach (var entry in map.Entries)
                {
                    Collect(entry.Value, entry.Key.Text, found);
                }

                break;
        }
    }
}

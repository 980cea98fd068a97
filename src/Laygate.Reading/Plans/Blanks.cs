using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>Places that a scaffold leaves for a person to fill in.</summary>
public static class Blanks
{
    /// <summary>How a scaffold marks a place that must be filled in; what still holds it is refused where it matters.</summary>
    public const string Mark = "TO FILL IN";

    /// <summary>Whether a text still holds the mark.</summary>
    public static bool IsBlank(string? text) => text?.Contains(Mark, StringComparison.Ordinal) == true;

    /// <summary>The places of a document that still hold the mark.</summary>
    internal static IReadOnlyList<ReadingProblem> In(YamlToken root)
    {
        var found = new List<ReadingProblem>();
        Collect(root, string.Empty, found);
        return found;
    }

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

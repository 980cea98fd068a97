using System.Text;
using Laygate.ConformanceTests.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>A value of a seed, by where its text stands. Changes are made in the text, so that what is not changed stays as it was written.</summary>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">Offset behind its last character.</param>
/// <param name="Token">The value as read.</param>
/// <param name="Key">Its key and where that stands; null in a list.</param>
/// <param name="Siblings">All values of the group or list that holds it, itself included.</param>
/// <param name="Index">Its place among them.</param>
internal sealed record Piece(int Start, int End, YamlToken Token, (string Name, int Start, int End)? Key, List<Piece> Siblings, int Index)
{
    /// <summary>Where the entry begins: at its key, or at the value itself.</summary>
    public int EntryStart => Key?.Start ?? Start;

    /// <summary>The entry behind it; null for the last.</summary>
    public Piece? Next => Index + 1 < Siblings.Count ? Siblings[Index + 1] : null;

    /// <summary>All values of a text but the outermost; none where it cannot be read.</summary>
    public static IReadOnlyList<Piece> Of(string text)
    {
        var starts = LineStarts(text);
        var found = new List<Piece>();
        foreach (var document in YamlReader.Read(Encoding.UTF8.GetBytes(text)).Documents)
        {
            Inside(document.Root, starts, found);
        }

        return found;
    }

    /// <summary>The value in one line, as it could stand anywhere.</summary>
    public string InOneLine(string text) => Token is ScalarToken { Style: not ScalarStyle.Block }
        ? text[Start..End]
        : PlanSchemaFile.ToJson(Token)?.ToJsonString() ?? "~";

    private static void Inside(YamlToken token, List<int> starts, List<Piece> found)
    {
        var siblings = new List<Piece>();
        var entries = token switch
        {
            MapToken map => map.Entries.Select(entry => (Key: (ScalarToken?)entry.Key, entry.Value)),
            ListToken list => list.Items.Select(item => (Key: (ScalarToken?)null, Value: item)),
            _ => [],
        };
        foreach (var (key, value) in entries)
        {
            var (start, end) = Offsets(value.Span, starts);
            (string, int, int)? named = key is null ? null : (key.Text, Offsets(key.Span, starts).Start, Offsets(key.Span, starts).End);
            siblings.Add(new Piece(start, end, value, named, siblings, siblings.Count));
            found.Add(siblings[^1]);
            Inside(value, starts, found);
        }
    }

    private static (int Start, int End) Offsets(TextSpan span, List<int> starts) =>
        (starts[span.Line - 1] + span.Column - 1, starts[span.EndLine - 1] + span.EndColumn - 1);

    private static List<int> LineStarts(string text)
    {
        var starts = new List<int> { 0 };
        for (var at = text.IndexOf('\n', StringComparison.Ordinal); at >= 0; at = text.IndexOf('\n', at + 1))
        {
            starts.Add(at + 1);
        }

        return starts;
    }
}

using System.Globalization;
using System.Text;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Scaffolding;

/// <summary>An entry that is added to a list: keys with values, in order.</summary>
/// <param name="Values">Keys and texts.</param>
internal sealed record NewEntry(IReadOnlyList<(string Key, string Value)> Values)
{
    /// <summary>In braces, on one line.</summary>
    public string Flow => $"{{ {string.Join(", ", Values.Select(value => $"{value.Key}: {Scalar(value.Value)}"))} }}";

    /// <summary>One key per line.</summary>
    public IEnumerable<string> Lines => Values.Select(value => $"{value.Key}: {Scalar(value.Value)}");

    /// <summary>A text as YAML: plain where it cannot be taken for anything else, in quotes otherwise.</summary>
    public static string Scalar(string text)
    {
        var isPlain = text.Length > 0 && char.IsAsciiLetterOrDigit(text[0]) && !text.EndsWith(' ')
            && text.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is ' ' or '-' or '_' or '.' or '/' or '°')
            && ScalarForms.Classify(text, ScalarStyle.Plain) == ScalarKind.Text && ScalarTraps.Explain(text) is null;
        return isPlain ? text : Quoted(text);
    }

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var letter in text)
        {
            quoted.Append(letter switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                < ' ' => string.Create(CultureInfo.InvariantCulture, $"\\x{(int)letter:X2}"),
                _ => letter.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }
}

/// <summary>Adds an entry to a list of a YAML file by inserting text: comments, order and form of everything else stay as they are.</summary>
internal static class ListInsertion
{
    /// <summary>Adds an entry.</summary>
    /// <param name="text">The file.</param>
    /// <param name="root">Its only document.</param>
    /// <param name="key">Key of the list at the top of the document; made when it is missing.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="asLines">Whether the entry stands on several lines where the list allows it.</param>
    /// <returns>The changed file, or null where the form of the file leaves no place that is safe.</returns>
    public static string? Add(string text, MapToken root, string key, NewEntry entry, bool asLines)
    {
        var lines = new TextLines(text);
        if (lines.At(root.Span) == '{' || lines.HasDocumentEnd)
        {
            return null;
        }

        return root.Find(key) switch
        {
            null => lines.Append([$"{key}:", .. Block(entry, 2, asLines)]),
            { Value: ListToken { Items.Count: 0 } empty } found => lines.Cut(empty.Span).InsertAfter(found.Key.Span.Line, Block(entry, 2, asLines)),
            { Value: ScalarToken { IsNull: true } } found => lines.InsertAfter(found.Key.Span.Line, Block(entry, 2, asLines)),
            { Value: ListToken list } when lines.At(list.Span) == '[' => lines.InsertAt(list.Items[^1].Span, ", " + entry.Flow),
            { Value: ListToken list } => lines.InsertAfter(list.Items[^1].Span.EndLine, Block(entry, list.Span.Column - 1, asLines)),
            _ => null,
        };
    }

    /// <summary>Adds entries to a list whose entries stand one below the other.</summary>
    /// <param name="text">The file.</param>
    /// <param name="root">Its only document.</param>
    /// <param name="key">Key of the list at the top of the document; made when it is missing.</param>
    /// <param name="block">The lines of the entries for a number of blanks before each.</param>
    /// <returns>The changed file, or null where the form of the file leaves no place that is safe.</returns>
    public static string? Add(string text, MapToken root, string key, Func<int, IReadOnlyList<string>> block)
    {
        var lines = new TextLines(text);
        if (lines.At(root.Span) == '{' || lines.HasDocumentEnd)
        {
            return null;
        }

        return root.Find(key) switch
        {
            null => lines.Append([$"{key}:", .. block(2)]),
            { Value: ListToken { Items.Count: > 0 } list } when lines.At(list.Span) != '[' => lines.InsertAfter(list.Items[^1].Span.EndLine, block(list.Span.Column - 1)),
            _ => null,
        };
    }

    private static List<string> Block(NewEntry entry, int indent, bool asLines)
    {
        var blank = new string(' ', indent);
        return asLines
            ? [.. entry.Lines.Select((line, index) => $"{blank}{(index == 0 ? "- " : "  ")}{line}")]
            : [$"{blank}- {entry.Flow}"];
    }

    /// <summary>A text by lines and columns, with its own line ends.</summary>
    private sealed class TextLines(string text)
    {
        private readonly string end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        private readonly List<string> lines = [.. text.Split('\n')];

        public bool HasDocumentEnd => lines.Exists(line => line.TrimEnd('\r') is "...");

        public char At(TextSpan span) => lines[span.Line - 1][span.Column - 1];

        public TextLines Cut(TextSpan span)
        {
            var line = lines[span.Line - 1];
            if (span.EndLine == span.Line)
            {
                var rest = $"{line[..(span.Column - 1)].TrimEnd(' ')} {line[(span.EndColumn - 1)..].TrimStart(' ')}";
                lines[span.Line - 1] = rest.TrimEnd(' ', '\r') + (line.EndsWith('\r') ? "\r" : string.Empty);
            }

            return this;
        }

        public string InsertAfter(int line, IEnumerable<string> added)
        {
            if (line == lines.Count)
            {
                lines[^1] += end.TrimEnd('\n');
                lines.Add(string.Empty);
            }

            lines.InsertRange(line, added.Select(one => one + end.TrimEnd('\n')));
            return string.Join('\n', lines);
        }

        public string InsertAt(TextSpan behind, string added)
        {
            lines[behind.EndLine - 1] = lines[behind.EndLine - 1].Insert(behind.EndColumn - 1, added);
            return string.Join('\n', lines);
        }

        public string Append(IEnumerable<string> added)
        {
            var start = text.Length == 0 || text.EndsWith('\n') ? text : text + end;
            return start + string.Join(end, added) + end;
        }
    }
}

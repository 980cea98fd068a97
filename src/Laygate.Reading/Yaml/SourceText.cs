using System.Globalization;
using System.Text;

namespace Laygate.Reading.Yaml;

/// <summary>A file as text, with the line table that turns offsets into lines and columns and back.</summary>
internal sealed class SourceText
{
    private const int MostCharacterProblems = 20;

    private static readonly System.Buffers.SearchValues<char> UnusualLineEnds = System.Buffers.SearchValues.Create("\u0085\u2028\u2029");

    private readonly List<int> _lineStarts = [0];

    private SourceText(string text)
    {
        Text = text;
        for (var at = text.IndexOf('\n', StringComparison.Ordinal); at >= 0; at = text.IndexOf('\n', at + 1))
        {
            _lineStarts.Add(at + 1);
        }
    }

    /// <summary>The text; characters that are refused stand in it as blanks, so that offsets stay true.</summary>
    public string Text { get; }

    /// <summary>Decodes strictly; null when the bytes are no UTF-8 text, or its line ends would make every position doubtful.</summary>
    public static SourceText? Decode(ReadOnlySpan<byte> bytes, List<ReadingProblem> problems)
    {
        if (bytes is [0xEF, 0xBB, 0xBF, ..])
        {
            bytes = bytes[3..];
        }

        if (!System.Text.Unicode.Utf8.IsValid(bytes))
        {
            problems.AddRange(EncodingProblems.Find(bytes));
            return null;
        }

        var text = Encoding.UTF8.GetString(bytes);
        var raw = new SourceText(text);
        var clean = raw.BlankOut(problems);
        if (text.AsSpan().ContainsAny(UnusualLineEnds) || text.Replace("\r\n", string.Empty, StringComparison.Ordinal).Contains('\r', StringComparison.Ordinal))
        {
            return null;
        }

        return ReferenceEquals(clean, text) ? raw : new SourceText(clean);
    }

    public int LineCount => _lineStarts.Count;

    /// <summary>The offset of a line and column; never outside the text.</summary>
    public int OffsetOf(long line, long column)
    {
        if (line > _lineStarts.Count)
        {
            return Text.Length;
        }

        return (int)Math.Clamp(_lineStarts[(int)Math.Max(line, 1) - 1] + column - 1, 0, Text.Length);
    }

    /// <summary>The span between two offsets.</summary>
    public TextSpan SpanOf(int start, int end)
    {
        var (line, column) = PlaceOf(start);
        var (endLine, endColumn) = PlaceOf(end);
        return new TextSpan(line, column, endLine, endColumn);
    }

    /// <summary>A line without its end, counted from 1.</summary>
    public string Line(int line)
    {
        if (line < 1 || line > _lineStarts.Count)
        {
            return string.Empty;
        }

        var end = line < _lineStarts.Count ? _lineStarts[line] : Text.Length;
        return Text[_lineStarts[line - 1]..end].TrimEnd('\r', '\n');
    }

    private (int Line, int Column) PlaceOf(int offset)
    {
        var found = _lineStarts.BinarySearch(offset);
        var line = found >= 0 ? found : ~found - 1;
        return (line + 1, offset - _lineStarts[line] + 1);
    }

    private string BlankOut(List<ReadingProblem> problems)
    {
        StringBuilder? clean = null;
        var count = 0;
        for (var at = 0; at < Text.Length; at++)
        {
            if (!IsRefused(at))
            {
                continue;
            }

            var end = at + 1;
            while (end < Text.Length && Text[end] == Text[at] && IsRefused(end))
            {
                end++;
            }

            if (count++ < MostCharacterProblems)
            {
                problems.Add(Refusal(at, end));
            }

            clean ??= new StringBuilder(Text);
            for (; at < end; at++)
            {
                clean[at] = ' ';
            }

            at--;
        }

        if (count > MostCharacterProblems)
        {
            problems.Add(new ReadingProblem(string.Create(CultureInfo.InvariantCulture, $"The file holds {count - MostCharacterProblems:N0} more stretches of characters that do not belong in a text file."), TextSpan.FileStart));
        }

        return clean?.ToString() ?? Text;
    }

    // A lone carriage return and the three rare line ends count as lines in YAML but not in most editors: line numbers would lie.
    private bool IsRefused(int at) => Text[at] switch
    {
        '\t' or '\n' => false,
        '\r' => at + 1 >= Text.Length || Text[at + 1] != '\n',
        < ' ' or (>= '\u007F' and <= '\u009F') or '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF' => true,
        _ => false,
    };

    private ReadingProblem Refusal(int start, int end)
    {
        var code = string.Create(CultureInfo.InvariantCulture, $"U+{(int)Text[start]:X4}");
        var span = SpanOf(start, end);
        return Text[start] switch
        {
            '\0' => new ReadingProblem("A NUL character (U+0000) stands here; a text file holds none.", span, "Save the file as plain text in UTF-8."),
            '\r' or '\u0085' or '\u2028' or '\u2029' => new ReadingProblem($"An unusual line end ({code}) stands here; editors count lines differently around it.", span, "Replace it by an ordinary line break."),
            '\uFEFF' => new ReadingProblem("An invisible character (U+FEFF) stands here.", span, "Delete it; it may stand at the very start of a file only."),
            _ => new ReadingProblem($"A control character ({code}) stands here; it cannot be seen and has no meaning.", span, "Delete it."),
        };
    }
}

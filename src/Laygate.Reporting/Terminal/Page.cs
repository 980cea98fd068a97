using Laygate.Reporting.Text;

namespace Laygate.Reporting.Terminal;

/// <summary>Collects lines and breaks text between words.</summary>
/// <param name="width">Columns of a line.</param>
/// <param name="cuts">Whether a word that is longer than a line is cut; a path or key that somebody clicks or copies is not.</param>
internal sealed class Page(int width, bool cuts = true)
{
    /// <summary>Narrowest and widest line.</summary>
    private const int Narrowest = 40;
    private const int Widest = 100;

    private readonly int width = Math.Clamp(width, Narrowest, Widest);
    private readonly List<TerminalLine> lines = [];
    private readonly List<TextSpan> current = [];
    private TerminalLine? last;
    private int column;
    private bool needsBlank;

    /// <summary>Whether there is a line, taken or not.</summary>
    public bool HasLines => last is not null;

    /// <summary>The lines since they were taken last.</summary>
    public IReadOnlyList<TerminalLine> Take()
    {
        IReadOnlyList<TerminalLine> taken = [.. lines];
        lines.Clear();
        return taken;
    }

    /// <summary>Columns of a line.</summary>
    public int Width => width;

    /// <summary>An empty line, never two in a row and none at the top.</summary>
    public void Blank()
    {
        if (last is { Spans.Count: > 0 })
        {
            Put(new TerminalLine([]));
        }
    }

    /// <summary>Text that starts at one column and goes on at another.</summary>
    public void Flow(int first, int next, params IEnumerable<TextSpan> spans)
    {
        Indent(first);
        foreach (var span in spans)
        {
            foreach (var word in span.Text.Split(' '))
            {
                Word(span.Style, word, next);
            }

            // A span that ends with a blank has just added an empty word; what follows then stands apart.
            needsBlank = span.Text.EndsWith(' ');
        }

        Break();
    }

    /// <summary>A label and text beside it that hangs from the column behind the label.</summary>
    public void Labelled(int first, int next, string label, params IEnumerable<TextSpan> spans) =>
        Flow(first, next, [new TextSpan(TextStyle.Quiet, label.PadRight(next - first).Replace(' ', '\u00A0')), .. spans]);

    /// <summary>Lines that were broken elsewhere.</summary>
    public void Put(IReadOnlyList<TerminalLine> whole)
    {
        foreach (var line in whole)
        {
            Put(line);
        }
    }

    private void Put(TerminalLine line)
    {
        last = line;
        lines.Add(line);
    }

    private void Word(TextStyle style, string word, int next)
    {
        var size = TextWidth.Of(word);
        var gap = needsBlank ? 1 : 0;
        if (size > 0 && column > next && column + gap + size > width)
        {
            Break();
            Indent(next);
            gap = 0;
        }

        if (size > 0)
        {
            Put(style, (gap == 1 ? " " : string.Empty) + word, next);
        }

        needsBlank = true;
    }

    private void Put(TextStyle style, string text, int next)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            var size = TextWidth.Of(rune);
            if (cuts && column + size > width)
            {
                Break();
                Indent(next);
            }

            Append(style, rune.Value == 0xA0 ? " " : rune.ToString());
            column += size;
        }
    }

    private void Append(TextStyle style, string text)
    {
        if (current.Count > 0 && current[^1].Style == style)
        {
            current[^1] = new TextSpan(style, current[^1].Text + text);
        }
        else
        {
            current.Add(new TextSpan(style, text));
        }
    }

    private void Indent(int columns)
    {
        column = columns;
        needsBlank = false;
        if (columns > 0)
        {
            current.Add(new TextSpan(TextStyle.Plain, new string(' ', columns)));
        }
    }

    private void Break()
    {
        TrimEnd();
        Put(new TerminalLine([.. current]));
        current.Clear();
        column = 0;
        needsBlank = false;
    }

    private void TrimEnd()
    {
        while (current.Count > 0 && current[^1].Text.EndsWith(' '))
        {
            var (style, text) = current[^1];
            current.RemoveAt(current.Count - 1);
            if (text.TrimEnd() is { Length: > 0 } kept)
            {
                current.Add(new TextSpan(style, kept));
            }
        }
    }
}

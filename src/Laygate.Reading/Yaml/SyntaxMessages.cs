using System.Globalization;
using System.Text.RegularExpressions;
using YamlDotNet.Core;

namespace Laygate.Reading.Yaml;

/// <summary>Says in plain words what the parser dislikes, and points at the text that must change.</summary>
internal sealed partial class SyntaxMessages(SourceText source, TextSpan? openBracket)
{
    private const int LongestKey = 1024;

    private static readonly (string Part, string Message, string? Hint)[] Table =
    [
        ("unexpected end of stream", "The quotation mark that opens here is never closed.", "Close it, or remove it."),
        ("unexpected document indicator", "The quotation mark that opens here is still open where a new document begins.", "Close it."),
        ("unknown escape", "A backslash in double quotes begins an escape, and this escape does not exist.", "Use single quotes around a text with backslashes."),
        ("hexadecimal", "This escape lacks some of its hexadecimal digits.", "Write the character itself."),
        ("Unicode", "This escape is no character.", "Write the character itself."),
        ("wrong indentation", "This text in quotes goes on to a line that is not indented far enough.", "Indent it more than its key, or close the quotation mark."),
        ("did not find expected key", "This line does not fit the lines above it.", "Indent the keys of one group by the same number of blanks, and write each as `key: value`."),
        ("expected '-' indicator", "This line does not fit the list above it.", "Begin each entry of the list with `- ` in the same column."),
        ("apping values are not allowed", SecondColon, QuoteIt),
        ("found invalid mapping", SecondColon, QuoteIt),
        ("equence entries are not allowed", "A list entry cannot begin here.", "Put `- ` on a line of its own, under its key."),
        ("apping keys are not allowed", "A key cannot begin here.", "Put it on a line of its own."),
        ("key indicator", "A key cannot begin here.", "Put it on a line of its own, or put quotes around a text with punctuation."),
        ("invalid comment", "A blank is missing before the `#` of a comment.", "Put a blank there, or put quotes around a text that holds `#`."),
        ("Anchor before", "A list cannot begin on the line of its anchor.", "Put the list on the next line, indented."),
        ("find expected token", "This cannot stand here.", "Put quotes around texts that hold punctuation."),
        ("expected ':'", "This line is neither a key with a value nor part of the line above.", "Write `key: value` with a blank behind the colon."),
        ("comment between adjacent scalars", "A comment breaks a text that goes on behind it.", "Put the text on one line, or in quotes."),
        ("expected node content", "A value or a closing bracket is missing here.", null),
        ("<document", "This text does not belong to what stands above it.", "A file is a group of keys; put everything under a key, and separate documents by a line `---`."),
        ("document start", "A directive or document begins wrongly here.", "Separate documents by a line `---`."),
        ("incompatible YAML", "This YAML version is not known.", "Remove the line that begins with `%YAML`."),
        ("anchor", "An anchor or alias is written wrongly here.", "Use letters, digits and hyphens behind `&` or `*`, or put quotes around the text."),
        ("block scalar", "The block of text that begins with `|` or `>` is written wrongly.", "Begin it on the next line, indented more than its key."),
        ("directive", "A line that begins with `%` is a directive, and this one is not valid.", "Remove it, or put quotes around the text."),
        ("tag", "A word that begins with `!` is a type tag, and tags are not accepted.", "Remove it, or put quotes around the text."),
    ];

    private const string SecondColon = "A colon followed by a blank cannot stand inside a value.";
    private const string QuoteIt = "Put quotes around the value, or put the inner key on a line of its own.";

    public ReadingProblem Explain(YamlException error)
    {
        var start = source.OffsetOf(error.Start.Line, error.Start.Column);
        return Tab(error) ?? NoBlank(error) ?? LongKey(source.SpanOf(start, start)) ??
             FirstCharacter(error, start) ?? Bracket(error, start) ?? FromTable(error, start);
    }

    /// <summary>The parser gave up without a reason.</summary>
    public ReadingProblem Unexplained(Mark place)
    {
        var start = source.OffsetOf(place.Line, place.Column);
        return openBracket is null
            ? new ReadingProblem("This is not valid YAML.", OneCharacter(start), "Put quotes around texts that hold punctuation.")
            : Unclosed(openBracket.Value, start);
    }

    private ReadingProblem FromTable(YamlException error, int start)
    {
        foreach (var (part, message, hint) in Table)
        {
            if (error.Message.Contains(part, StringComparison.Ordinal))
            {
                return new ReadingProblem(message, OneCharacter(start), hint);
            }
        }

        return new ReadingProblem("This is not valid YAML.", OneCharacter(start), $"The parser says: {error.Message}");
    }

    private ReadingProblem? Tab(YamlException error)
    {
        // Where the parser itself speaks of a tab it points at the group that the tab breaks.
        var last = error.Message.Contains("tab ", StringComparison.Ordinal) ? source.LineCount : error.End.Line + 1;
        for (var line = Math.Max(1, (int)error.Start.Line - 1); line <= last; line++)
        {
            var lead = TabInIndentation().Match(source.Line(line));
            if (lead.Success)
            {
                return ReadingProblems.Tab(line, lead.Length);
            }
        }

        return null;
    }

    // Without its blank a "key:value" is a text, and the line below it is where the parser stumbles.
    private ReadingProblem? NoBlank(YamlException error)
    {
        if (openBracket is not null)
        {
            return null;
        }

        for (var line = (int)Math.Max(1, error.Start.Line - 1); line <= error.Start.Line; line++)
        {
            var found = KeyWithoutBlank().Match(source.Line(line));
            if (!found.Success)
            {
                continue;
            }

            var key = found.Groups["key"];
            return new ReadingProblem($"A blank is missing behind the colon of `{key.Value}`.", new TextSpan(line, key.Index + 1, line, key.Index + key.Length + 2), $"Write `{key.Value}: ` and then the value.");
        }

        return null;
    }

    private ReadingProblem? LongKey(TextSpan place)
    {
        var colon = source.Line(place.Line).IndexOf(':', StringComparison.Ordinal);
        return colon < LongestKey ? null : new ReadingProblem("A key may have at most 1,024 characters.", place with { Column = 1, EndColumn = colon + 1 }, "Shorten it, or put quotes around a long text.");
    }

    private ReadingProblem? FirstCharacter(YamlException error, int start)
    {
        if (!error.Message.Contains("cannot start any token", StringComparison.Ordinal) || start >= source.Text.Length)
        {
            return null;
        }

        var what = source.Text[start] == '`' ? "a back-tick" : $"`{source.Text[start]}`";
        return new ReadingProblem($"A text cannot begin with {what}.", OneCharacter(start), "Put quotes around it.");
    }

    private ReadingProblem? Bracket(YamlException error, int start) =>
        openBracket is { } open && (error.Message.Contains("flow", StringComparison.Ordinal) || error.Message.Contains("node content", StringComparison.Ordinal)) ? Unclosed(open, start) : null;

    private ReadingProblem Unclosed(TextSpan open, int start)
    {
        var bracket = source.Text[source.OffsetOf(open.Line, open.Column)];
        var closer = bracket == '{' ? '}' : ']';
        return new ReadingProblem(
            string.Create(CultureInfo.InvariantCulture, $"A comma or `{closer}` is missing here: the `{bracket}` at line {open.Line}, column {open.Column} is still open."),
            OneCharacter(start),
            $"Close it with `{closer}`; put quotes around texts that hold `,`, `:` or brackets.");
    }

    private TextSpan OneCharacter(int start)
    {
        var inLine = start < source.Text.Length && source.Text[start] is not ('\n' or '\r');
        return source.SpanOf(start, inLine ? start + 1 : start);
    }

    [GeneratedRegex("^[ -]*\t", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex TabInIndentation();

    [GeneratedRegex("^ *(?:- +)*(?<key>[A-Za-z_][A-Za-z0-9_-]*):[^ \t/]", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex KeyWithoutBlank();
}

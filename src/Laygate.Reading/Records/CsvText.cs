using System.Text;
using nietras.SeparatedValues;

namespace Laygate.Reading.Records;

/// <summary>One row of a file.</summary>
/// <param name="Line">Its first line, from 1.</param>
/// <param name="Last">Its last line.</param>
/// <param name="Cells">Its cells, without quotation marks.</param>
/// <param name="Starts">Columns, from 1, at which its cells begin.</param>
internal sealed record CsvRow(int Line, int Last, string[] Cells, int[] Starts);

/// <summary>Turns the bytes of a raw file into rows. The grammar is that of RFC 4180 (read), with any delimiter and any line end.</summary>
internal static class CsvText
{
    /// <summary>Largest file that is read, bytes; judgement: a shift has some thousand rows, a thermal camera some ten thousand lines.</summary>
    public const int LargestFile = 64 << 20;

    /// <summary>Most rows of one file; judgement, as above.</summary>
    public const int MostRows = 200_000;

    /// <summary>Lines that one row may take; more of them are one quotation mark that nobody closed. Judgement.</summary>
    public const int MostLines = 40;

    /// <summary>The text of a file in its declared encoding.</summary>
    /// <returns>The text, or why the bytes are none.</returns>
    public static (string? Text, string? Problem) Decode(byte[] bytes, string encoding)
    {
        if (encoding is not "utf-16" && bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            return (null, "The file is saved as UTF-16, and the mapping says otherwise: write `encoding: utf-16`.");
        }

        Encoding decoder = encoding switch
        {
            "utf-16" => new UnicodeEncoding(bigEndian: bytes is [0xFE, 0xFF, ..], byteOrderMark: true, throwOnInvalidBytes: true),
            "windows-1252" => CodePagesEncodingProvider.Instance.GetEncoding(1252)!,
            _ => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true),
        };
        try
        {
            var text = decoder.GetString(bytes);
            return (text.Length > 0 && text[0] == '\uFEFF' ? text[1..] : text, null);
        }
        catch (DecoderFallbackException error)
        {
            var line = 1 + bytes.AsSpan(0, Math.Max(0, error.Index)).Count((byte)'\n');
            return (null, FormattableString.Invariant($"Line {line} is no text in the encoding {encoding} that the mapping declares. A spreadsheet that saves CSV for its own country often writes windows-1252."));
        }
    }

    /// <summary>The rows of a text.</summary>
    public static IEnumerable<CsvRow> Rows(string text, char delimiter)
    {
        using var reader = Sep.New(delimiter).Reader(options => options with { HasHeader = false, Unescape = false, DisableColCountCheck = true }).FromText(text);
        var line = 1;
        while (reader.MoveNext())
        {
            var row = reader.Current;
            var (cells, starts) = (new string[row.ColCount], new int[row.ColCount]);
            var start = 1;
            for (var i = 0; i < cells.Length; i++)
            {
                var raw = row[i].Span;
                (cells[i], starts[i]) = (Plain(raw), Math.Max(start, 1));

                // Behind a cell of several lines a column of the first line would lie outside it.
                start = start == 0 || raw.ContainsAny('\r', '\n') ? 0 : start + raw.Length + 1;
            }

            var behind = Math.Max(row.LineNumberToExcl, line + 1);
            yield return new CsvRow(line, behind - 1, cells, starts);
            line = behind;
        }
    }

    /// <summary>The line `sep=;` with which some spreadsheets say their delimiter; null where the text has none.</summary>
    public static char? DeclaredInside(string text) => text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && text.Length > 4 ? text[4] : null;

    // Blanks around, also those that do not break, are no part of a value.
    private static string Plain(ReadOnlySpan<char> raw)
    {
        var cell = raw.Trim();
        return cell is ['"', .., '"'] ? cell[1..^1].ToString().Replace("\"\"", "\"", StringComparison.Ordinal).Trim() : cell.ToString();
    }
}

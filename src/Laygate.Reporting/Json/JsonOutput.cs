using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using Laygate.Exchange;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>The report for programs, as <c>schemas/report.schema.json</c> describes it. No time of day stands in it: the same input gives the same bytes.</summary>
public static class JsonOutput
{
    internal static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = Encoder() };

    /// <summary>Writes the results of one run as UTF-8 with a line feed at the end.</summary>
    /// <param name="output">Where to write.</param>
    /// <param name="programVersion">Version of the program.</param>
    /// <param name="results">Files in the given order.</param>
    /// <param name="problems">What stopped the run as a whole, such as a rule file that cannot be read.</param>
    public static void Write(Stream output, string programVersion, IReadOnlyList<FileResult> results, IReadOnlyList<Problem> problems)
    {
        using var form = new JsonForm(new RunHead(programVersion, problems), output);
        foreach (var result in results)
        {
            form.Add(result, changes: null);
        }

        form.End();
    }

    /// <summary>Writes a whole document with a line feed at the end.</summary>
    internal static void Write<T>(Stream output, T value, JsonTypeInfo<T> shape, JsonWriterOptions options)
        where T : class
    {
        var buffer = new StreamBuffer(output);
        using (var json = new Utf8JsonWriter(buffer, options))
        {
            Shapes.Write(json, value, shape);
        }

        buffer.Flush();
        output.WriteByte((byte)'\n');
    }

    // Units and trade words stay readable; what could turn or hide text is written as its code.
    private static JavaScriptEncoder Encoder()
    {
        var settings = new TextEncoderSettings(UnicodeRanges.All);
        settings.ForbidCharacters('\u00AD', '\u061C', '\u180E', '\uFEFF');
        settings.ForbidRange(UnicodeRange.Create('\u200B', '\u200F'));
        settings.ForbidRange(UnicodeRange.Create('\u2028', '\u202E'));
        settings.ForbidRange(UnicodeRange.Create('\u2060', '\u206F'));
        settings.ForbidRange(UnicodeRange.Create('\uFFF9', '\uFFFB'));
        return JavaScriptEncoder.Create(settings);
    }
}

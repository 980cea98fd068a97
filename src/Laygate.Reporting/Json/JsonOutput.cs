using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>The report for programs, as <c>schemas/report.schema.json</c> describes it. No time of day stands in it: the same input gives the same bytes.</summary>
public static class JsonOutput
{
    /// <summary>Version of the shape; a key may be added without raising it, none is renamed or removed.</summary>
    public const int ReportVersion = 2;

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

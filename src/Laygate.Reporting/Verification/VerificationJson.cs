using System.Text.Json;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Verification;

/// <summary>A verification run for programs, with full digits. The same input gives the same bytes.</summary>
public static class VerificationJson
{
    /// <summary>Version of the shape; a key may be added without raising it, none is renamed or removed.</summary>
    public const int Version = 1;

    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n" };

    /// <summary>Writes a run as UTF-8 with a line feed at the end.</summary>
    /// <param name="output">Where to write.</param>
    /// <param name="programVersion">Version of the program.</param>
    /// <param name="result">The run.</param>
    public static void Write(Stream output, string programVersion, VerificationResult result)
    {
        using (var json = new Utf8JsonWriter(output, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("verification_version", Version);
            json.WriteString("program", "laygate");
            json.WriteString("program_version", programVersion);
            Tally(json, result.Tally);
            json.WriteStartArray("files");
            foreach (var file in result.Files)
            {
                File(json, file);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        output.WriteByte((byte)'\n');
    }

    private static void Tally(Utf8JsonWriter json, VerificationTally tally)
    {
        json.WriteStartObject("tally");
        json.WriteNumber("files", tally.Files);
        json.WriteNumber("unreadable_files", tally.Unreadable);
        json.WriteNumber("cases", tally.Cases);
        json.WriteNumber("checks", tally.Checks);
        json.WriteNumber("within", tally.Within);
        json.WriteNumber("off", tally.Off);
        json.WriteNumber("not_computed", tally.NotComputed);
        json.WriteEndObject();
    }

    private static void File(Utf8JsonWriter json, VerificationFileResult file)
    {
        json.WriteStartObject();
        json.WriteString("file", file.File);
        json.WriteStartArray("cases");
        foreach (var one in file.Cases)
        {
            Case(json, one);
        }

        json.WriteEndArray();
        json.WriteStartArray("problems");
        foreach (var problem in file.Problems)
        {
            json.WriteStartObject();
            json.WriteString("message", problem.Message);
            Optional(json, "hint", problem.Hint);
            Position(json, problem.Position);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Case(Utf8JsonWriter json, VerificationCase one)
    {
        json.WriteStartObject();
        json.WriteNumber("document", one.Document);
        json.WriteString("topic", one.Topic);
        json.WriteString("title", one.Title);
        json.WriteStartObject("source");
        json.WriteString("document", one.Source.Document);
        Optional(json, "edition", one.Source.Edition);
        Optional(json, "place", one.Source.Place);
        json.WriteEndObject();
        json.WriteString("evidence", VerificationWords.Of(one.Evidence));
        Optional(json, "remark", one.Remark);
        json.WriteStartArray("checks");
        foreach (var check in one.Checks)
        {
            Check(json, check);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Check(Utf8JsonWriter json, VerificationCheck check)
    {
        json.WriteStartObject();
        json.WriteString("quantity", VerificationWords.Of(check.Quantity));
        json.WriteString("unit", check.Unit);
        json.WriteNumber("expected", check.Expected);
        Number(json, "computed", check.Computed);
        Number(json, "difference", check.Difference);
        json.WriteString("tolerance", check.Tolerance);
        json.WriteNumber("allowed_difference", check.Allowed);
        json.WriteString("verdict", check.Verdict switch
        {
            VerificationVerdict.Within => "within",
            VerificationVerdict.Off => "off",
            _ => "not-computed",
        });
        Optional(json, "reason", check.Reason);
        Position(json, check.Position);
        json.WriteEndObject();
    }

    private static void Position(Utf8JsonWriter json, Position? position)
    {
        if (position is null)
        {
            return;
        }

        json.WriteNumber("line", position.Line);
        json.WriteNumber("column", position.Column);
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Optional(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, value);
        }
    }
}

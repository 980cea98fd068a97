using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Laygate.Reporting.Json;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.CodeQuality;

/// <summary>The code-quality JSON that a code host shows beside a change: an array, without a byte-order mark, of description, check, fingerprint, severity and place. The form has room for entries only, so each carries the short caution.</summary>
public static class CodeQualityWriter
{
    /// <summary>Writes a run as UTF-8 with a line feed at the end.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        using (var json = new Utf8JsonWriter(output, JsonOutput.Options))
        {
            json.WriteStartArray();
            foreach (var problem in run.AllProblems)
            {
                Write(json, "unreadable", $"{problem.Message} {problem.Hint}".TrimEnd(), Fingerprint(problem), "blocker", problem.File, problem.Position?.Line ?? 1);
            }

            foreach (var item in Listing.Asked(run))
            {
                Write(json, item.Rule, $"{Names.Of(item.Group)}: {item.Text} {string.Join(' ', Caution.Short)}", item.Fingerprint, Severity(item), item.File, item.Position.Line);
            }

            json.WriteEndArray();
        }

        output.WriteByte((byte)'\n');
    }

    private static void Write(Utf8JsonWriter json, string check, string text, string fingerprint, string severity, string file, int line)
    {
        json.WriteStartObject();
        json.WriteString("description", PlainText.Show(text).Replace(PlainText.Glue, ' '));
        json.WriteString("check_name", check);
        json.WriteString("fingerprint", fingerprint);
        json.WriteString("severity", severity);
        json.WriteStartObject("location");
        json.WriteString("path", FileNames.Plain(file));
        json.WriteStartObject("lines");
        json.WriteNumber("begin", line);
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static string Severity(ListedItem item) => item.Group switch
    {
        FindingGroup.Failed => item.Finding?.Severity == Laygate.Rules.Definitions.Severity.A ? "blocker" : "critical",
        FindingGroup.Warned => "major",
        FindingGroup.NotAssessed => "minor",
        _ => "info",
    };

    private static string Fingerprint(Problem problem) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"unreadable\n{problem.File}\n{problem.Message}\n{problem.Position}")).AsSpan(0, 16));
}

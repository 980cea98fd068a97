using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Laygate.Reporting.Json;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.CodeQuality;

/// <summary>
/// The code-quality JSON that a code host shows beside a change, file by file: an array of description, check, fingerprint, severity and place.
/// The form has room for entries only, so each carries the short caution. Files that cannot be read stand first: what was found in the others is
/// put aside as text.
/// </summary>
public sealed class CodeQualityForm : IRunForm
{
    private readonly Stream output;
    private readonly JsonTail tail;
    private readonly Listing listing;
    private readonly List<Problem> problems;

    /// <summary>Begins.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write; stays open.</param>
    /// <param name="aside">An empty place to write to and read from; closed with the form.</param>
    public CodeQualityForm(RunHead head, Stream output, Stream aside)
    {
        this.output = output;
        tail = new JsonTail(aside, json => json.WriteStartArray());
        listing = new Listing(head);
        problems = [.. head.Problems];
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        problems.AddRange(result.Problems);
        foreach (var item in listing.Asked(result))
        {
            Write(tail.Json, item.Rule, $"{Names.Of(item.Group)}: {item.Text} {string.Join(' ', Caution.Brief)}", item.Fingerprint, Severity(item), item.File, item.Position.Line);
        }

        tail.Json.Flush();
    }

    /// <inheritdoc/>
    public void End()
    {
        using (var json = new Utf8JsonWriter(output, JsonOutput.Options))
        {
            json.WriteStartArray();
            foreach (var problem in problems)
            {
                Write(json, "unreadable", $"{problem.Message} {problem.Hint}".TrimEnd(), Fingerprint(problem), "blocker", problem.File, problem.Position?.Line ?? 1);
            }

            if (tail.IsEmpty)
            {
                json.WriteEndArray();
            }
        }

        CopyTail();
        output.WriteByte((byte)'\n');
    }

    /// <inheritdoc/>
    public void Dispose() => tail.Dispose();

    private void CopyTail()
    {
        if (tail.IsEmpty)
        {
            return;
        }

        if (problems.Count > 0)
        {
            output.WriteByte((byte)',');
        }

        tail.Json.WriteEndArray();
        tail.CopyTo(output);
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

    // The place is written out: a fingerprint stays what it is whatever else a position comes to know.
    private static string Fingerprint(Problem problem)
    {
        var place = problem.Position is { } at ? FormattableString.Invariant($"Position {{ Line = {at.Line}, Column = {at.Column}, EndLine = {at.EndLine}, EndColumn = {at.EndColumn} }}") : string.Empty;
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"unreadable\n{problem.File}\n{problem.Message}\n{place}")).AsSpan(0, 16));
    }
}

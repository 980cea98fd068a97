using System.Text.Json;
using Laygate.Reporting.Json;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sarif;

/// <summary>SARIF file by file. Whether all could be read, and which rule books were used, stands before the results: they are put aside as text.</summary>
public sealed class SarifForm : IRunForm
{
    private const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    private readonly RunHead head;
    private readonly Stream output;
    private readonly JsonTail tail;
    private readonly SarifRules rules;
    private readonly Listing listing;
    private readonly List<Problem> problems;
    private readonly List<string> books = [];
    private bool withDepartures;

    /// <summary>Begins.</summary>
    /// <param name="head">The run; every rule that a result may name is in force.</param>
    /// <param name="output">Where to write; stays open.</param>
    /// <param name="aside">An empty place to write to and read from; closed with the form.</param>
    public SarifForm(RunHead head, Stream output, Stream aside)
    {
        (this.head, this.output) = (head, output);
        tail = new JsonTail(aside, json =>
        {
            json.WriteStartObject();
            json.WriteStartArray("runs");
            json.WriteStartObject();
            json.WriteStartArray("results");
        });
        rules = new SarifRules(head.RulesInForce, head.RulePages);
        listing = new Listing(head);
        problems = [.. head.Problems];
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        problems.AddRange(result.Problems);
        books.AddRange(result.Reports.Select(report => report.BookHash).Distinct(StringComparer.Ordinal).Except(books, StringComparer.Ordinal).ToList());
        withDepartures |= result.Reports.Any(report => report.Departures.Any(use => use.State != DepartureState.Holds));
        foreach (var item in listing.Asked(result))
        {
            SarifResult.Write(tail.Json, item, rules.IndexOf(item.Rule));
        }

        tail.Json.Flush();
    }

    /// <inheritdoc/>
    public void End()
    {
        using (var json = new Utf8JsonWriter(output, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", Schema);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            Tool(json);
            Invocation(json);
            json.WriteString("columnKind", "utf16CodeUnits");
            json.WriteStartArray("results");
        }

        tail.Json.WriteEndArray();
        tail.Json.WriteEndObject();
        tail.Json.WriteEndArray();
        tail.Json.WriteEndObject();
        tail.CopyTo(output);
        output.WriteByte((byte)'\n');
    }

    /// <inheritdoc/>
    public void Dispose() => tail.Dispose();

    private void Tool(Utf8JsonWriter json)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "laygate");
        json.WriteString("semanticVersion", head.ProgramVersion);
        if (head.InformationUri is { } address)
        {
            json.WriteString("informationUri", address);
        }

        json.WriteStartArray("rules");
        rules.Write(json, withDepartures);
        json.WriteEndArray();
        json.WriteStartObject("properties");
        json.WriteStartArray("rule_books");
        books.ForEach(json.WriteStringValue);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private void Invocation(Utf8JsonWriter json)
    {
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", problems.Count == 0);
        json.WriteStartArray("toolExecutionNotifications");
        problems.ForEach(problem => Notification(json, problem));
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void Notification(Utf8JsonWriter json, Problem problem)
    {
        json.WriteStartObject();
        json.WriteString("level", "error");
        SarifText.Message(json, "message", problem.Hint is { Length: > 0 } hint ? $"{problem.Message} {hint}" : problem.Message);
        SarifResult.Location(json, problem.File, problem.Position ?? new Position(1, 1, 1, 2), address: null);
        json.WriteEndObject();
    }
}

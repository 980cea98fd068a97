using System.Globalization;
using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Rules.Baselines;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;
using Laygate.Validation.Departures;
using Laygate.Validation.Measures;
using Laygate.Validation.Reading;
using Laygate.Validation.RuleFiles;
using Laygate.Validation.Schema;

namespace Laygate.Validation.Baselines;

/// <summary>Reads and writes files of known findings.</summary>
public static class BaselineFile
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Reads a baseline.</summary>
    /// <param name="file">Name as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="book">The rule book of the run; an entry whose rule or value it does not know covers nothing.</param>
    public static (Baseline? Baseline, IReadOnlyList<Problem> Problems) Read(string file, byte[] bytes, RuleBook book)
    {
        var read = YamlReader.Read(bytes, "baseline");
        var problems = read.Problems.ToList();
        if (read.IsSound)
        {
            problems.AddRange(SchemaChecker.Check(read.Documents[0], SchemaLoader.Load(EmbeddedSchemas.Text("baseline.schema.json"))));
        }

        if (problems.Count == 0)
        {
            var map = (MapToken)read.Documents[0].Root;
            var written = map.Date("written", problems);
            if (written is { } day)
            {
                return (new Baseline(file, day, Entries(map, book)), []);
            }
        }

        return (null, [.. problems.Select(problem => new Problem(file, problem.Message, problem.Hint, Spans.Of(problem.Position)))]);
    }

    /// <summary>Writes the findings of a run that belong into a baseline.</summary>
    /// <param name="reports">File of each plan, from the folder of the baseline, and its report.</param>
    /// <param name="written">Day of writing.</param>
    public static byte[] Write(IEnumerable<(string Plan, Report Report)> reports, DateOnly written)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("baseline_version", 1);
            json.WriteString("written", written.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            json.WriteStartArray("findings");
            foreach (var (plan, finding, id) in reports.SelectMany(item => item.Report.Findings.Where(BaselineJudge.Belongs).Select(finding => (item.Plan, finding, item.Report.PlanId))))
            {
                json.WriteStartObject();
                json.WriteString("plan", plan);
                json.WriteString("id", id);
                json.WriteString("rule", finding.Rule);
                json.WriteString("address", finding.Address);
                json.WriteString("status", Words.Of(finding.Status));
                if (finding.Check != CheckKind.Present && Text(finding.Value) is { } value)
                {
                    json.WriteString("value", value);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.ToArray();
    }

    private static List<BaselineEntry> Entries(MapToken map, RuleBook book)
    {
        var rules = book.All.ToDictionary(merged => merged.Rule.Definition.Id, merged => merged.Rule, StringComparer.Ordinal);
        return [.. map.Maps("findings").Select(entry => new BaselineEntry(
            entry.Needed("plan"),
            entry.Needed("id"),
            entry.Needed("rule"),
            entry.Needed("address"),
            entry.NeededWord<Status>("status"),
            rules.TryGetValue(entry.Needed("rule"), out var rule) && entry.Text("value") is not null ? DepartureChecks.Accepted(entry, rule, [], "value") : null))];
    }

    private static string? Text(ShownValue? value) => value switch
    {
        { Number: { } number } when double.IsFinite(number) => $"{MeasureReader.WriteNumber(BaselineJudge.Rounded(number))} {value.Unit}".TrimEnd(),
        { Number: null, Text: { } text } => text,
        _ => null,
    };
}

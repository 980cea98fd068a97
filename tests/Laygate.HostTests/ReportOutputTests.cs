using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Laygate.Engineering.Quantities;
using Laygate.Model.Levers;
using Laygate.Reporting.Json;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using Laygate.UnitTests.Reporting;
using Snapshooter.Xunit;

namespace Laygate.HostTests;

/// <summary>The two forms of a report, on hand-made results.</summary>
public sealed class ReportOutputTests
{
    [Theory]
    [InlineData(60)]
    [InlineData(80)]
    [InlineData(100)]
    public void Report_on_a_terminal(int width)
    {
        var lines = TerminalReport.Lines([Samples.Result()], new TerminalSettings(width, All: width == 100) { Full = true });
        Snapshot.Match(string.Join('\n', lines.Select(line => line.Text)) + "\n", $"terminal-{width}");
    }

    [Fact]
    public void Report_as_json() => Snapshot.Match(Write(Samples.Result()), "json");

    [Fact]
    public void Json_keeps_its_schema()
    {
        Assert.Empty(Errors(Schema(open: true), Write(Full())));
    }

    [Fact]
    public void Every_key_that_is_written_stands_in_the_schema() =>
        Assert.Empty(Errors(Schema(open: false), Write(Full())));

    /// <summary>The made-up report shows one lever; a plan may need any of them.</summary>
    [Fact]
    public void The_schema_names_every_lever()
    {
        var schema = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "report.schema.json")))!;
        var named = schema["definitions"]!["lever_setting"]!["properties"]!["lever"]!["enum"]!.AsArray().Select(word => word!.GetValue<string>());
        Assert.Equal(Enum.GetValues<LeverKind>().Select(Laygate.Model.Plans.Words.Of), named, StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("rule")]
    [InlineData("status")]
    [InlineData("outcome")]
    [InlineData("address")]
    [InlineData("value")]
    [InlineData("limit")]
    [InlineData("source")]
    [InlineData("position")]
    public void A_finding_without_one_of_its_keys_breaks_the_schema(string key)
    {
        var node = JsonNode.Parse(Write(Full()))!;
        Assert.True(node["files"]![0]!["reports"]![0]!["findings"]![0]!.AsObject().Remove(key));
        Assert.NotEmpty(Errors(Schema(open: true), node.ToJsonString()));
    }

    [Fact]
    public void Numbers_keep_twelve_digits_and_text_that_hides_is_written_as_its_code()
    {
        var finding = Samples.Finding() with { Title = "a\u202Eb\u001b", Value = new ShownValue(0.1 + 0.2, "°C", double.NaN, 1.0 / 3) };
        var text = Write(new FileResult("a", [Samples.Report() with { Findings = [finding] }], []));
        Assert.Contains("\"number\": 0.3,", text, StringComparison.Ordinal);
        Assert.Contains("\"high\": 0.333333333333", text, StringComparison.Ordinal);
        Assert.Contains("\"unit\": \"°C\"", text, StringComparison.Ordinal);
        Assert.Contains("\"title\": \"a\\u202Eb\\u001B\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', text);
        Assert.Equal("a\u202Eb\u001b", JsonNode.Parse(text)!["files"]![0]!["reports"]![0]!["findings"]![0]!["title"]!.GetValue<string>());
    }

    private static string Write(FileResult result)
    {
        using var bytes = new MemoryStream();
        JsonOutput.Write(bytes, "0.0.0", [result], []);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static RemedySet Remedies()
    {
        var change = new LeverSetting(LeverKind.Thickness, "course:wearing", "thickness", new ShownValue(25, "mm"), new ShownValue(28, "mm"), ByDesigner: true);
        return new RemedySet(
            [new Remedy([change], new ShownValue(3.1, string.Empty), Samples.AtLeast(3), Status.Pass, OnExpectedValuesOnly: false)],
            [new FailedRemedy(change, RemedyObstacle.WorsensAnother, null, null, [new FindingReference("LAY-001", "Title", "course:wearing")])]);
    }

    private static LayingOutlook Outlook()
    {
        var broken = new BrokenLimit(new FindingReference("WEA-001", "Title", "weather"), Status.Fail, new ShownValue(3, "°C"), Samples.AtLeast(5), OnExpectedValuesOnly: false);
        var at = new DateTimeOffset(2031, 5, 4, 22, 0, 0, TimeSpan.FromHours(2));
        return new LayingOutlook(
            [new HourOutlook(at, LayingVerdict.NoGo, [broken], at.AddHours(-1)), new HourOutlook(at.AddHours(1), LayingVerdict.Go, [], null, broken with { Status = Status.Pass, Value = new ShownValue(7, "°C") })],
            [new PlantLead("trucks", null, new ShownValue(60, "min"))],
            new WorkableWeather(
                [new AxisLimit(WeatherAxis.Air, new ShownValue(9, "°C"), new ShownValue(4, "°C"), null, broken), new AxisLimit(WeatherAxis.Wind, new ShownValue(3, "m/s"), null, null, null)],
                [new PairLimit(WeatherAxis.Air, new ShownValue(6, "°C"), WeatherAxis.Wind, null, LayingVerdict.Caution)]),
            ["WEA-001"]);
    }

    // Everything that may be written is there: both limits, confirmation, working, problems.
    private static FileResult Full()
    {
        var confirmation = new Confirmation("R. Doe", new DateOnly(2031, 1, 2), "3rd edition", "12");
        var source = Samples.Reference(Evidence.Confirmed) with { ValidFrom = new DateOnly(2030, 1, 1), ValidTo = new DateOnly(2032, 1, 1), Successor = "next", Remark = "remark", Confirmation = confirmation };
        var use = new AssumptionUse("mix.density", "mix:ac11", 2.4, "t/m3", Evidence.Judgement, "own", new InputReference("mix:ac11", "density.compacted"));
        var finding = Samples.Finding() with
        {
            Limit = Samples.AtLeast(3) with { Source = source, Stated = "3 in", Factor = 1.5, Quantity = "x.y", SetBy = "spec" },
            OtherLimit = Samples.AtLeast(4, strength: Strength.Advised),
            Severity = Severity.B,
            Remedies = Remedies(),
            Missing = [new InputReference("opening", "below")],
            Notes = [Note.Of("circular", ("quantity", "x"))],
            Working = new Working([new WorkingInput("h", "course.thickness", "course:wearing", 25, "mm")], [new WorkingStep("r", "r = h / D", 2.27, "")], [use]),
        };
        var problem = new Problem("a", "m", "h", new Position(1, 2, 3, 4));
        var report = Samples.Report();
        var clause = new ClauseCoverage("5.10", "thickness", ClauseStatus.Partly, ["LAY-001"], "the rest a person");
        var departure = new Departure
        {
            Id = "dep-001",
            Rule = "LAY-001",
            Address = "course:wearing",
            Reason = "r",
            CompensatingMeasure = "c",
            AskedBy = "a",
            ApprovedBy = "b",
            ApprovedOn = new DateOnly(2031, 1, 2),
            ExpiresOn = new DateOnly(2032, 1, 2),
            Accepted = new AcceptedValue("2.5", 2.5, null),
        };
        report = report with
        {
            Layers = [.. report.Layers.Select(layer => layer with { Coverage = "layers", Clauses = [clause, clause with { Note = null }] })],
            Departures = [new DepartureUse(departure, DepartureState.Exceeded, Status.Fail, Outcome.Missed, new ShownValue(2.3, string.Empty)), new DepartureUse(departure, DepartureState.NoElement, null, null, null)],
        };
        return new FileResult("a", [report with { Findings = [finding, .. report.Findings], Outlook = Outlook() }], [problem, problem with { Hint = null, Position = null }]);
    }

    private static List<string> Errors(JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        var verdict = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        var details = (verdict.Details ?? []).SelectMany(detail => detail.Errors?.Values.Select(error => $"{detail.InstanceLocation}: {error}") ?? []).ToList();
        return verdict.IsValid ? [] : ["invalid", .. details];
    }

    private static JsonSchema Schema(bool open)
    {
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "report.schema.json"));
        var node = JsonNode.Parse(text)!;
        if (!open)
        {
            Close(node);
        }

        return JsonSchema.FromText(node.ToJsonString());
    }

    // The schema lets later versions add keys; here each object is closed, so that an undocumented key shows.
    private static void Close(JsonNode node)
    {
        foreach (var (_, child) in node.AsObject().ToList())
        {
            if (child is JsonObject)
            {
                Close(child);
            }
        }

        if (node["properties"] is not null && node["type"] is JsonValue)
        {
            node["additionalProperties"] ??= false;
        }
    }
}

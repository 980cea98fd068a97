using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Reports;
using Laygate.Reporting.Html;
using Laygate.Reporting.Json;
using Laygate.Reporting.Markdown;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sarif;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using Laygate.UnitTests.Reporting;

namespace Laygate.UnitTests.Reading.Reports;

public sealed class ReportReaderTests
{
    private static readonly string Earlier = File.ReadAllText(Path.Combine(SourceTree.Root, "tests", "Laygate.UnitTests", "Reading", "Reports", "report-of-2026-11-25.json"));

    // The shape of that day lacks keys that were added since: sources of limits in remedies and hours, clauses, what a departure met.
    [Fact]
    public void A_report_of_an_earlier_version_is_read_and_worded_in_every_form()
    {
        var run = Assert.IsType<StoredRun>(Read(Earlier).Run);
        var report = Assert.Single(Assert.Single(run.Files).Reports);
        Assert.Equal("moor-road-thin-overlay", Path.GetFileNameWithoutExtension(report.File));
        Assert.Equal(["LAY-001", "WEA-002", "LAY-004"], report.Departures.Select(use => use.Departure.Rule), StringComparer.Ordinal);
        Assert.Equal(Status.Departed, report.Findings.Single(finding => finding.Rule == "LAY-001").Status);
        Assert.Contains(report.Findings, finding => finding.Remedies is { Found.Count: > 0 });
        Assert.Equal(2, report.Outlook!.Hours.Count);
        foreach (var form in new Action<ReportedRun, Stream>[] { SarifWriter.Write, MarkdownWriter.Write, HtmlWriter.Write })
        {
            using var bytes = new MemoryStream();
            form(ReportedRun.Of(run), bytes);
            var text = Encoding.UTF8.GetString(bytes.ToArray());
            Assert.Contains("Course too thin", text, StringComparison.Ordinal);
            Assert.Contains("dep-002", text, StringComparison.Ordinal);
        }

        // The words of an earlier version stay the same where nothing but keys was added.
        var written = JsonNode.Parse(Write(run.ProgramVersion, run.Files))!;
        Assert.Equal(Messages(JsonNode.Parse(Earlier)!), Messages(written));
    }

    [Fact]
    public void Random_reports_are_written_the_same_after_reading() => Gen.Select(Texts, Numbers, Gen.Int[0, int.MaxValue]).Hold((texts, numbers, seed) =>
    {
        var random = new Random(seed);
        string Text() => texts[random.Next(texts.Length)];
        double? Number() => random.Next(5) == 0 ? null : numbers[random.Next(numbers.Length)];
        ShownValue Value() => new(Number(), Text(), Number(), Number(), random.Next(2) == 0 ? Text() : null, random.Next(2) == 0 ? Any<Place>(random) : null);
        var sample = Samples.Report();
        var findings = sample.Findings.Select(finding => finding with
        {
            Title = Text(),
            Address = Text(),
            Local = Text(),
            Outcome = Any<Outcome>(random),
            Status = Any<Status>(random),
            Check = Any<CheckKind>(random),
            Severity = random.Next(2) == 0 ? Any<Severity>(random) : null,
            Origin = random.Next(2) == 0 ? Any<Origin>(random) : null,
            Value = random.Next(4) == 0 ? null : Value(),
            Limit = finding.Limit is { } limit ? limit with { Low = Value(), Factor = Number(), Layer = Any<Layer>(random), SilenceFails = random.Next(2) == 0, Source = limit.Source with { Evidence = Any<Evidence>(random) } } : null,
            Notes = [new Note(Text(), [new NoteArgument(Text() + "1", Text()), new NoteArgument(Text() + "2", null, Number(), Text())])],
            Working = random.Next(2) == 0 ? Working.None : null,
        }).ToList();
        var file = new FileResult(Text(), [sample with { Findings = findings, Stage = Any<Stage>(random), PlanTitle = random.Next(2) == 0 ? Text() : null }], [new Problem(Text(), Text(), null, new Position(1, 2, 3, 4))]);
        var written = Write("1.2.3", [file]);
        var read = Read(written);
        Assert.Null(read.Problem);
        Assert.Equal(written, Write(read.Run!.ProgramVersion, read.Run.Files));
    });

    [Theory]
    [InlineData("", 1, 1, "no JSON")]
    [InlineData("{\n  \"é\": 1,\n  \"é\": }", 3, 8, "no JSON")]
    [InlineData("{\"program\": \"laygate\", \"program\": \"laygate\"}", null, null, "no JSON")]
    [InlineData("[]", 1, 1, "no report of Laygate")]
    [InlineData("{}", 1, 1, "no report of Laygate")]
    [InlineData("{\"program\": 4, \"report_version\": 1}", 1, 1, "no report of Laygate")]
    [InlineData("{\"program\": \"other\", \"report_version\": 1}", 1, 1, "no report of Laygate")]
    [InlineData("{\"program\": \"laygate\",\n\"report_version\": 3}", 2, 19, "version 3")]
    [InlineData("{\"program\": \"laygate\", \"report_version\": 1, \"program_version\": \"\\ud800\"}", null, null, "no Unicode")]
    [InlineData("{\"program\": \"laygate\", \"report_version\": 1, \"program_version\": \"1\",\n \"files\": {}}", 2, 11, "`files` should be a list")]
    [InlineData("{\"program\": \"laygate\", \"report_version\": 1, \"program_version\": \"1\",\n \"files\": [{\"file\": \"a\"}, {\"file\": 3}]}", 2, 36, "`files[1].file` should be text")]
    public void What_is_no_report_is_refused_with_its_place(string text, int? line, int? column, string says)
    {
        var read = Read(text);
        Assert.Null(read.Run);
        Assert.Contains(says, read.Problem!.Message, StringComparison.Ordinal);
        Assert.Equal((line, column), (read.Problem.Position?.Line, read.Problem.Position?.Column));
    }

    [Theory]
    [InlineData("stage", "\"perhaps\"", "should be one of concept, submission, release")]
    [InlineData("judged_for", "\"yesterday\"", "should be a day")]
    [InlineData("document", "1.5", "should be a whole number")]
    [InlineData("judged_for_shift", "1", "should be true or false")]
    [InlineData("counts", "[]", "should be an object")]
    [InlineData("counts", "null", "lacks `counts`")]
    [InlineData("layers", "[[]]", "should be an object")]
    [InlineData("findings", "[{}]", "lacks `rule`")]
    public void A_wrong_value_is_named_with_what_belongs_there(string key, string value, string says)
    {
        var json = JsonNode.Parse(Earlier)!;
        json["files"]![0]!["reports"]![0]![key] = JsonNode.Parse(value);
        var problem = Read(json.ToJsonString()).Problem;
        Assert.Contains(says, problem!.Message, StringComparison.Ordinal);
        Assert.Contains("files[0].reports[0]", problem.Message, StringComparison.Ordinal);
        Assert.NotNull(problem.Position);
    }

    [Theory]
    [InlineData("severity", "\"D\"", "one of A, B, C")]
    [InlineData("departure", "\"dep-999\"", "does not list")]
    [InlineData("status", "\"great\"", "should be one of")]
    [InlineData("position", "{\"line\": 0, \"column\": 1, \"end_line\": 1, \"end_column\": 1}", "should be 1 or more")]
    [InlineData("value", "{\"number\": \"3\", \"unit\": \"\"}", "should be a number")]
    [InlineData("value", "{\"number\": 1e999, \"unit\": \"\"}", "should be a number")]
    public void A_wrong_value_of_a_finding_is_named(string key, string value, string says)
    {
        const string Mark = "\"rule\":\"LAY-001\"";
        var text = JsonNode.Parse(Earlier)!.ToJsonString();
        var start = text.IndexOf("\"findings\":[{", StringComparison.Ordinal);
        var json = JsonNode.Parse(text)!;
        json["files"]![0]!["reports"]![0]!["findings"]![0]![key] = "MARK";
        Assert.True(start > 0 && text.Contains(Mark, StringComparison.Ordinal));
        var problem = Read(json.ToJsonString().Replace("\"MARK\"", value, StringComparison.Ordinal)).Problem;
        Assert.Contains(says, problem!.Message, StringComparison.Ordinal);
        Assert.Contains($"findings[0].{key}", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_key_that_is_cut_away_or_changed_in_kind_is_an_error_or_read_but_never_a_crash()
    {
        var paths = Paths(JsonNode.Parse(Earlier)!, []).ToList();
        Assert.True(paths.Count > 500, paths.Count.ToString(CultureInfo.InvariantCulture));
        foreach (var path in paths.Where((_, index) => index % 23 == 0))
        {
            foreach (var value in new[] { null, JsonValue.Create("x"), JsonValue.Create(-1e300), (JsonNode)new JsonObject(), new JsonArray(new JsonArray()) })
            {
                var json = JsonNode.Parse(Earlier)!;
                var parent = path[..^1].Aggregate(json, (node, step) => step is int index ? node[index]! : node[(string)step]!);
                if (path[^1] is int number)
                {
                    parent[number] = value?.DeepClone();
                }
                else
                {
                    parent[(string)path[^1]] = value?.DeepClone();
                }

                var read = Read(json.ToJsonString());
                Assert.True((read.Run is null) != (read.Problem is null));
            }
        }
    }

    [Fact]
    public void Bytes_that_are_no_text_and_depth_without_end_are_refused()
    {
        Assert.Contains("no UTF-8", ReportReader.Read("a", [0xFF, 0xFE, 0, 1]).Problem!.Message, StringComparison.Ordinal);
        Assert.Contains("no JSON", Read(new string('[', 100_000)).Problem!.Message, StringComparison.Ordinal);
        Assert.NotNull(ReportReader.Read("a", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Earlier)]).Run);
    }

    private static Gen<string[]> Texts { get; } = Gen.OneOf(Gen.String[0, 12], Gen.String[Gen.Char["aé°²\u202E\"\\\n\t<&'\u2028日"], 0, 8])
        .Select(text => string.Concat(text.Where(letter => !char.IsSurrogate(letter)))).Array[3, 6];

    private static Gen<double[]> Numbers { get; } = Gen.Double.Array[3, 6];

    private static T Any<T>(Random random)
        where T : struct, Enum => Enum.GetValues<T>()[random.Next(Enum.GetValues<T>().Length)];

    private static ReadReport Read(string text) => ReportReader.Read("report.json", Encoding.UTF8.GetBytes(text));

    private static string Write(string version, IReadOnlyList<FileResult> files)
    {
        using var bytes = new MemoryStream();
        JsonOutput.Write(bytes, version, files, []);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    // What is not known has been headed so since; what was judged keeps its words.
    private static List<string> Messages(JsonNode json) =>
    [
        .. json["files"]![0]!["reports"]![0]!["findings"]!.AsArray()
            .Where(finding => finding!["outcome"]!.GetValue<string>() is "met" or "missed" or "not-applicable")
            .Select(finding => finding!["message"]!.GetValue<string>()),
    ];

    private static IEnumerable<object[]> Paths(JsonNode? node, object[] path) => node switch
    {
        JsonObject map => map.SelectMany(entry => Paths(entry.Value, [.. path, entry.Key]).Prepend([.. path, entry.Key])),
        JsonArray list => list.SelectMany((item, index) => Paths(item, [.. path, index]).Prepend([.. path, index])),
        _ => [],
    };
}

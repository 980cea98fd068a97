using System.Globalization;
using System.Text;
using System.Text.Json;
using Laygate.Checking;
using Laygate.Checking.Records;
using Laygate.Reading;
using Laygate.Reading.Acceptance;
using Laygate.Reading.Parts;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.Records;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Examples;

/// <summary>The record of the first example: it is read without a loss, says that it is invented, and its ledger is the approved one.</summary>
public sealed class ExampleRecordTests
{
    private const string Plan = "examples/quay-road-hot-on-hot.yaml";
    private const string Folder = "examples/quay-road-record";

    [Theory]
    [InlineData("01:20")]
    [InlineData(null)]
    public void The_ledger_is_the_approved_one(string? at)
    {
        var report = Ledger(at);
        Assert.Empty(report.Refused);
        var text = string.Join('\n', LedgerLines.Of(report, full: at is not null).Select(line => line.Text.TrimEnd()));
        Approved.Match(Without(text, report), $"quay-road-record.ledger.{(at ?? "end").Replace(":", string.Empty, StringComparison.Ordinal)}");
    }

    [Fact]
    public void Every_output_says_that_it_is_invented()
    {
        var report = Ledger(null);
        using var page = new MemoryStream();
        LedgerPageWriter.Write(report, page);
        using var json = new MemoryStream();
        LedgerJson.Write(report, json);
        string[] outputs = [string.Join('\n', LedgerLines.Of(report, full: false).Select(line => line.Text)), Encoding.UTF8.GetString(page.ToArray()), Encoding.UTF8.GetString(json.ToArray())];
        Assert.All(outputs, output => Assert.Contains("Invented record of an invented shift", output, StringComparison.Ordinal));
    }

    [Fact]
    public void The_json_holds_what_the_terminal_says()
    {
        var report = Ledger("01:20");
        using var stream = new MemoryStream();
        LedgerJson.Write(report, stream);
        using var json = JsonDocument.Parse(stream.ToArray());
        var says = json.RootElement.GetProperty("says").EnumerateArray().Select(one => one.GetString()!);
        Assert.Equal(LedgerLines.Of(report, full: false).Take(2).Select(line => line.Text), says, StringComparer.Ordinal);
        var course = json.RootElement.GetProperty("courses")[0];
        Assert.Equal(report.Ledger.Courses[0].ToOrder.Number, course.GetProperty("to_order").GetProperty("value").GetDouble(), 1e-6);
    }

    [Fact]
    public void A_page_stands_alone_and_works_without_a_script()
    {
        using var stream = new MemoryStream();
        LedgerPageWriter.Write(Ledger("01:20"), stream);
        var page = Encoding.UTF8.GetString(stream.ToArray());
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        Assert.All((string[])["<script", "http://", "https://", "src="], word => Assert.DoesNotContain(word, page, StringComparison.OrdinalIgnoreCase));
        Assert.Contains("name=\"viewport\"", page, StringComparison.Ordinal);
    }

    /// <summary>Every kind of rows has a file in the example, so that each reader is used on what a person would write.</summary>
    [Fact]
    public void The_record_holds_every_kind_of_rows()
    {
        var record = RecordReader.Read(new FolderOfRepository(Path.Combine(Repository.Root, Folder))).Record!;
        var kinds = record.Files.Select(file => file.Holds).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(13, kinds.Count);
        Assert.All(record.Files, file => Assert.Equal((true, 0), (file.Rows > 0, file.Refused)));
    }

    /// <summary>The lots of the example by the invented scheme of its contract, and by a published one.</summary>
    [Theory]
    [InlineData("examples/particular/port-of-tamarel-acceptance.yaml", "port-of-tamarel")]
    [InlineData("ufgs-02749", "ufgs-02749")]
    public void The_lot_report_is_the_approved_one(string scheme, string name)
    {
        var report = Lots(scheme);
        var text = string.Join('\n', LotLines.Of(report, full: true).Select(line => line.Text.TrimEnd()));
        Approved.Match(text.Replace(report.Scheme.Hash, "(hash)", StringComparison.Ordinal), $"quay-road-record.lots.{name}");
    }

    [Fact]
    public void The_page_of_the_lots_says_what_the_terminal_says_and_that_it_is_invented()
    {
        var report = Lots("examples/particular/port-of-tamarel-acceptance.yaml");
        using var stream = new MemoryStream();
        LotPageWriter.Write(report, stream);
        var page = System.Net.WebUtility.HtmlDecode(Encoding.UTF8.GetString(stream.ToArray()));
        Assert.Contains("Invented record of an invented shift", page, StringComparison.Ordinal);
        Assert.Contains(LotLines.Of(report, full: false)[0].Text, page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Places are drawn from the plan: with or without a record, the same seed gives the same.</summary>
    [Fact]
    public void Places_are_the_same_before_and_after_laying()
    {
        var (scheme, _) = SchemeReader.Open("ufgs-02749", new Files());
        var (before, problems) = RecordedShift.Open(new PlanTools(), Plan, Repository.Bytes(Plan), new NoParts(), folder: null);
        Assert.Empty(problems);
        static IEnumerable<double> Stations(AcceptanceReport report) => report.Lots.SelectMany(lot => lot.Sublots).SelectMany(sublot => sublot.Places).Select(place => place.Station);
        Assert.Equal(Stations(before!.Lots(scheme!, 4711, Repository.Version)), Stations(Lots("ufgs-02749")));
        Assert.NotEqual(Stations(before.Lots(scheme!, 4712, Repository.Version)), Stations(Lots("ufgs-02749")));
    }

    /// <summary>The rest of the shift of the example: what is said, that it is invented, and that JSON and page say the same.</summary>
    [Fact]
    public void The_rest_of_the_shift_is_the_approved_one_and_every_output_says_that_it_is_invented()
    {
        var (report, problems) = Open().Onward("01:20", new EventTexts { PlantDown = "plant-a=01:50", Trucks = ["surface-trucks=8"], Closing = "05:00" }, Repository.Bound(), Repository.Version);
        Assert.Empty(problems);
        var lines = OnwardLines.Of(report!, full: true).Select(line => line.Text.TrimEnd()).ToList();
        Approved.Match(string.Join('\n', lines), "quay-road-record.onward.0120");
        using var page = new MemoryStream();
        OnwardPageWriter.Write(report!, page);
        using var json = new MemoryStream();
        OnwardJson.Write(report!, json);
        string[] outputs = [string.Join('\n', lines), System.Net.WebUtility.HtmlDecode(Encoding.UTF8.GetString(page.ToArray())), Encoding.UTF8.GetString(json.ToArray())];
        Assert.All(outputs, output => Assert.Contains("Invented record of an invented shift", output, StringComparison.Ordinal));
        Assert.Contains(lines[0], outputs[1], StringComparison.Ordinal);
        using var parsed = JsonDocument.Parse(json.ToArray());
        Assert.Equal(lines[0], parsed.RootElement.GetProperty("says")[0].GetString());
        Assert.Equal(report!.Result.Forecast.Finish.Expected, parsed.RootElement.GetProperty("forecast").GetProperty("finish").GetProperty("expected").GetDouble());
        Assert.DoesNotContain("<script", outputs[1], StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Whose results count is data of the scheme or of the record; where nobody says it, the report says that they are pooled.</summary>
    [Theory]
    [InlineData(null, null, "Results of agency and contractor are pooled", 3)]
    [InlineData("agency", null, "Results of agency count; 2 cores of others", 1)]
    [InlineData(null, "contractor", "Results of contractor count; 1 core of others", 2)]
    [InlineData("agency", "contractor", "Results of agency count", 1)]
    [InlineData("client", null, "no core names it", 0)]
    public void The_laboratory_whose_results_count_is_data(string? ofScheme, string? ofRecord, string says, int values)
    {
        var record = $"format: 1\nrecord: {{ plan: tamarel-quay-road-east{(ofRecord is null ? string.Empty : ", laboratory: " + ofRecord)} }}\nfiles:\n  - file: cores.csv\n    holds: cores\n    encoding: utf-8\n    delimiter: comma\n    decimal_mark: point\n    columns:\n      - {{ column: core, quantity: core }}\n      - {{ column: lab, quantity: laboratory }}\n      - {{ column: bulk, quantity: bulk, unit: kg/m3 }}\n      - {{ column: maximum, quantity: maximum, unit: kg/m3 }}\n      - {{ column: station, quantity: station, unit: m }}\n      - {{ value: upper, quantity: course }}\n";
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["record.yaml"] = Encoding.UTF8.GetBytes(record), ["cores.csv"] = "core,lab,bulk,maximum,station\n1,contractor,2389,2521,212\n2,contractor,2382,2521,334\n3,agency,2370,2521,471\n"u8.ToArray() };
        var (shift, problems) = RecordedShift.Open(new PlanTools(), Plan, Repository.Bytes(Plan), new NoParts(), new RuleFolderInMemory("rec", files));
        Assert.Empty(problems);
        var text = Encoding.UTF8.GetString(Repository.Bytes("rules/acceptance/ufgs-02749.yaml"));
        var (scheme, wrong) = SchemeReader.Read("own.yaml", Encoding.UTF8.GetBytes(ofScheme is null ? text : text.Replace("combine:", $"laboratory: {ofScheme}\ncombine:", StringComparison.Ordinal)));
        Assert.Empty(wrong);
        var report = shift!.Lots(scheme!, 4711, Repository.Version);
        Assert.Contains(LotLines.Of(report, full: false), line => line.Text.Contains(says, StringComparison.Ordinal));
        Assert.Equal(values, report.Lots.Single(lot => lot.Course is "upper").Characteristics.Single().Values.Count);
    }

    /// <summary>The invented record of the trial length proves the pattern that the plan states, in each form.</summary>
    [Fact]
    public void The_trial_length_of_the_example_proves_its_pattern()
    {
        var (shift, problems) = RecordedShift.Open(new PlanTools(), Plan, Repository.Bytes(Plan), new NoParts(), new FolderOfRepository(Path.Combine(Repository.Root, "examples/quay-road-trial")));
        Assert.Empty(problems);
        var report = shift!.Trial("upper", "16 kg/m3").Report!;
        Assert.True(report.SpeaksForPlan);
        Assert.Equal(report.Stated!.Passes.Sum(phase => phase.Passes), report.Growth.Curve!.Pattern);
        using var page = new MemoryStream();
        TrialPageWriter.Write(report, Repository.Version, page);
        using var json = new MemoryStream();
        TrialJson.Write(report, Repository.Version, json);
        var shown = System.Net.WebUtility.HtmlDecode(Encoding.UTF8.GetString(page.ToArray()));
        Assert.Contains("Invented record of an invented trial length", shown, StringComparison.Ordinal);
        Assert.Contains("reached: { mix: sma8-surface", shown, StringComparison.Ordinal);
        Assert.All((string[])["<script", "https://", "src="], word => Assert.DoesNotContain(word, shown, StringComparison.OrdinalIgnoreCase));
        using var parsed = JsonDocument.Parse(json.ToArray());
        Assert.Equal(report.Growth.Curve.Pattern, parsed.RootElement.GetProperty("pattern").GetInt32());
        Assert.Equal(report.Growth.Passes.Count, parsed.RootElement.GetProperty("passes").GetArrayLength());
    }

    /// <summary>Texts of records come into a page as texts, whatever they look like.</summary>
    [Fact]
    public void Texts_of_records_are_never_code_of_a_page()
    {
        var problem = new Problem("a.csv", "=HYPERLINK(\"http://x\")<b>", null, null);
        var feedback = new FeedbackReport([new CountedRecord("<img src=x>", "p", "<script>alert(1)</script>")], [new RuleFeedback("R<i>", "what", 1, 0, 0, 0, 0, 0)], [problem]);
        var record = new Laygate.Model.Records.ShiftRecord { About = "<script>alert(1)</script>" };
        var measured = new MeasuredRun([new MeasuredReport("p", "=1+1<b>", "hash", record, new Laygate.Engineering.Measured.MatComparison([], [], [], WithMeasuredWeather: false, 0, 0), [problem]) { Learnt = [new PlotLearnt("nights", new ShownValue(132, "%", 121, 142), new ShownValue(-3.6, "K", -5.2, -2.1))] }], null, null, [problem]);
        using var first = new MemoryStream();
        FeedbackPageWriter.Write(feedback, Repository.Version, first);
        using var second = new MemoryStream();
        MeasuredPageWriter.Write(measured, Repository.Version, second);
        Assert.All((string[])[Encoding.UTF8.GetString(first.ToArray()), Encoding.UTF8.GetString(second.ToArray())], page =>
        {
            Assert.Contains("&lt;script&gt;alert(1)", page, StringComparison.Ordinal);
            Assert.All((string[])["<script", "<img", "<b>", "<i>"], tag => Assert.DoesNotContain(tag, page, StringComparison.OrdinalIgnoreCase));
        });
        Assert.Contains("entry nights: conductivity 132 % of the assumed one (121 to 142 %), -3.6 K behind the screed (-5.2 to -2.1 K).", Encoding.UTF8.GetString(second.ToArray()), StringComparison.Ordinal);
        using var json = new MemoryStream();
        FeedbackJson.Write(feedback, Repository.Version, json);
        using var counts = JsonDocument.Parse(json.ToArray());
        Assert.Equal(1, counts.RootElement.GetProperty("rules")[0].GetProperty("warned_missed").GetInt32());
        json.SetLength(0);
        MeasuredJson.Write(measured, Repository.Version, json);
        using var shifts = JsonDocument.Parse(json.ToArray());
        Assert.Equal("=1+1<b>", shifts.RootElement.GetProperty("shifts")[0].GetProperty("plan").GetProperty("title").GetString());
    }

    /// <summary>Measured against computed temperatures of the invented record: approved so that a change of the solver is seen, not because they prove anything.</summary>
    [Fact]
    public void Measured_against_computed_is_the_approved_report()
    {
        var text = string.Join('\n', MeasuredLines.Of([Open().Measured()], full: false).Select(line => line.Text.TrimEnd()));
        Assert.Contains("Invented record of an invented shift", text, StringComparison.Ordinal);
        Approved.Match(text, "quay-road-record.measured");
    }

    [Fact]
    public void A_comparison_is_whole_only_where_the_whole_record_was_read_and_a_reading_could_be_compared()
    {
        var measured = Open().Measured();
        Assert.True(measured.IsWhole);
        Assert.False((measured with { Refused = [new Problem("a.csv", "A row was not read.", null, null)] }).IsWhole);
        Assert.False((measured with { Comparison = measured.Comparison with { Compared = [] } }).IsWhole);
    }

    /// <summary>A roller that is lost changes the rolling, and no roller is said first of all that is left.</summary>
    [Fact]
    public void A_lost_roller_is_said_with_the_passes_that_are_left()
    {
        var (report, problems) = Open().Onward("01:20", new EventTexts { RollersLost = ["r3", "r4"] }, Repository.Bound(), Repository.Version);
        Assert.Empty(problems);
        Assert.Contains("main: no roller is left", string.Join('\n', OnwardLines.Of(report!, full: false).Select(line => line.Text)), StringComparison.Ordinal);
        using var json = new MemoryStream();
        OnwardJson.Write(report!, json);
        using var parsed = JsonDocument.Parse(json.ToArray());
        var phase = parsed.RootElement.GetProperty("phases")[0];
        Assert.Equal(("main", 0, 0), (phase.GetProperty("phase").GetString(), phase.GetProperty("rollers").GetInt32(), phase.GetProperty("at_planned_speed").GetInt32()));
    }

    [Fact]
    public void Events_that_cannot_be_are_named_with_their_option()
    {
        var texts = new EventTexts { PlantDown = "plant-a", Rain = "25:99", Speed = "2.6 mm", Trucks = ["binder-trucks=many"], Wind = "-3 m/s", EndAt = "far" };
        var (report, problems) = Open().Onward("noon", texts, Repository.Bound(), Repository.Version);
        Assert.Null(report);
        Assert.Equal(["--at", "--end-at", "--plant-down", "--rain", "--speed", "--trucks", "--wind"], problems.Select(problem => problem.File).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        var slip = Assert.Single(Open().Onward("01:20", new EventTexts { Air = "64 °C" }, Repository.Bound(), Repository.Version).Problems);
        Assert.Equal("`--air` is 64 °C; the air is never above 60 °C. Check the unit: 64 °F would be possible.", $"{slip.Message} {slip.Hint}");
        foreach (var unknown in new[] { new EventTexts { PlantDown = "plant-x=02:00" }, new EventTexts { Trucks = ["x=3"] }, new EventTexts { RollersLost = ["r9"] }, new EventTexts { EndAt = "9 km" } })
        {
            Assert.Contains("The plan has no", Assert.Single(Open().Onward("01:20", unknown, Repository.Bound(), Repository.Version).Problems).Message, StringComparison.Ordinal);
        }
    }

    /// <summary>What became of the limits of the example: the short form, and every limit.</summary>
    [Theory]
    [InlineData(false, "short")]
    [InlineData(true, "full")]
    public void What_was_held_is_the_approved_report(bool full, string name)
    {
        var text = string.Join('\n', HeldLines.Of(Held(), full, width: 100).Select(line => line.Text.TrimEnd()));
        // Rules that no record shows grow with the book.
        Approved.Match(text[..text.IndexOf("Not judged", StringComparison.Ordinal)], $"quay-road-record.held.{name}");
    }

    [Fact]
    public void The_page_of_what_was_held_says_what_the_terminal_says_and_that_it_is_invented()
    {
        using var stream = new MemoryStream();
        HeldPageWriter.Write(Held(), stream);
        var page = System.Net.WebUtility.HtmlDecode(Encoding.UTF8.GetString(stream.ToArray()));
        Assert.Contains("Invented record of an invented shift", page, StringComparison.Ordinal);
        Assert.Contains(HeldLines.Of(Held(), full: false, width: 100)[0].Text, page, StringComparison.Ordinal);
        Assert.All((string[])["<script", "https://", "src="], word => Assert.DoesNotContain(word, page, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void The_json_of_what_was_held_counts_as_its_findings_do()
    {
        using var stream = new MemoryStream();
        HeldJson.Write(Held(), stream);
        using var json = JsonDocument.Parse(stream.ToArray());
        var outcomes = json.RootElement.GetProperty("findings").EnumerateArray().Concat(json.RootElement.GetProperty("hold_points").EnumerateArray()).Select(one => one.GetProperty("outcome").GetString()!).ToList();
        Assert.All(json.RootElement.GetProperty("counts").EnumerateObject(), count => Assert.Equal(count.Value.GetInt32(), outcomes.Count(outcome => string.Equals(outcome, count.Name.Replace('_', '-'), StringComparison.Ordinal))));
    }

    private static HeldReport Held() => Open().Held(Repository.Bound("examples/particular/port-of-tamarel.yaml"), [], Repository.CheckDate, simpleBy: null, Repository.Version);

    private static AcceptanceReport Lots(string name)
    {
        var (scheme, problems) = SchemeReader.Open(name, new Files());
        Assert.Empty(problems);
        return Open().Lots(scheme!, 4711, Repository.Version);
    }

    private sealed class Files : IRuleFiles
    {
        public IRuleFolder? Folder(string path) => null;

        public byte[]? File(string path) => System.IO.File.Exists(Path.Combine(Repository.Root, path)) ? Repository.Bytes(path) : null;
    }

    internal static RecordedShift Open()
    {
        var (shift, problems) = RecordedShift.Open(new PlanTools(), Plan, Repository.Bytes(Plan), new NoParts(), new FolderOfRepository(Path.Combine(Repository.Root, Folder)));
        Assert.Empty(problems);
        return shift!;
    }

    private static LedgerReport Ledger(string? at)
    {
        var (report, problem) = Open().Ledger(at, Repository.Version);
        Assert.Null(problem);
        return report!;
    }

    // Hashes move with the files they belong to; a test of its own holds them.
    private static string Without(string text, LedgerReport report) =>
        report.Record.Files.Aggregate(text, (shown, file) => shown.Replace(file.Hash, "(hash)", StringComparison.Ordinal)).Replace(CultureInfo.InvariantCulture.TextInfo.ToLower(report.PlanHash), "(hash)", StringComparison.Ordinal);

    private sealed class NoParts : IPartFiles
    {
        public PartText Read(string from, string name) => new(name, File.Exists(Beside(from, name)) ? File.ReadAllBytes(Beside(from, name)) : null, "There is no such file.");

        private static string Beside(string from, string name) => Path.Combine(Repository.Root, Path.GetDirectoryName(from)!, name);
    }
}

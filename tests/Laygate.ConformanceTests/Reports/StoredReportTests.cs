using System.Text;
using Laygate.Checking;
using Laygate.ConformanceTests.Schema;
using Laygate.Reading;
using Laygate.Reading.Reports;
using Laygate.Reporting.CodeQuality;
using Laygate.Reporting.Html;
using Laygate.Reporting.Json;
using Laygate.Reporting.JUnit;
using Laygate.Reporting.Markdown;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sarif;
using Laygate.Rules.Results;
using Laygate.Tests;

namespace Laygate.ConformanceTests.Reports;

/// <summary>A stored report stays readable in every form: its JSON holds all that the forms say, plots and inputs excepted.</summary>
public sealed class StoredReportTests
{
    [Theory]
    [InlineData("quay-road-hot-on-hot", "examples/particular/port-of-tamarel.yaml")]
    [InlineData("moor-road-thin-overlay", "us-wa")]
    [InlineData("moor-road-thin-overlay", "de")]
    [InlineData("county-route-us", "us-wa")]
    [InlineData("concept-fifteen-lines", "")]
    public void An_example_with_remedies_and_outlook_says_the_same_from_its_stored_report(string example, string rules)
    {
        var settings = new CheckSettings(null, Repository.CheckDate, Repository.Version) { Remedies = true, Outlook = true };
        var file = Repository.Whole(example);
        Same(new PlanCheck(Repository.Bound(rules.Length == 0 ? [] : [rules]), settings).Run(file, Repository.Bytes(file)));
    }

    [Fact]
    public void Departures_that_hold_are_exceeded_or_unused_stay_what_they_are()
    {
        var book = Repository.Bound("de");
        const string Plan = "examples/moor-road-thin-overlay.yaml";
        var result = new PlanCheck(book, new CheckSettings(null, Repository.CheckDate, Repository.Version), Repository.Departures(book, "tests/Laygate.ConformanceTests/Reports/departures.yaml")).Run(Plan, Repository.Bytes(Plan));
        Assert.Equal([DepartureState.Holds, DepartureState.Exceeded, DepartureState.NoElement], result.Reports[0].Departures.Select(use => use.State));
        Same(result);
    }

    [Fact]
    public void Changed_plans_say_the_same_from_their_stored_reports_read_or_not()
    {
        var mutants = PlanMutants.Make([.. PlanSchemaFile.PlanPaths.Where(path => path != PlanSchemaFile.EveryKeyPath).Select(File.ReadAllText)], FullRun.IsAsked ? 40 : 12, 20261125);
        var check = new PlanCheck(Repository.Bound("us-wa"), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true });
        var results = mutants.Select((mutant, index) => check.Run($"plan-{index}.json", Encoding.UTF8.GetBytes(mutant.Text))).ToList();
        Assert.All(results, Same);
        Assert.InRange(results.Count(result => result.Reports.Count > 0), mutants.Count / 6, mutants.Count * 5 / 6);
        Assert.InRange(results.Count(result => result.Problems.Count > 0), mutants.Count / 6, mutants.Count * 5 / 6);
    }

    [Fact]
    public void A_file_with_two_plans_keeps_both()
    {
        var text = Encoding.UTF8.GetString(Repository.Bytes("examples/concept-fifteen-lines.yaml"));
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version)).Run("two.yaml", Encoding.UTF8.GetBytes($"{text}\n---\n{text}"));
        Assert.Equal(2, result.Reports.Count);
        Same(result);
    }

    private static void Same(FileResult live)
    {
        var stored = Json(Repository.Version, [live], []);
        var read = ReportReader.Read("report.json", stored);
        Assert.Null(read.Problem);
        Assert.Equal(Encoding.UTF8.GetString(stored), Encoding.UTF8.GetString(Json(read.Run!.ProgramVersion, read.Run.Files, read.Run.Problems)));
        var (before, after) = (new ReportedRun(Repository.Version, [live], []), ReportedRun.Of(read.Run));
        Action<ReportedRun, Stream>[] forms = [SarifWriter.Write, MarkdownWriter.Write, HtmlWriter.Write, WholeRuns.JUnit, WholeRuns.CodeQuality];
        Assert.All(forms, form => Assert.Equal(Text(form, before), Text(form, after)));
    }

    private static byte[] Json(string version, IReadOnlyList<FileResult> files, IReadOnlyList<Problem> problems)
    {
        using var bytes = new MemoryStream();
        JsonOutput.Write(bytes, version, files, problems);
        return bytes.ToArray();
    }

    private static string Text(Action<ReportedRun, Stream> form, ReportedRun run)
    {
        using var bytes = new MemoryStream();
        form(run, bytes);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }
}

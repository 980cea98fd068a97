using System.Text.Json.Nodes;

namespace Laygate.HostTests;

/// <summary>A job of several shifts on the command line, by the built program.</summary>
public sealed class JobCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-job-").FullName;

    public JobCommandTests() => Write("job.yaml", File.ReadAllText(Path.Combine(SourceTree.Root, "rules", "bases", "job.yaml")));

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void One_shift_is_printed_as_a_plan_that_checks_to_its_findings()
    {
        Assert.Equal(0, Laygate("expand", "job.yaml", "--shift", "night-2", "--output", "night-2.yaml").Code);
        var job = JsonNode.Parse(Laygate("check", "job.yaml", "--quick", "--format", "json").Out)!["files"]![0]!;
        var alone = JsonNode.Parse(Laygate("check", "night-2.yaml", "--quick", "--format", "json").Out)!["files"]![0]!["reports"]![0]!;
        Assert.Equal(4, job["reports"]!.AsArray().Count);
        Assert.Equal("ferry-lane-night-2", job["job"]!["shifts"]![1]!["plan"]!.GetValue<string>());
        Assert.Equal(Findings(alone), Findings(job["reports"]![2]!), StringComparer.Ordinal);
    }

    [Fact]
    public void All_shifts_are_printed_as_plans_of_one_file()
    {
        Assert.Equal(0, Laygate("expand", "job.yaml", "--output", "all.yaml").Code);
        Assert.Equal(3, JsonNode.Parse(Laygate("check", "all.yaml", "--quick", "--format", "json").Out)!["files"]![0]!["reports"]!.AsArray().Count);
    }

    [Fact]
    public void A_sheet_is_made_of_one_shift_or_of_each()
    {
        var one = Laygate("sheet", "job.yaml", "--shift", "night-2", "--draft");
        Assert.Equal(0, one.Code);
        Assert.Contains("2031-06-10", one.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("2031-06-09", one.Out, StringComparison.Ordinal);
        Assert.Contains("2031-06-09", Laygate("sheet", "job.yaml", "--draft").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("expand", "night-9", "There is no shift `night-9` in the job.")]
    [InlineData("sheet", "night-9", "There is no shift `night-9` in the job.")]
    [InlineData("expand", "", "--shift")]
    public void A_shift_that_is_not_there_is_refused(string command, string shift, string said)
    {
        var refused = Laygate(command, "job.yaml", "--shift", shift);
        Assert.Equal(2, refused.Code);
        Assert.Contains(said, refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_worst_of_its_shifts_decides()
    {
        Assert.Equal(1, Laygate("check", "job.yaml", "--quick").Code);
        var concept = File.ReadAllText(Path.Combine(folder, "job.yaml")).Replace("stage: release", "stage: concept", StringComparison.Ordinal);
        Write("concept.yaml", concept);
        Assert.Equal(0, Laygate("check", "concept.yaml", "--quick", "--fail-on", "none").Code);
        // The nights the other way round: nothing else changes, and what lies between the shifts fails.
        Write("turned.yaml", concept.Replace("2031-06-09, runs", "2031-06-13, runs", StringComparison.Ordinal));
        var turned = Laygate("check", "turned.yaml", "--quick");
        Assert.Equal(1, turned.Code);
        Assert.Contains("FAIL JOB-005", turned.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_jobs_are_compared_shift_by_shift_and_between_the_shifts()
    {
        var job = File.ReadAllText(Path.Combine(folder, "job.yaml"));
        Write("turned.yaml", job.Replace("2031-06-09, runs", "2031-06-13, runs", StringComparison.Ordinal).Replace("id: ferry-lane\n", "id: other\n", StringComparison.Ordinal));
        var compared = Laygate("compare", "job.yaml", "turned.yaml", "--fail-on", "fail");
        Assert.Equal(1, compared.Code);
        var between = compared.Out[compared.Out.IndexOf(": between the shifts", StringComparison.Ordinal)..];
        Assert.Contains("JOB-005", between, StringComparison.Ordinal);
        Assert.Contains("shifts.night-1.date", between, StringComparison.Ordinal);
        var files = JsonNode.Parse(Laygate("compare", "job.yaml", "turned.yaml", "--format", "json").Out)!["files"]![0]!["plans"]!.AsArray();
        Assert.Equal(["other", "other-night-1", "other-night-2", "other-night-3"], files.Select(plan => plan!["new"]!["plan"]!.GetValue<string>()), StringComparer.Ordinal);
        Assert.All(files, plan => Assert.NotNull(plan!["old"]));
    }

    [Fact]
    public void Two_shifts_of_one_job_are_compared_and_the_settings_of_the_repository_hold()
    {
        Assert.Equal(0, Laygate("compare", "job.yaml", "job.yaml", "--shift", "night-2", "--fail-on", "warn").Code);
        var compared = Laygate("compare", "job.yaml", "--old-shift", "night-2", "--new-shift", "night-1");
        Assert.Equal(0, compared.Code);
        Assert.Contains("job.yaml, shift night-2", compared.Out, StringComparison.Ordinal);
        Assert.Contains("job.yaml, shift night-1", compared.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("between the shifts", compared.Out, StringComparison.Ordinal);
        Assert.Contains("There is no shift `night-9` in the job.", Laygate("compare", "job.yaml", "--old-shift", "night-9", "--new-shift", "night-1").Error, StringComparison.Ordinal);
        Write("laygate.yaml", "rules: [no-such-book]\n");
        Assert.Contains("no-such-book", Laygate("compare", "job.yaml", "--old-shift", "night-2", "--new-shift", "night-1").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_review_comment_asks_once_for_what_several_rules_wait_for()
    {
        var lines = Laygate("check", "job.yaml", "--quick", "--format", "markdown").Out.Split('\n');
        Assert.Contains(lines, line => line.StartsWith("- **State ", StringComparison.Ordinal) && line.Contains("(ROL-002)", StringComparison.Ordinal) && line.Contains("(ROL-014)", StringComparison.Ordinal) && line.Contains("(ROL-015)", StringComparison.Ordinal));
    }

    private void Write(string name, string text) => File.WriteAllText(Path.Combine(folder, name), text);

    private static IEnumerable<string> Findings(JsonNode report) =>
        report["findings"]!.AsArray().Select(finding => $"{finding!["rule"]} {finding["address"]} {finding["status"]} {finding["outcome"]} {finding["value"]?.ToJsonString()}");

    private BuiltProgram.Result Laygate(params string[] arguments) => BuiltProgram.Run(null, folder, arguments);
}

using System.Diagnostics;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Laygate.HostTests;

/// <summary>A repository with ten plans, gated from its first commit on, by the built program and git.</summary>
[Long]
public sealed class GateTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-gate-").FullName;

    // Most tests need two plans; a full check of ten takes some seconds.
    private void Begin(int plans = 2)
    {
        Directory.CreateDirectory(Path.Combine(folder, "jobs"));
        var text = File.ReadAllText(WholePlans.PathOf("quay-road-hot-on-hot.yaml"));
        for (var number = 0; number < plans; number++)
        {
            File.WriteAllText(Plan(number), text.Replace("id: tamarel-quay-road-east", $"id: job-{number}", StringComparison.Ordinal));
        }

        File.WriteAllText(Path.Combine(folder, "laygate.yaml"), "plans:\n  - jobs/*.yaml\nbaseline: baseline.json\n");
        Git("init", "--quiet");
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Ten_plans_are_gated_from_the_first_commit_to_the_finding_that_is_new()
    {
        Begin(10);
        Assert.Equal(0, Laygate("baseline", "--output", "baseline.json").Code);
        Commit();
        Assert.Equal(0, Laygate("check", "--fail-on", "warn").Code);

        Edit(3, "    speed: 2.6 m/min", "    speed: 3.4 m/min");
        var run = Laygate("check", "--fail-on", "warn", "--changed-since", "HEAD", "--format", "json");
        Assert.Equal(1, run.Code);
        Assert.Contains("1 of 10 plans changed since HEAD", run.Error, StringComparison.Ordinal);
        var report = JsonNode.Parse(run.Out)!["files"]!.AsArray().Single()!["reports"]![0]!;
        Assert.Equal("job-3", report["plan"]!.GetValue<string>());
        Assert.Contains(report["findings"]!.AsArray(), finding => finding!["rule"]!.GetValue<string>() is "SUP-001" && finding["status"]!.GetValue<string>() is "fail" && !finding["known"]!.GetValue<bool>());
    }

    [Fact]
    public void When_no_plan_changed_nothing_is_checked_and_when_rules_changed_all_are()
    {
        Begin();
        Assert.Equal(0, Laygate("baseline", "--output", "baseline.json").Code);
        Commit();
        var run = Laygate("check", "--changed-since", "HEAD");
        Assert.Equal((0, string.Empty), (run.Code, run.Out));
        File.AppendAllText(Path.Combine(folder, "laygate.yaml"), "fail_on: warn\n");
        Assert.Contains("2 of 2 plans", Laygate("check", "--changed-since", "HEAD").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_plan_that_git_does_not_know_yet_has_changed()
    {
        Begin();
        Assert.Equal(0, Laygate("baseline", "--output", "baseline.json").Code);
        Commit();
        File.Copy(Plan(0), Path.Combine(folder, "jobs", "eleven.yaml"));
        Assert.Contains("1 of 3 plans", Laygate("check", "--changed-since", "HEAD").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_revision_that_does_not_exist_is_refused()
    {
        Begin();
        Assert.Equal(0, Laygate("baseline", "--output", "baseline.json").Code);
        var run = Laygate("check", "--changed-since", "no-such-branch");
        Assert.Equal(2, run.Code);
        Assert.Contains("no revision `no-such-branch`", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, Laygate("check", "--changed-since=--output=x").Code);
    }

    [Fact]
    public void Side_by_side_gives_the_same_bytes_as_one_by_one()
    {
        Begin();
        string[] names = ["jobs/job-1.yaml", "jobs/job-0.yaml"];
        File.Delete(Path.Combine(folder, "laygate.yaml"));
        var together = JsonNode.Parse(Laygate(["check", "--format", "json", .. names]).Out)!["files"]!.AsArray();
        var alone = JsonNode.Parse(Laygate("check", "--format", "json", names[1]).Out)!["files"]![0]!;
        Assert.Equal(string.Join(' ', names), string.Join(' ', together.Select(file => file!["file"]!.GetValue<string>())));
        Assert.Equal(alone.ToJsonString(), together[1]!.ToJsonString());
    }

    [Fact]
    public void Not_assessed_may_be_made_to_fail_by_the_settings()
    {
        Begin();
        Edit(0, "    age_limit: 120 min\ncourses:", "courses:");
        File.WriteAllText(Path.Combine(folder, "laygate.yaml"), "plans: [jobs/job-0.yaml]\n");
        Assert.Equal(0, Laygate("check").Code);
        File.WriteAllText(Path.Combine(folder, "laygate.yaml"), "plans: [jobs/job-0.yaml]\nnot_assessed: fail\n");
        Assert.Equal(1, Laygate("check").Code);
    }

    [Fact]
    public void A_comparison_keeps_its_schema_in_each_of_its_three_forms()
    {
        Begin();
        Commit();
        Edit(0, "    speed: 2.6 m/min", "    speed: 3.4 m/min");
        var since = Laygate("compare", "--since", "HEAD", "jobs/job-0.yaml", "--format", "json");
        Assert.Equal(0, since.Code);
        Assert.Equal(string.Empty, Errors(since.Out));
        Assert.Equal(string.Empty, Errors(Laygate("compare", "jobs/job-0.yaml", "jobs/job-1.yaml", "--format", "json").Out));
        Assert.Equal(string.Empty, Errors(Laygate("compare", "--old-rules", "us-wa", "--new-rules", "de", "jobs/*.yaml", "--format", "json").Out));
        Assert.Equal(1, Laygate("compare", "jobs/job-1.yaml", "jobs/job-0.yaml", "--fail-on", "fail").Code);
        Assert.Equal(0, Laygate("compare", "jobs/job-0.yaml", "jobs/job-1.yaml", "--fail-on", "fail").Code);
        Assert.StartsWith("# What changed", Laygate("compare", "jobs/job-1.yaml", "jobs/job-0.yaml", "--format", "markdown").Out, StringComparison.Ordinal);
        Assert.Equal(2, Laygate("compare", "jobs/job-1.yaml").Code);
        Assert.Equal(2, Laygate("compare", "jobs/job-1.yaml", "jobs/none.yaml").Code);
    }

    [Fact]
    public void A_comparison_asks_under_the_rules_and_the_stage_of_the_settings()
    {
        Begin();
        Edit(0, "  stage: release", "  stage: concept");
        Commit();
        Edit(0, "    thickness: 25 mm", "    thickness: 33 mm");
        string[] compare = ["compare", "--since", "HEAD", "jobs/job-0.yaml"];
        var withoutSettings = Without(compare);
        var asked = Without([.. compare, "--rules", "us-wa"]);
        Assert.NotEqual(withoutSettings, asked, StringComparer.Ordinal);

        File.WriteAllText(Path.Combine(folder, "laygate.yaml"), "rules: [us-wa]\n");
        Assert.Equal(asked, Laygate(compare).Out);
        File.WriteAllText(Path.Combine(folder, "laygate.yaml"), "stage: release\n");
        Assert.NotEqual(withoutSettings, Laygate(compare).Out, StringComparer.Ordinal);
    }

    [FactOfFullRun]
    public void A_comparison_that_may_fail_is_as_strict_as_the_settings_and_says_what_is_wrong_with_them()
    {
        Begin();
        Commit();
        Edit(0, "spare: yes, water_and_fuel", "spare: no, water_and_fuel");
        string[] compare = ["compare", "--since", "HEAD", "jobs/job-0.yaml"];
        Assert.Equal(0, Laygate([.. compare, "--fail-on", "fail"]).Code);
        Assert.Equal(1, Laygate([.. compare, "--fail-on", "warn"]).Code);
        File.AppendAllText(Path.Combine(folder, "laygate.yaml"), "fail_on: warn\n");
        Assert.Equal(0, Laygate(compare).Code);
        Assert.Equal(1, Laygate([.. compare, "--fail-on", "fail"]).Code);

        File.WriteAllText(Path.Combine(folder, "laygate.yaml"), "rulez: [de]\n");
        var refused = Laygate(compare);
        Assert.Equal(2, refused.Code);
        Assert.Contains("laygate.yaml:1:1", refused.Error, StringComparison.Ordinal);
    }

    private string Without(string[] arguments)
    {
        var settings = Path.Combine(folder, "laygate.yaml");
        var text = File.ReadAllText(settings);
        File.Delete(settings);
        var output = Laygate(arguments).Out;
        File.WriteAllText(settings, text);
        return output;
    }

    // The definitions of the report stand in its own schema; here both are one document.
    private static string Errors(string json)
    {
        var schema = JsonNode.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "schemas", "comparison.schema.json")).Replace("report.schema.json#", "#", StringComparison.Ordinal))!;
        foreach (var (name, definition) in JsonNode.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "schemas", "report.schema.json")))!["definitions"]!.AsObject())
        {
            Assert.True(schema["definitions"]!.AsObject().TryAdd(name, definition!.DeepClone()), name);
        }

        using var document = System.Text.Json.JsonDocument.Parse(json);
        var result = JsonSchema.FromText(schema.ToJsonString()).Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid ? string.Empty : string.Join('\n', (result.Details ?? []).Where(detail => detail.Errors is { Count: > 0 }).Select(detail => $"{detail.InstanceLocation}: {string.Join(' ', detail.Errors!.Values)}"));
    }

    private string Plan(int number) => Path.Combine(folder, "jobs", $"job-{number}.yaml");

    private void Edit(int number, string from, string to)
    {
        var text = File.ReadAllText(Plan(number));
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(Plan(number), text.Replace(from, to, StringComparison.Ordinal));
    }

    private BuiltProgram.Result Laygate(params string[] arguments) => BuiltProgram.Run(null, folder, arguments);

    private void Commit()
    {
        Git("add", "--all");
        Git("-c", "user.name=Tester", "-c", "user.email=tester@example.org", "commit", "--quiet", "--message", "Plans");
    }

    private void Git(params string[] arguments)
    {
        var start = new ProcessStartInfo("git") { WorkingDirectory = folder, UseShellExecute = false };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var git = Process.Start(start)!;
        git.WaitForExit();
        Assert.Equal(0, git.ExitCode);
    }
}

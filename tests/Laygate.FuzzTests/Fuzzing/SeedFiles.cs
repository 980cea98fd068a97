using System.Text;
using Laygate.ConformanceTests;
using Laygate.ConformanceTests.Schema;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;
using Laygate.Validation;
using Laygate.Validation.Baselines;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>The seeds: what ships, what tests hold already, and what the program itself writes.</summary>
internal static class SeedFiles
{
    private const string Settings = """
        plans: [ 'jobs/**/*.yaml', plan.yaml ]
        rules: [ us-wa, contract/specification.yaml ]
        departures: [ departures.yaml ]
        baseline: baseline.json
        fail_on: warn
        not_assessed: fail
        stage: submission
        """;

    /// <summary>A plan that is judged where an input is no plan.</summary>
    public const string JudgedPlan = "examples/moor-road-thin-overlay.yaml";

    /// <summary>Plans: examples, bases of rule cases, the plan with every key, plans with planted faults.</summary>
    public static SeedSet Plans() => Of([.. PlanSchemaFile.PlanPaths.Select(Relative), .. Files("rules/bases", "*.yaml"), .. Files("tests/Laygate.ConformanceTests/Faults/plans", "*.yaml").Where(path => !path.Contains("tamarel", StringComparison.Ordinal))]);

    /// <summary>Small plans, where a check is dear.</summary>
    public static SeedSet SmallPlans() => Of(["examples/concept-fifteen-lines.yaml"]);

    /// <summary>Every eighth of the shipped rules, as rules that somebody adds: with ids that are free.</summary>
    public static SeedSet Rules() => new([.. RulePaths().Select(path => new Seed(path, Renumbered(Text(path))))]);

    /// <summary>The cases of the same rules.</summary>
    public static SeedSet Cases() => Of([.. RulePaths().Select(path => path.Replace("rule.yaml", "cases.yaml", StringComparison.Ordinal)).Where(path => File.Exists(Path.Combine(Repository.Root, path)))]);

    /// <summary>Specifications of one file each.</summary>
    public static SeedSet Specifications() => Of(["examples/particular/port-of-tamarel.yaml", .. Files("rules/specifications", "specification.yaml").Where(path => new FileInfo(Path.Combine(Repository.Root, path)).Length < 40_000)]);

    /// <summary>The first publications of the bibliography.</summary>
    public static SeedSet Sources() => new([new Seed("rules/sources.yaml", string.Join('\n', Text("rules/sources.yaml").Split("\n- ").Take(40).Select((part, index) => index == 0 ? part : "- " + part)))]);

    /// <summary>Departures of the tests.</summary>
    public static SeedSet Departures() => Of(["tests/Laygate.ConformanceTests/Reports/departures.yaml"]);

    /// <summary>The settings of a repository, with every key.</summary>
    public static SeedSet RepositorySettings() => new([new Seed("settings", Settings)]);

    /// <summary>Cases of the verification manual.</summary>
    public static SeedSet Verification() => Of([.. Files("docs/verification", "*.yaml").Where((_, index) => index % 6 == 0)]);

    /// <summary>A baseline as the program writes it.</summary>
    public static SeedSet Baselines()
    {
        using var bytes = new MemoryStream();
        using (var writer = new BaselineWriter(bytes, Repository.CheckDate))
        {
            var report = QuickReport(JudgedPlan);
            writer.Add("plan.yaml", report with { Findings = [.. report.Findings.Where(finding => finding.Status is Status.Warn or Status.Fail).Take(12)] });
            writer.End();
        }

        return new SeedSet([new Seed("baseline.json", Encoding.UTF8.GetString(bytes.ToArray()))]);
    }

    /// <summary>Reports as the program writes them, of a few findings of each kind, and one of an earlier version.</summary>
    public static SeedSet Reports()
    {
        var full = new PlanCheck(Repository.Bound("us-wa"), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Remedies = true, Outlook = true }).Run(JudgedPlan, Repository.Bytes(JudgedPlan)).Reports[0];
        return new SeedSet(
        [
            new Seed("concept, quick", Json(Few(QuickReport("examples/concept-fifteen-lines.yaml")))),
            new Seed("moor road with remedies and outlook", Json(Few(full) with { Outlook = full.Outlook is { } outlook ? outlook with { Hours = [.. outlook.Hours.Take(2)] } : null })),
            new Seed("report of 2026-11-25", Text("tests/Laygate.UnitTests/Validation/Reports/report-of-2026-11-25.json")),
        ]);
    }

    /// <summary>Bodies in JSON that the service takes.</summary>
    public static SeedSet Bodies()
    {
        var plan = System.Text.Json.Nodes.JsonValue.Create(Text("examples/concept-fifteen-lines.yaml")).ToJsonString();
        return new SeedSet(
        [
            new Seed("comparison", $$"""{"old": {{plan}}, "new": {{plan}}}"""),
            new Seed("key", """{"name": "Ada", "role": "submitter", "expires_at": "2030-01-01T00:00:00Z"}"""),
            new Seed("reason", """{"reason": "another rule book"}"""),
            new Seed("decision", """{"decision": "returned", "comment": "Thicker."}"""),
        ]);
    }

    /// <summary>A quick report on a plan of the repository.</summary>
    public static Report QuickReport(string plan) =>
        new PlanCheck(Repository.Bound("us-wa"), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }).Run(plan, Repository.Bytes(plan)).Reports[0];

    /// <summary>The text of a file of the repository.</summary>
    public static string Text(string path) => Encoding.UTF8.GetString(Repository.Bytes(path));

    private static Report Few(Report report) => report with
    {
        Findings = [.. report.Findings.GroupBy(finding => (finding.Outcome, finding.Status)).SelectMany(group => group.Take(3))],
        Layers = [.. report.Layers.Select(layer => layer with { Clauses = [.. layer.Clauses.Take(2)] })],
    };

    private static string Json(Report report)
    {
        using var bytes = new MemoryStream();
        JsonOutput.Write(bytes, Repository.Version, [new FileResult(report.File, [report], [])], []);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static string Renumbered(string rule) =>
        System.Text.RegularExpressions.Regex.Replace(rule, "^(id: [A-Z]+)-\\d+", "$1-999", System.Text.RegularExpressions.RegexOptions.Multiline, Patience.Longest);

    private static IEnumerable<string> RulePaths() =>
        Files("rules", "rule.yaml").Where(path => !path.Contains("specifications", StringComparison.Ordinal)).Where((_, index) => index % 8 == 0);

    private static SeedSet Of(IEnumerable<string> paths) => new([.. paths.Select(path => new Seed(path, Text(path)))]);

    private static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), pattern, SearchOption.AllDirectories).Select(Relative).Order(StringComparer.Ordinal);

    private static string Relative(string path) => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/');
}

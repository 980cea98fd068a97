using System.Text;
using System.Text.RegularExpressions;
using Laygate.Checking;
using Laygate.Checking.Baselines;
using Laygate.ConformanceTests;
using Laygate.ConformanceTests.Schema;
using Laygate.Reading;
using Laygate.Reading.Baselines;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>The seeds: what ships, what tests hold already, and what the program itself writes.</summary>
internal static partial class SeedFiles
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

    // What a plan needs before it can say anything else.
    private static readonly string[] Core = ["format", "plan", "location", "shift", "mixes", "courses", "runs", "pavers"];

    /// <summary>Plans: examples, bases of rule cases, the plan with every key, plans with planted faults; and each of them cut down to its core and one part, which costs a tenth.</summary>
    public static SeedSet Plans()
    {
        var check = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true });
        bool IsTaken(Seed seed) => check.Run(seed.Name, Encoding.UTF8.GetBytes(seed.Text)).Problems.Count == 0;

        // A job of several shifts is a seed as a whole only: each of its checks is one of several plans. What is no plan, or uses files of parts, is tried elsewhere.
        List<Seed> whole = [.. Of([.. PlanSchemaFile.PlanPaths.Select(Relative), .. Files("rules/bases", "*.yaml"), .. Files("tests/Laygate.ConformanceTests/Faults/plans", "*.yaml").Where(path => !path.Contains("tamarel", StringComparison.Ordinal))]).All.Where(IsTaken)];
        return new SeedSet([.. whole, .. whole.Where(seed => seed.Pieces.Any(piece => piece.Key?.Name == "format")).SelectMany(Parts).Where(IsTaken)]);
    }

    private static IEnumerable<Seed> Parts(Seed whole)
    {
        var top = whole.Pieces.First(piece => piece.Key?.Name == "format").Siblings;
        string Entry(Piece piece) => whole.Text[piece.EntryStart..(piece.Next?.EntryStart ?? whole.Text.Length)];
        return top.Where(piece => !Core.Contains(piece.Key!.Value.Name, StringComparer.Ordinal))
            .Select(part => new Seed($"{whole.Name}, {part.Key!.Value.Name}", string.Concat(top.Where(piece => piece == part || Core.Contains(piece.Key!.Value.Name, StringComparer.Ordinal)).Select(Entry))));
    }

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

    /// <summary>Settings whose files are there when the command runs.</summary>
    public static SeedSet CommandSettings() => new([new Seed("settings of the command", "plans: [ plan.yaml ]\nrules: [ us-wa ]\nfail_on: warn\nnot_assessed: fail\nstage: submission\n")]);

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

    /// <summary>Reports as the program writes them, of a few findings of each kind, and one of an earlier version with remedies and outlook.</summary>
    public static SeedSet Reports() => new(
    [
        new Seed("concept, quick", Json(Few(QuickReport("examples/concept-fifteen-lines.yaml")))),
        new Seed("moor road, quick", Json(Few(QuickReport(JudgedPlan)))),
        new Seed("report of 2026-11-25", Text("tests/Laygate.UnitTests/Reading/Reports/report-of-2026-11-25.json")),
    ]);

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

    private static string Renumbered(string rule) => FreeId().Replace(rule, "id: ${family}-999");

    [GeneratedRegex("^id: (?<family>[A-Z]+)-[0-9]+", RegexOptions.Multiline | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex FreeId();

    private static IEnumerable<string> RulePaths() =>
        Files("rules", "rule.yaml").Where(path => !path.Contains("specifications", StringComparison.Ordinal)).Where((_, index) => index % 8 == 0);

    private static SeedSet Of(IEnumerable<string> paths) => new([.. paths.Select(path => new Seed(path, Text(path)))]);

    private static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), pattern, SearchOption.AllDirectories).Select(Relative).Order(StringComparer.Ordinal);

    private static string Relative(string path) => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/');
}

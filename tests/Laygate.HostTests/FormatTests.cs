using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using Laygate.Tests;
using Laygate.Reporting.Annotations;
using Laygate.Reporting.CodeQuality;
using Laygate.Reporting.JUnit;
using Laygate.Reporting.Language;
using Laygate.Reporting.Markdown;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sarif;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using Laygate.UnitTests.Reporting;

namespace Laygate.HostTests;

/// <summary>Forms that hosts read, on hand-made results with hostile text, checked against what the hosts publish.</summary>
public sealed class FormatTests
{
    private const string Hostile = "a]b[c](javascript:x) {0} <b>&\"'|*_`\n::error::x %0A \u001b[31m\u202Eend\uFFFE";

    private static readonly IReadOnlyList<FindingGroup> Everything = Enum.GetValues<FindingGroup>();

    [Fact]
    public void Sarif_kinds_and_levels_follow_the_standard()
    {
        // SARIF 2.1.0, 3.27.9 and 3.27.10: every kind but fail has the level none.
        foreach (var result in Results(Full() with { Include = Everything }))
        {
            var (kind, level) = (result["kind"]!.GetValue<string>(), result["level"]!.GetValue<string>());
            Assert.Equal(kind is not "fail", level is "none");
            Assert.Contains(kind, (string[])["pass", "open", "informational", "notApplicable", "review", "fail"], StringComparer.Ordinal);
            Assert.Contains(level, (string[])["none", "note", "warning", "error"], StringComparer.Ordinal);
        }
    }

    [Fact]
    public void Sarif_shows_failures_and_warnings_alone_unless_more_is_asked_for()
    {
        Assert.Equal(["fail"], Results(Full()).Select(result => result["kind"]!.GetValue<string>()).Distinct(StringComparer.Ordinal), StringComparer.Ordinal);
        var silent = Samples.Finding() with { Outcome = Outcome.NotAssessed, Status = Status.Fail };
        Assert.Equal(("fail", "error"), KindOf(silent, []));
        var open = silent with { Status = Status.Warn };
        Assert.Empty(Results(With(open)));
        Assert.Equal(("open", "none"), KindOf(open, [FindingGroup.NotAssessed]));
        Assert.Equal(("review", "none"), KindOf(open with { Outcome = Outcome.NeedsPerson }, [FindingGroup.NeedsPerson]));
        Assert.Equal(("pass", "none"), KindOf(open with { Outcome = Outcome.Met, Status = Status.Pass }, [FindingGroup.Passed]));
        Assert.Equal(("informational", "none"), KindOf(open with { Status = Status.Departed }, [FindingGroup.Departed]));
    }

    [Fact]
    public void Sarif_results_have_one_location_with_a_full_region_and_a_known_rule()
    {
        var run = Sarif(Full() with { Include = Everything });
        var rules = run["tool"]!["driver"]!["rules"]!.AsArray();
        Assert.Equal(rules.Count, rules.Select(rule => rule!["id"]!.GetValue<string>()).Distinct(StringComparer.Ordinal).Count());
        foreach (var result in run["results"]!.AsArray())
        {
            var location = Assert.Single(result!["locations"]!.AsArray())!["physicalLocation"]!;
            Assert.All((string[])["startLine", "startColumn", "endLine", "endColumn"], key => Assert.True(location["region"]![key]!.GetValue<int>() >= 1));
            Assert.DoesNotContain("\\", location["artifactLocation"]!["uri"]!.GetValue<string>(), StringComparison.Ordinal);
            Assert.Equal(result["ruleId"]!.GetValue<string>(), rules[result["ruleIndex"]!.GetValue<int>()]!["id"]!.GetValue<string>());
        }
    }

    [Fact]
    public void Fingerprints_are_unique_and_do_not_move_with_lines()
    {
        var first = Fingerprints(Full() with { Include = Everything });
        Assert.Equal(first.Count, first.Distinct(StringComparer.Ordinal).Count());
        var moved = Samples.Report();
        moved = moved with { PlanHash = "other", Findings = [.. moved.Findings.Select(finding => finding with { Position = new Position(500, 1, 500, 9), Value = new ShownValue(1, "mm") })] };
        Assert.Equal(Fingerprints(ReportedRun.Of(Samples.Report())), Fingerprints(ReportedRun.Of(moved)));
        Assert.Empty(Fingerprints(ReportedRun.Of(Samples.Report() with { File = "other.yaml" })).Intersect(first, StringComparer.Ordinal));
    }

    [Fact]
    public void Sarif_text_has_no_links_and_no_placeholders()
    {
        var text = Results(With(Samples.Finding() with { Title = Hostile })).Single()["message"]!["text"]!.GetValue<string>();
        Assert.Contains("a\\]b\\[c\\](javascript:x) {{0}}", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', text);
        Assert.DoesNotContain('\u001b', text);
    }

    [Fact]
    public void What_a_baseline_knows_does_not_show_as_new_and_does_not_fail()
    {
        var run = With(Samples.Finding() with { Known = true }, Samples.Finding() with { Address = "course:patch" });
        run = ReportedRun.Of(run.Reports.Single() with { Baseline = new BaselineUse("baseline.json", new DateOnly(2031, 1, 1), 1, 0, 0) });
        Assert.Equal("new", Assert.Single(Results(run))["baselineState"]!.GetValue<string>());
        Assert.Single(XDocument.Parse(Written(WholeRuns.JUnit, run)).Descendants("failure"));
        Assert.Single(JsonNode.Parse(Written(WholeRuns.CodeQuality, run))!.AsArray());
        Assert.Contains("known earlier", Written(MarkdownWriter.Write, run), StringComparison.Ordinal);
    }

    [Fact]
    public void Sarif_says_that_a_file_could_not_be_read()
    {
        var invocation = Sarif(Full())["invocations"]![0]!;
        Assert.False(invocation["executionSuccessful"]!.GetValue<bool>());
        Assert.Equal(2, invocation["toolExecutionNotifications"]!.AsArray().Count);
        Assert.Empty(Sarif(new ReportedRun("0.1.0", [], []))["results"]!.AsArray());
    }

    [SkippableTheory]
    [InlineData(false)]
    [InlineData(true)]
    public void Sarif_passes_the_public_validator(bool everything)
    {
        // A public address is given here, as whoever publishes the program would.
        var run = Full() with
        {
            Include = everything ? Everything : [],
            InformationUri = "https://example.org/laygate",
            RulePages = "https://example.org/laygate/rules",
            RulesInForce = [new RuleInForce("ZZZ-001", "layers/not-met-here", Hostile, Hostile, Hostile, string.Empty, [Hostile])],
        };
        Assert.Empty(Complaints(Written(SarifWriter.Write, run)));
    }

    [SkippableFact]
    public void Sarif_of_the_program_passes_the_public_validator()
    {
        var text = Program("examples/moor-road-thin-overlay.yaml", "--rules", "us-wa", "--include", "passed", "--include", "not-assessed", "--include", "not-applicable", "--include", "open", "--include", "needs-person");

        // Without a public address no link about the tool can be given; nothing else may be missing. The id is spelt as the validator spells it.
        var complaints = Complaints(text);
        Assert.All(complaints, complaint => Assert.Contains("Warning_ProvideToolnformationUri", complaint, StringComparison.Ordinal));
        Assert.True(complaints.Count == (Cli.App.Address is null ? 1 : 0), string.Join('\n', complaints));
    }

    [Fact]
    public void Sarif_lists_every_rule_in_force_also_without_findings()
    {
        var driver = JsonNode.Parse(Program("examples/concept-fifteen-lines.yaml", "--rules", "us-wa"))!["runs"]![0]!["tool"]!["driver"]!;
        var listed = driver["rules"]!.AsArray().Select(rule => rule!["id"]!.GetValue<string>()).ToList();
        var book = JsonNode.Parse(BuiltProgram.Run(null, SourceTree.Root, "rules", "--rules", "us-wa", "--in-force", "--format", "json").Out)!;
        Assert.Equal(book["rules"]!.AsArray().Select(rule => rule!["id"]!.GetValue<string>()).Order(StringComparer.Ordinal), listed, StringComparer.Ordinal);
        Assert.All(driver["rules"]!.AsArray(), rule => Assert.Contains("Source: ", rule!["help"]!["text"]!.GetValue<string>(), StringComparison.Ordinal));
        Assert.All(driver["rules"]!.AsArray(), rule => Assert.Equal(Cli.App.RulePages is null, rule!["helpUri"] is null));
    }

    [Fact]
    public void Sarif_links_to_the_page_of_a_rule_where_pages_have_an_address()
    {
        var rules = Sarif(Full() with { RulePages = "https://example.org/rules/" })["tool"]!["driver"]!["rules"]!.AsArray();
        Assert.Contains("https://example.org/rules/LAY-001.md", rules.Select(rule => rule!["helpUri"]?.GetValue<string>()), StringComparer.Ordinal);
    }

    private static string Program(params string[] arguments) =>
        BuiltProgram.Run(null, SourceTree.Root, ["check", .. arguments, "--format", "sarif", "--date", "2026-11-25", "--fail-on", "none"]).Out;

    private static IReadOnlyList<string> Complaints(string sarif)
    {
        var validator = Needs.Tool("@microsoft/sarif-multitool-linux/Sarif.Multitool");
        var folder = Directory.CreateTempSubdirectory("laygate-sarif-").FullName;
        try
        {
            var (input, output) = (Path.Combine(folder, "a.sarif"), Path.Combine(folder, "verdict.sarif"));
            File.WriteAllText(input, sarif);
            using var process = Process.Start(new ProcessStartInfo(validator, ["validate", input, "--rule-kind", "Sarif;Ghas", "--output", output]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();

            // It ends with 0 whatever it found: its own result file tells.
            var found = JsonNode.Parse(File.ReadAllText(output))!["runs"]![0]!["results"]!.AsArray();
            return [.. found.Where(result => result!["level"]?.GetValue<string>() is null or "warning" or "error").Select(result => result!.ToJsonString())];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Junit_keeps_the_published_shape()
    {
        // Elements, attributes and order of junit-10.xsd of Jenkins' xUnit plugin, read on 2026-11-25, and the attribute `file` of a suite that it lists.
        var root = XDocument.Parse(Written(WholeRuns.JUnit, Full())).Root!;
        Assert.Equal("testsuites", root.Name.LocalName);
        Allowed(root, "name", "tests", "failures", "errors");
        foreach (var suite in root.Elements())
        {
            Assert.Equal("testsuite", suite.Name.LocalName);
            Allowed(suite, "name", "tests", "failures", "errors", "skipped", "file");
            Assert.All((string[])["name", "tests", "failures", "errors"], name => Assert.NotNull(suite.Attribute(name)));
            var cases = suite.Elements().SkipLast(1).ToList();
            Assert.Equal("system-out", suite.Elements().Last().Name.LocalName);
            Assert.Equal(cases.Count.ToString(CultureInfo.InvariantCulture), suite.Attribute("tests")!.Value);
            Assert.All((string[])["failures", "errors", "skipped"], name => Assert.Equal(suite.Elements().Elements(name is "skipped" ? name : name[..^1]).Count().ToString(CultureInfo.InvariantCulture), suite.Attribute(name)!.Value));
            foreach (var one in cases)
            {
                Assert.Equal("testcase", one.Name.LocalName);
                Allowed(one, "name", "classname");
                Assert.All(one.Elements(), child => Assert.Contains(child.Name.LocalName, (string[])["failure", "error", "skipped", "system-out"], StringComparer.Ordinal));
                Assert.All(one.Elements(), child => Assert.NotEmpty(child.Value));
                Assert.True(one.Elements().Count() <= 1);
            }
        }
    }

    [Fact]
    public void Junit_names_are_unique_and_its_failures_are_those_of_the_gate()
    {
        var run = Full();
        var usual = XDocument.Parse(Written(WholeRuns.JUnit, run));
        var names = usual.Descendants("testcase").Select(one => one.Attribute("name")!.Value).ToList();
        Assert.Equal(names.Count, names.Distinct(StringComparer.Ordinal).Count());
        var failed = run.Reports.Sum(report => report.Counts.Failed);
        Assert.Equal(failed, usual.Descendants("failure").Count());
        var strict = XDocument.Parse(Written(WholeRuns.JUnit, run with { WarningsFail = run.Reports.Select(report => report.File).ToHashSet(StringComparer.Ordinal) }));
        var warned = run.Reports.Sum(report => report.Counts.Warned + report.Counts.NotAssessed + report.Counts.DepartureWarnings);
        Assert.Equal(failed + warned, strict.Descendants("failure").Count());
    }

    [Fact]
    public void Code_quality_has_the_fields_that_are_read()
    {
        // GitLab, doc/ci/testing/code_quality.md (2024 copy): an array without a byte-order mark, with these fields and severities.
        var text = Written(WholeRuns.CodeQuality, Full() with { Include = Everything });
        Assert.StartsWith("[", text, StringComparison.Ordinal);
        var entries = JsonNode.Parse(text)!.AsArray();
        Assert.Equal(entries.Count, entries.Select(entry => entry!["fingerprint"]!.GetValue<string>()).Distinct(StringComparer.Ordinal).Count());
        foreach (var entry in entries)
        {
            Assert.NotEmpty(entry!["description"]!.GetValue<string>());
            Assert.NotEmpty(entry["check_name"]!.GetValue<string>());
            Assert.Contains(entry["severity"]!.GetValue<string>(), (string[])["info", "minor", "major", "critical", "blocker"], StringComparer.Ordinal);
            Assert.NotEmpty(entry["location"]!["path"]!.GetValue<string>());
            Assert.True(entry["location"]!["lines"]!["begin"]!.GetValue<int>() >= 1);
        }

        Assert.Equal("[]\n", Written(WholeRuns.CodeQuality, new ReportedRun("0.1.0", [], [])));
    }

    [Fact]
    public void Annotations_are_sorted_and_plan_text_cannot_begin_a_command()
    {
        var text = Written(WholeRuns.Annotations, With(Samples.Finding() with { Title = Hostile, Status = Status.Warn }, Samples.Finding() with { Rule = "X,:1" }));
        var lines = text.TrimEnd('\n').Split('\n')[1..];
        Assert.StartsWith("::notice title=Before you rely on this::In doubt ", text, StringComparison.Ordinal);
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("::error file=jobs/harbour-road.yaml,line=41,endLine=41,col=16,endColumn=20,title=X%2C%3A1 fail::", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("::warning ", lines[1], StringComparison.Ordinal);
        Assert.Contains("%250A", lines[1], StringComparison.Ordinal);
        Assert.Single(lines[1].Split("::error", StringSplitOptions.None).Skip(1));
        Assert.DoesNotContain('\u001b', text);
        Assert.Empty(Written(WholeRuns.Annotations, new ReportedRun("0.1.0", [], [])));
    }

    /// <summary>Hosts show ten remarks of a kind, and a reviewer reads one list: silences about hazards share one entry for each severity.</summary>
    [Fact]
    public void Silences_of_one_severity_share_a_remark_and_hide_nothing_else()
    {
        var run = With([
            Samples.Finding(),
            .. Enumerable.Range(1, 12).Select(i => Samples.Finding($"SAF-0{i:00}", "safety/silent") with
            {
                Title = i == 1 ? Hostile : $"Hazard {i}",
                Severity = i > 10 ? Severity.B : Severity.A,
                Check = CheckKind.Present,
                Address = "site",
                Value = new ShownValue(null, string.Empty, Text: "absent"),
                Missing = [new("plan", "measures")],
                Notes = [Laygate.Engineering.Quantities.Note.Of("entry-missing", ("kind", $"kind-{i}"), ("list", "measures"), ("fields", "what"))],
            }),
        ]);
        var lines = Written(WholeRuns.Annotations, run).TrimEnd('\n').Split('\n')[1..];
        Assert.Equal(3, lines.Length);
        Assert.Contains("title=10 hazards of severity A%3A fail::The plan says nothing, or too little, about 10 hazards of severity A.%0A", lines[0], StringComparison.Ordinal);
        Assert.Contains("Hazard 9 (SAF-009): Add `kind-9` to `measures`, with what.", lines[0], StringComparison.Ordinal);
        Assert.Contains("title=2 hazards of severity B%3A fail", lines[1], StringComparison.Ordinal);
        Assert.Contains("title=LAY-001 fail", lines[2], StringComparison.Ordinal);
        Assert.All(lines, line => Assert.StartsWith("::error ", line, StringComparison.Ordinal));

        var text = Written(MarkdownWriter.Write, run);
        Assert.Single(text.Split("about 10 hazards of severity A", StringSplitOptions.None).Skip(1));
        Assert.All(Enumerable.Range(2, 11), i => Assert.Contains($"  - Hazard {i} (SAF-0{i:00}), site", text, StringComparison.Ordinal));
        Assert.DoesNotContain("State measures", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", text, StringComparison.Ordinal);
        Assert.True(text.IndexOf("severity A", StringComparison.Ordinal) < text.IndexOf("(LAY-001", StringComparison.Ordinal));
    }

    /// <summary>Whoever is told what to do is told in the same breath whom to ask, and every form says that stopping and the emergency call come first.</summary>
    [Fact]
    public void Each_form_carries_the_caution_and_whom_to_ask()
    {
        var run = With(Samples.Finding());
        foreach (var write in (Action<ReportedRun, Stream>[])[WholeRuns.JUnit, WholeRuns.CodeQuality, WholeRuns.Annotations])
        {
            var text = Written(write, run);
            Assert.Contains("Ask: The specification names the thickness of each mix; ask the pavement engineer.", text, StringComparison.Ordinal);
            Assert.Contains("In an emergency call the local emergency number first.", text, StringComparison.Ordinal);
            Assert.True(text.IndexOf("stop and ask", StringComparison.Ordinal) < text.IndexOf("o approval", StringComparison.Ordinal));
        }

        Assert.Contains("stop and ask", Caution.Sentences[0], StringComparison.Ordinal);
        Assert.Contains("In an emergency", Caution.Sentences[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_junit_case_that_passes_is_named_after_what_holds()
    {
        var passed = Samples.Finding() with { Outcome = Outcome.Met, Status = Status.Pass, Asks = "the course is thick enough for the size of its stones" };
        var names = XDocument.Parse(Written(WholeRuns.JUnit, With(passed, passed with { Rule = "ZZZ-999", Asks = null }))).Descendants("testcase").Select(one => one.Attribute("name")!.Value).ToList();
        Assert.StartsWith("LAY-001 at course:wearing: The course is thick enough for the size of its stones (", names[0], StringComparison.Ordinal);
        Assert.StartsWith("ZZZ-999 at course:wearing: Does not occur: Course too thin for its aggregate (", names[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Annotations_say_how_many_are_not_shown()
    {
        var many = Enumerable.Range(0, 13).Select(i => Samples.Finding() with { Address = $"course:{i}" }).ToArray();
        Assert.Contains("\n3 more of the kind error stand above only", Written(WholeRuns.Annotations, With(many)), StringComparison.Ordinal);
    }

    [Fact]
    public void Markdown_shows_plan_text_as_text_and_fits_into_a_comment()
    {
        var text = Written(MarkdownWriter.Write, With(Samples.Finding() with { Title = Hostile }));
        Assert.DoesNotContain("<b>", text, StringComparison.Ordinal);
        Assert.DoesNotContain("](javascript", text.Replace("\\](", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains(Caution.Sentences[0][..40], text, StringComparison.Ordinal);
        var long_ = Written(MarkdownWriter.Write, With([.. Enumerable.Range(0, 500).Select(i => Samples.Finding() with { Address = $"course:{i}" })]));
        Assert.InRange(long_.Length, 1000, 65_536);
        Assert.Contains("More was found than fits into a comment", long_, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_run_gives_the_same_bytes()
    {
        foreach (var write in (Action<ReportedRun, Stream>[])[SarifWriter.Write, WholeRuns.JUnit, WholeRuns.CodeQuality, WholeRuns.Annotations, MarkdownWriter.Write])
        {
            Assert.Equal(Written(write, Full()), Written(write, Full()));
        }
    }

    // Two plans with the same findings in one file, a second file, departures that hold and that do not, and files that cannot be read.
    private static ReportedRun Full()
    {
        var departure = new Departure
        {
            Id = "d1",
            Rule = "LAY-001",
            Address = "course:wearing",
            Reason = Hostile,
            CompensatingMeasure = "rolled twice",
            AskedBy = "A",
            ApprovedBy = "B",
            ApprovedOn = new DateOnly(2031, 1, 1),
            ExpiresOn = new DateOnly(2031, 2, 1),
            File = "contract/departures.yaml",
        };
        var departed = Samples.Finding() with { Rule = "LAY-002", Status = Status.Departed, Departure = departure };
        var hostile = Samples.Finding("LAY-003", "layers/hostile") with { Title = Hostile, Why = Hostile, Remedy = Hostile, Local = Hostile, Address = "course:" + Hostile };
        var report = Samples.Report();
        IReadOnlyList<Finding> findings = [.. report.Findings, departed, hostile];
        report = report with
        {
            Findings = findings,
            Counts = Samples.Count(findings) with { DepartureWarnings = 1 },
            Departures = [new DepartureUse(departure, DepartureState.Expired, Status.Fail, Outcome.Missed, new ShownValue(2, "mm"))],
        };
        var problem = new Problem("jobs/bad plan.yaml", Hostile, "Mend it.", new Position(3, 1, 3, 2));
        return new ReportedRun(
            "0.1.0",
            [
                new FileResult(report.File, [report, report with { Document = 2 }], []),
                new FileResult("jobs/größe #2.yaml", [report with { File = "jobs/größe #2.yaml" }], []),
                new FileResult("jobs/bad plan.yaml", [], [problem, problem with { Position = null }]),
            ],
            []);
    }

    private static ReportedRun With(params Finding[] findings) =>
        ReportedRun.Of(Samples.Report() with { Findings = findings, Counts = Samples.Count(findings) });

    private static (string Kind, string Level) KindOf(Finding finding, IReadOnlyList<FindingGroup> include)
    {
        var result = Results(With(finding) with { Include = include }).Single();
        return (result["kind"]!.GetValue<string>(), result["level"]!.GetValue<string>());
    }

    private static JsonNode Sarif(ReportedRun run) => JsonNode.Parse(Written(SarifWriter.Write, run))!["runs"]![0]!;

    private static List<JsonNode> Results(ReportedRun run) => [.. Sarif(run)["results"]!.AsArray().Select(result => result!)];

    private static List<string> Fingerprints(ReportedRun run) =>
        [.. Results(run).Select(result => result["partialFingerprints"]!["laygateFinding/v1"]!.GetValue<string>())];

    private static void Allowed(XElement element, params string[] names) =>
        Assert.All(element.Attributes(), attribute => Assert.Contains(attribute.Name.LocalName, names, StringComparer.Ordinal));

    private static string Written(Action<ReportedRun, Stream> write, ReportedRun run)
    {
        using var bytes = new MemoryStream();
        write(run, bytes);
        return new UTF8Encoding(false, true).GetString(bytes.ToArray());
    }
}

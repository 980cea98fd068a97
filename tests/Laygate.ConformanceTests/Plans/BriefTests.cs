using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Laygate.Checking;
using Laygate.ConformanceTests.Faults;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>The usual form of the console: any plan in at most 60 lines of 80 columns, and nothing that guards lives or stands in the contract is missing.</summary>
public sealed partial class BriefTests
{
    private const int Lines = 60;
    private const int Columns = 80;

    private static readonly PlanTools Tools = new();

    public static TheoryData<string, string> Plans => new()
    {
        { Repository.WholeQuay, "examples/particular/port-of-tamarel.yaml" },
        { Repository.WholeQuay, string.Empty },
        { "examples/county-route-us.yaml", "us-wa" },
        { "examples/moor-road-thin-overlay.yaml", string.Empty },
        { "examples/moor-road-thin-overlay.yaml", "examples/particular/port-of-tamarel.yaml" },
        { "examples/concept-fifteen-lines.yaml", string.Empty },
        { "examples/concept-fifteen-lines.yaml", "examples/particular/port-of-tamarel.yaml" },
    };

    public static TheoryData<string> Faults => [.. FaultLists.Faults.Select(fault => fault.Id).Usual(5)];

    [Theory]
    [MemberData(nameof(Plans))]
    public void An_example_is_read_in_a_minute_at_every_stage(string plan, string rules)
    {
        foreach (var stage in (Stage?[])[null, Stage.Submission, Stage.Release])
        {
            Holds(Check(plan, Repository.Bytes(plan), rules, stage, quick: false));
        }
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void So_is_a_plan_with_a_fault(string id)
    {
        var fault = FaultLists.Faults.Single(fault => fault.Id == id);
        var rules = fault.Plan == "quay-road-hot-on-hot" ? FaultLists.PathOf("plans/port-of-tamarel.yaml") : "us-wa";
        Holds(Check(fault.Plan + ".yaml", Encoding.UTF8.GetBytes(fault.Text), rules, null, quick: true));
    }

    [Fact]
    public void So_is_a_plan_that_is_silent_about_everything()
    {
        // The least that a plan may say; at release nearly every rule waits for something, and what lives depend on fails.
        const string Silent = """
            format: 1
            plan: { id: silent, stage: release }
            location: { jurisdiction: none }
            mixes: [{ id: ac11, kind: asphalt-concrete }]
            courses: [{ id: wearing, kind: surface, mix: ac11, thickness: 40 mm }]

            """;
        foreach (var rules in (string[])[string.Empty, "examples/particular/port-of-tamarel.yaml", "us-wa"])
        {
            var result = Check("silent.yaml", Encoding.UTF8.GetBytes(Silent), rules, null, quick: true);
            Assert.True(Assert.Single(result.Reports).Counts.Failed > 10);
            Holds(result);
        }
    }

    /// <summary>With an outlook, and on terminals of other widths.</summary>
    [Theory]
    [InlineData(40, 80)]
    [InlineData(80, 80)]
    [InlineData(93, 93)]
    [InlineData(300, 100)]
    public void The_terminal_may_be_narrow_or_wide_and_an_outlook_asked_for(int terminal, int widest)
    {
        const string Quay = Repository.WholeQuay;
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Outlook = true }, tools: Tools).Run(Quay, Repository.Bytes(Quay));
        var lines = Text(result, terminal);
        Assert.InRange(lines.Count, 10, Lines);
        Assert.All(lines, line => Assert.True(Fits(line, widest), line));
        Assert.Contains(lines, line => line.StartsWith("Laying by the hour: ", StringComparison.Ordinal));
    }

    /// <summary>What the short form leaves out stands in the full one: each finding that counts with title, source and what to do.</summary>
    [Fact]
    public void One_finding_is_shown_in_full_and_alone()
    {
        var result = Repository.Check("examples/moor-road-thin-overlay.yaml");
        var report = Assert.Single(result.Reports);
        var finding = report.Findings.First(finding => finding.Rule == "LAY-001" && finding.Status == Status.Warn);
        foreach (var choice in (string[])["LAY-001", "lay-001", $"LAY-001@{finding.Address}"])
        {
            var text = Squeezed(TerminalReport.Lines([result], new TerminalSettings(Columns) { Explain = FindingChoice.Of(choice) }).Select(line => line.Text));
            Assert.All((string[])[Wording.Title(finding), finding.Why, finding.Remedy, finding.Local, SourceWords.Line(finding.Limit!), Caution.Brief[0]], part => Assert.Contains(Squeezed([part]), text, StringComparison.Ordinal));
            Assert.DoesNotContain("LAY-005", text, StringComparison.Ordinal);
        }

        Assert.Empty(TerminalReport.Lines([result], new TerminalSettings(Columns) { Explain = FindingChoice.Of("LAY-001@course:other") }));
    }

    private static void Holds(FileResult result)
    {
        foreach (var report in result.Reports)
        {
            var lines = Text(new FileResult(result.File, [report], []), Columns);
            Assert.InRange(lines.Count, 5, Lines);
            Assert.All(lines, line => Assert.True(Fits(line, Columns), line));
            Assert.Contains("--explain RULE[@ADDRESS]", lines[^1], StringComparison.Ordinal);
            CautionStandsBehindTheVerdict(lines);
            NothingGraveIsMissing(report, lines);
            NoRecalledAdviceAboveARequirementThatWasRead(report, lines);
            AFindingTakesTwoLines(lines);
        }
    }

    private static void CautionStandsBehindTheVerdict(List<string> lines)
    {
        var verdict = lines.FindIndex(line => line.StartsWith("DOES NOT PASS: ", StringComparison.Ordinal) || line.StartsWith("NO FAILURE", StringComparison.Ordinal));
        var caution = lines.IndexOf(Caution.Brief[0]);
        Assert.InRange(verdict, 3, 8);
        Assert.InRange(caution - verdict, 1, 2);
        Assert.Equal(Caution.Brief[1], lines[caution + 1]);
    }

    private static void NothingGraveIsMissing(Report report, List<string> lines)
    {
        var named = Named(lines);
        Assert.All(report.Findings.Where(finding => finding.Status == Status.Fail && (finding.Severity == Severity.A || finding.Limit?.Layer == Layer.ParticularSpecification)), finding =>
            Assert.Contains(finding.Rule, named, StringComparer.Ordinal));
    }

    private static void NoRecalledAdviceAboveARequirementThatWasRead(Report report, List<string> lines)
    {
        var decides = report.Findings.Where(finding => finding.Status is Status.Fail or Status.Warn && finding.Outcome is Outcome.Met or Outcome.Missed).ToLookup(finding => finding.Rule, StringComparer.Ordinal);
        var shown = lines.Select(line => Entry().Match(line)).Where(match => match.Success).Select(match => decides[match.Groups["rule"].Value].ToList()).Where(findings => findings.Count > 0).ToList();
        var advice = shown.FindIndex(findings => findings.TrueForAll(finding => finding.Limit is { Strength: Strength.Advised, Source.Evidence: Evidence.Recalled }));
        var required = shown.FindLastIndex(findings => findings.TrueForAll(finding => finding.Limit is { Strength: Strength.Required, Source.Evidence: Evidence.Read or Evidence.Confirmed }));
        Assert.True(advice < 0 || advice > required, string.Join('\n', lines));
    }

    // Behind the first line at least one more, and at most what was found, what mends it, and an assumption that decides.
    private static void AFindingTakesTwoLines(List<string> lines)
    {
        foreach (var (line, index) in lines.Select((line, index) => (line, index)).Where(pair => Entry().IsMatch(pair.line)))
        {
            var more = lines.Skip(index + 1).TakeWhile(next => next.StartsWith("     ", StringComparison.Ordinal)).ToList();
            var extra = more.FindIndex(next => next.StartsWith("     Mend: ", StringComparison.Ordinal) || next.StartsWith("     Rests on ", StringComparison.Ordinal) || next.StartsWith("     Did you mean ", StringComparison.Ordinal));
            Assert.True((extra < 0 ? more.Count : extra) <= 2, string.Join('\n', more.Prepend(line)));
        }
    }

    // Ids of a family may follow the first without its prefix.
    private static HashSet<string> Named(List<string> lines)
    {
        var named = new HashSet<string>(StringComparer.Ordinal);
        var family = string.Empty;
        foreach (Match match in Id().Matches(string.Join(' ', lines)))
        {
            family = match.Groups["family"] is { Success: true } prefix ? prefix.Value : family;
            named.Add(string.Create(CultureInfo.InvariantCulture, $"{family}-{match.Groups["number"].Value}"));
        }

        return named;
    }

    // A path or a key is not broken, so that it can be clicked and copied.
    private static bool Fits(string line, int columns) => TextWidth.Of(line) <= columns || line.Trim().Split(' ').Max(TextWidth.Of) > columns - 20;

    private static List<string> Text(FileResult result, int width) => [.. TerminalReport.Lines([result], new TerminalSettings(width)).Select(line => line.Text)];

    private static string Squeezed(IEnumerable<string> parts) => string.Concat(parts).Replace(" ", string.Empty, StringComparison.Ordinal).Replace("\u00A0", string.Empty, StringComparison.Ordinal);

    private static FileResult Check(string file, byte[] plan, string rules, Stage? stage, bool quick) =>
        new PlanCheck(Repository.Bound(rules.Length > 0 ? [rules] : []), new CheckSettings(stage, Repository.CheckDate, Repository.Version) { Quick = quick }, tools: Tools).Run(file, plan);

    [GeneratedRegex("^(FAIL|WARN|NOT ASSESSED|NEEDS A PERSON) (?<rule>[A-Z]{3}-[0-9]{3}) ", RegexOptions.None | RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Entry();

    [GeneratedRegex("((?<family>[A-Z]{3})-|, )(?<number>[0-9]{3})\\b", RegexOptions.None | RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Id();
}

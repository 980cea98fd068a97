using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>A plan that is silent about much gets a shorter report, not a smaller one.</summary>
public sealed class ConsoleTests
{
    private const string Moor = "examples/moor-road-thin-overlay.yaml";

    [Fact]
    public void Each_finding_that_counts_is_named_with_what_to_do_in_short_too()
    {
        var result = Repository.Check(Moor);
        var (brief, full) = (Text(result, all: false), Text(result, all: true));
        Assert.All(Assert.Single(result.Reports).Findings.Where(finding => finding.Status is Status.Fail or Status.Warn), finding =>
        {
            Assert.Contains(finding.Rule, brief, StringComparison.Ordinal);
            Assert.Contains(Words(Wording.Title(finding)), brief, StringComparison.Ordinal);
            if (finding.Missing.Count == 0 || finding.Severity is not null)
            {
                Assert.Contains(Words(finding.Remedy), brief, StringComparison.Ordinal);
            }
        });
        Assert.True(brief.Length < full.Length);
        Assert.Contains("--all gives why it matters", brief, StringComparison.Ordinal);
        Assert.DoesNotContain("--all gives why it matters", full, StringComparison.Ordinal);
    }

    private static string Text(FileResult result, bool all) =>
        Words(string.Join(' ', TerminalReport.Lines([result], new TerminalSettings(80, all) { Full = true }).Select(line => string.Concat(line.Spans.Select(span => span.Text)))));

    // Lines are broken to fit; what they say is one text.
    private static string Words(string text) => string.Join(' ', text.Split((char[])[' ', '\u00A0', '\n'], StringSplitOptions.RemoveEmptyEntries));
}

using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reporting.Json;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>A quick check leaves out what costs time, and says so.</summary>
public sealed class QuickCheckTests
{
    private const string Quay = Repository.WholeQuay;

    [Fact]
    public void Nothing_is_sampled_simulated_mended_or_looked_out_for()
    {
        var report = Assert.Single(Run(quick: true).Reports);
        Assert.True(report.IsQuick);
        Assert.Null(report.Outlook);
        Assert.All(report.Findings, finding =>
        {
            Assert.Null(finding.Remedies);
            Assert.Null(finding.Value?.Low);
            Assert.False(finding.OnExpectedValuesOnly);
        });
        var left = report.Findings.Where(finding => finding.Notes.Any(note => note.Id == "quick-check")).Select(finding => finding.RuleName).Distinct(StringComparer.Ordinal).ToList();
        Assert.Equal(
            ["supply/more-than-a-load-left-over", "supply/more-trucks-wait-than-there-are-places", "supply/paver-stops-for-want-of-mix", "supply/shift-ends-before-all-is-laid", "supply/stop-for-want-of-mix-likely"],
            left.Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.All(report.Findings.Where(finding => left.Contains(finding.RuleName, StringComparer.Ordinal)), finding => Assert.Equal((Outcome.NotAssessed, Status.Warn), (finding.Outcome, finding.Status)));
    }

    [Fact]
    public void Expected_values_are_those_of_the_whole_check()
    {
        var quick = Assert.Single(Run(quick: true).Reports).Findings.ToDictionary(finding => (finding.Rule, finding.Address));
        foreach (var whole in Assert.Single(Run(quick: false).Reports).Findings.Where(finding => finding.Value?.Number is not null))
        {
            var found = quick[(whole.Rule, whole.Address)];
            if (found.Outcome != Outcome.NotAssessed)
            {
                Assert.Equal(whole.Value!.Number!.Value, found.Value!.Number!.Value, 2e-3 * Math.Max(1, Math.Abs(whole.Value.Number.Value)));
            }
        }
    }

    [Fact]
    public void Every_format_says_that_it_was_a_quick_check()
    {
        var result = Run(quick: true);
        using var json = new MemoryStream();
        JsonOutput.Write(json, "1", [result], []);
        Assert.Contains("\"quick\": true", Encoding.UTF8.GetString(json.ToArray()), StringComparison.Ordinal);
        var text = string.Join(' ', TerminalReport.Lines([result], new TerminalSettings(200, All: false)).Select(line => string.Concat(line.Spans.Select(span => span.Text))));
        Assert.Contains("This was a quick check.", text, StringComparison.Ordinal);
    }

    private static FileResult Run(bool quick) =>
        new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = quick, Remedies = quick, Outlook = quick })
            .Run(Quay, Repository.Bytes(Quay));
}

using System.Text;
using Laygate.Checking.Baselines;
using Laygate.Reading.Baselines;
using Laygate.Rules.Baselines;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Gate;

/// <summary>Findings that are known earlier, on the examples.</summary>
public sealed class BaselineTests
{
    private const string Moor = "examples/moor-road-thin-overlay.yaml";

    public static TheoryData<string> Examples => [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.yaml").Select(file => "examples/" + Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Examples))]
    public void What_is_recorded_today_is_known_tomorrow_but_for_what_guards_lives(string example)
    {
        var report = Assert.Single(Repository.Check(example).Reports);
        var judged = Judge(report, report);
        var counting = report.Findings.Where(finding => finding.Status is Status.Warn or Status.Fail && finding.Outcome != Outcome.NeedsPerson).ToList();
        Assert.Equal(counting.Where(finding => finding.Severity != Severity.A).Select(Key), judged.Findings.Where(finding => finding.Known).Select(Key));
        Assert.Equal((judged.Findings.Count(finding => finding.Known), 0, 0), (judged.Baseline!.Known, judged.Baseline.Worse, judged.Baseline.Gone));
        Assert.Equal(judged.Baseline.Known, judged.Counts.KnownFailed + judged.Counts.KnownWarned + judged.Counts.KnownNotAssessed);
        Assert.Equal(report.Counts, judged.Counts with { KnownFailed = 0, KnownWarned = 0, KnownNotAssessed = 0 });
    }

    [Theory]
    [InlineData(0.9, false)]
    [InlineData(1.1, true)]
    public void A_value_counts_again_only_when_it_lies_further_beyond_its_limit(double factor, bool known)
    {
        var report = Assert.Single(Repository.Check(Moor).Reports);
        var old = report.Findings.First(finding => BaselineJudge.Belongs(finding) && finding is { Check: CheckKind.AtLeast, Outcome: Outcome.Missed, Value: { Number: > 0, Unit: not ("°C" or "°F") } });
        var moved = old with { Value = old.Value! with { Number = old.Value.Number * factor } };
        var judged = Judge(report, report with { Findings = [.. report.Findings.Select(finding => ReferenceEquals(finding, old) ? moved : finding)] });
        Assert.Equal(known, judged.Findings.Single(finding => Key(finding) == Key(old)).Known);
        Assert.Equal(known ? 0 : 1, judged.Baseline!.Worse);
    }

    // By hand: four significant digits, at most six decimals.
    [Theory]
    [InlineData(46.6191790741, 46.62)]
    [InlineData(123456.7, 123500)]
    [InlineData(-0.0123456, -0.01235)]
    [InlineData(0.00123456, 0.001235)]
    [InlineData(0.000123456, 0.000123)]
    [InlineData(0.000000123, 0)]
    [InlineData(0, 0)]
    public void A_value_is_kept_to_four_digits(double value, double kept) => Assert.Equal(kept, BaselineJudge.Rounded(value), 1e-12);

    [Fact]
    public void A_warning_that_becomes_a_failure_counts_again()
    {
        var report = Assert.Single(Repository.Check(Moor).Reports);
        var old = report.Findings.First(finding => BaselineJudge.Belongs(finding) && finding is { Status: Status.Warn, Outcome: Outcome.Missed });
        var judged = Judge(report, report with { Findings = [.. report.Findings.Select(finding => ReferenceEquals(finding, old) ? old with { Status = Status.Fail } : finding)] });
        Assert.False(judged.Findings.Single(finding => Key(finding) == Key(old)).Known);
    }

    [Fact]
    public void An_entry_whose_finding_is_gone_is_counted_as_such_and_another_file_is_none_of_its_business()
    {
        var report = Assert.Single(Repository.Check(Moor).Reports);
        var old = report.Findings.First(BaselineJudge.Belongs);
        var judged = Judge(report, report with { Findings = [.. report.Findings.Where(finding => !ReferenceEquals(finding, old))] });
        Assert.Equal(1, judged.Baseline!.Gone);
        var elsewhere = BaselineJudge.Apply(report, Repository.Bound(), Read(Written(report)), "other/plan.yaml");
        Assert.Equal((0, 0, 0), (elsewhere.Baseline!.Known, elsewhere.Baseline.Worse, elsewhere.Baseline.Gone));
    }

    [Fact]
    public void A_file_that_is_no_baseline_is_refused_with_its_place()
    {
        var (baseline, problems) = BaselineFile.Read("b.json", "{ \"baseline_version\": 1,\n  \"writen\": \"2026-11-25\", \"findings\": [] }"u8.ToArray(), Repository.Bound());
        Assert.Null(baseline);
        Assert.Contains(problems, problem => problem is { File: "b.json", Position.Line: 2 } && problem.Message.Contains("writen", StringComparison.Ordinal));
    }

    private static (string, string) Key(Finding finding) => (finding.Rule, finding.Address);

    private static byte[] Written(Report report)
    {
        using var bytes = new MemoryStream();
        using var baseline = new BaselineWriter(bytes, Repository.CheckDate);
        baseline.Add("jobs/plan.yaml", report);
        baseline.End();
        return bytes.ToArray();
    }

    private static Baseline Read(byte[] bytes)
    {
        var (baseline, problems) = BaselineFile.Read("b.json", bytes, Repository.Bound());
        Assert.True(problems.Count == 0, string.Join('\n', problems) + Encoding.UTF8.GetString(bytes));
        return baseline!;
    }

    private static Report Judge(Report recorded, Report now) =>
        BaselineJudge.Apply(now, Repository.Bound(), Read(Written(recorded)), "jobs/plan.yaml");
}

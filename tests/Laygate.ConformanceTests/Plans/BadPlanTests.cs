using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>Plans that no site could carry out: each gives a finding or a clear error, in bounded time, and no number in a report is infinite or none.</summary>
public sealed class BadPlanTests
{
    private const string Quay = Repository.WholeQuay;

    [Theory]
    [InlineData("count: 15\n", "count: 0\n", "must be at least 1")] // zero trucks
    [InlineData("mixes: [sma8-surface], nameplate", "mixes: [ac16-binder], nameplate", "does not make the mix")] // a plant that makes neither mix
    [InlineData("speed: 2.6 m/min", "speed: 0 m/min", "speed")]
    [InlineData("overlap: 150 mm", "overlap: 2.5 m", "overlap")] // wider than the drum
    [InlineData("rate: 900 t/h", "rate: 0 t/h", "rate")]
    [InlineData("capacity: 28 t, lowest: 5 t, call: 12 t", "capacity: 28 t, lowest: 5 t, call: 29 t", "call")] // above the buffer itself
    public void Contradictions_are_errors_at_their_line(string find, string replace, string says)
    {
        var result = Check(find, replace);
        Assert.Empty(result.Reports);
        Assert.All(result.Problems, problem => Assert.NotNull(problem.Position));
        Assert.Contains(result.Problems, problem => problem.Message.Contains(says, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("payload: 16 t", "payload: 40 t", "", "", "supply/load-of-the-upper-mix-never-fits")] // larger than its buffer of 28 t
    [InlineData("payload: 25 t", "payload: 80 t", "", "", "supply/buffer-of-the-lower-course-too-small")] // larger than its buffer of 50 t
    [InlineData("haul_out: 27 min", "haul_out: 20 h", "haul_out_bad: 36 min", "haul_out_bad: 24 h", "supply/too-few-trucks")] // longer than the shift of 6 h 50 min
    [InlineData("call: 12 t", "call: 27 t", "", "", "supply/upper-mix-called-too-early")] // above its band
    [InlineData("rate: 900 t/h", "rate: 200 t/h", "", "", "supply/one-feeder-for-more-than-it-can-serve")] // slower than the demand of 335 t/h
    [InlineData("speed: 2.6 m/min", "speed: 0.001 m/min", "", "", "supply/shift-ends-before-all-is-laid")]
    [InlineData("planned: 270 t/h", "planned: 0.001 t/h", "", "", "supply/mix-supply-below-demand")]
    public void What_no_site_could_carry_out_is_found(string find, string replace, string second, string other, string rule)
    {
        var result = Check(find, replace, second, other);
        Assert.Empty(result.Problems);
        var report = Assert.Single(result.Reports);
        Assert.Contains(rule, report.Findings.Where(finding => finding.Outcome == Outcome.Missed).Select(finding => finding.RuleName), StringComparer.Ordinal);
        Assert.All(report.Findings.SelectMany(Numbers), number => Assert.True(double.IsFinite(number)));
        using var json = new MemoryStream();
        JsonOutput.Write(json, "1", [result], []); // Refuses numbers that JSON cannot hold.
        Assert.True(json.Length > 0);
    }

    [Fact]
    public void The_paver_of_a_load_larger_than_its_buffer_is_fed_in_parts_and_the_shift_ends()
    {
        var report = Assert.Single(Check("payload: 25 t", "payload: 80 t").Reports);
        var laid = report.Findings.Single(finding => finding.RuleName == "supply/shift-ends-before-all-is-laid");
        Assert.True(laid.Outcome is Outcome.Met or Outcome.Missed);
    }

    // One id for 131 runs: 130 of them are refused. A hundred problems are listed for a file, however many plans it holds, and the rest is counted.
    [Theory]
    [InlineData(1, "30 more problems are not listed.")]
    [InlineData(2, "160 more problems are not listed.")]
    public void A_file_lists_a_hundred_problems_and_says_how_many_are_left(int plans, string says)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Root, "examples", "concept-fifteen-lines.yaml"));
        const string Run = "  - { id: all, from: 0 m, to: 900 m, width: 5.50 m }\n";
        var plan = text.Replace(Run, string.Concat(Enumerable.Repeat(Run, 131)), StringComparison.Ordinal);
        Assert.NotEqual(text, plan, StringComparer.Ordinal);
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version)).Run("plan.yaml", Encoding.UTF8.GetBytes(string.Join("\n---\n", Enumerable.Repeat(plan, plans))));
        Assert.Equal(101, result.Problems.Count);
        Assert.Equal(says, result.Problems[^1].Message);
    }

    private static IEnumerable<double> Numbers(Finding finding) =>
        new[] { finding.Value, finding.Limit?.Low, finding.Limit?.High }
            .OfType<ShownValue>().SelectMany(shown => new[] { shown.Number, shown.Low, shown.High }).OfType<double>();

    private static FileResult Check(string find, string replace, string second = "", string other = "")
    {
        var text = Encoding.UTF8.GetString(Repository.Bytes(Quay));
        Assert.Contains(find, text, StringComparison.Ordinal);
        text = text.Replace(find, replace, StringComparison.Ordinal);
        text = second.Length == 0 ? text : text.Replace(second, other, StringComparison.Ordinal);
        return new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version)).Run(Quay, Encoding.UTF8.GetBytes(text));
    }
}

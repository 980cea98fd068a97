using System.Collections.Concurrent;
using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>
/// No absurd number makes a plan better: whatever a key is set to, no failed finding goes without a refusal, or a warning or failure at that number.
/// </summary>
public sealed class AbsurdValueTests
{
    // A usual run tries one in so many of what the full run tries.
    private const int Rarer = 6;
    private static readonly PlanTools Tools = new();

    /// <summary>Failing plans: a shipped one, and a shipped one with faults that do not depend on one another. The second is sampled, for its mats are dear.</summary>
    public static TheoryData<string, string[], int> Plans => new()
    {
        { "examples/moor-road-thin-overlay.yaml", [], 1 },
        { Repository.WholeQuay, ["count: 15 => count: 7", "planned: 90 t/h => planned: 30 t/h", "cooling: 25 min => cooling: 4 min"], 9 },
    };

    [Theory]
    [MemberData(nameof(Plans))]
    public void No_absurd_value_turns_a_failure_into_a_pass(string plan, string[] faults, int every)
    {
        var text = faults.Select(fault => fault.Split(" => ")).Aggregate(Encoding.UTF8.GetString(Repository.Bytes(plan)), (now, fault) => now.Replace(fault[0], fault[1], StringComparison.Ordinal));
        var failed = Run(text).Findings.Where(finding => finding.Status == Status.Fail).ToList();
        Assert.NotEmpty(failed);
        var lost = new ConcurrentBag<string>();
        var changes = StatedNumber.Of(text).SelectMany(number => number.Absurd().Select(written => (Number: number, Written: written))).Where((_, index) => index % (FullRun.IsAsked ? every : every * Rarer) == 0);
        Parallel.ForEach(changes, change =>
        {
            var (findings, problems) = Run(change.Number.In(text, change.Written));
            if (problems.Count > 0 || findings.Any(finding => IsBad(finding) && change.Number.IsAt(finding.Position!)))
            {
                return;
            }

            var bad = findings.Where(IsBad).Select(finding => (finding.Rule, finding.Address)).ToHashSet();
            foreach (var gone in failed.Where(before => !bad.Contains((before.Rule, before.Address))))
            {
                lost.Add($"{change.Number.Path}: {change.Written} ends {gone.Rule} at {gone.Address}");
            }
        });
        Assert.Empty(lost.Order(StringComparer.Ordinal));
    }

    private static bool IsBad(Finding finding) => finding.Status is Status.Warn or Status.Fail;

    private static (IReadOnlyList<Finding> Findings, IReadOnlyList<Problem> Problems) Run(string text)
    {
        var check = new PlanCheck(Repository.Bound("us-wa"), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, tools: Tools);
        var result = check.Run("plan.yaml", Encoding.UTF8.GetBytes(text));
        return ([.. result.Reports.SelectMany(report => report.Findings)], result.Problems);
    }
}

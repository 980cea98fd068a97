using System.Collections.Concurrent;
using System.Text;
using Laygate.Checking;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Faults;

/// <summary>What one finding says, with all that stands beside it.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Status">Its status; <see cref="Status.None"/> where there is none.</param>
/// <param name="Text">Title, sentence, what is missing and notes.</param>
internal sealed record Said(string Rule, string Address, Status Status, string Text)
{
    public override string ToString() => $"{Rule} {Address} {Words.Of(Status)}";
}

/// <summary>What a check says of a changed plan, beside what it says of the plan as it is.</summary>
/// <param name="Refusals">Why the plan was refused; empty when it was read.</param>
/// <param name="All">All findings by rule and address.</param>
/// <param name="Added">Warnings and failures that the plan itself does not have, or not so bad.</param>
/// <param name="Removed">Warnings and failures of the plan itself that are gone, or less bad.</param>
internal sealed record FaultVerdict(IReadOnlyList<string> Refusals, IReadOnlyList<Said> All, IReadOnlyList<Said> Added, IReadOnlyList<Said> Removed)
{
    public bool IsRefused => Refusals.Count > 0;
}

/// <summary>Checks changed plans, each once; the plans as they are, once each. Simulated shifts only where a list asks for them.</summary>
internal static class FaultCheck
{
    private static readonly PlanTools Tools = new();
    private static readonly ConcurrentDictionary<string, Lazy<Laygate.Rules.Merging.RuleBook>> Books = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<(string Plan, bool Whole), Lazy<IReadOnlyList<Said>>> Plans = new();
    private static readonly ConcurrentDictionary<(string Id, bool Whole), Lazy<FaultVerdict>> Verdicts = new();

    public static FaultVerdict Of(Fault fault, bool whole) => Verdicts.GetOrAdd((fault.Id, whole), _ => new(() => Judge(fault, whole))).Value;

    /// <summary>What the check says of a plan as it is.</summary>
    public static IReadOnlyList<Said> OfPlan(string plan, bool whole) => Plans.GetOrAdd((plan, whole), _ => new(() =>
    {
        var (said, refusals) = Run(plan, FaultLists.TextOfPlan(plan), whole);
        Assert.Empty(refusals);
        return said;
    })).Value;

    private static FaultVerdict Judge(Fault fault, bool whole)
    {
        var (now, refusals) = Run(fault.Plan, fault.Text, whole);
        var before = OfPlan(fault.Plan, whole);
        return refusals.Count > 0
            ? new FaultVerdict(refusals, [], [], [])
            : new FaultVerdict([], now, Worse(now, before), Worse(before, now));
    }

    private static List<Said> Worse(IReadOnlyList<Said> these, IReadOnlyList<Said> those)
    {
        var known = those.ToDictionary(said => (said.Rule, said.Address), said => said.Status);
        return [.. these.Where(said => Grade(said.Status) > Grade(known.GetValueOrDefault((said.Rule, said.Address), Status.None)))];
    }

    private static int Grade(Status status) => status switch { Status.Fail => 2, Status.Warn => 1, _ => 0 };

    private static (IReadOnlyList<Said> Said, IReadOnlyList<string> Refusals) Run(string plan, string text, bool whole)
    {
        var check = new PlanCheck(BookOf(plan), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = !whole }, tools: Tools);
        var result = check.Run(plan + ".yaml", Encoding.UTF8.GetBytes(text));
        return (
            [.. result.Reports.SelectMany(report => report.Findings).Select(finding => new Said(finding.Rule, finding.Address, finding.Status, TextOf(finding)))],
            [.. result.Problems.Select(problem => $"{problem.Message} {problem.Hint}")]);
    }

    private static Laygate.Rules.Merging.RuleBook BookOf(string plan)
    {
        var rules = plan == "quay-road-hot-on-hot" ? FaultLists.PathOf("plans/port-of-tamarel.yaml") : "us-wa";
        return Books.GetOrAdd(rules, name => new(() => Repository.Bound(name))).Value;
    }

    private static string TextOf(Finding finding) => string.Join(" | ", new[] { Wording.Message(finding) }
        .Concat(finding.Missing.Select(input => $"{input.Address}/{input.Key}"))
        .Concat(finding.Notes.Select(NoteWords.Of)));
}

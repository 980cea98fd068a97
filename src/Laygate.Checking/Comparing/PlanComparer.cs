using Laygate.Reading.Yaml;
using Laygate.Rules.Comparing;
using Laygate.Rules.Results;

namespace Laygate.Checking.Comparing;

/// <summary>Checks two states of a plan and sets the reports against each other: two revisions under one rule book, or one plan under two.</summary>
/// <param name="old">The check of the earlier state.</param>
/// <param name="new">The check of the later state.</param>
public sealed class PlanComparer(PlanCheck old, PlanCheck @new)
{
    /// <summary>Compares two files. Plans belong together by their id; a file with one plan on each side is one pair whatever the ids.</summary>
    /// <param name="oldFile">Name of the earlier file, as it is to be shown.</param>
    /// <param name="oldBytes">Its bytes; null when there was none.</param>
    /// <param name="newFile">Name of the later file.</param>
    /// <param name="newBytes">Its bytes; null when there is none.</param>
    /// <param name="cancel">Calls it off.</param>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public ComparisonResult Run(string oldFile, byte[]? oldBytes, string newFile, byte[]? newBytes, CancellationToken cancel = default)
    {
        var before = oldBytes is null ? new JudgedFile([], []) : old.Judged(oldFile, oldBytes, cancel);
        var after = newBytes is null ? new JudgedFile([], []) : @new.Judged(newFile, newBytes, cancel);
        var problems = before.Problems.Concat(after.Problems).Distinct().ToList();
        return problems.Count > 0
            ? new ComparisonResult(oldFile, newFile, [], problems)
            : new ComparisonResult(oldFile, newFile, [.. ReportPairs.Of(before.Plans, after.Plans, plan => plan.Report.PlanId).Select(pair => Compare(pair.Old, pair.New))], []);
    }

    private PlanComparison Compare(JudgedPlan? earlier, JudgedPlan? later)
    {
        var compared = ReportComparer.Compare(earlier?.Report, later?.Report);
        if (earlier is null || later is null)
        {
            return compared;
        }

        var text = PlanTextChanges.Between(earlier.Root, later.Root);
        var (before, after) = (new StatedInputs(earlier.Context, old.Book), new StatedInputs(later.Context, @new.Book));
        return compared with { Findings = [.. compared.Findings.Select(change => Explained(change, (earlier, before), (later, after), text))], Text = text };
    }

    private static FindingChange Explained(FindingChange change, (JudgedPlan Plan, StatedInputs Inputs) earlier, (JudgedPlan Plan, StatedInputs Inputs) later, IReadOnlyList<TextChange> text)
    {
        if (change.Kind == ChangeKind.Unchanged || text.Count == 0)
        {
            return change;
        }

        // Also where a side has no finding: what its rule asked there may be what keeps it silent.
        var before = Places(earlier, change.Old ?? change.Either);
        var after = Places(later, change.Either);
        return change with
        {
            Behind = [.. text.Where(difference => (difference.OldPosition is { } was && before.Contains(was)) || (difference.NewPosition is { } now && after.Contains(now)))],
        };
    }

    private static HashSet<Position> Places((JudgedPlan Plan, StatedInputs Inputs) of, Finding finding) =>
        [.. of.Inputs.Of(finding).SelectMany(input => of.Plan.Positions.Within(input.Address, input.Key)).Select(Spans.Of)];
}

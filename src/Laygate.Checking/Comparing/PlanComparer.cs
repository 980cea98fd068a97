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
    public ComparisonResult Run(string oldFile, byte[]? oldBytes, string newFile, byte[]? newBytes, CancellationToken cancel = default) =>
        Run(oldFile, oldBytes, newFile, newBytes, (null, null), cancel);

    /// <summary>
    /// Compares two files, or one shift of a job on either side. Two jobs are one pair whatever their ids: shifts belong together by their ids, and what lies
    /// between the shifts is compared with what lies between them on the other side.
    /// </summary>
    /// <param name="oldFile">Name of the earlier file, as it is to be shown.</param>
    /// <param name="oldBytes">Its bytes; null when there was none.</param>
    /// <param name="newFile">Name of the later file.</param>
    /// <param name="newBytes">Its bytes; null when there is none.</param>
    /// <param name="shifts">Ids of the only shifts of a job that are wanted; null for all.</param>
    /// <param name="cancel">Calls it off.</param>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public ComparisonResult Run(string oldFile, byte[]? oldBytes, string newFile, byte[]? newBytes, (string? Old, string? New) shifts, CancellationToken cancel = default)
    {
        var before = oldBytes is null ? new JudgedFile([], []) : old.Judged(oldFile, oldBytes, shifts.Old, cancel);
        var after = newBytes is null ? new JudgedFile([], []) : @new.Judged(newFile, newBytes, shifts.New, cancel);
        var problems = before.Problems.Concat(after.Problems).Distinct().ToList();
        return problems.Count > 0
            ? new ComparisonResult(oldFile, newFile, [], problems)
            : new ComparisonResult(oldFile, newFile, [.. Pairs(before, after)], []);
    }

    private IEnumerable<PlanComparison> Pairs(JudgedFile before, JudgedFile after)
    {
        if ((before.Shifts ?? after.Shifts) is null || (before.Shifts is null && before.Plans.Count > 0) || (after.Shifts is null && after.Plans.Count > 0))
        {
            return ReportPairs.Of(before.Plans, after.Plans, plan => plan.Report.PlanId).Select(pair => Compare(pair.Old, pair.New));
        }

        var (was, now) = (before.Plans.Zip(before.Shifts ?? []).Select(Named).ToList(), after.Plans.Zip(after.Shifts ?? []).Select(Named).ToList());
        return ReportPairs.Of(was, now, one => one.Key).Select(pair => (pair.New ?? pair.Old)!.Key.Length > 0 ? Compare(pair.Old?.Plan, pair.New?.Plan) : Between(Compare(pair.Old?.Plan, pair.New?.Plan)));
    }

    private sealed record ShiftPlan(string Key, JudgedPlan Plan);

    private static ShiftPlan Named((JudgedPlan Plan, string? Shift) one) => new(one.Shift ?? string.Empty, one.Plan);

    // What the shifts have in common is told with each of them.
    private static PlanComparison Between(PlanComparison compared)
    {
        var behind = compared.Findings.SelectMany(change => change.Behind).ToHashSet();
        return compared with { IsBetweenShifts = true, Text = [.. compared.Text.Where(change => behind.Contains(change) || IsOfJob(change.Path))] };
    }

    private static bool IsOfJob(string path) => path.StartsWith("shifts.", StringComparison.Ordinal) || path.StartsWith("lots.", StringComparison.Ordinal);

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

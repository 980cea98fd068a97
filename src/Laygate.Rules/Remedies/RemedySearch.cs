using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>
/// Finds what would mend a plan: for each missed or barely met bound that a number can mend, the number. Levers are moved on
/// expected values under the same evaluator; what is proposed is confirmed by the whole rule set with its spread, and no
/// finding may be worse than before.
/// </summary>
public static class RemedySearch
{
    /// <summary>Most remedies shown for one finding.</summary>
    public const int MostPerFinding = 3;

    /// <summary>
    /// Findings of changed plans that one search judges: some three times what the largest plan of a usual shift needs, and some
    /// seconds of work.
    /// </summary>
    public const int MostFindings = 750_000;

    /// <summary>Adds remedies to a report.</summary>
    /// <param name="report">The report on the plan as it is.</param>
    /// <param name="book">The rule book of that report.</param>
    /// <param name="context">Its context, one that keeps its solves (<see cref="QuantityContext.Remembering"/>).</param>
    /// <param name="settings">Its settings.</param>
    /// <param name="isConsistent">Whether a changed plan does not contradict itself.</param>
    /// <param name="workers">Threads; at least 1. The result does not depend on it.</param>
    /// <param name="isWanted">Which findings need a remedy; null: all that a number can mend. Harm is looked for in all findings.</param>
    /// <param name="mostFindings">Findings of changed plans that may be judged; what is then left untried is noted at the findings.</param>
    public static Report AddTo(
        Report report,
        RuleBook book,
        QuantityContext context,
        EvaluationSettings settings,
        Func<Plan, bool> isConsistent,
        int workers = 2,
        Func<Finding, bool>? isWanted = null,
        int mostFindings = MostFindings)
    {
        var targets = report.Findings.Where(finding => Margins.IsTarget(finding) && isWanted?.Invoke(finding) != false).ToList();
        if (targets.Count == 0)
        {
            return report;
        }

        var budget = SearchBudget.Of(mostFindings, report.Findings.Count);
        var candidates = RemedyCandidates.Find(new Judge(book, context, settings, isConsistent), targets, budget, workers);
        var confirmation = new Confirmation(candidates, new Before(report.Findings));
        var sets = confirmation.Sets(workers);
        var wanted = candidates.Targets.Select(target => (target.Rule, target.Address)).ToHashSet();
        return report with
        {
            Findings = [.. report.Findings.Select(finding => wanted.Contains((finding.Rule, finding.Address))
                ? With(finding, sets.GetValueOrDefault((finding.Rule, finding.Address)), confirmation.IsCut) : finding)],
        };
    }

    // What was left untried is said where another change might have been found.
    private static Finding With(Finding finding, RemedySet? set, bool isCut) => finding with
    {
        Remedies = set,
        Notes = isCut && (set is null || set.Found.Count < MostPerFinding) ? [.. finding.Notes, Note.Of(FindingNotes.RemediesNotAllTried)] : finding.Notes,
    };
}

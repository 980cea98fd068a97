using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>
/// Says which governs where a worst-case relation and the simulated shift differ: the simulation. Outcome and status stay;
/// a required bound keeps its word, because it is no worst case but what must hold on average.
/// </summary>
internal static class LastWord
{
    /// <summary>The findings, with a note on those of worst-case relations from which the simulated shift differs.</summary>
    /// <param name="judged">Findings with their rules.</param>
    /// <param name="catalogue">The quantities.</param>
    public static IReadOnlyList<Finding> Noted(IReadOnlyList<(CheckedRule Rule, Finding Finding)> judged, QuantityCatalogue catalogue)
    {
        var verdicts = judged.Where(one => IsVerdict(one.Finding)).ToLookup(one => one.Rule.Quantity.Name, one => one.Finding, StringComparer.Ordinal);
        return [.. judged.Select(one => Noted(one.Rule, one.Finding, catalogue, verdicts))];
    }

    private static Finding Noted(CheckedRule rule, Finding finding, QuantityCatalogue catalogue, ILookup<string, Finding> verdicts)
    {
        if (!IsVerdict(finding) || finding is { Outcome: Outcome.Missed, Limit.Strength: Strength.Required }
            || DecidedBy(rule, catalogue) is not { } decider
            || verdicts[decider].FirstOrDefault() is not { } verdict
            || verdict.Outcome == finding.Outcome)
        {
            return finding;
        }

        var id = verdict.Outcome == Outcome.Met ? FindingNotes.SimulationPasses : FindingNotes.SimulationMisses;
        return finding with { Notes = [.. finding.Notes, Note.Of(id, ("rule", verdict.Rule))] };
    }

    private static string? DecidedBy(CheckedRule rule, QuantityCatalogue catalogue) =>
        rule.Quantity.DecidedBy ?? rule.Bounds.Select(bound => bound.Definition.Limit)
            .OfType<QuantityLimit>()
            .Select(limit => catalogue.Find(limit.Quantity)?.DecidedBy)
            .FirstOrDefault(name => name is not null);

    private static bool IsVerdict(Finding finding) => finding.Outcome is Outcome.Met or Outcome.Missed;
}

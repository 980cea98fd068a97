using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Departures;

/// <summary>Lays departures over the findings of one plan. A finding that warns or fails and is covered becomes departed; its outcome stays. A departure that covers nothing is a warning of its own.</summary>
public static class DepartureJudge
{
    /// <summary>Applies departures.</summary>
    /// <param name="report">The report without them.</param>
    /// <param name="book">The rule book of the report.</param>
    /// <param name="departures">Departures, checked against the book: none names a rule of severity A, no two the same place.</param>
    /// <param name="addresses">Addresses of all elements of the plan.</param>
    /// <param name="checkedOn">Day of checking.</param>
    public static Report Apply(
        Report report, RuleBook book, IReadOnlyList<Departure> departures, IEnumerable<string> addresses, DateOnly checkedOn)
    {
        var mine = departures.Where(departure => departure.Plan is null || string.Equals(departure.Plan, report.PlanId, StringComparison.Ordinal)).ToList();
        if (mine.Count == 0)
        {
            return report;
        }

        var known = addresses.ToHashSet(StringComparer.Ordinal);
        var rules = book.All.ToDictionary(merged => merged.Rule.Definition.Id, merged => merged.Rule, StringComparer.Ordinal);
        var findings = report.Findings.ToDictionary(finding => (finding.Rule, finding.Address));
        var uses = mine.ConvertAll(departure => Use(departure, findings.GetValueOrDefault((departure.Rule, departure.Address)), known, rules, checkedOn));
        var holding = uses.Where(use => use.State == DepartureState.Holds).ToDictionary(use => (use.Departure.Rule, use.Departure.Address), use => use.Departure);
        List<Finding> departed = [.. report.Findings.Select(finding => holding.TryGetValue((finding.Rule, finding.Address), out var departure)
            ? finding with { Status = Status.Departed, Departure = departure }
            : finding)];
        return report with
        {
            Findings = departed,
            Counts = Counting.Of(departed) with { DepartureWarnings = uses.Count(use => use.State != DepartureState.Holds) },
            Departures = uses,
        };
    }

    private static DepartureUse Use(
        Departure departure, Finding? finding, HashSet<string> addresses, Dictionary<string, Binding.CheckedRule> rules, DateOnly checkedOn)
    {
        var state = (finding, departure) switch
        {
            (null, _) => addresses.Contains(departure.Address) ? DepartureState.NoFinding : DepartureState.NoElement,
            ({ Status: not (Status.Warn or Status.Fail) }, _) => DepartureState.Unused,
            _ when checkedOn > departure.ExpiresOn => DepartureState.Expired,
            _ when checkedOn < departure.ApprovedOn => DepartureState.NotYet,
            _ => Covers(departure.Accepted, finding, rules[departure.Rule].Quantity.Dimension),
        };
        return new DepartureUse(departure, state, finding?.Status, finding?.Outcome, finding?.Value);
    }

    // A finding without a value is covered as it stands: silence, or something that only a person can judge, has no size.
    private static DepartureState Covers(AcceptedValue? accepted, Finding finding, Model.Measures.Dimension dimension)
    {
        if (finding.Check == CheckKind.Present || finding.Value is null || finding.Outcome is Outcome.NotAssessed or Outcome.NeedsPerson)
        {
            return DepartureState.Holds;
        }

        return accepted is null ? DepartureState.NoValueAccepted
            : AcceptedValues.IsWithin(accepted, finding, dimension) ? DepartureState.Holds : DepartureState.Exceeded;
    }
}

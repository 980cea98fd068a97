using Laygate.Engineering.Quantities;
using Laygate.Model.Levers;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>A lever set to a value.</summary>
/// <param name="Lever">The lever.</param>
/// <param name="Value">The value.</param>
internal sealed record Setting(Lever Lever, double Value);

/// <summary>A changed copy of the plan under judgement; answers are kept while it lives. Serves several threads, one at a time.</summary>
internal sealed class Variant(RuleBook book, QuantityContext context, EvaluationSettings settings)
{
    private readonly Lock gate = new();
    private readonly Dictionary<(string Rule, string Address), Finding?> judged = [];
    private readonly RuleEvaluation evaluation = new(
        new AnswerLog(context, remembers: false),
        new FindingBuilder(context, book.Sources),
        Evaluator.StageOf(context.Plan, settings),
        context.Plan.Shift?.Date ?? settings.CheckedOn,
        settings.Samples is null ? null : new ContextSamples(context));

    /// <summary>What one rule says of one element of the changed plan; null when it has no such element.</summary>
    public Finding? Find(string rule, string address)
    {
        lock (gate)
        {
            return judged.TryGetValue((rule, address), out var known) ? known : Judged(rule, address);
        }
    }

    private Finding? Judged(string rule, string address)
    {
        var element = context.Elements.Find(address);
        var found = element is null ? null : book.On(element.Kind)
            .Where(candidate => string.Equals(candidate.Definition.Id, rule, StringComparison.Ordinal))
            .Select(candidate => evaluation.Evaluate(candidate, element))
            .FirstOrDefault();
        judged[(rule, address)] = found;
        return found;
    }

    /// <summary>Whether a finding rests on simulated shifts, which cost more than all other quantities.</summary>
    public static bool IsSimulated(Finding finding) =>
        finding.Working?.Inputs.Any(input => string.Equals(input.Quantity, "replications", StringComparison.Ordinal)) == true;

    /// <summary>What all rules say.</summary>
    public IReadOnlyList<Finding> All() => Found(evaluation.Evaluate);

    /// <summary>What all rules say that warns, fails or misses: none of the others is worse than anything.</summary>
    public IReadOnlyList<Finding> Bad() => Found(evaluation.Bad);

    private List<Finding> Found(Func<CheckedRule, Element, Finding?> judge)
    {
        lock (gate)
        {
            return
            [
                .. context.Elements.All.SelectMany(element => book.On(element.Kind).Select(rule => judge(rule, element))).OfType<Finding>(),
                .. UsualValues.Of(book, context, evaluation).Select(judged => judged.Finding),
            ];
        }
    }
}

/// <summary>Makes and judges changed copies of one plan. Serves several threads.</summary>
internal sealed class Judge(RuleBook book, QuantityContext context, EvaluationSettings settings, Func<Plan, bool> isConsistent)
{
    /// <summary>The plan as it is.</summary>
    public Plan Plan => context.Plan;

    /// <summary>Calls the search off.</summary>
    public CancellationToken Cancel => context.Cancel;

    /// <summary>The changed plan; null when it contradicts itself.</summary>
    public Plan? Changed(IReadOnlyList<Setting> change)
    {
        var plan = change[0].Lever.Change(change[0].Value);
        if (change.Count > 1)
        {
            // The second lever is found anew in the changed plan, so that its change builds on the first.
            var second = change[1];
            var lever = PlanLevers.Of(plan).FirstOrDefault(other => other.Kind == second.Lever.Kind
                && string.Equals(other.Address, second.Lever.Address, StringComparison.Ordinal)
                && string.Equals(other.Key, second.Lever.Key, StringComparison.Ordinal));
            if (lever is null || second.Value > lever.Highest + (lever.Step * 1e-6) || second.Value < lever.Lowest - (lever.Step * 1e-6))
            {
                return null;
            }

            plan = lever.Change(second.Value);
        }

        return isConsistent(plan) ? plan : null;
    }

    /// <summary>The plan with a change, on expected values; null when the changed plan contradicts itself.</summary>
    public Variant? Expected(params IReadOnlyList<Setting> change) =>
        Changed(change) is { } plan ? new Variant(book, context.For(plan, withSpread: false), settings) : null;

    /// <summary>The plan as it is, on expected values.</summary>
    public Variant AsItIs() => new(book, context.For(context.Plan, withSpread: false), settings);

    /// <summary>The plan with a change, with its spread; null when the changed plan contradicts itself.</summary>
    public Variant? Confirmed(IReadOnlyList<Setting> change) =>
        Changed(change) is { } plan ? new Variant(book, context.For(plan, withSpread: true), settings) : null;
}

/// <summary>Findings of the plan as it is, by rule and address, to hold others against.</summary>
internal sealed class Before(IEnumerable<Finding> findings)
{
    private readonly Dictionary<(string Rule, string Address), Finding> known =
        findings.ToDictionary(finding => (finding.Rule, finding.Address));

    /// <summary>Findings that are worse than before; those on an added roller are held against the roller that it copies.</summary>
    public IReadOnlyList<Finding> Worsened(IEnumerable<Finding> after) => [.. after.Where(IsWorse)];

    /// <summary>Whether one finding is worse than before.</summary>
    public bool IsWorse(Finding after) =>
        !known.TryGetValue((after.Rule, after.Address), out var before)
            && !known.TryGetValue((after.Rule, RollerCopy.ModelOf(after.Address)), out before)
            ? after.Status is Status.Warn or Status.Fail
            : Margins.IsWorse(before, after);
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>Whether a rule applies to an element.</summary>
/// <param name="Applies">Yes, no, or null when it is not known.</param>
/// <param name="Unknown">Answers without a value that keep it from being known.</param>
/// <param name="Decisive">The answer that rules it out; null otherwise.</param>
internal sealed record Applicability(bool? Applies, IReadOnlyList<Answer> Unknown, Answer? Decisive)
{
    /// <summary>What the plan should say whether it holds.</summary>
    public IReadOnlyList<Note> Questions { get; init; } = [];
}

/// <summary>Judges jurisdiction and conditions: one that does not hold rules the rule out, whatever else is unknown.</summary>
internal static class ConditionJudge
{
    private static readonly InputReference PlanJurisdiction = new("location", "jurisdiction");

    public static Applicability Judge(CheckedRule rule, Element element, AnswerLog answers)
    {
        var unknown = new List<Answer>();
        var questions = new List<Note>();
        var place = rule.Jurisdictions.Count == 0 ? true : InJurisdiction(rule, answers.Plan);
        if (place is false || HasItsOwn(rule, answers.Plan))
        {
            return new Applicability(false, [], new Answer { Input = PlanJurisdiction });
        }

        if (place is null)
        {
            unknown.Add(Answer.Missing(PlanJurisdiction));
        }

        foreach (var condition in rule.When)
        {
            var answer = answers.Get(condition.Quantity.Name, element);
            if (answer.Value is null)
            {
                unknown.Add(answer);
                if (answer.Absence is { Reason: AbsenceReason.MissingInput } && rule.Definition.Severity is not null)
                {
                    questions.Add(Note.Of(condition.Quantity.Kind == ValueKind.Flag ? FindingNotes.SayWhether : FindingNotes.SayWhat, ("meaning", condition.Quantity.Meaning)));
                }
            }
            else if (!Matching.Matches(condition, answer.Value))
            {
                return new Applicability(false, [], answer);
            }
        }

        return new Applicability(unknown.Count == 0 ? true : null, unknown, null) { Questions = questions };
    }

    // Where the place is not known, guidance from elsewhere is better than none.
    private static bool HasItsOwn(CheckedRule rule, Plan plan) =>
        plan.Location?.Jurisdiction is { } stated && rule.Definition.NotIn.Any(place => Jurisdiction.LiesIn(stated, place));

    // A plan that only names the country may or may not lie in the part for which a limit speaks.
    private static bool? InJurisdiction(CheckedRule rule, Plan plan)
    {
        if (plan.Location?.Jurisdiction is not { } stated)
        {
            return null;
        }

        if (rule.Jurisdictions.Any(place => Jurisdiction.LiesIn(stated, place)))
        {
            return true;
        }

        return rule.Jurisdictions.Any(place => Jurisdiction.LiesIn(place, stated)) ? null : false;
    }
}

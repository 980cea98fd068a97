using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;

namespace Laygate.Rules.Evaluation;

/// <summary>How the check <c>present</c> reads an answer.</summary>
internal static class Presence
{
    /// <summary>The answer as presence: silence is absence, and what is only assumed is not stated.</summary>
    public static Answer Of(Answer answer, CheckedRule rule)
    {
        var quantity = rule.Quantity;
        if (answer.Value is PresenceValue { Entries: { } entries })
        {
            return answer with { Value = EntryPresence.Of(entries, rule, answer.Input) };
        }

        if (answer.Value is PresenceValue)
        {
            return answer;
        }

        if (answer.Absence is { Reason: AbsenceReason.MissingInput } absence)
        {
            return answer with { Value = new PresenceValue(PresenceLevel.Absent, []), Absence = absence };
        }

        if (answer.Value is null || quantity.Kind == ValueKind.Presence)
        {
            return answer;
        }

        var level = answer.Origin == Origin.Assumed ? PresenceLevel.Absent : PresenceLevel.Stated;
        return answer with { Value = new PresenceValue(level, []), Unit = null };
    }
}

using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Evaluation;

/// <summary>Bounds against a date, before it is known which row of a table speaks.</summary>
internal static class Periods
{
    /// <summary>Whether any figure of the bound is in force on the date.</summary>
    public static bool MayHold(CheckedBound bound, DateOnly date) => Sources(bound).Any(source => Validity.Holds(source, date));

    /// <summary>Whether a miss of the bound on the date could fail a plan.</summary>
    public static bool CouldFail(CheckedBound bound, DateOnly date) =>
        bound.Definition.Strength == Strength.Required
        && Sources(bound).Any(source => Validity.Holds(source, date)
            && GateStatus.CanFail(source.Evidence, bound.Layer, bound.Limit is CheckedQuantity));

    /// <summary>Why the bounds of a rule are not in force, each reason once.</summary>
    public static IReadOnlyList<Note> Notes(CheckedRule rule, DateOnly date) =>
    [
        .. rule.Bounds
            .Select(bound => Validity.Note(Sources(bound).First(), date, bound.Definition.Strength))
            .OfType<Note>(),
    ];

    private static IEnumerable<SourceReference> Sources(CheckedBound bound) => bound.Limit is CheckedTable table
        ? table.Rows.Select(row => row.Source)
        : [bound.Definition.Source];
}

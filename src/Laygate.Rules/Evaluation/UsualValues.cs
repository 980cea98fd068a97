using Laygate.Engineering.Quantities;
using Laygate.Engineering.Quantities.Values;
using Laygate.Model.Measures;
using Laygate.Rules.Binding;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>
/// Holds every stated number against what is usual. A plan states some hundred and fifty: that each is usual is no news, so only the others are findings.
/// </summary>
internal static class UsualValues
{
    /// <summary>One finding for each number and rule that it misses, in plan order.</summary>
    public static IEnumerable<(CheckedRule Rule, Finding Finding)> Of(RuleBook book, QuantityContext context, RuleEvaluation evaluation) =>
        from value in context.Elements.Values
        from missed in book.Usual.Missed(value)
        select (missed.Rule, Hinted(evaluation.Evaluate(missed.Rule, PlanElements.OfValue(value)), value, missed.Range));

    /// <summary>What one rule says of every number, also where it is met: for cases, which look at one of them.</summary>
    public static IEnumerable<(CheckedRule Rule, Finding Finding)> Of(RuleBook book, QuantityContext context, RuleEvaluation evaluation, string only) =>
        from rule in book.On(ElementKind.Value)
        where string.Equals(rule.Definition.Id, only, StringComparison.Ordinal)
        from value in context.Elements.Values
        select (rule, evaluation.Evaluate(rule, PlanElements.OfValue(value)));

    // The remark of a row says why its range is usual; how a publication was read is another matter.
    private static Finding Hinted(Finding finding, StatedValue value, CheckedRange range) => finding with
    {
        Notes =
        [
            .. value.Measure is { } measure && Meant(measure, range) is { } unit ? [Slip(measure, unit)] : (Note[])[],
            .. finding.Notes.Select(note => string.Equals(note.Id, FindingNotes.RowRemark, StringComparison.Ordinal) ? note with { Id = FindingNotes.UsualBecause } : note),
        ],
    };

    // The unit in which the same number would be usual: one of the family in which it is written, then the one nearest to the middle of the range.
    private static Unit? Meant(IMeasure measure, CheckedRange range) => UnitTable.Of(measure.Unit.Dimension)
        .Where(unit => unit.Spelling is not ("C" or "F") && UsualRanges.Has(range, unit.ToSi(measure.Number), unit.Dimension))
        .OrderBy(unit => unit.System == measure.Unit.System ? 0 : 1)
        .ThenBy(unit => FromMiddle(unit.ToSi(measure.Number), range))
        .FirstOrDefault();

    private static double FromMiddle(double si, CheckedRange range) => (range.Low?.Si, range.High?.Si) switch
    {
        ( > 0 and var low, > 0 and var high) when si > 0 => Math.Abs(Math.Log(si * si / (low * high))),
        (var low, var high) => Math.Abs(si - (((low ?? 0) + (high ?? 0)) / 2)),
    };

    private static Note Slip(IMeasure measure, Unit meant) => new(FindingNotes.UnitSlip,
    [
        new NoteArgument("meant", null, measure.Number, meant.Spelling), new NoteArgument("same", null, measure.Unit.FromSi(meant.ToSi(measure.Number)), measure.Unit.Spelling),
    ]);
}

using Laygate.Engineering.Quantities;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sheets;

/// <summary>Decides nothing about the plan, only whether its sheet may be made: a plan that fails gets none unless it is marked as a draft.</summary>
internal static class SheetOf
{
    /// <summary>The sheet; null when the plan fails and no draft was asked for.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="report">Its report.</param>
    /// <param name="book">The rule book that it was judged by.</param>
    /// <param name="issued">Day on which the sheet is made.</param>
    /// <param name="draft">Whether a draft was asked for.</param>
    public static SiteSheet? Make(QuantityContext context, Report report, RuleBook book, DateOnly issued, bool draft) =>
        report.Counts.Failed > 0 && !draft ? null : new SheetBuilder(context, report, book).Build(issued, draft);
}

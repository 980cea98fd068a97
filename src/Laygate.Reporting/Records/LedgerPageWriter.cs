using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The ledger as one page that stands alone, for a phone as for a desk: no script, no request.</summary>
public static class LedgerPageWriter
{
    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="report">The ledger.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="place">Where it stands in a service; null for a page that stands alone.</param>
    public static void Write(LedgerReport report, Stream output, RecordPlace? place = null) =>
        HtmlWriter.Render<LedgerPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(LedgerPage.Report)] = report, [nameof(LedgerPage.Place)] = place });
}

using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What became of the limits as one page beside that of the plan; it stands alone, without script or request.</summary>
public static class HeldPageWriter
{
    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="report">The report.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="place">Where it stands in a service; null for a page that stands alone.</param>
    public static void Write(HeldReport report, Stream output, RecordPlace? place = null) =>
        HtmlWriter.Render<HeldPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(HeldPage.Report)] = report, [nameof(HeldPage.Place)] = place });
}

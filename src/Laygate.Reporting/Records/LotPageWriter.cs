using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The lot report as one page that stands alone.</summary>
public static class LotPageWriter
{
    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="report">The report.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(AcceptanceReport report, Stream output) =>
        HtmlWriter.Render<LotPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(LotPage.Report)] = report });
}

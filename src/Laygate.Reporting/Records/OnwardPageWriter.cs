using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The rest of a shift as one page that stands alone, for a phone as for a desk: no script, no request.</summary>
public static class OnwardPageWriter
{
    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="report">The rest of the shift.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(OnwardReport report, Stream output) =>
        HtmlWriter.Render<OnwardPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(OnwardPage.Report)] = report });
}

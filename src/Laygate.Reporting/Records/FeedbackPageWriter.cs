using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>Which warnings came true as one page; it stands alone, without script or request.</summary>
public static class FeedbackPageWriter
{
    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="report">The report.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(FeedbackReport report, string version, Stream output) =>
        HtmlWriter.Render<FeedbackPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(FeedbackPage.Report)] = report, [nameof(FeedbackPage.Version)] = version });
}

using Laygate.Reporting.Html;

namespace Laygate.Reporting.Records;

/// <summary>Measured against computed temperatures as one page; it stands alone, without script or request.</summary>
public static class MeasuredPageWriter
{
    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="report">The report.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(MeasuredRun report, string version, Stream output) =>
        HtmlWriter.Render<MeasuredPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(MeasuredPage.Report)] = report, [nameof(MeasuredPage.Version)] = version });
}

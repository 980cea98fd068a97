using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What a trial length proves as one page; it stands alone, without script or request.</summary>
public static class TrialPageWriter
{
    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="report">The report.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(TrialReport report, string version, Stream output) =>
        HtmlWriter.Render<TrialPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(TrialPage.Report)] = report, [nameof(TrialPage.Version)] = version });
}

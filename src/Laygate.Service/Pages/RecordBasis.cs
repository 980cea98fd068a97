using System.Globalization;
using Laygate.Register;
using Laygate.Reporting.Records;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>By what a page of a record is computed today, and by what its submission was screened, where the two differ.</summary>
internal static class RecordBasis
{
    // As many digits as tell two rule books apart on a screen; the whole hash stands at the foot of the page and beside the submission.
    private const int Shown = 12;

    /// <summary>The place of a page.</summary>
    /// <param name="one">The submission; null where there is none, which has been said.</param>
    /// <param name="book">Hash of the rule book in force.</param>
    /// <param name="rules">Whether the page is judged by rules.</param>
    public static RecordPlace? Of(Submission? one, string book, bool rules) =>
        one is null ? null : new RecordPlace($"/submissions/{one.Id}", "Back to the submission", [.. Says(one.Report, book, rules)]);

    /// <summary>By what it is computed, where it must be said.</summary>
    /// <param name="report">The report of the submission; null without one.</param>
    /// <param name="book">Hash of the rule book in force.</param>
    /// <param name="rules">Whether the page is judged by rules.</param>
    internal static IEnumerable<string> Says(ReportSummary? report, string book, bool rules)
    {
        var today = Named(CheckDesk.Version, book, rules);
        if (report is null)
        {
            yield return $"Computed today with {today}. The submission has no report to compare it with.";
            yield break;
        }

        var isOther = !string.Equals(report.ProgramVersion, CheckDesk.Version, StringComparison.Ordinal) || (rules && !string.Equals(report.BookHash, book, StringComparison.Ordinal));
        if (isOther)
        {
            yield return $"Computed today with {today}; the submission was screened on {report.At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} with {Named(report.ProgramVersion, report.BookHash, rules)}. What is said here may differ from its report.";
        }
    }

    private static string Named(string version, string book, bool rules) => rules ? $"Laygate {version} and rules {book[..Math.Min(Shown, book.Length)]}" : $"Laygate {version}";
}

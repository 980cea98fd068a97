using Laygate.Register;
using Laygate.Rules.Comparing;
using Laygate.Rules.Results;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>What the report on one revision says otherwise than that on an earlier one.</summary>
/// <param name="From">The earlier revision.</param>
/// <param name="Plans">Their plans side by side.</param>
/// <param name="BookChanged">Whether the two stand on different rule books.</param>
/// <param name="WhyNot">Why nothing was compared; null where something was.</param>
public sealed record RevisionChanges(Submission From, IReadOnlyList<PlanComparison> Plans, bool BookChanged, string? WhyNot)
{
    /// <summary>Compares the latest reports of two revisions.</summary>
    /// <param name="from">The earlier revision.</param>
    /// <param name="earlier">Its report; null when there is none.</param>
    /// <param name="later">The report on the later one; null when there is none.</param>
    internal static RevisionChanges Between(Submission from, StoredReport? earlier, StoredReport? later)
    {
        if (earlier is null || later is null)
        {
            return new RevisionChanges(from, [], false, "One of the two is not screened, so the findings are not compared.");
        }

        try
        {
            var (old, now) = (StoredReports.Read(earlier).Files, StoredReports.Read(later).Files);
            return old.Any(file => file.Problems.Count > 0) || now.Any(file => file.Problems.Count > 0)
                ? new RevisionChanges(from, [], false, "One of the two could not be read, so the findings are not compared.")
                : new RevisionChanges(
                    from,
                    ReportPairs.Compare([.. old.SelectMany(file => file.Reports)], [.. now.SelectMany(file => file.Reports)]),
                    !string.Equals(earlier.Summary.BookHash, later.Summary.BookHash, StringComparison.Ordinal),
                    null);
        }
        catch (UnreadableReportException)
        {
            return new RevisionChanges(from, [], false, "One of the two reports is of a version of the program that is not read any more, so the findings are not compared.");
        }
    }
}

using Laygate.Register;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Service.Checking;

/// <summary>What was written on the findings of a report.</summary>
internal static class Threads
{
    /// <summary>What names a finding in every revision.</summary>
    /// <param name="reports">All reports of the submission.</param>
    /// <param name="report">The one in which it stands.</param>
    /// <param name="finding">The finding.</param>
    /// <remarks>Where a file holds one plan its id may change between two revisions, as where they are compared.</remarks>
    public static FindingKey Key(IReadOnlyCollection<Report> reports, Report report, Finding finding) => new(reports.Count == 1 ? string.Empty : report.PlanId, finding.Rule, finding.Address);

    /// <summary>Whether a finding stays: it still asks for something. What passes, or no longer applies, is settled.</summary>
    public static bool Stays(Finding finding) => FindingGroups.Of(finding) is not (FindingGroup.Passed or FindingGroup.NotApplicable);

    /// <summary>Keys of the findings of a report that can be written on.</summary>
    public static IEnumerable<FindingKey> Keys(IReadOnlyCollection<Report> reports) =>
        reports.SelectMany(report => report.Findings.Where(Stays).Select(finding => Key(reports, report, finding)));

    /// <summary>Whether what was written on a finding waits for an answer: its last comment says so.</summary>
    public static bool IsOpen(IEnumerable<FindingComment> thread) => thread.Last().LeavesOpen;

    /// <summary>The findings that stay and whose comments are open, as a decision writes them down: rule and address, each on a line; null where there is none.</summary>
    /// <param name="reports">The reports that the decision rests on.</param>
    /// <param name="comments">All comments of the series.</param>
    public static string? Open(IReadOnlyCollection<Report> reports, IReadOnlyList<FindingComment> comments)
    {
        var stays = Keys(reports).ToHashSet();
        List<string> open = [.. comments.GroupBy(comment => comment.Finding).Where(thread => IsOpen(thread) && stays.Contains(thread.Key)).Select(thread => Line(thread.Key))];
        return open.Count > 0 ? string.Join('\n', open) : null;
    }

    private static string Line(FindingKey key) => string.Join(' ', new[] { key.Rule, key.Plan, key.Address }.Where(part => part.Length > 0));
}

/// <summary>Comments of submissions together with the reports that they are about.</summary>
internal sealed class FindingTalk(RegisterReader reader, Comments comments)
{
    /// <summary>Writes a comment on a finding of the latest report.</summary>
    /// <exception cref="RefusedException">The report has no such finding, or the register refuses it.</exception>
    public async Task<FindingComment> AddAsync(string id, FindingKey finding, string? text, bool leavesOpen, Caller caller, CancellationToken cancel)
    {
        if (await reader.ReportAsync(id, null, caller, cancel) is { } report && !Threads.Keys(Reports(report)).Contains(finding))
        {
            throw new RefusedException(Refusal.BadRequest, "The latest report has no such finding that asks for anything. Read it again.");
        }

        return await comments.AddAsync(id, finding, text, leavesOpen, caller, cancel);
    }

    /// <summary>What is open when a submission is decided on; null: nothing.</summary>
    public async Task<string?> OpenAsync(string id, Caller caller, CancellationToken cancel) =>
        await reader.FindAsync(id, caller, cancel) is { } one
        && await comments.ListAsync(one.Series, one.Revision, caller, cancel) is { Count: > 0 } said
        && await reader.ReportAsync(id, null, caller, cancel) is { } report
            ? Threads.Open(Reports(report), said)
            : null;

    private static List<Report> Reports(StoredReport report) => [.. StoredReports.Read(report).Files.SelectMany(file => file.Reports)];
}

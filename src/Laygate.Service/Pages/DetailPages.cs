using Laygate.Register;
using Laygate.Reporting.Runs;
using Laygate.Service.Access;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>The page of one submission, put together from what the register holds.</summary>
internal sealed class DetailPages(RegisterReader reader, Comments comments, ShiftRecords records, KeptForms kept, RegisterSettings settings)
{
    /// <summary>The page; it says why what was written on it was not taken, where something is given.</summary>
    /// <param name="context">The request.</param>
    /// <param name="id">Id of the submission.</param>
    /// <param name="list">The list from which it was opened; null: from none.</param>
    /// <param name="drafts">What was written and not taken; null: what was kept of an earlier time.</param>
    /// <param name="status">Status of the answer.</param>
    /// <param name="cancel">Ends it.</param>
    /// <param name="undone">Why something else was not done; null: nothing else was asked for.</param>
    public async Task<IResult> ShowAsync(HttpContext context, string id, QueueQuery? list, Drafts? drafts, int status, CancellationToken cancel, string? undone = null)
    {
        drafts ??= PageTexts.Of(await kept.ReadAsync(context, FormPages.Submission(id), cancel)).Drafts(isKept: true);
        var caller = Callers.Need(context);
        if (await reader.WithReportAsync(id, caller, cancel) is not { } shown || await reader.TextAsync(id, caller, cancel) is not { } text)
        {
            return TypedResults.NotFound();
        }

        var one = shown.Submission;
        var revisions = await reader.RevisionsAsync(one.Series, caller, cancel);
        return PageResults.Page<SubmissionDetailPage>(
            context,
            PageRoutes.Values(
                ("One", one),
                ("Report", shown.Report is { } report ? await ViewAsync(id, report, caller, cancel) : null),
                ("Files", TextFile.Of(one.FileName, text, one.Files == 0 ? [] : (await reader.FilesAsync(id, caller, cancel)).Select(file => (file.Name, file.Bytes)))),
                ("Settings", settings),
                ("Records", await records.ListAsync(id, caller, cancel)),
                ("Revisions", revisions),
                ("History", shown.History),
                ("Last", await reader.LastDecisionAsync(one.Series, one.Revision, caller, cancel)),
                ("Changes", shown.Report is { } later && revisions.LastOrDefault(other => other.Revision < one.Revision) is { } before
                    ? RevisionChanges.Between(before, await reader.ReportAsync(before.Id, null, caller, cancel), later)
                    : null),
                ("List", list?.Text),
                ("Next", list is null ? null : await reader.NextAsync(id, list.Filter(caller), list.Order, list.Descending, caller, cancel)),
                ("Recorded", context.Request.Query["decided"] is [{ Length: > 0 } decided] ? await reader.FindAsync(decided, caller, cancel) : null),
                ("Drafts", drafts),
                ("Undone", undone),
                ("Said", new CommentsOnPage(id, await comments.ListAsync(one.Series, one.Revision, caller, cancel), one.Latest && shown.Report is not null, drafts.Comments))),
            status);
    }

    private async Task<ReportView> ViewAsync(string id, StoredReport report, Caller caller, CancellationToken cancel) => ReportView.Of(
        ReportedRun.Of(StoredReports.Read(report)),
        Pictures.Read(await reader.PicturesAsync(id, report.Summary.Screening, caller, cancel)));
}

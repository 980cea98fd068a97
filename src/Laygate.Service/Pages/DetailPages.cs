using Laygate.Register;
using Laygate.Reporting.Runs;
using Laygate.Service.Access;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>The page of one submission, put together from what the register holds.</summary>
internal sealed class DetailPages(RegisterReader reader, RegisterSettings settings)
{
    /// <summary>The page; it says why a decision was not recorded, where one is given.</summary>
    /// <param name="context">The request.</param>
    /// <param name="id">Id of the submission.</param>
    /// <param name="draft">A decision that was not recorded; null: none.</param>
    /// <param name="status">Status of the answer.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IResult> ShowAsync(HttpContext context, string id, DecisionDraft? draft, int status, CancellationToken cancel)
    {
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
                ("Revisions", revisions),
                ("History", shown.History),
                ("Last", await reader.LastDecisionAsync(one.Series, one.Revision, caller, cancel)),
                ("Changes", shown.Report is { } later && revisions.LastOrDefault(other => other.Revision < one.Revision) is { } before
                    ? RevisionChanges.Between(before, await reader.ReportAsync(before.Id, null, caller, cancel), later)
                    : null),
                ("Draft", draft)),
            status);
    }

    private async Task<ReportView> ViewAsync(string id, StoredReport report, Caller caller, CancellationToken cancel) => ReportView.Of(
        ReportedRun.Of(StoredReports.Read(report)),
        Pictures.Read(await reader.PicturesAsync(id, report.Summary.Screening, caller, cancel)));
}

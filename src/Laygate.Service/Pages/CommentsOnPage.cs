using Laygate.Register;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>A comment that was not written, so that its form can be shown again with nothing lost.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Error">Why not, and what to do; null: it was not sent.</param>
/// <param name="Text">The comment as it was written.</param>
public sealed record CommentDraft(FindingKey Finding, string? Error, string Text);

/// <summary>The comments on the findings of a page.</summary>
/// <param name="Id">Id of the submission.</param>
/// <param name="Said">All comments of the series up to this revision, the oldest first.</param>
/// <param name="MayWrite">Whether the reader may write.</param>
/// <param name="Drafts">Comments that were not written.</param>
public sealed record CommentsOnPage(string Id, IReadOnlyList<FindingComment> Said, bool MayWrite, IReadOnlyList<CommentDraft> Drafts)
{
    private readonly ILookup<FindingKey, FindingComment> threads = Said.ToLookup(comment => comment.Finding);

    /// <summary>What was written on a finding, the oldest first.</summary>
    public IReadOnlyList<FindingComment> On(FindingKey finding) => [.. threads[finding]];

    /// <summary>The findings of a page that stay and wait for an answer.</summary>
    public IReadOnlyList<FindingView> Open(ReportView report) =>
        [.. report.Plans.SelectMany(plan => plan.Findings).Where(view => Threads.Stays(view.Finding) && threads.Contains(view.Key) && Threads.IsOpen(threads[view.Key]))];

    /// <summary>What was written on findings that a page no longer has, or that pass now.</summary>
    public IReadOnlyList<IGrouping<FindingKey, FindingComment>> Settled(ReportView report)
    {
        var stay = report.Plans.SelectMany(plan => plan.Findings).Where(view => Threads.Stays(view.Finding)).Select(view => view.Key).ToHashSet();
        return [.. threads.Where(thread => !stay.Contains(thread.Key))];
    }
}

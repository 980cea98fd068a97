using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>
/// Comments on findings, by reviewers and by who submitted the plan. They belong to the series of revisions: what was written on a finding stands beside it in every
/// later revision that still has it. The last comment on a finding says whether it is open or answered.
/// </summary>
public sealed class Comments(RegisterDatabase database)
{
    /// <summary>Most comments of one series: far above what people write, far below what a page can hold (our judgement).</summary>
    public const int Most = 2000;

    /// <summary>Writes a comment.</summary>
    /// <param name="id">Id of the submission; the latest revision of its series.</param>
    /// <param name="finding">The finding, which the caller has seen in the latest report.</param>
    /// <param name="text">What is written.</param>
    /// <param name="leavesOpen">Whether the finding then waits for an answer.</param>
    /// <param name="caller">Who writes: whoever submitted it, or a reviewer.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">There is no such submission for the caller, it is superseded or has no report, or the text is missing, too long or odd.</exception>
    public Task<FindingComment> AddAsync(string id, FindingKey finding, string? text, bool leavesOpen, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        CallerText.Id(finding.Rule);
        CallerText.Id(finding.Address);
        var said = CallerText.Prose(text, "The comment") ?? throw new RefusedException(Refusal.BadRequest, "Write the comment first.");
        return database.InTransactionAsync(
            async context =>
            {
                var row = await context.HeldAsync(id, cancel);
                if (row is null || (!caller.SeesAll && !Decisions.IsOwn(row, caller)))
                {
                    throw new RefusedException(Refusal.NotFound, "There is no submission of that id.");
                }

                await OpenAsync(context, row, cancel);
                var comment = new CommentRow
                {
                    Number = row.Number,
                    Series = row.Series,
                    Plan = finding.Plan,
                    Rule = finding.Rule,
                    Address = finding.Address,
                    At = database.Now,
                    By = caller.Id,
                    ByName = caller.Name,
                    Text = said,
                    LeavesOpen = leavesOpen,
                };
                context.Comments.Add(comment);
                var entry = Mapping.Note(context, row, RegisterEvent.Commented, caller, comment.At, FormattableString.Invariant($"{finding.Rule} {finding.Address}: {(leavesOpen ? "open" : "answered")}"));
                entry.Tell = leavesOpen ? NoticeEvent.CommentOpen : null;
                return ToComment(comment, row.Revision);
            },
            Moment.DecisionBeforeCommit,
            Moment.DecisionCommitted,
            cancel);
    }

    /// <summary>The comments of a series that were written up to one of its revisions, the oldest first; empty when the caller may not see it.</summary>
    /// <param name="series">Id of the first revision.</param>
    /// <param name="revision">The last revision that counts.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IReadOnlyList<FindingComment>> ListAsync(string series, int revision, Caller caller, CancellationToken cancel)
    {
        await using var context = database.Open();
        var rows = await context.Submissions.AsNoTracking().Where(row => row.Series == series && row.Revision <= revision && (caller.SeesAll || row.Submitter == caller.Id))
            .Join(context.Comments, row => row.Number, comment => comment.Number, (row, comment) => new { row.Revision, Comment = comment })
            .OrderBy(one => one.Comment.Entry).ToListAsync(cancel);
        return [.. rows.Select(one => ToComment(one.Comment, one.Revision))];
    }

    private static async Task OpenAsync(RegisterContext context, SubmissionRow row, CancellationToken cancel)
    {
        if (!row.IsLatest)
        {
            throw new RefusedException(Refusal.WrongState, "A later revision was submitted. Write on that one.");
        }

        if (row.ReportScreening is null)
        {
            throw new RefusedException(Refusal.WrongState, "There is no report to write on yet.");
        }

        if (await context.Comments.CountAsync(comment => comment.Series == row.Series, cancel) >= Most)
        {
            throw new RefusedException(Refusal.WrongState, FormattableString.Invariant($"There are {Most} comments already. Say the rest in the decision, or by telephone."));
        }
    }

    internal static FindingComment ToComment(CommentRow row, int revision) =>
        new(new FindingKey(row.Plan, row.Rule, row.Address), revision, row.At, row.By, row.ByName, row.Text, row.LeavesOpen);
}

using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>Takes submissions and decisions. Whatever it answers is on disk.</summary>
public sealed class SubmissionRegister(RegisterDatabase database)
{
    private readonly Decisions decisions = new(database.Settings);

    /// <summary>Takes a submission and queues it for screening.</summary>
    /// <param name="submission">The plan, with what came with it.</param>
    /// <param name="caller">Who hands it in.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <returns>The submission, and whether it is new: false when the same request had been taken before.</returns>
    /// <exception cref="RefusedException">The revised submission is not the caller's, or the idempotency key came with another content before.</exception>
    public async Task<(Submission Submission, bool IsNew)> SubmitAsync(NewSubmission submission, Caller caller, CancellationToken cancel)
    {
        Check(submission);
        var content = Mapping.Hash(System.Text.Encoding.UTF8.GetBytes(Content(submission)));
        if (await EarlierAsync(submission, content, caller, cancel) is { } earlier)
        {
            return (earlier, false);
        }

        try
        {
            var row = await database.InTransactionAsync(
                context => AddAsync(context, submission, content, caller, cancel), Moment.SubmissionBeforeCommit, Moment.SubmissionCommitted, cancel);
            return (Mapping.ToSubmission(row, null), true);
        }
        catch (DbUpdateException) when (submission.IdempotencyKey is not null)
        {
            // The same request ran twice at the same moment, and the other one was first.
            if (await EarlierAsync(submission, content, caller, cancel) is not { } other)
            {
                throw;
            }

            return (other, false);
        }
    }

    /// <summary>Writes a reviewer's decision.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="version">Version of the submission that the reviewer has seen.</param>
    /// <param name="verdict">The decision.</param>
    /// <param name="comment">Why; needed unless a plan without failures is accepted that was not decided before.</param>
    /// <param name="caller">Who decides; not who has submitted it, unless the settings allow that.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <param name="openComments">The findings on which comments are open in the version that the reviewer has seen, as rule and address, each on a line; null: none.</param>
    /// <returns>The submission; its state stays where the settings ask for a second reviewer.</returns>
    /// <exception cref="RefusedException">The caller may not decide, something has changed meanwhile, a later revision was submitted, the decision does not say what it must, or there is no report to decide on.</exception>
    public async Task<Submission> DecideAsync(string id, long version, Verdict verdict, string? comment, Caller caller, CancellationToken cancel, string? openComments = null)
    {
        MayDecide(caller);
        CallerText.Id(id);
        var said = CallerText.Prose(comment, "The comment");
        if (said is null && verdict != Verdict.Accepted)
        {
            throw new RefusedException(Refusal.BadRequest, "Say why: a comment is needed to return a plan or to accept it with departures.");
        }

        return await database.InTransactionAsync(
            context => DecideAsync(context, id, version, verdict, (said, openComments), caller, cancel), Moment.DecisionBeforeCommit, Moment.DecisionCommitted, cancel);
    }

    /// <summary>Takes a submission to review it, from nobody or from another reviewer.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="version">Version of the submission that the reviewer has seen, so that of two who take it at once one knows.</param>
    /// <param name="caller">Who takes it.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">The caller may not decide on it, it is superseded, or something has changed meanwhile.</exception>
    public Task<Submission> TakeAsync(string id, long version, Caller caller, CancellationToken cancel) => AssignAsync(
        id,
        version,
        row =>
        {
            decisions.MayTake(row, caller);
            (row.Assignee, row.AssigneeName) = (caller.Id, caller.Name);
            return RegisterEvent.Taken;
        },
        caller,
        cancel);

    /// <summary>Gives a submission back to the queue.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="version">Version of the submission that the reviewer has seen.</param>
    /// <param name="caller">Who had taken it, or an administrator.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">Nobody or another has taken it, or something has changed meanwhile.</exception>
    public Task<Submission> ReleaseAsync(string id, long version, Caller caller, CancellationToken cancel) => AssignAsync(
        id,
        version,
        row =>
        {
            Decisions.MayRelease(row, caller);
            (row.Assignee, row.AssigneeName) = (null, null);
            return RegisterEvent.Released;
        },
        caller,
        cancel);

    /// <summary>Queues another screening, for example under a new edition of a specification. The earlier reports stay.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="reason">Why.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">The caller may not, no reason is given or it is too long, or it is decided or not screened yet.</exception>
    public Task<Submission> RescreenAsync(string id, string reason, Caller caller, CancellationToken cancel)
    {
        MayDecide(caller);
        CallerText.Id(id);
        var said = Reason(reason);
        return database.InTransactionAsync(
            context => RescreenAsync(context, id, said, caller, cancel), Moment.DecisionBeforeCommit, Moment.DecisionCommitted, cancel);
    }

    /// <summary>Queues another screening of every latest revision that is not decided and whose report stands on another rule book.</summary>
    /// <param name="bookHash">Hash of the rule book now in force.</param>
    /// <param name="reason">Why.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it between two submissions.</param>
    /// <returns>Ids of the submissions that are screened again.</returns>
    public async Task<IReadOnlyList<string>> RescreenOpenAsync(string bookHash, string reason, Caller caller, CancellationToken cancel)
    {
        MayDecide(caller);
        var said = Reason(reason);
        var ids = await OutdatedAsync(bookHash, cancel);
        foreach (var id in ids)
        {
            await RescreenAsync(id, said, caller, cancel);
        }

        return ids;
    }

    /// <summary>Open submissions whose report stands on another rule book, in the order of receipt: those that <see cref="RescreenOpenAsync"/> screens again.</summary>
    /// <param name="bookHash">Hash of the rule book that holds now.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IReadOnlyList<string>> OutdatedAsync(string bookHash, CancellationToken cancel)
    {
        await using var context = database.Open();
        return await (
            from row in context.Submissions
            join report in context.Reports on new { row.Number, Screening = row.ReportScreening!.Value } equals new { report.Number, report.Screening }
            where row.IsLatest && (row.State == SubmissionState.Screened || row.State == SubmissionState.FailedToRead) && report.BookHash != bookHash
            orderby row.Number
            select row.Id).ToListAsync(cancel);
    }

    private static void Check(NewSubmission submission)
    {
        foreach (var name in submission.Files.Append(submission.Archive).OfType<HandedFile>().Select(file => file.Name).Prepend(submission.FileName))
        {
            CallerText.FileName(name);
        }

        if (submission.RevisionOf is { } of)
        {
            CallerText.Id(of);
        }

        if (submission.IdempotencyKey is { } key)
        {
            CallerText.IdempotencyKey(key);
        }
    }

    // What the same request must bring again; of a plan by itself as it always was, so that keys of an earlier version still hold.
    private static string Content(NewSubmission submission) => $"{submission.FileName}\n{submission.RevisionOf}\n{Mapping.Hash(submission)}"
        + (submission.Archive is { } archive ? $"\n{archive.Name}\n{Mapping.Hash(archive.Bytes)}" : string.Empty);

    private static string Reason(string? reason) =>
        CallerText.Prose(reason, "The reason") ?? throw new RefusedException(Refusal.BadRequest, "Say why it is screened again.");

    private static void MayDecide(Caller caller)
    {
        if (!caller.SeesAll)
        {
            throw new RefusedException(Refusal.NotAllowed, "Only a reviewer may do this.");
        }
    }

    private async Task<Submission?> EarlierAsync(NewSubmission submission, string content, Caller caller, CancellationToken cancel)
    {
        if (submission.IdempotencyKey is not { } key)
        {
            return null;
        }

        await using var context = database.Open();
        var since = database.Now - database.Settings.IdempotencyFor;
        var known = await context.Idempotency.FirstOrDefaultAsync(row => row.Caller == caller.Id && row.Key == key && row.At >= since, cancel);
        if (known is null)
        {
            return null;
        }

        return string.Equals(known.ContentHash, content, StringComparison.Ordinal)
            ? Mapping.ToSubmission(await context.Submissions.FirstAsync(row => row.Id == known.SubmissionId, cancel), null)
            : throw new RefusedException(Refusal.KeyUsedOtherwise, "This idempotency key came with another plan before. Use a new key for a new request.");
    }

    private async Task<SubmissionRow> AddAsync(RegisterContext context, NewSubmission submission, string content, Caller caller, CancellationToken cancel)
    {
        var now = database.Now;
        var id = database.NewId();
        var (series, revision, previous) = await PreviousAsync(context, submission.RevisionOf, caller, now, cancel) ?? (id, 1, null);
        var row = new SubmissionRow
        {
            Id = id,
            Series = series,
            Revision = revision,
            IsLatest = true,
            RevisionOf = previous,
            FileName = submission.FileName,
            TextHash = Mapping.Hash(submission),
            Submitter = caller.Id,
            SubmitterName = caller.Name,
            State = SubmissionState.Received,
            ReceivedAt = now,
            ChangedAt = now,
            SearchText = string.Empty,
            Files = submission.Files.Count,
            ArchiveName = submission.Archive?.Name,
        };
        row.SearchText = Mapping.SearchText(row);
        context.Submissions.Add(row);
        await context.SaveChangesAsync(cancel);
        context.Texts.Add(new TextRow { Number = row.Number, Text = submission.Text });
        context.Files.AddRange(submission.Files.Select((file, place) => new FileRow { Number = row.Number, Place = place + 1, Name = file.Name, Bytes = file.Bytes }));
        if (submission.Archive is { } archive)
        {
            context.Archives.Add(new ArchiveRow { Number = row.Number, Bytes = archive.Bytes });
        }

        context.Jobs.Add(new JobRow { Number = row.Number, Screening = 1, DueAt = now });
        Mapping.Note(context, row, RegisterEvent.Received, caller, now);
        await RememberAsync(context, submission, content, id, caller, now, cancel);
        return row;
    }

    // Entries that have run out go, whose ever they are: none is kept for longer than is said.
    private async Task RememberAsync(
        RegisterContext context, NewSubmission submission, string content, string id, Caller caller, DateTimeOffset now, CancellationToken cancel)
    {
        if (submission.IdempotencyKey is not { } key)
        {
            return;
        }

        var since = now - database.Settings.IdempotencyFor;
        await context.Idempotency.Where(row => row.At < since).ExecuteDeleteAsync(cancel);
        context.Idempotency.Add(new IdempotencyRow { Caller = caller.Id, Key = key, ContentHash = content, SubmissionId = id, At = now });
    }

    // The first of the series is held, so that two revisions at the same moment get two numbers.
    private static async Task<(string Series, int Revision, string? Previous)?> PreviousAsync(
        RegisterContext context, string? of, Caller caller, DateTimeOffset now, CancellationToken cancel)
    {
        if (of is null)
        {
            return null;
        }

        var named = await context.Submissions.AsNoTracking().FirstOrDefaultAsync(row => row.Id == of, cancel);
        if (named is null || (!string.Equals(named.Submitter, caller.Id, StringComparison.Ordinal) && !caller.SeesAll))
        {
            throw new RefusedException(Refusal.NotFound, "There is no submission of that id to revise.");
        }

        _ = await context.HeldAsync(named.Series, cancel);
        var latest = await context.Submissions.AsNoTracking().Where(row => row.Series == named.Series && row.IsLatest).Select(row => row.Id).FirstAsync(cancel);
        var previous = (await context.HeldAsync(latest, cancel))!;
        previous.IsLatest = false;
        Mapping.Note(context, previous, RegisterEvent.Revised, caller, now);
        return (named.Series, previous.Revision + 1, previous.Id);
    }

    private async Task<Submission> DecideAsync(
        RegisterContext context, string id, long version, Verdict verdict, (string? Comment, string? Open) said, Caller caller, CancellationToken cancel)
    {
        var row = await context.HeldAsync(id, cancel) ?? throw NotThere();
        if (decisions.Open(row, version, caller) is not { } screening)
        {
            return ReturnUnscreened(context, row, verdict, said.Comment, caller);
        }

        var report = await context.Reports.AsNoTracking().FirstAsync(one => one.Number == row.Number && one.Screening == screening, cancel);
        decisions.Check(row, report, verdict, said.Comment);
        var (what, state) = await decisions.OutcomeAsync(context, report, verdict, caller, cancel);
        row.State = state ?? row.State;
        Mapping.Note(context, row, what, caller, database.Now, said.Comment, report.Hash, screening, Decisions.IsOwn(row, caller), said.Open);
        return Mapping.ToSubmission(row, RegisterReader.Summary(report));
    }

    // There is no report that it could rest on.
    private Submission ReturnUnscreened(RegisterContext context, SubmissionRow row, Verdict verdict, string? comment, Caller caller)
    {
        if (verdict != Verdict.Returned)
        {
            throw new RefusedException(Refusal.WrongState, "The plan could not be screened. Return it, or have it screened again.");
        }

        row.State = SubmissionState.Returned;
        Mapping.Note(context, row, RegisterEvent.Returned, caller, database.Now, comment, onOwn: Decisions.IsOwn(row, caller));
        return Mapping.ToSubmission(row, null);
    }

    private Task<Submission> AssignAsync(string id, long version, Func<SubmissionRow, RegisterEvent> change, Caller caller, CancellationToken cancel)
    {
        MayDecide(caller);
        CallerText.Id(id);
        return database.InTransactionAsync(
            async context =>
            {
                var row = await context.HeldAsync(id, cancel) ?? throw NotThere();
                if (row.Version != version)
                {
                    throw new RefusedException(Refusal.Changed, "The submission has changed since you looked at it. Read it again.");
                }

                Mapping.Note(context, row, change(row), caller, database.Now);
                return Mapping.ToSubmission(row, await ReportOfAsync(context, row, cancel));
            },
            Moment.DecisionBeforeCommit,
            Moment.DecisionCommitted,
            cancel);
    }

    private static async Task<ReportSummary?> ReportOfAsync(RegisterContext context, SubmissionRow row, CancellationToken cancel) =>
        await context.Reports.AsNoTracking().FirstOrDefaultAsync(one => one.Number == row.Number && one.Screening == row.ReportScreening, cancel) is { } report ? RegisterReader.Summary(report) : null;

    private async Task<Submission> RescreenAsync(RegisterContext context, string id, string reason, Caller caller, CancellationToken cancel)
    {
        var row = await context.HeldAsync(id, cancel) ?? throw NotThere();
        if (row.State is not (SubmissionState.Screened or SubmissionState.FailedToRead or SubmissionState.NotScreened))
        {
            throw new RefusedException(Refusal.WrongState, "Only a submission that waits for a decision is screened again.");
        }

        var next = 1 + await context.Jobs.Where(job => job.Number == row.Number).MaxAsync(job => job.Screening, cancel);
        row.State = SubmissionState.Received;
        context.Jobs.Add(new JobRow { Number = row.Number, Screening = next, DueAt = database.Now });
        Mapping.Note(context, row, RegisterEvent.ScreeningAsked, caller, database.Now, reason, screening: next);
        return Mapping.ToSubmission(row, null);
    }

    private static RefusedException NotThere() => new(Refusal.NotFound, "There is no submission of that id.");
}

using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>
/// The queue of submissions to screen. A worker takes one for the time of a lease and renews it; when the worker dies the
/// lease ends and another takes it. Each claim has a number that only rises, and a report is stored only while the number
/// of its claim is the latest: whatever is done twice counts once.
/// </summary>
public sealed class Screenings(RegisterDatabase database)
{
    private static readonly Caller System = Caller.Program;

    /// <summary>Number of submissions that wait to be screened or are being screened.</summary>
    public async Task<int> UnfinishedAsync(CancellationToken cancel)
    {
        await using var context = database.Open();
        return await context.Jobs.CountAsync(job => job.State == JobState.Queued || job.State == JobState.Leased, cancel);
    }

    /// <summary>Takes one submission that is due; null when there is none.</summary>
    /// <param name="worker">Name of the worker, for whoever looks into the queue.</param>
    /// <param name="cancel">Ends it; nothing is taken then.</param>
    public async Task<Claim?> ClaimAsync(string worker, CancellationToken cancel)
    {
        while (true)
        {
            var (claim, givenUp) = await database.InTransactionAsync(
                context => ClaimAsync(context, worker, cancel), Moment.ClaimBeforeCommit, Moment.ClaimCommitted, cancel);
            if (!givenUp)
            {
                return claim;
            }
        }
    }

    /// <summary>Prolongs a lease.</summary>
    /// <returns>Whether the claim still holds; if not, the work is someone else's.</returns>
    public Task<bool> RenewAsync(Claim claim, CancellationToken cancel) => IfHeldAsync(
        claim,
        (_, job) =>
        {
            job.DueAt = database.Now + database.Settings.Lease;
            return Task.CompletedTask;
        },
        cancel);

    /// <summary>Stores a report together with the new state, in one transaction.</summary>
    /// <returns>Whether the claim still held; if not, nothing was stored.</returns>
    public Task<bool> CompleteAsync(Claim claim, ScreeningResult result, CancellationToken cancel) => IfHeldAsync(
        claim,
        async (context, job) =>
        {
            var row = await HeldAsync(context, claim.Number, cancel);
            var report = Mapping.ToReport(claim, result, database.Now);
            context.Reports.Add(report);
            context.Documents.AddRange(result.Documents.Select(one => new DocumentRow { Number = claim.Number, Screening = claim.Screening, Name = one.Name, Type = one.Type, Policy = one.Policy, Bytes = one.Bytes }));
            if (result.Pictures is { } pictures)
            {
                context.Pictures.Add(new PictureRow { Number = claim.Number, Screening = claim.Screening, Bytes = pictures });
            }

            job.State = JobState.Done;
            job.Worker = null;
            row.ReportScreening = claim.Screening;
            row.SoughtAt = null;
            row.State = result.Readable ? SubmissionState.Screened : SubmissionState.FailedToRead;
            (row.PlanId, row.PlanTitle, row.PlanRevision) = (CallerText.Title(result.Plan?.Id), CallerText.Title(result.Plan?.Title), CallerText.Title(result.Plan?.Revision));
            (row.Stage, row.ShiftDate, row.Contract) = (CallerText.Title(result.Queue?.Stage), result.Queue?.ShiftDate, CallerText.Title(result.Queue?.Contract));
            (row.Worst, row.WorstRank) = (CallerText.Title(result.Queue?.Worst), result.Queue?.WorstRank);
            row.SearchText = Mapping.SearchText(row);
            var entry = Mapping.Note(context, row, result.Readable ? RegisterEvent.Screened : RegisterEvent.FailedToRead, System, database.Now, null, report.Hash, claim.Screening);
            if (result.Changes is { } changes)
            {
                // Nothing is told of a screening that says the same again.
                (entry.Tell, entry.Changes) = (changes.Any ? NoticeEvent.ScreenedAgain : null, changes);
            }
        },
        cancel,
        Moment.ReportBeforeCommit,
        Moment.ReportCommitted);

    /// <summary>Gives a submission back unfinished because the process stops; that is no failure.</summary>
    /// <returns>Whether the claim still held.</returns>
    public Task<bool> HandBackAsync(Claim claim, CancellationToken cancel) => IfHeldAsync(
        claim,
        async (context, job) =>
        {
            (job.State, job.Worker, job.DueAt) = (JobState.Queued, null, database.Now);
            await BackAsync(context, claim, RegisterEvent.HandedBack, null, SubmissionState.Received, cancel);
        },
        cancel);

    /// <summary>Says that an attempt failed. It is tried again after a pause, or given up when too many have failed.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="reason">Why, without content of the plan.</param>
    /// <param name="cancel">Ends it; the lease then ends on its own.</param>
    /// <returns>Whether the claim still held.</returns>
    public Task<bool> FailAsync(Claim claim, string reason, CancellationToken cancel) => IfHeldAsync(
        claim,
        async (context, job) =>
        {
            job.Failures++;
            job.Worker = null;
            if (job.Failures >= database.Settings.MaxFailures)
            {
                await GiveUpAsync(context, job, reason, cancel);
                return;
            }

            (job.State, job.DueAt) = (JobState.Queued, database.Now + (database.Settings.RetryAfter * Math.Pow(2, job.Failures - 1)));
            await BackAsync(context, claim, RegisterEvent.AttemptFailed, reason, SubmissionState.Received, cancel);
        },
        cancel);

    private async Task<(Claim? Claim, bool GivenUp)> ClaimAsync(RegisterContext context, string worker, CancellationToken cancel)
    {
        var now = database.Now;
        if (await context.DueJobAsync(now, cancel) is not { } job)
        {
            return (null, false);
        }

        // A lease that ran out is a failure without a word: whoever held it is dead or too slow.
        job.Failures += job.State == JobState.Leased ? 1 : 0;
        job.Attempt++;
        if (job.Failures >= database.Settings.MaxFailures)
        {
            await GiveUpAsync(context, job, "Each attempt ended without a word.", cancel);
            return (null, true);
        }

        (job.State, job.DueAt, job.Worker) = (JobState.Leased, now + database.Settings.Lease, worker);
        var row = await HeldAsync(context, job.Number, cancel);
        var text = (await context.Texts.FindAsync([job.Number], cancel))!;
        row.State = SubmissionState.Screening;
        Mapping.Note(context, row, RegisterEvent.Claimed, System, now, screening: job.Screening);
        var files = row.Files == 0 ? [] : await context.Files.AsNoTracking().Where(file => file.Number == row.Number).OrderBy(file => file.Place)
            .Select(file => new HandedFile(file.Name, file.Bytes)).ToListAsync(cancel);
        var before = await context.Reports.AsNoTracking().FirstOrDefaultAsync(one => one.Number == row.Number && one.Screening == row.ReportScreening, cancel);
        return (new Claim(row.Id, row.Number, job.Screening, job.Attempt, row.FileName, text.Text, job.DueAt)
        {
            Files = files,
            Before = before is null ? null : new StoredReport(RegisterReader.Summary(before), before.Json),
        }, false);
    }

    private static async Task<SubmissionRow> HeldAsync(RegisterContext context, long number, CancellationToken cancel)
    {
        var id = await context.Submissions.AsNoTracking().Where(row => row.Number == number).Select(row => row.Id).SingleAsync(cancel);
        return (await context.HeldAsync(id, cancel))!;
    }

    private async Task GiveUpAsync(RegisterContext context, JobRow job, string reason, CancellationToken cancel)
    {
        (job.State, job.Worker) = (JobState.GivenUp, null);
        var row = await HeldAsync(context, job.Number, cancel);
        row.State = SubmissionState.NotScreened;
        Mapping.Note(context, row, RegisterEvent.NotScreened, System, database.Now, reason, screening: job.Screening);
    }

    private async Task BackAsync(
        RegisterContext context, Claim claim, RegisterEvent what, string? reason, SubmissionState state, CancellationToken cancel)
    {
        var row = await HeldAsync(context, claim.Number, cancel);
        row.State = state;
        Mapping.Note(context, row, what, System, database.Now, reason, screening: claim.Screening);
    }

    private Task<bool> IfHeldAsync(
        Claim claim,
        Func<RegisterContext, JobRow, Task> work,
        CancellationToken cancel,
        Moment before = Moment.ClaimBeforeCommit,
        Moment after = Moment.ClaimCommitted) => database.InTransactionAsync(
            async context =>
            {
                var job = await context.HeldJobAsync(claim.Number, claim.Screening, cancel);
                if (job is not { State: JobState.Leased } || job.Attempt != claim.Attempt)
                {
                    return false;
                }

                await work(context, job);
                return true;
            },
            before,
            after,
            cancel);
}

using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>Which decisions are taken: who may decide on what, and what a decision needs beside a verdict.</summary>
internal sealed class Decisions(RegisterSettings settings)
{
    /// <summary>What the history calls a decision.</summary>
    public static readonly RegisterEvent[] Made = [RegisterEvent.Accepted, RegisterEvent.AcceptedWithDepartures, RegisterEvent.Returned];

    private static readonly RegisterEvent[] Ends = [RegisterEvent.Accepted, RegisterEvent.AcceptedWithDepartures, RegisterEvent.Returned, RegisterEvent.ScreeningAsked];

    /// <summary>Sees to it that this submission can be decided on at all.</summary>
    /// <returns>Number of the screening that the decision is about; null where every attempt to screen it failed.</returns>
    /// <exception cref="RefusedException">It has changed, is superseded, has no report or is the caller's own.</exception>
    public int? Open(SubmissionRow row, long version, Caller caller)
    {
        if (row.Version != version)
        {
            throw new RefusedException(Refusal.Changed, "The submission has changed since you looked at it. Read it again, then decide.");
        }

        MayTake(row, caller);
        return row.State == SubmissionState.NotScreened ? null
            : row.ReportScreening is { } screening && row.State is not (SubmissionState.Received or SubmissionState.Screening) ? screening
            : throw new RefusedException(Refusal.WrongState, "There is no report to decide on yet.");
    }

    /// <summary>Sees to it that a caller may review this submission.</summary>
    /// <exception cref="RefusedException">It is superseded or the caller's own.</exception>
    public void MayTake(SubmissionRow row, Caller caller)
    {
        if (!row.IsLatest)
        {
            throw new RefusedException(Refusal.WrongState, "A later revision was submitted. Decide on that one.");
        }

        if (IsOwn(row, caller) && !settings.OwnDecisions)
        {
            throw new RefusedException(Refusal.NotAllowed, "You have submitted this plan yourself. Another reviewer decides on it.");
        }
    }

    /// <summary>Sees to it that a caller may give this submission back.</summary>
    /// <exception cref="RefusedException">Nobody has taken it, or another reviewer has.</exception>
    public static void MayRelease(SubmissionRow row, Caller caller)
    {
        if (row.Assignee is null)
        {
            throw new RefusedException(Refusal.WrongState, "Nobody has taken it.");
        }

        if (!string.Equals(row.Assignee, caller.Id, StringComparison.Ordinal) && caller.Role != Role.Administrator)
        {
            throw new RefusedException(Refusal.NotAllowed, $"{row.AssigneeName} has taken it. Only they or an administrator give it back; you may take it yourself.");
        }
    }

    /// <summary>Sees to it that a decision says what it must.</summary>
    /// <exception cref="RefusedException">It does not.</exception>
    public void Check(SubmissionRow row, ReportRow report, Verdict verdict, string? comment)
    {
        if (row.State == SubmissionState.FailedToRead && verdict != Verdict.Returned)
        {
            throw new RefusedException(Refusal.WrongState, "The plan could not be read. It can only be returned.");
        }

        if (comment is null && IsDecided(row.State))
        {
            throw new RefusedException(Refusal.BadRequest, "It is decided already. Say in the comment why the decision changes.");
        }

        if (verdict != Verdict.Accepted || report.Failed == 0)
        {
            return;
        }

        if (settings.AcceptFailing == FailingAcceptance.Departures)
        {
            throw new RefusedException(Refusal.WrongState, "The plan fails. Accept it with departures and name them in the comment, or return it.");
        }

        if (comment is null)
        {
            throw new RefusedException(Refusal.BadRequest, "The plan fails. Say in the comment why it is accepted all the same.");
        }
    }

    /// <summary>What the decision becomes: itself, or the first of two.</summary>
    /// <returns>The event, and the new state; null where the state stays until a second reviewer agrees.</returns>
    /// <exception cref="RefusedException">The same reviewer has accepted it before, or the first accepted it otherwise.</exception>
    public async Task<(RegisterEvent What, SubmissionState? State)> OutcomeAsync(
        RegisterContext context, ReportRow report, Verdict verdict, Caller caller, CancellationToken cancel)
    {
        (RegisterEvent What, SubmissionState? State) whole = verdict switch
        {
            Verdict.Accepted => (RegisterEvent.Accepted, SubmissionState.Accepted),
            Verdict.Returned => (RegisterEvent.Returned, SubmissionState.Returned),
            _ => (RegisterEvent.AcceptedWithDepartures, SubmissionState.AcceptedWithDepartures),
        };
        if (verdict == Verdict.Returned || report.Failed == 0 || settings.AcceptFailing != FailingAcceptance.SecondReviewer)
        {
            return whole;
        }

        var mine = verdict == Verdict.Accepted ? RegisterEvent.FirstAccepted : RegisterEvent.FirstAcceptedWithDepartures;
        var first = await FirstAsync(context, report, cancel);
        return first is null ? (mine, null)
            : string.Equals(first.By, caller.Id, StringComparison.Ordinal) ? throw new RefusedException(Refusal.WrongState, "You have accepted it already. Another reviewer must accept it too, or return it.")
            : first.Event != mine ? throw new RefusedException(Refusal.WrongState, "The first reviewer accepted it in the other way. Accept it likewise, or return it.")
            : whole;
    }

    /// <summary>Whether the caller has submitted it.</summary>
    public static bool IsOwn(SubmissionRow row, Caller caller) => string.Equals(row.Submitter, caller.Id, StringComparison.Ordinal);

    private static bool IsDecided(SubmissionState state) => state is SubmissionState.Accepted or SubmissionState.AcceptedWithDepartures or SubmissionState.Returned;

    // A decision or another screening in between undoes what the first reviewer said.
    private static async Task<HistoryRow?> FirstAsync(RegisterContext context, ReportRow report, CancellationToken cancel)
    {
        var last = await context.History.AsNoTracking()
            .Where(entry => entry.Number == report.Number && (Ends.Contains(entry.Event) || entry.Event == RegisterEvent.FirstAccepted || entry.Event == RegisterEvent.FirstAcceptedWithDepartures))
            .OrderByDescending(entry => entry.Entry).FirstOrDefaultAsync(cancel);
        return last is { Event: RegisterEvent.FirstAccepted or RegisterEvent.FirstAcceptedWithDepartures } && last.Screening == report.Screening ? last : null;
    }
}

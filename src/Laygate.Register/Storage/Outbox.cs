using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register.Storage;

/// <summary>Writes notices in the transaction of the event that they tell of: either both are there, or neither.</summary>
internal static class Outbox
{
    private static readonly JsonSerializerOptions Plain = new() { Converters = { new JsonStringEnumConverter() } };

    /// <summary>What notices tell of an event; null: nothing.</summary>
    public static NoticeEvent? Told(RegisterEvent what) => what switch
    {
        RegisterEvent.Received => NoticeEvent.Submitted,
        RegisterEvent.Screened or RegisterEvent.FailedToRead or RegisterEvent.NotScreened => NoticeEvent.Screened,
        RegisterEvent.Accepted or RegisterEvent.AcceptedWithDepartures => NoticeEvent.Accepted,
        RegisterEvent.Returned => NoticeEvent.Returned,
        _ => null,
    };

    public static string Write(NoticeFacts facts) => JsonSerializer.Serialize(facts, Plain);

    public static NoticeFacts Read(string facts) => JsonSerializer.Deserialize<NoticeFacts>(facts, Plain)!;

    /// <summary>Adds a notice for each subscription that wants to know of an entry which this transaction writes.</summary>
    public static async Task FillAsync(RegisterContext context, RegisterDatabase database, CancellationToken cancel)
    {
        var told = context.ChangeTracker.Entries<HistoryRow>().Where(entry => entry is { State: EntityState.Added, Entity.Tell: not null }).Select(entry => entry.Entity).ToList();
        if (told.Count == 0 || await LiveAsync(context, database.Now, cancel) is not { Count: > 0 } live)
        {
            return;
        }

        foreach (var entry in told)
        {
            var row = (await context.Submissions.FindAsync([entry.Number], cancel))!;
            var contract = row.Contract ?? await EarlierContractAsync(context, row, cancel);
            var wanted = live.Where(one => Wants(one.Subscription, one.Role, entry, row, contract)).ToList();
            var facts = wanted.Count == 0 ? null : Write(await FactsAsync(context, row, entry, cancel));
            context.Notices.AddRange(wanted.Select(one => new NoticeRow
            {
                Id = "msg_" + database.NewId(),
                What = entry,
                Subscription = one.Subscription.Id,
                Event = entry.Tell!.Value,
                At = entry.At,
                Facts = facts!,
                DueAt = entry.At,
            }));
        }
    }

    /// <summary>The subscriptions that hold, each with the role of its owner. Those of a key end with the key; a webhook is the office's.</summary>
    public static async Task<IReadOnlyList<(SubscriptionRow Subscription, Role Role)>> LiveAsync(RegisterContext context, DateTimeOffset now, CancellationToken cancel)
    {
        var rows = await context.Subscriptions.AsNoTracking().Where(one => one.EndedAt == null)
            .GroupJoin(context.Keys, one => one.Owner, key => key.Id, (one, keys) => new { one, keys })
            .SelectMany(pair => pair.keys.DefaultIfEmpty(), (pair, key) => new { pair.one, key }).ToListAsync(cancel);
        return
        [
            .. rows.Where(row => row.one.Channel == Channel.Webhook || row.key is null || (row.key.RevokedAt is null && (row.key.ExpiresAt is not { } end || end > now)))
                .Select(row => (row.one, row.one.Channel == Channel.Webhook ? Role.Administrator : row.key?.Role ?? row.one.OwnerRole)),
        ];
    }

    private static bool Wants(SubscriptionRow one, Role role, HistoryRow entry, SubmissionRow row, string? contract) =>
        one.Events.Split(' ').Contains(entry.Tell!.Value.ToString(), StringComparer.Ordinal)
        && (role != Role.Submitter || string.Equals(row.Submitter, one.Owner, StringComparison.Ordinal))
        && (one.Contract is null || string.Equals(one.Contract, contract?.Trim(), StringComparison.OrdinalIgnoreCase))
        && !(entry.Tell == NoticeEvent.CommentOpen && one.Channel == Channel.Mail && string.Equals(entry.By, one.Owner, StringComparison.Ordinal));

    // Before a revision is read it belongs to the contract of the one before.
    private static async Task<string?> EarlierContractAsync(RegisterContext context, SubmissionRow row, CancellationToken cancel) => row.Revision == 1
        ? null
        : await context.Submissions.AsNoTracking().Where(one => one.Series == row.Series && one.Revision < row.Revision && one.Contract != null)
            .OrderByDescending(one => one.Revision).Select(one => one.Contract).FirstOrDefaultAsync(cancel);

    private static async Task<NoticeFacts> FactsAsync(RegisterContext context, SubmissionRow row, HistoryRow entry, CancellationToken cancel)
    {
        // A report that this transaction writes is known already; of another one its large content is not needed.
        var report = context.Reports.Local.FirstOrDefault(one => one.Number == row.Number && one.Screening == row.ReportScreening)
            ?? (await context.Reports.AsNoTracking().Where(one => one.Number == row.Number && one.Screening == row.ReportScreening)
                .Select(one => new { one.Failed, one.Warned, one.NotAssessed, one.NeedsPerson, one.Passed, one.Departed, one.FailedA, one.FailedB, one.FailedC }).ToListAsync(cancel))
                .Select(one => new ReportRow { Json = [], Hash = string.Empty, BookHash = string.Empty, ProgramVersion = string.Empty, Failed = one.Failed, Warned = one.Warned, NotAssessed = one.NotAssessed, NeedsPerson = one.NeedsPerson, Passed = one.Passed, Departed = one.Departed, FailedA = one.FailedA, FailedB = one.FailedB, FailedC = one.FailedC })
                .FirstOrDefault();
        return new NoticeFacts(
            row.Id,
            row.Series,
            row.Revision,
            row.PlanTitle ?? row.PlanId,
            row.State,
            report is null ? null : new ReportCounts(report.Failed, report.Warned, report.NotAssessed, report.NeedsPerson, report.Passed, report.Departed),
            report is { FailedA: { } a, FailedB: { } b, FailedC: { } c } ? new SeverityCounts(a, b, c) : null,
            entry.Changes);
    }
}

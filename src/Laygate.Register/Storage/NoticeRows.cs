namespace Laygate.Register.Storage;

internal sealed class SubscriptionRow
{
    public required string Id { get; set; }

    public Channel Channel { get; set; }

    public required string Target { get; set; }

    // As it is needed to sign; it goes with the end of the subscription.
    public string? Secret { get; set; }

    // Names of events, divided by blanks.
    public required string Events { get; set; }

    public string? Contract { get; set; }

    public required string Owner { get; set; }

    public required string OwnerName { get; set; }

    public Role OwnerRole { get; set; }

    public DateTimeOffset CreatedAt { get; set; }

    public DateTimeOffset? EndedAt { get; set; }
}

internal enum NoticeState
{
    Waiting,
    Sending,
    Sent,
    Failed,

    // Whom it was for has ended the subscription, or may no longer see it.
    Dropped,
}

internal sealed class NoticeRow
{
    public required string Id { get; set; }

    public long Entry { get; set; }

    // The entry of the history that it tells of; its number is known when both are written.
    public HistoryRow? What { get; set; }

    public required string Subscription { get; set; }

    public NoticeEvent Event { get; set; }

    public DateTimeOffset At { get; set; }

    public required string Facts { get; set; }

    public NoticeState State { get; set; }

    // Rises with each claim and never falls: whoever holds an older number may write nothing.
    public long Attempt { get; set; }

    public int Failures { get; set; }

    // When it may be claimed: after a pause while it waits, after the end of the lease while it is sent.
    public DateTimeOffset DueAt { get; set; }

    public string? Reason { get; set; }

    public DateTimeOffset? DoneAt { get; set; }
}

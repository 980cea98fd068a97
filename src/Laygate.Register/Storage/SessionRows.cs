namespace Laygate.Register.Storage;

// A session of a browser. Of its secret only the hash lies here.
internal sealed class SessionRow
{
    public required string Id { get; set; }

    public required byte[] SecretHash { get; set; }

    public required string Caller { get; set; }

    public required string Name { get; set; }

    public Role Role { get; set; }

    // The key it was opened with; it ends with that key. None: by an identity provider.
    public string? KeyId { get; set; }

    public DateTimeOffset OpenedAt { get; set; }

    public DateTimeOffset SeenAt { get; set; }

    // The latest end, however much it is used.
    public DateTimeOffset EndsAt { get; set; }

    // Ended before that: by signing out or by an administrator.
    public DateTimeOffset? EndedAt { get; set; }

    // What the provider wants to see again at its own end, sealed with the secret of the session.
    public byte[]? Hint { get; set; }
}

// What was written on a page and not recorded, sealed with the secret of the session.
internal sealed class KeptFormRow
{
    public required string Session { get; set; }

    public required string Page { get; set; }

    public DateTimeOffset At { get; set; }

    public required byte[] Fields { get; set; }
}

// Keys of the platform's data protection, which replicas must share.
internal sealed class ProtectionKeyRow
{
    public long Entry { get; set; }

    public required string Name { get; set; }

    public required string Xml { get; set; }
}

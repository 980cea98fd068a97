namespace Laygate.Register;

/// <summary>Why the register refuses something.</summary>
public enum Refusal
{
    /// <summary>There is no such submission, or the caller may not see it.</summary>
    NotFound,

    /// <summary>The caller may not do this.</summary>
    NotAllowed,

    /// <summary>The same idempotency key came with another content.</summary>
    KeyUsedOtherwise,

    /// <summary>It has changed since the caller looked at it.</summary>
    Changed,

    /// <summary>Its state does not permit this.</summary>
    WrongState,

    /// <summary>The request itself is wrong.</summary>
    BadRequest,
}

/// <summary>The register refuses a request; nothing was changed.</summary>
public sealed class RefusedException : Exception
{
    /// <summary>Creates a refusal.</summary>
    /// <param name="refusal">Why.</param>
    /// <param name="message">What is wrong and what to do, in a sentence.</param>
    public RefusedException(Refusal refusal, string message)
        : base(message) => Refusal = refusal;

    /// <summary>Why.</summary>
    public Refusal Refusal { get; }
}

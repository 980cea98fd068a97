using System.Security.Cryptography;

namespace Laygate.Register;

/// <summary>Random bytes that nobody can guess, for ids and keys.</summary>
public interface ISecretSource
{
    /// <summary>Fills a buffer.</summary>
    void Fill(Span<byte> buffer);
}

/// <summary>Random bytes of the operating system.</summary>
public sealed class SystemSecrets : ISecretSource
{
    /// <inheritdoc/>
    public void Fill(Span<byte> buffer) => RandomNumberGenerator.Fill(buffer);
}

/// <summary>Moments at which a process may die. Tests let it die there; in service nothing happens.</summary>
public enum Moment
{
    /// <summary>A submission is written but not committed.</summary>
    SubmissionBeforeCommit,

    /// <summary>A submission is committed, its acknowledgement not sent.</summary>
    SubmissionCommitted,

    /// <summary>A claim is written but not committed.</summary>
    ClaimBeforeCommit,

    /// <summary>A claim is committed, the screening not begun.</summary>
    ClaimCommitted,

    /// <summary>A report is written but not committed.</summary>
    ReportBeforeCommit,

    /// <summary>A report is committed.</summary>
    ReportCommitted,

    /// <summary>A report is read for whoever asks, the reply not sent.</summary>
    ReportRead,

    /// <summary>A decision is written but not committed.</summary>
    DecisionBeforeCommit,

    /// <summary>A decision is committed, its acknowledgement not sent.</summary>
    DecisionCommitted,

    /// <summary>A notice is sent, but that is not committed.</summary>
    NoticeBeforeCommit,

    /// <summary>Names of a series are replaced, but that is not committed.</summary>
    ReplacedBeforeCommit,
}

/// <summary>Is told of each moment at which a process may die.</summary>
public interface IMoments
{
    /// <summary>A moment is reached.</summary>
    void Reach(Moment moment);
}

/// <summary>Lets every moment pass.</summary>
public sealed class NoMoments : IMoments
{
    /// <inheritdoc/>
    public void Reach(Moment moment)
    {
    }
}

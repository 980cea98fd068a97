namespace Laygate.Service;

/// <summary>Every line that the service logs by itself. None carries anything from a plan: ids, numbers, hashes and kinds of error only.</summary>
internal static partial class Log
{
    [LoggerMessage(1, LogLevel.Information, "Screened {Submission}, screening {Screening}, attempt {Attempt}, stored {Stored}")]
    public static partial void Screened(ILogger log, string submission, int screening, long attempt, bool stored);

    [LoggerMessage(2, LogLevel.Error, "Screening of {Submission} failed in attempt {Attempt}: {Error}")]
    public static partial void Failed(ILogger log, string submission, long attempt, string error);

    [LoggerMessage(3, LogLevel.Warning, "The queue cannot be reached: {Error}")]
    public static partial void QueueUnreachable(ILogger log, string error);

    [LoggerMessage(4, LogLevel.Information, "Inbox: a report on {Hash} was written, {Problems} problems")]
    public static partial void InboxReport(ILogger log, string hash, int problems);

    [LoggerMessage(5, LogLevel.Warning, "Inbox: a file or the folder cannot be used now: {Error}")]
    public static partial void InboxFile(ILogger log, string error);

    [LoggerMessage(6, LogLevel.Error, "A request failed: {Error}")]
    public static partial void RequestFailed(ILogger log, string error);

    [LoggerMessage(7, LogLevel.Information, "Ready under rule book {Book}, version {Version}")]
    public static partial void Ready(ILogger log, string book, string version);

    [LoggerMessage(8, LogLevel.Warning, "The database does not answer yet: {Error}")]
    public static partial void DatabaseAway(ILogger log, string error);

    [LoggerMessage(9, LogLevel.Warning, "Inbox: what is no plain file was left alone")]
    public static partial void InboxRefused(ILogger log);

    [LoggerMessage(10, LogLevel.Error, "A request failed: {Error} at {Where}")]
    public static partial void RequestBroke(ILogger log, string error, string where);

    [LoggerMessage(11, LogLevel.Warning, "The cookie of signing in is not marked Secure: the service itself speaks plain HTTP. Behind a proxy with TLS, set ASPNETCORE_FORWARDEDHEADERS_ENABLED=true and let the proxy pass X-Forwarded-Proto")]
    public static partial void CookieNotSecure(ILogger log);

    [LoggerMessage(30, LogLevel.Information, "{Caller} has signed in by {Means}")]
    public static partial void SignedIn(ILogger log, string caller, string means);

    [LoggerMessage(31, LogLevel.Warning, "A signing in at the provider failed: {Reason} ({Error})")]
    public static partial void SignInFailed(ILogger log, string reason, string error);

    [LoggerMessage(32, LogLevel.Information, "{By} has ended {Sessions} sessions, {Session} and those of the same person: {OfPerson}")]
    public static partial void SessionsEnded(ILogger log, string by, int sessions, string session, bool ofPerson);

    [LoggerMessage(12, LogLevel.Warning, "Others on this machine may look into the folder of Laygate:Data. Take their rights: chmod 700")]
    public static partial void DataOpen(ILogger log);

    [LoggerMessage(20, LogLevel.Information, "Notice {Notice}, attempt {Attempt}: {Outcome}")]
    public static partial void Told(ILogger log, string notice, long attempt, string outcome);

    [LoggerMessage(22, LogLevel.Information, "Names were replaced in {Series} series and {Keys} keys")]
    public static partial void Replaced(ILogger log, int series, int keys);

    [LoggerMessage(23, LogLevel.Warning, "Names could not be replaced now: {Error}")]
    public static partial void NotReplaced(ILogger log, string error);

    [LoggerMessage(21, LogLevel.Warning, "Notices cannot be reached: {Error}")]
    public static partial void NoticesUnreachable(ILogger log, string error);
}

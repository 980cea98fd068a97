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
}

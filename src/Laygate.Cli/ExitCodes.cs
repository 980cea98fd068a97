using Laygate.Rules.Results;

namespace Laygate.Cli;

/// <summary>From which kind of finding on a run counts as failed.</summary>
internal enum FailOn
{
    /// <summary>Only findings with status fail.</summary>
    Fail,

    /// <summary>Also warnings, what is not assessed and departures that do not hold included; not what needs a person.</summary>
    Warn,

    /// <summary>Never.</summary>
    None,
}

/// <summary>What the program hands back to its caller. With several files the highest holds.</summary>
internal static class ExitCodes
{
    /// <summary>Nothing at or above <c>--fail-on</c>.</summary>
    public const int Clean = 0;

    /// <summary>Findings at or above <c>--fail-on</c>.</summary>
    public const int Findings = 1;

    /// <summary>Input, arguments or rules that could not be read.</summary>
    public const int Unreadable = 2;

    /// <summary>An error of the program itself.</summary>
    public const int OwnError = 3;

    /// <summary>The code of a whole run.</summary>
    public static int Of(IReadOnlyList<FileResult> results, FailOn failOn) =>
        results.Select(result => Of(result, failOn)).DefaultIfEmpty(Clean).Max();

    private static int Of(FileResult result, FailOn failOn) => result.Problems.Count > 0
        ? Unreadable
        : result.Reports.Any(report => Counts(report.Counts, failOn) > 0) ? Findings : Clean;

    private static int Counts(Counts counts, FailOn failOn) => failOn switch
    {
        FailOn.Fail => counts.Failed,
        FailOn.Warn => counts.Failed + counts.Warned + counts.NotAssessed + counts.DepartureWarnings,
        _ => 0,
    };
}

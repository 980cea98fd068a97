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

    /// <summary>The code of one file.</summary>
    /// <param name="result">What was found in it.</param>
    /// <param name="failOn">From which kind of finding on it counts as failed.</param>
    /// <param name="notAssessedFails">Whether what is not assessed counts like a failure.</param>
    public static int Of(FileResult result, FailOn failOn, bool notAssessedFails = false) => result.Problems.Count > 0
        ? Unreadable
        : result.Reports.Any(report => Counts(report.Counts, failOn, notAssessedFails) > 0) ? Findings : Clean;

    // What a baseline knows of old is shown, but not counted again.
    private static int Counts(Counts counts, FailOn failOn, bool notAssessedFails)
    {
        var failed = counts.Failed - counts.KnownFailed;
        var notAssessed = counts.NotAssessed - counts.KnownNotAssessed;
        return failOn switch
        {
            FailOn.Fail => failed + (notAssessedFails ? notAssessed : 0),
            FailOn.Warn => failed + counts.Warned - counts.KnownWarned + notAssessed + counts.DepartureWarnings,
            _ => 0,
        };
    }
}

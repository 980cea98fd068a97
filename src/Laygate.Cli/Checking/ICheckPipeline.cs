using Laygate.Cli.Files;
using Laygate.Model.Plans;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Cli.Checking;

/// <summary>What a run needs to know before the first plan is read.</summary>
/// <param name="Rules">Names or paths of specifications.</param>
/// <param name="AtLeastStage">Stage at which at least to judge.</param>
/// <param name="Date">Date of checking.</param>
/// <param name="ProgramVersion">Version of the program.</param>
internal sealed record CheckRequest(IReadOnlyList<string> Rules, Stage? AtLeastStage, DateOnly Date, string ProgramVersion)
{
    /// <summary>Files of departures.</summary>
    public IReadOnlyList<string> Departures { get; init; } = [];

    /// <summary>Whether the output shows what would mend findings.</summary>
    public bool Remedies { get; init; }

    /// <summary>Whether the output shows laying hour by hour.</summary>
    public bool Outlook { get; init; }

    /// <summary>Whether spread, simulated shifts and remedies are left out.</summary>
    public bool Quick { get; init; }

    /// <summary>Git revision with which plans are compared; null where none is.</summary>
    public string? Since { get; init; }

    /// <summary>The only plan of the run, to be read while the rules are; null where there are several.</summary>
    public PlanInput? Only { get; init; }

    /// <summary>File of known findings; null when there is none.</summary>
    public string? Baseline { get; init; }

    /// <summary>Whether the output shows plots and all inputs.</summary>
    public bool Page { get; init; }

    /// <summary>The file of settings that was laid over the command, as it is to be shown.</summary>
    public string? Settings { get; init; }
}

/// <summary>A rule book that is ready, or why there is none.</summary>
/// <param name="Check">Checks the plans of one file, given its name and bytes; null when the rules could not be read.</param>
/// <param name="Problems">Why the rules could not be read.</param>
/// <param name="Sheet">Makes the site sheets of one file, given its name, its bytes, whether as a draft, and the shift that is wanted of a job; null when the rules could not be read.</param>
internal sealed record CheckSession(
    Func<string, byte[], FileResult>? Check, IReadOnlyList<Problem> Problems, Func<string, byte[], bool, string?, SheetResult>? Sheet = null)
{
    /// <summary>Lists the rules in force; asked only by a form that shows them.</summary>
    public Func<IReadOnlyList<RuleInForce>> Rules { get; init; } = () => [];

    /// <summary>Compares a file with its earlier state, given name and bytes of both; null bytes where there was no file.</summary>
    public Func<string, byte[]?, string, byte[], ComparisonResult>? Compare { get; init; }
}

/// <summary>Opens a rule book and checks plans against it.</summary>
internal interface ICheckPipeline
{
    /// <summary>Opens the rule book of a run.</summary>
    CheckSession Open(CheckRequest request);
}

using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;

namespace Laygate.Cli.Arguments;

/// <summary>Form of the output.</summary>
internal enum OutputFormat
{
    /// <summary>For a person at a terminal.</summary>
    Console,

    /// <summary>For programs.</summary>
    Json,

    /// <summary>SARIF 2.1.0, for code hosts.</summary>
    Sarif,

    /// <summary>JUnit XML, for build servers.</summary>
    Junit,

    /// <summary>Code-quality JSON, for code hosts.</summary>
    CodeQuality,

    /// <summary>Lines that code hosts turn into remarks beside a file.</summary>
    Annotations,

    /// <summary>Markdown, for a review comment.</summary>
    Markdown,

    /// <summary>A page for people and authorities.</summary>
    Html,
}

/// <summary>A form of the result and where it goes.</summary>
/// <param name="Format">Form.</param>
/// <param name="File">File; null for standard output.</param>
internal sealed record OutputTarget(OutputFormat Format, string? File);

/// <summary>What <c>laygate check</c> was asked to do.</summary>
internal sealed record CheckArguments
{
    /// <summary>Files, patterns, or <c>-</c> for standard input, in order; none: the plans that the settings name.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>Names or paths of specifications.</summary>
    public required IReadOnlyList<string> Rules { get; init; }

    /// <summary>Files of departures; they take the place of those of the settings.</summary>
    public IReadOnlyList<string> Departures { get; init; } = [];

    /// <summary>Stage at which at least to judge; null: the plan's own.</summary>
    public Stage? Stage { get; init; }

    /// <summary>From which kind of finding on the run counts as failed; null: what the settings ask for, or fail.</summary>
    public FailOn? FailOn { get; init; }

    /// <summary>Forms of the result and where each goes; at most one to standard output.</summary>
    public required IReadOnlyList<OutputTarget> Outputs { get; init; }

    /// <summary>Whether one of the forms shows plots and all inputs.</summary>
    public bool ForPage => Outputs.Any(target => target.Format == OutputFormat.Html);

    /// <summary>Parts of a report that lists for machines show besides what fails and what warns.</summary>
    public IReadOnlyList<FindingGroup> Include { get; init; } = [];

    /// <summary>Date of checking.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Whether the console shows each finding in full.</summary>
    public bool Full { get; init; }

    /// <summary>Whether everything is listed one by one.</summary>
    public required bool All { get; init; }

    /// <summary>The findings that alone the console shows; null for all of them.</summary>
    public FindingChoice? Explain { get; init; }

    /// <summary>Whether to look for what would mend findings.</summary>
    public bool Remedies { get; init; } = true;

    /// <summary>Whether laying is judged hour by hour, or by the envelope of the weather.</summary>
    public bool Outlook { get; init; }

    /// <summary>Whether spread, simulated shifts and remedies are left out.</summary>
    public bool Quick { get; init; }

    /// <summary>File of known findings; it takes the place of that of the settings.</summary>
    public string? Baseline { get; init; }

    /// <summary>Whether to leave the baseline of the settings aside.</summary>
    public bool WithoutBaseline { get; init; }

    /// <summary>Git revision since which a plan must have changed to be checked; null: every plan.</summary>
    public string? ChangedSince { get; init; }

    /// <summary>File, or git revision, with which plans are compared; null: nothing is compared.</summary>
    public string? Previous { get; init; }

    /// <summary>Name under which standard input is reported.</summary>
    public required string StdinName { get; init; }
}

/// <summary>An argument that cannot be used.</summary>
internal sealed class ArgumentProblem(string message) : Exception(message);

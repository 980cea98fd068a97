using Laygate.Model.Plans;

namespace Laygate.Cli.Arguments;

/// <summary>Form of the output.</summary>
internal enum OutputFormat
{
    /// <summary>For a person at a terminal.</summary>
    Console,

    /// <summary>For programs.</summary>
    Json,
}

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

    /// <summary>Form of the output.</summary>
    public required OutputFormat Format { get; init; }

    /// <summary>File to write to; null: standard output.</summary>
    public string? Output { get; init; }

    /// <summary>Date of checking.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Whether everything is listed one by one.</summary>
    public required bool All { get; init; }

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

    /// <summary>Name under which standard input is reported.</summary>
    public required string StdinName { get; init; }
}

/// <summary>An argument that cannot be used.</summary>
internal sealed class ArgumentProblem(string message) : Exception(message);

using Laygate.Model.Plans;

namespace Laygate.Rules.Evaluation;

/// <summary>How a plan is to be judged.</summary>
public sealed record EvaluationSettings
{
    /// <summary>Name of the file as given.</summary>
    public required string File { get; init; }

    /// <summary>Date of checking: judges limits when the plan has no date of its shift.</summary>
    public required DateOnly CheckedOn { get; init; }

    /// <summary>Stage that was asked for; the later of it and the plan's own counts. Null: the plan's own.</summary>
    public Stage? Stage { get; init; }

    /// <summary>Number of the plan in its file, from 1.</summary>
    public int Document { get; init; } = 1;

    /// <summary>SHA-256 of the plan's bytes, lower-case hex.</summary>
    public string PlanHash { get; init; } = string.Empty;

    /// <summary>Version of the program.</summary>
    public string ProgramVersion { get; init; } = string.Empty;

    /// <summary>Id of the only rule to judge by; null: all in force.</summary>
    public string? OnlyRule { get; init; }

    /// <summary>Samples of two quantities drawn together, where the physics can give them; null: ends are combined on the safe side.</summary>
    public IJointSamples? Samples { get; init; }
}

/// <summary>Gives samples of two quantities that were drawn together, so that the band of their difference can be taken sample by sample.</summary>
public interface IJointSamples
{
    /// <summary>Samples of a value and of its limit for one element, pair by pair in SI; null when they were not sampled together.</summary>
    /// <param name="quantity">Name of the value's quantity.</param>
    /// <param name="limit">Name of the limit's quantity.</param>
    /// <param name="address">Address of the element.</param>
    IReadOnlyList<(double Value, double Limit)>? Find(string quantity, string limit, string address);
}

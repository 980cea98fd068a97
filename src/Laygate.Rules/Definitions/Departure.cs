using Laygate.Model.Plans;

namespace Laygate.Rules.Definitions;

/// <summary>A deviation from one rule at one place that the approving side permits until a day.</summary>
public sealed record Departure
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Address of the plan element.</summary>
    public required string Address { get; init; }

    /// <summary>Id of the plan it is for; null: any plan.</summary>
    public string? Plan { get; init; }

    /// <summary>Why the plan may depart.</summary>
    public required string Reason { get; init; }

    /// <summary>What is done instead.</summary>
    public required string CompensatingMeasure { get; init; }

    /// <summary>Who asked for it.</summary>
    public required string AskedBy { get; init; }

    /// <summary>Who permits it.</summary>
    public required string ApprovedBy { get; init; }

    /// <summary>Day of the permission.</summary>
    public required DateOnly ApprovedOn { get; init; }

    /// <summary>Last day on which it holds.</summary>
    public required DateOnly ExpiresOn { get; init; }

    /// <summary>The value that is accepted; null for findings without a value.</summary>
    public AcceptedValue? Accepted { get; init; }

    /// <summary>Letter, minute or drawing that records it.</summary>
    public string? Reference { get; init; }

    /// <summary>File that holds it, as given.</summary>
    public string File { get; init; } = string.Empty;
}

/// <summary>A value that a departure accepts.</summary>
/// <param name="Text">As written.</param>
/// <param name="Si">A number in the SI unit of the rule's quantity (°C for temperatures); null for words and moments.</param>
/// <param name="Moment">A moment; null for words and numbers.</param>
public sealed record AcceptedValue(string Text, double? Si, Moment? Moment);

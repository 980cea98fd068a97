using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Merging;

/// <summary>A rule on its way through the layers.</summary>
internal sealed class Entry
{
    public required RuleDefinition Definition { get; init; }

    public required QuantityDefinition Quantity { get; init; }

    public required IReadOnlyList<CheckedMatch> When { get; init; }

    public required Layer Layer { get; init; }

    public required string? AddedBy { get; init; }

    public required BookPlace Place { get; init; }

    public IReadOnlyList<CheckedBound> Bounds { get; set; } = [];

    public bool InForce { get; set; }

    /// <summary>Whether a specification set it or brought it in, and so speaks for the place in which it is used.</summary>
    public bool Chosen { get; set; }

    public TakenOut? TakenOut { get; set; }

    public string? TakenOutBy { get; set; }

    public CheckedRule ToRule() => new(
        Definition with { Bounds = [.. Bounds.Select(bound => bound.Definition)] },
        Quantity,
        When,
        Bounds,
        Chosen ? [] : Definition.Jurisdictions);
}

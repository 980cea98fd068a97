using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What kind of value a quantity has.</summary>
public enum ValueKind
{
    /// <summary>A number with a dimension.</summary>
    Number,

    /// <summary>A word of a closed list.</summary>
    Category,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>Presence of a measure, block or statement.</summary>
    Presence,

    /// <summary>A moment.</summary>
    Moment,
}

/// <summary>A named value of one kind of plan element that a rule may refer to.</summary>
public sealed record QuantityDefinition
{
    /// <summary>Name: the kind of element, a point, and the name itself, for example <c>course.thickness</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Kind of element that it belongs to.</summary>
    public required ElementKind Element { get; init; }

    /// <summary>Kind of value.</summary>
    public required ValueKind Kind { get; init; }

    /// <summary>Dimension of a number.</summary>
    public Dimension Dimension { get; init; } = Dimension.None;

    /// <summary>Unit in which a computed value is shown in metric plans; a spelling of the unit table, empty for none.</summary>
    public string MetricUnit { get; init; } = string.Empty;

    /// <summary>Unit in which a computed value is shown in US plans.</summary>
    public string UsUnit { get; init; } = string.Empty;

    /// <summary>The words of a category.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>For a list of entries with kinds: the keys without which an entry does not count. Empty for everything else.</summary>
    public IReadOnlyList<string> EntryNeeds { get; init; } = [];

    /// <summary>For a list of entries with kinds: further keys that a rule may ask of an entry.</summary>
    public IReadOnlyList<string> EntryMay { get; init; } = [];

    /// <summary>Where a predicted temperature applies; null when it is no temperature or the plan states the place.</summary>
    public Place? Place { get; init; }

    /// <summary>What the value means, in one sentence, in the words of the trade.</summary>
    public required string Meaning { get; init; }

    /// <summary>Formula or rule by which it is found; empty when stated.</summary>
    public string Formula { get; init; } = string.Empty;

    /// <summary>Where the formula comes from; empty when stated.</summary>
    public string Source { get; init; } = string.Empty;

    /// <summary>Range in which it holds and what happens outside; empty when stated.</summary>
    public string Range { get; init; } = string.Empty;

    /// <summary>Where it is a worst-case relation: name of the quantity of the simulated shift that has the last word; otherwise null.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>Computes the value for an element.</summary>
    public required Func<QuantityContext, Element, Answer> Compute { get; init; }
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Rules.Definitions;

/// <summary>How grave the harm is that a safety rule guards against.</summary>
public enum Severity
{
    /// <summary>Can kill or maim in one event.</summary>
    A,

    /// <summary>Serious injury or lasting ill health.</summary>
    B,

    /// <summary>Lesser harm, nuisance, environment, legal exposure.</summary>
    C,
}

/// <summary>The closed set of checks.</summary>
public enum CheckKind
{
    /// <summary>The value is not below the limit.</summary>
    AtLeast,

    /// <summary>The value is not above the limit.</summary>
    AtMost,

    /// <summary>The value lies in the band of the limit.</summary>
    Between,

    /// <summary>A measure, block or statement is present.</summary>
    Present,

    /// <summary>One moment is not before another.</summary>
    NotBefore,

    /// <summary>A word or flag agrees with a list of words, or with another quantity.</summary>
    Agrees,
}

/// <summary>State in the life of a rule.</summary>
public enum LifeState
{
    /// <summary>New; may change.</summary>
    OnTrial,

    /// <summary>In use.</summary>
    InUse,

    /// <summary>Will be taken out; see its successor.</summary>
    Leaving,

    /// <summary>Kept only so that its id is never used again.</summary>
    Gone,
}

/// <summary>Life of a rule.</summary>
/// <param name="State">State.</param>
/// <param name="Since">Version of the rule book since which it is in this state.</param>
/// <param name="Successor">Id of the rule that replaces it.</param>
public sealed record Life(LifeState State, string Since, string? Successor);

/// <summary>A rule as data.</summary>
public sealed record RuleDefinition
{
    /// <summary>Family prefix and number, for ever; no severity in it.</summary>
    public required string Id { get; init; }

    /// <summary>Family, for example <c>layers</c>: the folder above the rule's own.</summary>
    public required string Family { get; init; }

    /// <summary>Name after the bad situation: the rule's folder.</summary>
    public required string Name { get; init; }

    /// <summary>One line.</summary>
    public required string Title { get; init; }

    /// <summary>What goes wrong on site.</summary>
    public required string Why { get; init; }

    /// <summary>What to change.</summary>
    public required string Remedy { get; init; }

    /// <summary>What the local code usually governs here and whom to ask.</summary>
    public required string Local { get; init; }

    /// <summary>What it asks, as the rest of "Not known whether …": what is not known must not sound as if it were. Null where its title must do.</summary>
    public string? Asks { get; init; }

    /// <summary>What holds where it is met, where that is another sentence than what it asks.</summary>
    public string? Holds { get; init; }

    /// <summary>What the crew watches and does about it; null where nobody can do anything about it on site.</summary>
    public SiteInstruction? OnSite { get; init; }

    /// <summary>Kind of element that the rule is about.</summary>
    public required ElementKind AppliesTo { get; init; }

    /// <summary>Conditions that must all hold.</summary>
    public IReadOnlyList<Condition> When { get; init; } = [];

    /// <summary>The check.</summary>
    public required CheckKind Check { get; init; }

    /// <summary>The quantity that is checked.</summary>
    public required string Quantity { get; init; }

    /// <summary>Bounds, at most one required and one advised. None: the rule waits for a specification to set them.</summary>
    public IReadOnlyList<Bound> Bounds { get; init; } = [];

    /// <summary>Stage from which its inputs must be known.</summary>
    public required Stage FromStage { get; init; }

    /// <summary>Severity, for rules of the safety family.</summary>
    public Severity? Severity { get; init; }

    /// <summary>ISO 3166 codes of the places for which its limits speak; empty: anywhere.</summary>
    public IReadOnlyList<string> Jurisdictions { get; init; } = [];

    /// <summary>ISO 3166 codes of the places that have a limit of their own, so that what others publish is not held against them; empty: none.</summary>
    public IReadOnlyList<string> NotIn { get; init; } = [];

    /// <summary>Whether the rule is out of force until a specification brings it in.</summary>
    public bool OnDemand { get; init; }

    /// <summary>Life.</summary>
    public required Life Life { get; init; }

    /// <summary>Whether no departure may cover it and no specification may take it out or weaken it.</summary>
    public bool LifeCritical => Severity == Definitions.Severity.A;
}

/// <summary>What a rule asks of the crew while it works; the limit stands between the two.</summary>
/// <param name="Watch">What is seen or measured, and with what.</param>
/// <param name="Otherwise">What to do where it is not so.</param>
public sealed record SiteInstruction(string Watch, string Otherwise);

/// <summary>A condition on a quantity of the element or of what it belongs to.</summary>
/// <param name="Quantity">Name of the quantity.</param>
/// <param name="Words">Words of which the value must be one; flags are <c>yes</c> and <c>no</c>. Null for a number.</param>
/// <param name="AtLeast">Inclusive lower end for a number.</param>
/// <param name="Below">Exclusive upper end for a number.</param>
public sealed record Condition(string Quantity, IReadOnlyList<string>? Words, LimitValue? AtLeast, LimitValue? Below);

/// <summary>A number of a limit as its source states it.</summary>
/// <param name="Number">Number.</param>
/// <param name="Unit">Unit spelling; empty for ratios and counts.</param>
/// <param name="Text">As written, for pages and for changing its last digit in tests.</param>
public sealed record LimitValue(double Number, string Unit, string Text);

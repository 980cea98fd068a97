using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Results;

/// <summary>What a rule found, judged on expected values.</summary>
public enum Outcome
{
    /// <summary>The limit is met.</summary>
    Met,

    /// <summary>A bound is missed.</summary>
    Missed,

    /// <summary>The rule's conditions do not hold.</summary>
    NotApplicable,

    /// <summary>It could not be assessed.</summary>
    NotAssessed,

    /// <summary>A person must decide.</summary>
    NeedsPerson,

    /// <summary>An input is not yet due at the plan's stage.</summary>
    Open,
}

/// <summary>What the gate makes of an outcome.</summary>
public enum Status
{
    /// <summary>No status: not applicable or open.</summary>
    None,

    /// <summary>Pass.</summary>
    Pass,

    /// <summary>Warn.</summary>
    Warn,

    /// <summary>Fail.</summary>
    Fail,

    /// <summary>Covered by a valid departure.</summary>
    Departed,
}

/// <summary>A value or limit as shown: a number with unit and band, or words.</summary>
/// <param name="Number">Expected value or limit in the unit; null for words.</param>
/// <param name="Unit">Unit spelling; empty for ratios and counts.</param>
/// <param name="Low">Low end of the band in the unit.</param>
/// <param name="High">High end of the band in the unit.</param>
/// <param name="Text">Words in place of a number.</param>
/// <param name="Place">Where a temperature is measured or predicted.</param>
public sealed record ShownValue(
    double? Number, string Unit, double? Low = null, double? High = null, string? Text = null, Place? Place = null);

/// <summary>The limit that decides.</summary>
/// <param name="Strength">Required or advised.</param>
/// <param name="Basis">What it stands on.</param>
/// <param name="Low">Lower end in the unit of the value; for words, the words.</param>
/// <param name="High">Upper end in the unit of the value.</param>
/// <param name="LowExclusive">Whether the lower end itself is outside.</param>
/// <param name="HighExclusive">Whether the upper end itself is outside.</param>
/// <param name="Stated">The limit in the unit of its source, where that differs.</param>
/// <param name="Quantity">Quantity that serves as limit; null for constants.</param>
/// <param name="Factor">Factor on that quantity.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Publication">The publication, resolved from the bibliography.</param>
/// <param name="Layer">Layer that set it.</param>
/// <param name="SetBy">Name of the specification that set it; null for the general book.</param>
public sealed record ShownLimit(
    Strength Strength,
    Basis Basis,
    ShownValue? Low,
    ShownValue? High,
    bool LowExclusive,
    bool HighExclusive,
    string? Stated,
    string? Quantity,
    double? Factor,
    SourceReference Source,
    Source? Publication,
    Layer Layer,
    string? SetBy)
{
    /// <summary>Whether silence fails at release however the source is known: a required measure of severity A.</summary>
    public bool SilenceFails { get; init; }
}

/// <summary>What one rule says about one plan element.</summary>
public sealed record Finding
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Name of the rule: family and name.</summary>
    public required string RuleName { get; init; }

    /// <summary>Title of the rule.</summary>
    public required string Title { get; init; }

    /// <summary>What goes wrong on site.</summary>
    public required string Why { get; init; }

    /// <summary>What to change.</summary>
    public required string Remedy { get; init; }

    /// <summary>What the local code governs.</summary>
    public required string Local { get; init; }

    /// <summary>What the rule asks, as the rest of "Not known whether …"; null where its title must do.</summary>
    public string? Asks { get; init; }

    /// <summary>What holds where the rule is met, where that is another sentence than what it asks.</summary>
    public string? Holds { get; init; }

    /// <summary>Severity, for safety.</summary>
    public Severity? Severity { get; init; }

    /// <summary>The check.</summary>
    public required CheckKind Check { get; init; }

    /// <summary>Address of the element.</summary>
    public required string Address { get; init; }

    /// <summary>Place in the plan that states the value, or would.</summary>
    public InputReference? Input { get; init; }

    /// <summary>Outcome.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Gate status.</summary>
    public required Status Status { get; init; }

    /// <summary>Name of the quantity that was checked.</summary>
    public required string Quantity { get; init; }

    /// <summary>What the quantity means.</summary>
    public required string QuantityMeaning { get; init; }

    /// <summary>The value; null when there is none.</summary>
    public ShownValue? Value { get; init; }

    /// <summary>Where the value comes from.</summary>
    public Origin? Origin { get; init; }

    /// <summary>The bound that decides; null when none was reached.</summary>
    public ShownLimit? Limit { get; init; }

    /// <summary>The other bound, where the rule has two.</summary>
    public ShownLimit? OtherLimit { get; init; }

    /// <summary>Whether only the expected value meets the bound, not the unfavourable end.</summary>
    public bool OnExpectedValuesOnly { get; init; }

    /// <summary>Whether the favourable end would meet although the expected value misses.</summary>
    public bool FavourableEndMeets { get; init; }

    /// <summary>How the value was found.</summary>
    public Working? Working { get; init; }

    /// <summary>Inputs that are missing, by address and key.</summary>
    public IReadOnlyList<InputReference> Missing { get; init; } = [];

    /// <summary>Remarks, to be worded by Reporting.</summary>
    public IReadOnlyList<Note> Notes { get; init; } = [];

    /// <summary>What would mend it; null when it was not asked for, or when no number can mend it.</summary>
    public RemedySet? Remedies { get; init; }

    /// <summary>The departure that covers it; null when none does.</summary>
    public Departure? Departure { get; init; }

    /// <summary>Whether a baseline knows it of old: it is shown, but does not count at the gate.</summary>
    public bool Known { get; init; }

    /// <summary>Position in the plan; set when it is checked.</summary>
    public Position? Position { get; init; }
}

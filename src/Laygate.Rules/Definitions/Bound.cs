using System.Text.Json.Serialization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Rules.Definitions;

/// <summary>Whether a bound is required or advised.</summary>
public enum Strength
{
    /// <summary>A miss may fail.</summary>
    Required,

    /// <summary>A miss warns.</summary>
    Advised,
}

/// <summary>What a bound stands on. Only the first two may have a required bound.</summary>
public enum Basis
{
    /// <summary>A publication or contract requires it.</summary>
    Requirement,

    /// <summary>It cannot work otherwise, such as supply below demand.</summary>
    PhysicalNecessity,

    /// <summary>A publication recommends it.</summary>
    Recommendation,

    /// <summary>Engineering judgement.</summary>
    Judgement,
}

/// <summary>A bound of a rule: strength, basis, limit and where it comes from.</summary>
public sealed record Bound
{
    /// <summary>Required or advised.</summary>
    public required Strength Strength { get; init; }

    /// <summary>What it stands on.</summary>
    public required Basis Basis { get; init; }

    /// <summary>The limit.</summary>
    public required Limit Limit { get; init; }

    /// <summary>Where it comes from; rows of a table may differ.</summary>
    public required SourceReference Source { get; init; }

    /// <summary>What other publications say on the same: shown beside the limit where they differ, never judged.</summary>
    public IReadOnlyList<SourceReference> Also { get; init; } = [];

    /// <summary>Where a limiting temperature is measured; compared only with a quantity of the same place. Null for no temperature, or where the source does not say.</summary>
    public Place? Place { get; init; }

    /// <summary>Whether the lower end itself is outside (<c>above</c> in place of <c>at least</c>).</summary>
    public bool LowExclusive { get; init; }

    /// <summary>Whether the upper end itself is outside (<c>below</c> in place of <c>at most</c>).</summary>
    public bool HighExclusive { get; init; }
}

/// <summary>The limit of a bound.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(ConstantLimit), "constant")]
[JsonDerivedType(typeof(TableLimit), "table")]
[JsonDerivedType(typeof(QuantityLimit), "quantity")]
[JsonDerivedType(typeof(WordsLimit), "words")]
[JsonDerivedType(typeof(PresenceLimit), "presence")]
public abstract record Limit;

/// <summary>A constant.</summary>
/// <param name="Low">Lower end, for at least and between.</param>
/// <param name="High">Upper end, for at most and between.</param>
public sealed record ConstantLimit(LimitValue? Low, LimitValue? High) : Limit;

/// <summary>A table by categories and half-open bands.</summary>
/// <param name="Keys">Quantities by which the table is read, of the element or of what it belongs to.</param>
/// <param name="Rows">Rows; the first that matches holds, and no two rows that match the same values may differ in strictness silently.</param>
public sealed record TableLimit(IReadOnlyList<string> Keys, IReadOnlyList<TableRow> Rows) : Limit;

/// <summary>A row of a table.</summary>
/// <param name="Matches">One match per key.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
/// <param name="Source">Where the row comes from, where it differs from the bound.</param>
public sealed record TableRow(IReadOnlyList<RowMatch> Matches, LimitValue? Low, LimitValue? High, SourceReference? Source);

/// <summary>What a row asks of one key.</summary>
/// <param name="Words">Words; null for a band.</param>
/// <param name="AtLeast">Inclusive lower end of a band; null: open.</param>
/// <param name="Below">Exclusive upper end of a band; null: open.</param>
/// <param name="Any">Whether everything matches.</param>
public sealed record RowMatch(IReadOnlyList<string>? Words, LimitValue? AtLeast, LimitValue? Below, bool Any);

/// <summary>Another quantity, times a factor.</summary>
/// <param name="Quantity">Name of the quantity, of the element or of what it belongs to.</param>
/// <param name="Factor">Factor.</param>
/// <param name="FactorText">Factor as written.</param>
public sealed record QuantityLimit(string Quantity, double Factor, string FactorText) : Limit;

/// <summary>Words or flags of which the value must be one.</summary>
/// <param name="Words">The words.</param>
public sealed record WordsLimit(IReadOnlyList<string> Words) : Limit;

/// <summary>Presence: required bounds ask that something is stated, advised ones that it is not thin.</summary>
public sealed record PresenceLimit : Limit
{
    /// <summary>Entries that a list must have, all of them; empty where the quantity itself says how far it is present.</summary>
    public IReadOnlyList<EntryLine> Entries { get; init; } = [];
}

/// <summary>One entry that a list must have.</summary>
/// <param name="AnyOf">Kinds of which one is enough.</param>
/// <param name="Asks">Keys beside those that every entry needs; one that is missing makes the entry thin.</param>
public sealed record EntryLine(IReadOnlyList<string> AnyOf, IReadOnlyList<string> Asks);

/// <summary>Where a limit comes from.</summary>
public sealed record SourceReference
{
    /// <summary>Id in the bibliography <c>rules/sources.yaml</c>.</summary>
    public required string Source { get; init; }

    /// <summary>Clause, table or page.</summary>
    public string? Clause { get; init; }

    /// <summary>How the limit is known.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>First day on which the limit holds.</summary>
    public DateOnly? ValidFrom { get; init; }

    /// <summary>Last day on which the limit holds.</summary>
    public DateOnly? ValidTo { get; init; }

    /// <summary>What follows it; an announced end without a date has a successor and no last day.</summary>
    public string? Successor { get; init; }

    /// <summary>Remark on how the row was read, for example where a publication leaves a gap.</summary>
    public string? Remark { get; init; }

    /// <summary>Confirmation by the checking side; null otherwise.</summary>
    public Confirmation? Confirmation { get; init; }
}

/// <summary>A confirmation that a limit stands in the publication.</summary>
/// <param name="By">Who.</param>
/// <param name="On">When.</param>
/// <param name="Edition">Edition.</param>
/// <param name="Page">Page.</param>
public sealed record Confirmation(string By, DateOnly On, string Edition, string Page);

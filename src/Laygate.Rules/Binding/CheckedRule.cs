using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Binding;

/// <summary>A rule whose names, units and words have been checked against the catalogue, with its bounds after all layers.</summary>
/// <param name="Definition">The definition; its bounds are those in force.</param>
/// <param name="Quantity">The quantity that is checked.</param>
/// <param name="When">Conditions.</param>
/// <param name="Bounds">Bounds in force, required before advised.</param>
/// <param name="Jurisdictions">Places for which the rule speaks; empty: anywhere. A specification that sets the rule or brings it in speaks for itself.</param>
public sealed record CheckedRule(
    RuleDefinition Definition,
    QuantityDefinition Quantity,
    IReadOnlyList<CheckedMatch> When,
    IReadOnlyList<CheckedBound> Bounds,
    IReadOnlyList<string> Jurisdictions);

/// <summary>A bound with its limit in SI units, and who set it.</summary>
/// <param name="Definition">The bound as written.</param>
/// <param name="Limit">Its limit.</param>
/// <param name="Layer">Layer that set it.</param>
/// <param name="SetBy">Name of the specification that set it; null for the general book.</param>
/// <param name="IsUpper">Whether a limit that is a quantity is an upper end (the check <c>at-most</c>).</param>
public sealed record CheckedBound(Bound Definition, CheckedLimit Limit, Layer Layer, string? SetBy, bool IsUpper);

/// <summary>A limit whose units, words and names are checked.</summary>
public abstract record CheckedLimit;

/// <summary>Fixed ends.</summary>
/// <param name="Range">The ends.</param>
public sealed record CheckedConstant(CheckedRange Range) : CheckedLimit;

/// <summary>A table.</summary>
/// <param name="Keys">Quantities by which it is read.</param>
/// <param name="Rows">Rows.</param>
public sealed record CheckedTable(IReadOnlyList<QuantityDefinition> Keys, IReadOnlyList<CheckedRow> Rows) : CheckedLimit;

/// <summary>A row of a table.</summary>
/// <param name="Matches">One match per key.</param>
/// <param name="Range">The ends.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record CheckedRow(IReadOnlyList<CheckedMatch> Matches, CheckedRange Range, SourceReference Source);

/// <summary>Another quantity times a factor.</summary>
/// <param name="Quantity">The quantity.</param>
/// <param name="Factor">The factor.</param>
/// <param name="FactorText">The factor as written.</param>
public sealed record CheckedQuantity(QuantityDefinition Quantity, double Factor, string FactorText) : CheckedLimit;

/// <summary>Words.</summary>
/// <param name="Words">The words.</param>
public sealed record CheckedWords(IReadOnlyList<string> Words) : CheckedLimit;

/// <summary>Presence.</summary>
/// <param name="Entries">Entries that a list must have; empty where the quantity itself says how far it is present.</param>
public sealed record CheckedPresence(IReadOnlyList<EntryLine> Entries) : CheckedLimit;

/// <summary>Ends of a limit.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record CheckedRange(LimitEnd? Low, LimitEnd? High);

/// <summary>One end of a limit.</summary>
/// <param name="Si">In the SI unit of the dimension (°C for temperatures).</param>
/// <param name="Stated">As written.</param>
public sealed record LimitEnd(double Si, LimitValue Stated);

/// <summary>What a condition or a table row asks of one quantity.</summary>
/// <param name="Quantity">The quantity.</param>
/// <param name="Words">Words of which the value must be one; null for a band or for anything.</param>
/// <param name="AtLeast">Inclusive lower end in SI.</param>
/// <param name="Below">Exclusive upper end in SI.</param>
/// <param name="Any">Whether everything matches.</param>
public sealed record CheckedMatch(QuantityDefinition Quantity, IReadOnlyList<string>? Words, LimitEnd? AtLeast, LimitEnd? Below, bool Any);

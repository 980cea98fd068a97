using System.Text.Json.Serialization;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Reports;

/// <summary>A limit.</summary>
/// <param name="Strength">Whether the limit is required or advised.</param>
/// <param name="Basis">What it stands on.</param>
/// <param name="Low">Lower end, or words.</param>
/// <param name="High">Upper end.</param>
/// <param name="LowExclusive">Whether the lower end itself is outside.</param>
/// <param name="HighExclusive">Whether the upper end itself is outside.</param>
/// <param name="Stated">The limit in the unit of its source, where that differs.</param>
/// <param name="Quantity">Quantity that serves as limit.</param>
/// <param name="Factor">Factor on that quantity.</param>
/// <param name="Layer">Layer of the rule book that set it.</param>
/// <param name="SetBy">Specification that set it; null for the general book.</param>
/// <param name="SilenceFails">Whether silence fails at release however the source is known: a required measure of severity A.</param>
/// <param name="Source">Where it comes from; the deciding bound of a finding has it beside it.</param>
public sealed record LimitShape(
    Strength Strength,
    Basis Basis,
    ShownValue? Low,
    ShownValue? High,
    bool LowExclusive,
    bool HighExclusive,
    string? Stated,
    string? Quantity,
    double? Factor,
    Layer Layer,
    string? SetBy,
    [property: Schema(Later = true)] bool SilenceFails,
    [property: Schema(Later = true), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] SourceShape? Source);

/// <summary>Where a limit comes from and how it is known.</summary>
/// <param name="Id">Id in the bibliography.</param>
/// <param name="Issuer">Issuer.</param>
/// <param name="Title">Title.</param>
/// <param name="Edition">Edition.</param>
/// <param name="Year">Year.</param>
/// <param name="Carrier">The text that was read, where it is not the publication itself.</param>
/// <param name="Url">Address where the publication or its carrier is public.</param>
/// <param name="Clause">Clause, table or page.</param>
/// <param name="Evidence">How the limit is known.</param>
/// <param name="ValidFrom">First day on which it holds.</param>
/// <param name="ValidTo">Last day on which it holds.</param>
/// <param name="Successor">What follows it.</param>
/// <param name="Remark">How the row was read.</param>
/// <param name="Confirmation">Confirmation by the checking side.</param>
public sealed record SourceShape(
    string Id,
    string? Issuer,
    string? Title,
    string? Edition,
    string? Year,
    string? Carrier,
    string? Url,
    string? Clause,
    Evidence Evidence,
    DateOnly? ValidFrom,
    DateOnly? ValidTo,
    string? Successor,
    string? Remark,
    Confirmation? Confirmation);

/// <summary>An input that the plan does not state.</summary>
/// <param name="Address">Element.</param>
/// <param name="Key">Key inside the element.</param>
/// <param name="State">The key as it is looked for in the plan.</param>
public sealed record MissingShape(string Address, string Key, [property: JsonConverter(typeof(SentenceToken))] string State);

/// <summary>A remark.</summary>
/// <param name="Id">Id of the remark.</param>
/// <param name="Text">The remark as a sentence.</param>
/// <param name="Arguments">Arguments by name.</param>
public sealed record NoteShape(string Id, [property: JsonConverter(typeof(SentenceToken))] string Text, OrderedDictionary<string, ShownValue> Arguments);

/// <summary>An assumption that was used.</summary>
/// <param name="Id">Id in the catalogue of assumptions.</param>
/// <param name="Address">Element for which it stood in.</param>
/// <param name="Number">Value in the unit.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Evidence">How it is known.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="StandsFor">Input of the plan in whose place it stands.</param>
/// <param name="Input">The same input by address and key.</param>
public sealed record AssumptionShape(
    string Id, string Address, double? Number, string Unit, Evidence Evidence, string Source, string? StandsFor, [property: Schema(Later = true)] InputReference? Input);

/// <summary>How a value was found.</summary>
/// <param name="Inputs">What went in.</param>
/// <param name="Steps">Steps in order.</param>
/// <param name="Assumptions">Assumptions used.</param>
public sealed record WorkingShape(IReadOnlyList<WorkingInput> Inputs, IReadOnlyList<WorkingStepShape> Steps, IReadOnlyList<AssumptionShape> Assumptions);

/// <summary>A step of the computation.</summary>
/// <param name="Symbol">Symbol of the result.</param>
/// <param name="Expression">Formula in symbols.</param>
/// <param name="Number">Result in the unit.</param>
/// <param name="Unit">Unit.</param>
public sealed record WorkingStepShape(string Symbol, string Expression, double? Number, string Unit);

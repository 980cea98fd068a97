using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;

namespace Laygate.Exchange.RuleLists;

/// <summary>Rules of the merged book, in the order of their ids.</summary>
/// <param name="BookHash">Hash of the merged book; it stands in every report made with it.</param>
/// <param name="Rules">The rules that were asked for.</param>
public sealed record RuleListShape([property: Schema(NotEmpty = true)] string BookHash, IEnumerable<RuleShape> Rules);

/// <summary>A rule with the limits that hold in the merged book.</summary>
/// <param name="Id">Family prefix and number; never reused.</param>
/// <param name="Family">Family.</param>
/// <param name="Name">Name: the bad situation.</param>
/// <param name="Title">The bad situation in one line.</param>
/// <param name="Why">What goes wrong on site.</param>
/// <param name="Remedy">What to change.</param>
/// <param name="Local">What the local code usually governs, and whom to ask.</param>
/// <param name="Asks">What the rule asks, after "whether"; null where its title must do.</param>
/// <param name="Holds">What holds where it is met, where that is another sentence.</param>
/// <param name="OnSiteWatch">What the crew sees or measures about it on site; null where it can do nothing.</param>
/// <param name="OnSiteOtherwise">What the crew does where it is not within the limit.</param>
/// <param name="AppliesTo">Kind of plan element.</param>
/// <param name="LooksAt">The element and the conditions, in words.</param>
/// <param name="Check">How value and limit are compared.</param>
/// <param name="Quantity">Quantity that is judged.</param>
/// <param name="FromStage">Stage from which its inputs must be known.</param>
/// <param name="Severity">Severity of a safety rule about presence.</param>
/// <param name="Life">Life of the rule.</param>
/// <param name="InForce">Whether it judges plans in this book.</param>
/// <param name="AddedBy">Specification that adds it; null for general practice.</param>
/// <param name="TakenOutBy">Specification that takes it out of force; null where none does.</param>
/// <param name="Jurisdictions">Places where it holds, by codes such as US or US-WA; empty for anywhere.</param>
/// <param name="NotIn">Places that have a limit of their own, where it does not hold, by codes such as US or US-WA.</param>
/// <param name="Limits">Limits, one for each row of a table; empty when a specification must set them.</param>
/// <param name="Cases">Its cases; empty in a list.</param>
public sealed record RuleShape(
    [property: Schema(Pattern = "^[A-Z]{3}-[0-9]{3}$")] string Id,
    [property: Schema(NotEmpty = true)] string Family,
    [property: Schema(NotEmpty = true)] string Name,
    [property: Schema(NotEmpty = true)] string Title,
    [property: Schema(NotEmpty = true)] string Why,
    [property: Schema(NotEmpty = true)] string Remedy,
    [property: Schema(NotEmpty = true)] string Local,
    [property: Schema(Later = true)] string? Asks,
    [property: Schema(Later = true)] string? Holds,
    string? OnSiteWatch,
    string? OnSiteOtherwise,
    ElementKind AppliesTo,
    [property: Schema(NotEmpty = true)] string LooksAt,
    CheckKind Check,
    [property: Schema(NotEmpty = true)] string Quantity,
    Stage FromStage,
    Severity? Severity,
    LifeState Life,
    bool InForce,
    string? AddedBy,
    string? TakenOutBy,
    [property: Schema(NotEmpty = true)] IReadOnlyList<string> Jurisdictions,
    [property: Schema(NotEmpty = true)] IReadOnlyList<string> NotIn,
    IReadOnlyList<RuleLimitShape> Limits,
    IReadOnlyList<RuleCaseShape> Cases);

/// <summary>A limit in words.</summary>
/// <param name="For">What the row of a table asks; empty for all.</param>
/// <param name="Keys">Quantities that the row asks, in words; empty where the limit is no table.</param>
/// <param name="Limit">The limit with its unit.</param>
/// <param name="Strength">Whether it is required or advised, and on what basis.</param>
/// <param name="Source">Publication, edition and clause.</param>
/// <param name="Known">How it is known.</param>
/// <param name="SetBy">Layer that set it.</param>
/// <param name="Remark">Remark; empty for none.</param>
public sealed record RuleLimitShape(
    string For,
    string Keys,
    [property: Schema(NotEmpty = true)] string Limit,
    [property: Schema(NotEmpty = true)] string Strength,
    [property: Schema(NotEmpty = true)] string Source,
    [property: Schema(NotEmpty = true)] string Known,
    [property: Schema(NotEmpty = true)] string SetBy,
    string Remark);

/// <summary>A case of the rule.</summary>
/// <param name="Case">What it shows.</param>
/// <param name="Outcome">Outcome.</param>
/// <param name="Status">Status at the gate.</param>
/// <param name="With">Specifications with which it is run, by name.</param>
public sealed record RuleCaseShape(
    [property: Schema(NotEmpty = true)] string Case,
    [property: Schema(Words = "met missed not-applicable not-assessed needs-person open")] string Outcome,
    [property: Schema(Words = "pass warn fail departed")] string? Status,
    [property: Schema(NotEmpty = true)] IReadOnlyList<string> With);

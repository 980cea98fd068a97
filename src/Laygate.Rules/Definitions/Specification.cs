using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;

namespace Laygate.Rules.Definitions;

/// <summary>Layer of a rule book, in the order in which later wins.</summary>
public enum Layer
{
    /// <summary>Limits from handbooks.</summary>
    GeneralPractice,

    /// <summary>An authority's published specification.</summary>
    StandardSpecification,

    /// <summary>This contract's own.</summary>
    ParticularSpecification,
}

/// <summary>A publication in the bibliography.</summary>
/// <param name="Id">Id.</param>
/// <param name="Title">Title.</param>
/// <param name="Issuer">Issuer.</param>
/// <param name="Edition">Edition.</param>
/// <param name="Year">Year.</param>
/// <param name="Address">Address where it, or its carrier, is public.</param>
/// <param name="Carrier">The carrier that was read, where it is not the publication itself.</param>
/// <param name="Licence">Remark on its licence.</param>
public sealed record Source(
    string Id, string Title, string Issuer, string? Edition, string? Year, string? Address, string? Carrier, string? Licence);

/// <summary>An overlay on the rule book: it may bring rules in, take them out with a reason, set limits, confirm, move bounds, replace assumptions and add rules; never touch logic or ids.</summary>
public sealed record Specification
{
    /// <summary>Name: its folder or file name.</summary>
    public required string Name { get; init; }

    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>Issuer.</summary>
    public required string Issuer { get; init; }

    /// <summary>Edition.</summary>
    public required string Edition { get; init; }

    /// <summary>Status in words, for example that it is being superseded.</summary>
    public string? Status { get; init; }

    /// <summary>Layer.</summary>
    public required Layer Layer { get; init; }

    /// <summary>ISO 3166 code of the place for which it speaks, or <c>none</c>.</summary>
    public required string Jurisdiction { get; init; }

    /// <summary>What it covers and what not, in words.</summary>
    public string? Coverage { get; init; }

    /// <summary>Its clauses and how far rules cover each.</summary>
    public IReadOnlyList<ClauseCoverage> Clauses { get; init; } = [];

    /// <summary>Words of the last version that its files still use.</summary>
    public IReadOnlyList<OldWord> OldWords { get; init; } = [];

    /// <summary>Rules that it brings into force without changing their bounds.</summary>
    public IReadOnlyList<string> BringIn { get; init; } = [];

    /// <summary>Rules that it takes out of force, each with a reason.</summary>
    public IReadOnlyList<TakenOut> TakeOut { get; init; } = [];

    /// <summary>Bounds that it sets; they replace all bounds of the rule and bring it into force.</summary>
    public IReadOnlyList<LimitOverride> Set { get; init; } = [];

    /// <summary>Bounds that it moves between required and advised.</summary>
    public IReadOnlyList<BoundMove> Move { get; init; } = [];

    /// <summary>Limits that it confirms.</summary>
    public IReadOnlyList<LimitConfirmation> Confirm { get; init; } = [];

    /// <summary>Assumptions that it replaces.</summary>
    public IReadOnlyList<Assumption> Assume { get; init; } = [];

    /// <summary>Rules that it adds.</summary>
    public IReadOnlyList<RuleDefinition> Rules { get; init; } = [];

    /// <summary>Whether nothing of it was read: it is an authority's specification and each limit that it sets is recalled, judged or habit, and none is confirmed.</summary>
    public bool IsUnread => Layer == Layer.StandardSpecification && Confirm.Count == 0
        && Set.SelectMany(set => set.Bounds).Concat(Rules.SelectMany(rule => rule.Bounds)).ToList() is { Count: > 0 } bounds
        && bounds.SelectMany(SourcesOf).All(source => source.Evidence is Evidence.Recalled or Evidence.Judgement or Evidence.CommonPractice);

    private static IEnumerable<SourceReference> SourcesOf(Bound bound) =>
        bound.Limit is TableLimit table ? table.Rows.Select(row => row.Source ?? bound.Source) : [bound.Source];

    /// <summary>Publications that it adds to the bibliography.</summary>
    public IReadOnlyList<Source> Sources { get; init; } = [];
}

/// <summary>A rule taken out of force.</summary>
/// <param name="Rule">Id.</param>
/// <param name="Reason">Reason.</param>
public sealed record TakenOut(string Rule, string Reason);

/// <summary>Bounds set by a specification.</summary>
/// <param name="Rule">Id.</param>
/// <param name="Bounds">Bounds.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record LimitOverride(string Rule, IReadOnlyList<Bound> Bounds, string? Reason);

/// <summary>A bound moved between required and advised.</summary>
/// <param name="Rule">Id.</param>
/// <param name="From">Strength that it has.</param>
/// <param name="To">Strength that it gets.</param>
/// <param name="Reason">Reason.</param>
public sealed record BoundMove(string Rule, Strength From, Strength To, string Reason);

/// <summary>A limit confirmed by the checking side.</summary>
/// <param name="Rule">Id.</param>
/// <param name="Strength">The bound.</param>
/// <param name="Row">Index of the table row from 1; null for all.</param>
/// <param name="Confirmation">Who, when, edition, page.</param>
public sealed record LimitConfirmation(string Rule, Strength Strength, int? Row, Confirmation Confirmation)
{
    /// <summary>Key of the table row, in place of its index: rows may be added without moving the confirmation.</summary>
    public string? RowKey { get; init; }

    /// <summary>The limit that was seen, as text; one that has changed since is not confirmed by it. Null: not stated.</summary>
    public string? Limit { get; init; }
}

/// <summary>How far rules cover a clause of a publication.</summary>
public enum ClauseStatus
{
    /// <summary>Rules judge it.</summary>
    Automated,

    /// <summary>Rules judge a part of it.</summary>
    Partly,

    /// <summary>A person must judge it.</summary>
    Person,

    /// <summary>Not dealt with.</summary>
    OutOfScope,
}

/// <summary>A clause of a publication and how far rules cover it.</summary>
/// <param name="Number">Clause, table or section, as published.</param>
/// <param name="Subject">What it is about, in our own words.</param>
/// <param name="Status">How far it is covered.</param>
/// <param name="Rules">Rules that judge it.</param>
/// <param name="Note">What is left, or why.</param>
public sealed record ClauseCoverage(string Number, string Subject, ClauseStatus Status, IReadOnlyList<string> Rules, string? Note);

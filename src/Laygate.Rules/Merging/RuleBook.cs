using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;

namespace Laygate.Rules.Merging;

/// <summary>The merged rule book of one check: general practice, then standard, then particular specification; bound to the catalogue and free of mistakes.</summary>
public sealed class RuleBook
{
    internal RuleBook(
        IReadOnlyList<BookLayer> layers,
        IReadOnlyList<MergedRule> all,
        IReadOnlyDictionary<string, Source> sources,
        IReadOnlyList<Assumption> assumptions)
    {
        Layers = layers;
        All = all;
        Sources = sources;
        Assumptions = assumptions;
        InForce = [.. all.Where(rule => rule.InForce).Select(rule => rule.Rule)];
        byElement = InForce.ToLookup(rule => rule.Definition.AppliesTo);
        Usual = new UsualRanges(On(ElementKind.Value));
        // A report needs the hash at its end; a check does not wait for half a megabyte of text before it begins.
        canonical = Task.Run(Canonical);
    }

    private readonly ILookup<ElementKind, CheckedRule> byElement;
    private readonly Task<(string Text, string Hash)> canonical;

    /// <summary>What is usual of stated numbers, by the rules in force.</summary>
    internal UsualRanges Usual { get; }

    /// <summary>Layers in order.</summary>
    public IReadOnlyList<BookLayer> Layers { get; }

    /// <summary>All rules by id, also those out of force.</summary>
    public IReadOnlyList<MergedRule> All { get; }

    /// <summary>The rules in force, by id.</summary>
    public IReadOnlyList<CheckedRule> InForce { get; }

    /// <summary>The bibliography of all layers, by id.</summary>
    public IReadOnlyDictionary<string, Source> Sources { get; }

    /// <summary>Assumptions that specifications replace; lay them over the catalogue's to make the set of the check.</summary>
    public IReadOnlyList<Assumption> Assumptions { get; }

    /// <summary>The merged book as text, always the same for the same book.</summary>
    public string Text => canonical.GetAwaiter().GetResult().Text;

    /// <summary>SHA-256 of <see cref="Text"/>, lower-case hex.</summary>
    public string Hash => canonical.GetAwaiter().GetResult().Hash;

    /// <summary>The rules in force on one kind of element, by id.</summary>
    public IEnumerable<CheckedRule> On(ElementKind kind) => byElement[kind];

    private (string Text, string Hash) Canonical()
    {
        var text = CanonicalText.Of(this);
        return (text, CanonicalText.HashOf(text));
    }

    /// <summary>Binds and merges definitions.</summary>
    /// <param name="general">The general book.</param>
    /// <param name="specifications">Specifications in the order of the command; they are laid over the book by layer.</param>
    /// <param name="catalogue">The quantities.</param>
    /// <param name="assumptions">The catalogue of assumptions.</param>
    /// <returns>The book, or the mistakes that keep it from being used.</returns>
    public static RuleBookResult Build(
        BookDefinition general, IEnumerable<Specification> specifications, QuantityCatalogue catalogue, AssumptionSet assumptions) =>
        new BookMerger(general, [.. specifications], catalogue, assumptions).Merge();
}

/// <summary>A rule of a merged book.</summary>
/// <param name="Rule">The rule with its bounds.</param>
/// <param name="InForce">Whether it is in force.</param>
/// <param name="AddedBy">Specification that added it; null for the general book.</param>
/// <param name="TakenOutBy">Specification that took it out of force.</param>
/// <param name="Reason">Why it was taken out of force.</param>
public sealed record MergedRule(CheckedRule Rule, bool InForce, string? AddedBy, string? TakenOutBy, string? Reason);

/// <summary>A merged rule book, or why there is none.</summary>
/// <param name="Book">The book; null when there are mistakes.</param>
/// <param name="Problems">The mistakes.</param>
public sealed record RuleBookResult(RuleBook? Book, IReadOnlyList<BookProblem> Problems);

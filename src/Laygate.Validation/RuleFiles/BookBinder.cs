using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Validation.RuleFiles;

/// <summary>A rule book, or the positioned problems that keep it from being used.</summary>
/// <param name="Book">The book; null when there are problems.</param>
/// <param name="Problems">The problems.</param>
public sealed record BoundBook(RuleBook? Book, IReadOnlyList<Problem> Problems);

/// <summary>Merges definitions and words what is wrong with them, with file, line and column.</summary>
public static class BookBinder
{
    /// <summary>Message and hint of a mistake.</summary>
    public static (string Message, string? Hint) Word(Rules.Binding.BookProblem problem, QuantityCatalogue catalogue) => BookMessages.Of(problem, catalogue);

    /// <summary>Binds a book.</summary>
    /// <param name="general">The general book.</param>
    /// <param name="specifications">Specifications, in the order of the command.</param>
    /// <param name="catalogue">The quantities.</param>
    /// <param name="assumptions">The catalogue of assumptions.</param>
    /// <param name="positions">Where the definitions stand; null for those of a pack.</param>
    public static BoundBook Bind(
        BookDefinition general,
        IEnumerable<Specification> specifications,
        QuantityCatalogue catalogue,
        AssumptionSet assumptions,
        DefinitionPositions? positions = null)
    {
        var built = RuleBook.Build(general, specifications, catalogue, assumptions);
        var where = positions ?? new DefinitionPositions();
        var problems = built.Problems.Select(problem =>
        {
            var (file, span) = where.Find(problem.Place);
            var (message, hint) = BookMessages.Of(problem, catalogue);
            return new Problem(file, message, hint, span is { } at ? Spans.Of(at) : null);
        });
        return new BoundBook(built.Book, [.. problems.OrderBy(problem => problem.File, StringComparer.Ordinal).ThenBy(problem => problem.Position?.Line).ThenBy(problem => problem.Position?.Column)]);
    }
}

using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reading.RuleFiles;

/// <summary>A rule book, or the positioned problems that keep it from being used.</summary>
/// <param name="Book">The book; null when there are problems.</param>
/// <param name="Problems">The problems.</param>
public sealed record BoundBook(RuleBook? Book, IReadOnlyList<Problem> Problems);

/// <summary>Merges definitions and words what is wrong with them, with file, line and column.</summary>
public static class BookBinder
{
    /// <summary>Message and hint of a mistake.</summary>
    public static (string Message, string? Hint) Word(Rules.Binding.BookMistake mistake, QuantityCatalogue catalogue) => BookMessages.Of(mistake, catalogue);

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
        var byFile = built.Problems.GroupBy(problem => where.Find(problem.Place).File, StringComparer.Ordinal).OrderBy(file => file.Key, StringComparer.Ordinal);
        return new BoundBook(built.Book, [.. byFile.SelectMany(file => Worded(file.Key, file, where, catalogue))]);
    }

    // First what stands nowhere in the file, such as a mistake of a rule of the pack.
    private static IEnumerable<Problem> Worded(string file, IEnumerable<Rules.Binding.BookProblem> problems, DefinitionPositions where, QuantityCatalogue catalogue)
    {
        var worded = problems.Select(problem => (Words: BookMessages.Of(problem.Mistake, catalogue), where.Find(problem.Place).Span)).ToLookup(problem => problem.Span is null);
        return worded[true].Select(problem => new Problem(file, ShownProblems.Short(problem.Words.Message), problem.Words.Hint, null))
            .Concat(ShownProblems.Of(file, worded[false].Select(problem => new ReadingProblem(problem.Words.Message, problem.Span!.Value, problem.Words.Hint))));
    }
}

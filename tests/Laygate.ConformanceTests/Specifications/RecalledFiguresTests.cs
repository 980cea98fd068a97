using System.Globalization;
using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>The page that lists every recalled figure with what to check it against; written anew with <c>LAYGATE_APPROVE</c>.</summary>
public sealed class RecalledFiguresTests
{
    private static readonly Dictionary<string, RuleDefinition> Rules = Repository.Book.General!.Rules.ToDictionary(rule => rule.Id, StringComparer.Ordinal);

    [Fact]
    public void The_page_lists_every_recalled_figure() => Approved.File_holds("docs/recalled-figures.md", Page());

    private static string Page()
    {
        var general = Repository.Book.General!.Rules.OrderBy(rule => rule.Id, StringComparer.Ordinal).SelectMany(KnownFigures.Of).Where(IsRecalled).ToList();
        var specifications = Repository.Book.Specifications
            .Select(specification => (Specification: specification, Figures: KnownFigures.Of(specification).Where(IsRecalled).ToList()))
            .Where(of => of.Figures.Count > 0).ToList();
        var count = general.Concat(specifications.SelectMany(of => of.Figures)).Sum(figure => figure.Ends);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"""
            # Recalled figures

            {count} figures and demands of the rule book are recalled: they come from memory, or from a page that is no publication (an exam, a card, a trade page, slides, news).
            A miss of such a limit warns and never fails. Whoever has the publication at hand can check a figure against it and confirm it in their own overlay; from then on it fails like one that was read.
            This page is written from the rule book. Your specification governs.


            """);
        Section(text, Repository.Book.General!.Title, null, general, Repository.Book.General!.Sources);
        foreach (var (specification, figures) in specifications)
        {
            Section(text, $"{specification.Title} (`{specification.Name}`)", specification, figures, [.. specification.Sources, .. Repository.Book.General!.Sources]);
        }

        return $"{text.ToString().TrimEnd()}\n";
    }

    private static bool IsRecalled(KnownFigure figure) => figure.Evidence == Evidence.Recalled;

    private static void Section(StringBuilder text, string title, Specification? specification, List<KnownFigure> figures, IReadOnlyList<Source> sources)
    {
        text.Append(CultureInfo.InvariantCulture, $"## {title}\n\n");
        if (specification is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"Edition: {specification.Edition}. Status: {specification.Status}.\n\n");
        }

        text.Append("| rule | for | figure | check against |\n|---|---|---|---|\n");
        foreach (var figure in figures)
        {
            var source = sources.First(one => string.Equals(one.Id, figure.Source.Source, StringComparison.Ordinal));
            var rule = Rules[figure.Rule];
            text.Append(CultureInfo.InvariantCulture, $"| {figure.Rule} {rule.Title} | {figure.For} | {figure.Limit} | {Against(source, figure.Source)} |\n");
        }

        text.Append('\n');
    }

    private static string Against(Source source, SourceReference reference) => string.Join(", ", new[]
    {
        source.Issuer,
        source.Title,
        source.Edition is { } edition && !source.Title.Contains(edition, StringComparison.Ordinal) ? edition : null,
        reference.Clause is { } clause && !string.Equals(clause, source.Title, StringComparison.OrdinalIgnoreCase) ? clause : null,
    }.OfType<string>());
}

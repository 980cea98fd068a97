using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.RulePages;
using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.RulePages;

/// <summary>The pages under docs/rules are what the rules say: none stale, none missing, none of a rule that is gone.</summary>
public sealed class RulePageTests
{
    private const string Folder = "docs/rules";

    [Fact]
    public void The_pages_are_generated_from_the_rules_that_are_there()
    {
        var pages = Pages();
        var folder = Path.Combine(Repository.Root, Folder);
        if (Approved.Approving)
        {
            Write(folder, pages);
        }

        var there = Directory.EnumerateFiles(folder, "*.md", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/')).Order(StringComparer.Ordinal);
        Assert.Equal(pages.Keys.Order(StringComparer.Ordinal), there, StringComparer.Ordinal);
        var stale = pages.Where(page => File.ReadAllText(Path.Combine(folder, page.Key)) != page.Value).Select(page => page.Key);
        Assert.True(!stale.Any(), $"Write them anew with LAYGATE_APPROVE=1 and read the diff: {string.Join(", ", stale)}");
    }

    private static void Write(string folder, IReadOnlyDictionary<string, string> pages)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        foreach (var (path, text) in pages)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(folder, path))!);
            File.WriteAllText(Path.Combine(folder, path), text);
        }
    }

    internal static SortedDictionary<string, string> Pages()
    {
        var book = Repository.Book;
        var general = Merge();
        var under = book.Specifications.Select(specification => (Specification: specification, Book: Merge(specification))).ToList();
        var added = under.SelectMany(one => one.Book.All.Where(rule => rule.AddedBy is not null)).ToList();
        var runner = Repository.Cases();
        var pages = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["README.md"] = IndexPage.Of(general, added, book.Specifications),
            ["recalled.md"] = RecalledPage.Of([general, .. under.Select(one => one.Book)]),
        };
        foreach (var specification in book.Specifications)
        {
            pages[$"specifications/{specification.Name}.md"] = IndexPage.Of(specification);
        }

        var definitions = runner.Rules.ToDictionary(rule => rule.Id, StringComparer.Ordinal);
        foreach (var rule in general.All.Concat(added))
        {
            var id = rule.Rule.Definition.Id;
            var touched = under.Where(one => Touches(one.Specification, id))
                .Select(one => new RuleUnderSpecification(one.Specification, one.Book, one.Book.All.Single(merged => merged.Rule.Definition.Id == id))).ToList();
            pages[$"{id}.md"] = RulePage.Of(general, rule, touched, runner.Summaries(definitions[id]));
        }

        return pages;
    }

    private static Laygate.Rules.Merging.RuleBook Merge(params Specification[] specifications) =>
        Laygate.Rules.Merging.RuleBook.Build(Repository.Book.General!, specifications, LaygateQuantities.Catalogue(), LaygateAssumptions.Set()).Book!;

    private static bool Touches(Specification specification, string id) =>
        specification.BringIn.Contains(id, StringComparer.Ordinal)
        || specification.Set.Any(set => set.Rule == id) || specification.Move.Any(move => move.Rule == id)
        || specification.TakeOut.Any(taken => taken.Rule == id) || specification.Rules.Any(rule => rule.Id == id);
}

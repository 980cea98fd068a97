using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Checking.Cases;

/// <summary>What came of running the cases of a folder.</summary>
/// <param name="Rules">Number of rules.</param>
/// <param name="Results">Every case, in the order of the files.</param>
/// <param name="Problems">Why the folder could not be read; then there are no results.</param>
public sealed record RuleTestRun(int Rules, IReadOnlyList<CaseResult> Results, IReadOnlyList<Problem> Problems);

/// <summary>Runs the cases of a rule book, or of a specification of one's own on top of the shipped one.</summary>
public static class RuleTests
{
    private const string SpecificationFile = "specification.yaml";

    /// <summary>Runs every case.</summary>
    /// <param name="shipped">The shipped folder <c>rules</c>.</param>
    /// <param name="own">A rule book or specification of one's own; null: the shipped book itself.</param>
    /// <param name="name">Name of that specification: the last part of its folder.</param>
    /// <param name="date">Day of checking for cases that give none.</param>
    public static RuleTestRun Run(IRuleFolder shipped, IRuleFolder? own, string name, DateOnly date)
    {
        var isSpecification = own?.Files.Contains(SpecificationFile, StringComparer.Ordinal) == true;
        if (own is not null && !isSpecification && !own.Files.Contains("sources.yaml", StringComparer.Ordinal))
        {
            return new RuleTestRun(0, [], [new Problem(own.Name, "There is neither a rule book nor a specification here.", "A specification has a `specification.yaml`, a rule book a `sources.yaml`.", null)]);
        }

        var folder = isSpecification ? new SpecificationUnderTest(shipped, own!, name) : own ?? shipped;
        var schemas = RuleSchemas.Embedded();
        var files = new RuleFileReader(schemas).ReadBook(folder, "under test");
        var problems = files.Problems.Count > 0 ? files.Problems : Bind(files, isSpecification ? name : null);
        if (problems.Count > 0)
        {
            return new RuleTestRun(0, [], problems);
        }

        var runner = new CaseRunner(folder, files, schemas, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), date);
        return isSpecification
            ? Of(runner, files.Specifications.First(one => string.Equals(one.Name, name, StringComparison.Ordinal)))
            : new RuleTestRun(runner.Rules.Count(), [.. SideBySide(runner.Rules, runner.Run), .. SideBySide(files.Specifications, one => runner.RunSet(one).SelectMany(set => set.Results))], []);
    }

    // Rules do not know of each other; their order is kept.
    private static IEnumerable<CaseResult> SideBySide<T>(IEnumerable<T> all, Func<T, IEnumerable<CaseResult>> run)
    {
        T[] each = [.. all];
        var results = new List<CaseResult>[each.Length];
        Parallel.For(0, each.Length, number => results[number] = [.. run(each[number])]);
        return results.SelectMany(one => one);
    }

    // The rules that a specification adds, and the limits that it sets. Those of shipped specifications are held by tables of their own as well.
    private static RuleTestRun Of(CaseRunner runner, Specification specification)
    {
        var set = runner.RunSet(specification);
        return new RuleTestRun(specification.Rules.Count + set.Count, [.. specification.Rules.SelectMany(runner.Run), .. set.SelectMany(one => one.Results), .. runner.Unshown(specification)], []);
    }

    /// <summary>The cases of one rule of the shipped book.</summary>
    /// <param name="shipped">The shipped folder <c>rules</c>.</param>
    /// <param name="id">Id of the rule.</param>
    public static IReadOnlyList<CaseSummary> Cases(IRuleFolder shipped, string id)
    {
        var schemas = RuleSchemas.Embedded();
        var files = new RuleFileReader(schemas).ReadBook(shipped, string.Empty);
        if (files.General is null)
        {
            return [];
        }

        var runner = new CaseRunner(shipped, files, schemas, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), default);
        return runner.Rules.FirstOrDefault(rule => string.Equals(rule.Id, id, StringComparison.Ordinal)) is { } found ? runner.Summaries(found) : [];
    }

    // Shipped specifications are bound one by one where a case asks for them; one of one's own must bind on its own.
    private static IReadOnlyList<Problem> Bind(RuleFilesResult files, string? name)
    {
        IEnumerable<Specification> specifications = name is null ? [] : files.Specifications.Where(one => string.Equals(one.Name, name, StringComparison.Ordinal));
        return BookBinder.Bind(files.General!, specifications, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), files.Positions).Problems;
    }
}

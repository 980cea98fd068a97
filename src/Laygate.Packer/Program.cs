using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Results;

namespace Laygate.Packer;

/// <summary>Reads the rule book as text, binds it, and writes the pack that ships beside the program. Run by the build.</summary>
internal static class Program
{
    private static int Main(string[] arguments)
    {
        if (arguments is not [var rules, var output, var edition])
        {
            Console.Error.WriteLine("Usage: Laygate.Packer RULES OUTPUT EDITION");
            return 2;
        }

        var folder = new FolderOnDisk(rules);
        var read = new RuleFileReader(RuleSchemas.Embedded()).ReadBook(folder, edition);
        var problems = read.General is { } book ? BookProblems(read, book) : read.Problems;
        foreach (var problem in problems)
        {
            Console.Error.WriteLine(Line(problem));
        }

        if (problems.Count > 0)
        {
            return 1;
        }

        File.WriteAllBytes(output, new RulePack(read.General!, read.Specifications, RulePack.HashOf(folder)).Write());
        return 0;
    }

    // Shipped specifications are alternatives, so each is bound alone: two of one layer may set the same rule.
    private static List<Problem> BookProblems(RuleFilesResult read, Rules.Definitions.BookDefinition book)
    {
        var catalogue = LaygateQuantities.Catalogue();
        var assumptions = LaygateAssumptions.Set();
        return
        [
            .. read.Specifications.Select(specification => new[] { specification }).Prepend([])
                .SelectMany(specifications => BookBinder.Bind(book, specifications, catalogue, assumptions, read.Positions).Problems)
                .Distinct(),
        ];
    }

    // The form in which the build shows an error with its place.
    private static string Line(Problem problem) => FormattableString.Invariant(
        $"{problem.File}({problem.Position?.Line ?? 1},{problem.Position?.Column ?? 1}): error LAYGATE: {problem.Message}{(problem.Hint is null ? string.Empty : " " + problem.Hint)}");
}

/// <summary>A folder of the disk.</summary>
internal sealed class FolderOnDisk(string path) : IRuleFolder
{
    private readonly string root = Path.GetFullPath(path);

    public string Name => root.Replace('\\', '/');

    public IReadOnlyList<string> Files =>
        [.. Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(root, file).Replace('\\', '/'))];

    public byte[] Read(string file) => File.ReadAllBytes(Path.Combine(root, file));
}

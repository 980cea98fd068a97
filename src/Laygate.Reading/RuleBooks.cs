using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading;

/// <summary>What the host can reach on its disk when a rule book is opened.</summary>
public interface IRuleFiles
{
    /// <summary>Opens a folder; null when there is none of that name.</summary>
    IRuleFolder? Folder(string path);

    /// <summary>Reads a file; null when there is none of that name.</summary>
    byte[]? File(string path);
}

/// <summary>Opens the rule book of a run: the shipped pack, and the specifications that the command names.</summary>
public static class RuleBooks
{
    private const string CommandLine = "--rules";

    /// <summary>Opens a rule book.</summary>
    /// <param name="pack">The shipped pack.</param>
    /// <param name="rules">Names of shipped specifications, or paths of a file or folder of one's own, in any order.</param>
    /// <param name="files">The host's files.</param>
    /// <returns>The book, or positioned problems.</returns>
    public static BoundBook Load(RulePack pack, IReadOnlyList<string> rules, IRuleFiles files)
    {
        var reader = new RuleFileReader(RuleSchemas.Embedded());
        var specifications = new List<Specification>();
        var positions = new DefinitionPositions();
        var problems = new List<Problem>();
        foreach (var name in rules.Distinct(StringComparer.Ordinal))
        {
            if (pack.Find(name) is { } shipped)
            {
                specifications.Add(shipped);
                continue;
            }

            var own = Own(reader, name, files);
            specifications.AddRange(own?.Specifications ?? []);
            problems.AddRange(own?.Problems ?? [Unknown(name, pack)]);
            if (own is not null)
            {
                positions.Add(own.Positions);
            }
        }

        return problems.Count > 0
            ? new BoundBook(null, problems)
            : BookBinder.Bind(pack.General, specifications, LaygateQuantities.Catalogue(), new AssumptionSet(LaygateAssumptions.All), positions);
    }

    private static RuleFilesResult? Own(RuleFileReader reader, string path, IRuleFiles files)
    {
        if (files.File(path) is { } bytes)
        {
            return reader.ReadSpecificationFile(path, bytes);
        }

        return files.Folder(path) is { } folder ? reader.ReadSpecification(folder, LastPart(path)) : null;
    }

    private static string LastPart(string path) => path.TrimEnd('/', '\\').Split('/', '\\')[^1];

    private static Problem Unknown(string name, RulePack pack)
    {
        var known = pack.Specifications.Select(specification => specification.Name).ToList();
        var usual = pack.Specifications.Where(specification => !specification.IsUnread).Select(specification => specification.Name);
        var nearest = NearestNames.Of(name, known);
        var hint = nearest.Count > 0
            ? $"Did you mean `{nearest[0]}`?"
            : $"Shipped are: {string.Join(", ", usual)}. Or give the path of a file or folder of your own.";
        return new Problem(CommandLine, $"There is no specification `{name}`, and no file or folder of that name.", hint, null);
    }
}

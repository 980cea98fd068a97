using System.Collections.Concurrent;
using Laygate.Checking;
using Laygate.Checking.Cases;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading;
using Laygate.Reading.Parts;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests;

/// <summary>The files of this repository, and the rule book read from them as text.</summary>
internal static class Repository
{
    /// <summary>The date of checking in all tests, so that reports do not change from day to day.</summary>
    public static readonly DateOnly CheckDate = new(2026, 11, 25);

    public const string Version = "0.0.0";

    /// <summary>The first example written out as one file, for tests that change its text or have no files of parts.</summary>
    public const string WholeQuay = "tests/Shared/Plans/quay-road-hot-on-hot.yaml";

    /// <summary>The file of an example that stands alone.</summary>
    public static string Whole(string example) => example is "quay-road-hot-on-hot" ? WholeQuay : $"examples/{example}.yaml";

    public static string Root { get; } = SourceTree.Root;

    public static IRuleFolder Rules { get; } = new FolderOfRepository(Path.Combine(Root, "rules"));

    public static RuleFilesResult Book { get; } = new RuleFileReader(RuleSchemas.Embedded()).ReadBook(Rules, Version);

    public static CaseRunner Cases(IRuleFolder? rules = null) => new(rules ?? Rules, Book, RuleSchemas.Embedded(), LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), CheckDate);

    /// <summary>Checks a plan of the repository as the command line does.</summary>
    public static FileResult Check(string plan, params string[] rules) =>
        new PlanCheck(Bound(rules), new CheckSettings(null, CheckDate, Version) { Parts = new PartsOfRepository() }).Run(plan, Bytes(plan));

    // No test changes the files of the rule book, and a bound book never changes.
    private static readonly Lazy<RulePack> Pack = new(() => new RulePack(Book.General!, Book.Specifications, RulePack.HashOf(Rules)));
    private static readonly ConcurrentDictionary<string, Lazy<Laygate.Rules.Merging.RuleBook>> Books = new(StringComparer.Ordinal);

    /// <summary>The rule book with specifications laid over it.</summary>
    public static Laygate.Rules.Merging.RuleBook Bound(params string[] rules) => Books.GetOrAdd(string.Join('\n', rules), _ => new(() => Bind(rules))).Value;

    private static Laygate.Rules.Merging.RuleBook Bind(string[] rules)
    {
        var bound = RuleBooks.Load(Pack.Value, rules, new FilesOfRepository());
        Assert.Empty(bound.Problems);
        return bound.Book!;
    }

    /// <summary>Departures of a file of the repository.</summary>
    public static IReadOnlyList<Laygate.Rules.Definitions.Departure> Departures(Laygate.Rules.Merging.RuleBook book, string path)
    {
        var read = Laygate.Reading.Departures.DepartureFiles.Load([path], book, new FilesOfRepository());
        Assert.Empty(read.Problems);
        return read.Departures;
    }

    /// <summary>The bytes of a file of the repository.</summary>
    public static byte[] Bytes(string path) => File.ReadAllBytes(Path.Combine(Root, path));

    /// <summary>The files that plans of the repository use.</summary>
    internal sealed class PartsOfRepository : IPartFiles
    {
        public PartText Read(string from, string name)
        {
            var path = Path.GetRelativePath(Root, Path.GetFullPath(Path.Combine(Root, Path.GetDirectoryName(from)!, name))).Replace('\\', '/');
            return new PartText(path, Bytes(path));
        }
    }

    private sealed class FilesOfRepository : IRuleFiles
    {
        public IRuleFolder? Folder(string path) =>
            Directory.Exists(Path.Combine(Root, path)) ? new FolderOfRepository(Path.Combine(Root, path)) : null;

        byte[]? IRuleFiles.File(string path) =>
            File.Exists(Path.Combine(Root, path)) ? File.ReadAllBytes(Path.Combine(Root, path)) : null;
    }
}

/// <summary>A folder of the disk.</summary>
internal sealed class FolderOfRepository(string path) : IRuleFolder
{
    private readonly Lazy<IReadOnlyList<string>> files = new(() =>
        [.. Directory.EnumerateFiles(path, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(path, file).Replace('\\', '/'))]);

    public string Name => Path.GetRelativePath(Repository.Root, path);

    public IReadOnlyList<string> Files => files.Value;

    public byte[] Read(string file) => File.ReadAllBytes(Path.Combine(path, file));
}

using System.Text;
using Laygate.Checking;
using Laygate.Checking.Cases;
using Laygate.ConformanceTests;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>Definitions that are read, bound into the shipped book, and used on a plan.</summary>
internal abstract class BoundTarget : Target
{
    private static readonly RuleSchemas Schemas = RuleSchemas.Embedded();
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();
    private static readonly AssumptionSet Assumptions = new(LaygateAssumptions.All);
    private static readonly PlanTools Tools = new();
    private static readonly byte[] Plan = Repository.Bytes(SeedFiles.JudgedPlan);

    /// <summary>The reader of rule files.</summary>
    protected static RuleFileReader Reader { get; } = new(Schemas);

    /// <summary>A general book with every twentieth rule: where a specification only adds, the others change nothing.</summary>
    protected static BookDefinition FewRules { get; } = Repository.Book.General! with { Rules = [.. Repository.Book.General!.Rules.Where((_, index) => index % 20 == 0)] };

    /// <summary>Binds what was read and checks a plan with it.</summary>
    protected static Answer Use(BookDefinition general, RuleFilesResult read, byte[] bytes)
    {
        if (read.Problems.Count > 0)
        {
            Refusal.Check(read.Problems, bytes);
            return Answer.Refused;
        }

        var bound = BookBinder.Bind(general, read.Specifications, Catalogue, Assumptions, read.Positions);
        if (bound.Book is null)
        {
            Refusal.Check(bound.Problems, bytes);
            return Answer.Refused;
        }

        var result = new PlanCheck(bound.Book, new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, tools: Tools).Run("plan.yaml", Plan);
        Require(result.Problems.Count == 0, "a rule changes whether a plan can be read");
        if (Choice(bytes, 4) == 0)
        {
            RoundTrips.Of(result);
        }

        return Answer.Accepted;
    }

    /// <summary>A runner of cases over the shipped rules.</summary>
    protected static CaseRunner Runner(IRuleFolder folder) => new(folder, Repository.Book, Schemas, Catalogue, Assumptions, Repository.CheckDate);
}

/// <summary>A rule that somebody adds.</summary>
internal sealed class RuleTarget : BoundTarget
{
    private static readonly byte[] Specification = Encoding.UTF8.GetBytes("""
        name: own
        title: Own
        issuer: Own
        edition: "1"
        status: in force
        layer: particular
        jurisdiction: none
        coverage: One rule.
        """);

    /// <inheritdoc/>
    public override string Name => "rule";

    /// <inheritdoc/>
    public override int Share => 150;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Rules();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var folder = new RuleFolderInMemory(string.Empty, new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["specification.yaml"] = Specification, [$"rules/{FamilyOf(bytes)}/own/rule.yaml"] = bytes });
        return Use(FewRules, Reader.ReadSpecification(folder, "own"), bytes);
    }

    // A rule stands in the folder of its family, which its id begins with.
    private static string FamilyOf(byte[] bytes)
    {
        var prefixes = Repository.Book.General!.Rules.GroupBy(rule => rule.Id.Split('-')[0], StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.First().Family, StringComparer.Ordinal);
        var text = Encoding.UTF8.GetString(bytes.AsSpan(0, Math.Min(bytes.Length, 40)));
        return prefixes.FirstOrDefault(prefix => text.Contains($"id: {prefix.Key}-", StringComparison.Ordinal)).Value ?? "layers";
    }
}

/// <summary>A specification of one file.</summary>
internal sealed class SpecificationTarget : BoundTarget
{
    /// <inheritdoc/>
    public override string Name => "specification";

    /// <inheritdoc/>
    public override int Share => 35;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Specifications();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes) => Use(Repository.Book.General!, Reader.ReadSpecificationFile("own.yaml", bytes), bytes);
}

/// <summary>The bibliography of a rule book.</summary>
internal sealed class SourcesTarget : BoundTarget
{
    /// <inheritdoc/>
    public override string Name => "sources";

    /// <inheritdoc/>
    public override int Share => 90;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Sources();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var read = Reader.ReadBook(new RuleFolderInMemory(string.Empty, new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["sources.yaml"] = bytes }), "1");
        if (read.Problems.Count == 0)
        {
            Require(read.General is not null, "neither a book nor a refusal");
            return Answer.Accepted;
        }

        Refusal.Check(read.Problems, bytes);
        return Answer.Refused;
    }
}

/// <summary>The cases of a rule, run.</summary>
internal sealed class CasesTarget : BoundTarget
{
    /// <inheritdoc/>
    public override string Name => "cases";

    /// <inheritdoc/>
    public override int Share => 30;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Cases();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        // Under which rule the cases are read is no matter: they must be refused or run.
        var rule = string.Join('/', Seeds.All[Choice(bytes, Seeds.All.Count)].Name.Split('/')[1..3]);
        var (folder, runner) = Mine.Value!;
        (folder.File, folder.Bytes) = ($"{rule}/cases.yaml", bytes);
        var results = runner.Run(runner.Rules.First(one => $"{one.Family}/{one.Name}" == rule));
        Require(results.All(result => result.Differences.All(text => text.Length > 0)), "a case that fails without a word");
        Require(results.Count > 0, "neither cases nor a refusal");
        Refusal.Places(results.Select(result => result.Position), bytes);
        return results.Any(result => result.Case.Length > 0) ? Answer.Accepted : Answer.Refused;
    }

    // A runner is dear to make, and each thread tries one input after the other.
    private static readonly ThreadLocal<(Exchanged Folder, CaseRunner Runner)> Mine = new(() =>
    {
        var folder = new Exchanged(Repository.Rules);
        return (folder, Runner(folder));
    });

    /// <summary>A folder in which one file is another.</summary>
    private sealed class Exchanged(IRuleFolder folder) : IRuleFolder
    {
        public string File { get; set; } = string.Empty;

        public byte[] Bytes { get; set; } = [];

        public string Name => folder.Name;

        public IReadOnlyList<string> Files => folder.Files;

        public byte[] Read(string file) => file == File ? Bytes : folder.Read(file);
    }
}

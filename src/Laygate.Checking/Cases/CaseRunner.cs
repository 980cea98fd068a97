using System.Collections.Concurrent;
using System.Text;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Cases;

/// <summary>Runs the cases of rules: each plan is changed, mapped and judged by its one rule, and the finding is compared in full. Several rules may be run at once.</summary>
public sealed partial class CaseRunner
{
    private readonly IRuleFolder folder;
    private readonly RuleFilesResult files;
    private readonly RuleSchemas schemas;
    private readonly QuantityCatalogue catalogue;
    private readonly AssumptionSet assumptions;
    private readonly DateOnly date;
    private readonly PlanReader reader = new();
    private readonly ConcurrentDictionary<string, Lazy<RuleBook>> books = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<BasePlan>> bases = new(StringComparer.Ordinal);

    /// <summary>Prepares a run.</summary>
    /// <param name="folder">The folder <c>rules</c>.</param>
    /// <param name="files">What was read from it; without problems.</param>
    /// <param name="schemas">Schemas of the files.</param>
    /// <param name="catalogue">The quantities.</param>
    /// <param name="assumptions">The catalogue of assumptions.</param>
    /// <param name="date">Date of checking for cases that give none.</param>
    public CaseRunner(
        IRuleFolder folder, RuleFilesResult files, RuleSchemas schemas, QuantityCatalogue catalogue, AssumptionSet assumptions, DateOnly date)
    {
        this.folder = folder;
        this.files = files;
        this.schemas = schemas;
        this.catalogue = catalogue;
        this.assumptions = assumptions;
        this.date = date;
    }

    /// <summary>All rules, general and of specifications, that have a folder with cases.</summary>
    public IEnumerable<RuleDefinition> Rules => General.Rules.Concat(Specifications.SelectMany(specification => specification.Rules));

    /// <summary>Specifications beside the general rules.</summary>
    internal IReadOnlyList<Specification> Specifications => files.Specifications;

    /// <summary>The general rules.</summary>
    internal BookDefinition General => files.General ?? throw new InvalidOperationException("Cases are run on a rule book without problems.");

    /// <summary>Runs the cases of one rule.</summary>
    /// <param name="rule">The rule.</param>
    public IReadOnlyList<CaseResult> Run(RuleDefinition rule)
    {
        var (cases, results) = Read(rule);
        return [.. results, .. cases.Select(one => Result(rule, one, Differences(rule, one))), .. Kinds(rule, cases)];
    }

    /// <summary>The cases of a rule as a list; those that cannot be read are left out.</summary>
    /// <param name="rule">The rule.</param>
    public IReadOnlyList<CaseSummary> Summaries(RuleDefinition rule) =>
        [.. Read(rule).Cases.Select(one => new CaseSummary(one.Name, one.Finding.Needed("outcome"), one.Finding.Text("status"), one.With))];

    /// <summary>The cases of a rule, and what is wrong with their file.</summary>
    internal (IReadOnlyList<RuleCase> Cases, IReadOnlyList<CaseResult> Problems) Read(RuleDefinition rule) =>
        Read(rule, FileOf(rule), Specifications.FirstOrDefault(specification => specification.Rules.Contains(rule)));

    private (IReadOnlyList<RuleCase> Cases, IReadOnlyList<CaseResult> Problems) Read(RuleDefinition rule, string? file, Specification? own)
    {
        if (file is null)
        {
            return ([], []);
        }

        var documents = new DocumentReader(folder);
        var problems = new List<ReadingProblem>();
        IReadOnlyList<RuleCase> cases = documents.Read(file, "list of cases", schemas.Cases) is MapToken root ? [.. CaseReader.Read(root, problems).Select(one => WithOwn(one, own))] : [];
        return (cases,
        [
            .. documents.Problems.Select(problem => new CaseResult(rule.Id, problem.File, string.Empty, problem.Position, [problem.Message])),
            .. problems.Select(problem => new CaseResult(rule.Id, documents.NameOf(file), string.Empty, Spans.Of(problem.Position), [problem.Message])),
        ]);
    }

    // A rule that a specification adds is there only with it.
    private static RuleCase WithOwn(RuleCase one, Specification? own) =>
        own is null || one.With.Contains(own.Name, StringComparer.Ordinal) ? one : one with { With = [.. one.With, own.Name] };

    private string FileOf(RuleDefinition rule)
    {
        var own = Specifications.FirstOrDefault(specification => specification.Rules.Contains(rule));
        return own is null ? $"{rule.Family}/{rule.Name}/cases.yaml" : $"specifications/{own.Name}/rules/{rule.Family}/{rule.Name}/cases.yaml";
    }

    private CaseResult Result(RuleDefinition rule, RuleCase one, IReadOnlyList<string> differences, string? file = null) =>
        new(rule.Id, new DocumentReader(folder).NameOf(file ?? FileOf(rule)), one.Name, Spans.Of(one.Span), differences);

    // Met, missed, not assessed, and not applicable where the rule has a condition or a jurisdiction.
    private IEnumerable<CaseResult> Kinds(RuleDefinition rule, IReadOnlyList<RuleCase> cases)
    {
        string[] needed = rule.When.Count > 0 || rule.Jurisdictions.Count > 0
            ? ["met", "missed", Unknown(rule), "not-applicable"]
            : rule.Check == CheckKind.Present || rule.AppliesTo == ElementKind.Value ? ["met", "missed"] : ["met", "missed", "not-assessed"];
        // What is stated may be for a person to judge: nothing is met then.
        var shown = cases.Select(one => one.Finding.Text("outcome")).ToHashSet(StringComparer.Ordinal);
        var lacking = needed.Where(kind => !shown.Contains(kind) && !(kind is "met" && rule.Check == CheckKind.Present && shown.Contains("needs-person"))).ToList();
        return lacking.Count == 0 ? [] :
            [new CaseResult(rule.Id, new DocumentReader(folder).NameOf(FileOf(rule)), string.Empty, null, [.. lacking.Select(kind => $"No case shows the outcome {kind}.")])];
    }

    // What is not known of a safety measure below severity A holds no plan up: it is listed as open.
    private static string Unknown(RuleDefinition rule) =>
        rule is { Check: CheckKind.Present, Severity: Severity.B or Severity.C } ? "open" : "not-assessed";

    private IReadOnlyList<string> Differences(RuleDefinition rule, RuleCase one)
    {
        try
        {
            return Compare(rule, Prepare(one), BookOf(one.With));
        }
        catch (CaseException error)
        {
            return [error.Message];
        }
    }

    /// <summary>How the finding of a rule book differs from what a case expects.</summary>
    internal IReadOnlyList<string> Compare(RuleDefinition rule, PreparedCase one, RuleBook book)
    {
        var settings = new EvaluationSettings { File = one.Case.Base, CheckedOn = one.Case.Date ?? date, Stage = one.Case.Stage, OnlyRule = rule.Id };
        var address = one.Case.Finding.Text("address");
        var findings = Evaluator.Evaluate(book, one.Context, settings).Findings;
        var finding = findings.FirstOrDefault(found => string.Equals(found.Address, address, StringComparison.Ordinal));
        if (finding is not null)
        {
            return FindingComparison.Compare(one.Case.Finding, finding);
        }

        return [findings.Count == 0
            ? "The rule gives no finding: it is not in force, or the plan has no element of its kind."
            : $"There is no finding at {address}, only at {string.Join(", ", findings.Select(found => found.Address))}."];
    }

    /// <summary>Changes and reads the plan of a case.</summary>
    /// <exception cref="CaseException">The plan is refused.</exception>
    internal PreparedCase Prepare(RuleCase one, RuleBook? book = null)
    {
        var from = Base(one.Base);
        var plan = one.Remove.Aggregate(from.Plan, PlanEdit.Remove);
        plan = one.Set.Aggregate(plan, (changed, set) => PlanEdit.Set(changed, set.Path, set.Value));
        plan = (MapToken)OldWords.OfPlans.Renew(plan).Root;
        var document = new YamlDocument(plan, 1);
        var set = new AssumptionSet([.. assumptions.All, .. (book ?? BookOf(one.With)).Assumptions]);
        return Given(one, JobOfCase.Is(document) ? JobOfCase.Context(reader, document, catalogue, set) : Context(from, plan, document, set));
    }

    private QuantityContext Context(BasePlan from, MapToken plan, YamlDocument document, AssumptionSet set)
    {
        Refuse(from.Keeps(plan, reader.Schema) ? [] : SchemaChecker.Check(document, reader.Schema));
        var (read, problems) = reader.ReadValues(document);
        Refuse(problems);
        return new QuantityContext(read!.Plan, catalogue, set, seed: 1);
    }

    private static PreparedCase Given(RuleCase one, QuantityContext context)
    {
        foreach (var (address, quantity, value) in one.Give)
        {
            GivenReader.Give(context, address, quantity, value);
        }

        return new PreparedCase(one, context);
    }

    private static void Refuse(IReadOnlyList<ReadingProblem> problems)
    {
        if (problems.Count > 0)
        {
            throw new CaseException($"The changed plan is refused: {problems[0].Message} {problems[0].Hint}".TrimEnd());
        }
    }

    private BasePlan Base(string name) => bases.GetOrAdd(name, asked => new Lazy<BasePlan>(() => ReadBase(asked))).Value;

    private BasePlan ReadBase(string name)
    {
        var file = $"bases/{name}.yaml";
        if (!folder.Files.Contains(file, StringComparer.Ordinal))
        {
            throw new CaseException($"There is no base plan `{name}`.");
        }

        var read = YamlReader.Read(folder.Read(file));
        Refuse(read.Problems);
        return read.Documents[0].Root is MapToken plan
            ? new BasePlan(plan, SchemaChecker.Check(read.Documents[0], reader.Schema).Count == 0)
            : throw new CaseException($"The base plan `{name}` is no plan.");
    }

    private RuleBook BookOf(IReadOnlyList<string> with) => books.GetOrAdd(string.Join('+', with), _ => new Lazy<RuleBook>(() => Bind(with))).Value;

    /// <summary>A changed rule book; null when the binder refuses it.</summary>
    internal RuleBook? Changed(BookDefinition general, IEnumerable<Specification> specifications) => RuleBook.Build(general, specifications, catalogue, assumptions).Book;

    private RuleBook Bind(IReadOnlyList<string> with)
    {
        var specifications = with.Select(name =>
            Specifications.FirstOrDefault(specification => string.Equals(specification.Name, name, StringComparison.Ordinal))
            ?? throw new CaseException($"There is no specification `{name}`.")).ToList();
        var bound = BookBinder.Bind(General, specifications, catalogue, assumptions, files.Positions);
        return bound.Book ?? throw new CaseException(new StringBuilder("The rule book is refused: ").Append(bound.Problems[0].Message).ToString());
    }
}

/// <summary>A case with its plan, changed and read.</summary>
internal sealed record PreparedCase(RuleCase Case, QuantityContext Context);

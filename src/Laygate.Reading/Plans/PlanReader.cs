using Laygate.Model.Plans;
using Laygate.Reading.Jobs;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans.Consistency;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Plans;

/// <summary>A plan that can be judged, with the text it came from.</summary>
/// <param name="Root">The plan as it was read.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Positions">Where its values stand.</param>
/// <param name="OldWords">Old words that were read as the new ones.</param>
/// <param name="Uses">Files that it uses, with what was taken from each.</param>
public sealed record ReadPlan(MapToken Root, Plan Plan, PlanPositions Positions, IReadOnlyList<FoundOldWord> OldWords, IReadOnlyList<UsedFile> Uses);

/// <summary>The plans of one file, or why it could not be read.</summary>
/// <param name="Plans">The plans, in the order of the file; none when there is a problem.</param>
/// <param name="Problems">The problems of the step that stopped it.</param>
public sealed record PlanFile(IReadOnlyList<ReadPlan> Plans, IReadOnlyList<Problem> Problems)
{
    /// <summary>The job whose shifts the plans are; null where the file is none.</summary>
    public ReadJob? Job { get; init; }
}

/// <summary>A job of several shifts.</summary>
/// <param name="Whole">What its shifts have in common, as a plan of no shift; its positions know the shifts, too.</param>
/// <param name="Shifts">Ids of its shifts, one for each plan of the file.</param>
/// <param name="Lots">Its lots of acceptance.</param>
public sealed record ReadJob(ReadPlan Whole, IReadOnlyList<string> Shifts, IReadOnlyList<Lot> Lots);

/// <summary>Reads plans: bytes, YAML, parts of other files, shape, values, blanks, consistency. Each step hands on or stops. Costly to make; one serves any number of files, also at once.</summary>
public sealed class PlanReader
{
    private readonly PlanValidator validator = new();
    private readonly PartTools partTools = new();
    private readonly Lazy<LoadedSchema> jobSchema = new(JobSchemas.Load);

    /// <summary>The schema of plans.</summary>
    public LoadedSchema Schema { get; } = EmbeddedSchemas.Plan();

    /// <summary>Reads every plan of one file.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="parts">What the host can reach of the files that plans use.</param>
    /// <returns>The plans, or all problems of the step that stopped the first of them.</returns>
    public PlanFile Read(string file, byte[] bytes, IPartFiles parts)
    {
        var text = YamlReader.Read(bytes);
        if (!text.IsSound)
        {
            return new PlanFile([], ShownProblems.Of(file, text.Problems));
        }

        return ReadDocuments(file, text.Documents, parts);
    }

    /// <summary>Reads documents as plans, or as the job that one of them is.</summary>
    /// <param name="file">Name of their file, as it is to be shown.</param>
    /// <param name="documents">The documents.</param>
    /// <param name="parts">What the host can reach of the files that plans use.</param>
    internal PlanFile ReadDocuments(string file, IReadOnlyList<YamlDocument> documents, IPartFiles parts)
    {
        if (documents.Any(JobReader.IsJob))
        {
            return new JobReader(this, jobSchema.Value, partTools).Read(file, documents, parts);
        }

        var read = documents.Select(document => Read(document, file, parts)).ToList();
        var problems = read.SelectMany(plan => plan.Problems).ToList();
        return problems.Count > 0 ? new PlanFile([], ShownProblems.Of(file, problems)) : new PlanFile([.. read.Select(plan => plan.Plan!)], []);
    }

    /// <summary>Whether the stated values of a plan can be true together, for example of one that a remedy has changed.</summary>
    /// <param name="plan">The plan.</param>
    public bool IsConsistent(Plan plan) => PlanConsistency.Check(plan, validator).Count == 0;

    /// <summary>Reads a document that has the shape of a plan.</summary>
    /// <param name="document">The document; any other gives problems, never an exception.</param>
    /// <returns>The plan, or all problems of the step that stopped it.</returns>
    public (ReadPlan? Plan, IReadOnlyList<ReadingProblem> Problems) ReadValues(YamlDocument document)
    {
        var mapping = PlanMapper.Map(document);
        if (mapping.Plan is not { } plan)
        {
            return (null, mapping.Problems);
        }

        // A blank in a free text would count as stated.
        var blanks = Blanks.In(document.Root);
        var problems = blanks.Count > 0 ? blanks : PlanConsistency.Check(plan, mapping.Positions, validator);
        return problems.Count > 0 ? (null, problems) : (new ReadPlan((MapToken)document.Root, plan, mapping.Positions, [], []), []);
    }

    /// <summary>What the shape of a plan is wrong in, apart from blanks.</summary>
    /// <param name="document">The document.</param>
    internal IReadOnlyList<ReadingProblem> ShapeWithoutBlanks(YamlDocument document)
    {
        var blanks = Blanks.In(document.Root).Select(blank => blank.Position).ToHashSet();
        return [.. PlanShape.Check(document, Schema).Where(problem => !blanks.Contains(problem.Position))];
    }

    private (ReadPlan? Plan, IReadOnlyList<ReadingProblem> Problems) Read(YamlDocument written, string file, IPartFiles parts)
    {
        (YamlToken Plan, IReadOnlyList<UsedFile> Used, IReadOnlyList<ReadingProblem> Problems) composed =
            written.Root is MapToken map ? PlanComposer.Compose(map, file, parts, partTools) : (written.Root, [], []);
        if (composed.Problems.Count > 0)
        {
            return (null, composed.Problems);
        }

        return ReadWhole(composed.Plan, written.Number, composed.Used);
    }

    /// <summary>Reads a plan that stands alone: shape, values, blanks, consistency.</summary>
    /// <param name="plan">The plan, put together from all that it uses.</param>
    /// <param name="number">Number of its document.</param>
    /// <param name="used">Files that went into it.</param>
    internal (ReadPlan? Plan, IReadOnlyList<ReadingProblem> Problems) ReadWhole(YamlToken plan, int number, IReadOnlyList<UsedFile> used)
    {
        var (root, oldWords) = OldWords.OfPlans.Renew(plan);
        var document = new YamlDocument(root, number);
        var blanks = Blanks.In(document.Root);
        var shape = ShapeWithoutBlanks(document);
        if (shape.Count > 0 || blanks.Count > 0)
        {
            return (null, [.. shape, .. Blanks.Told(blanks)]);
        }

        var (read, problems) = ReadValues(document);
        return (read is null ? null : read with { OldWords = oldWords, Uses = used }, problems);
    }
}

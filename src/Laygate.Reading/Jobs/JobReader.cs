using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Jobs;

/// <summary>Reads a job of several shifts: its own keys, what the shifts have in common, then the plan of each shift. Each step hands on or stops.</summary>
internal sealed class JobReader(PlanReader plans, LoadedSchema schema, PartTools tools)
{
    /// <summary>Whether a document is a job.</summary>
    public static bool IsJob(YamlDocument document) => document.Root is MapToken map && map.Find(JobKeys.Job) is not null;

    /// <summary>Reads the job of a file.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="documents">Its documents, of which one is a job.</param>
    /// <param name="files">The host's files.</param>
    public PlanFile Read(string file, IReadOnlyList<YamlDocument> documents, IPartFiles files)
    {
        if (documents.Count > 1)
        {
            return Refused(file, [new ReadingProblem("A file with a job of several shifts holds one document.", TokenNames.Head(documents[1].Root).Span, "Give the job a file of its own.")]);
        }

        var own = SchemaChecker.Check(documents[0], schema);
        if (own.Count > 0)
        {
            return Refused(file, own);
        }

        var root = (MapToken)documents[0].Root;
        var composed = JobComposer.Compose(root, file, files, tools);
        return composed is { Problems.Count: 0, Whole: { } whole } ? Read(file, composed, whole, root) : Refused(file, composed.Problems);
    }

    private PlanFile Read(string file, ComposedJob composed, MapToken shared, MapToken job)
    {
        var (common, problems) = plans.ReadWhole(shared, 1, composed.Used);
        if (common is null)
        {
            return Refused(file, problems);
        }

        List<(ReadPlan? Plan, IReadOnlyList<ReadingProblem> Problems)> read = [.. composed.Shifts.Select((shift, index) => plans.ReadWhole(shift.Plan, index + 1, composed.Used))];
        var wrong = read.SelectMany(shift => shift.Problems).ToList();
        if (wrong.Count > 0)
        {
            return Refused(file, wrong);
        }

        List<string> shifts = [.. composed.Shifts.Select(shift => shift.Id)];
        var (lots, slips) = JobLots.Read(job, common.Plan, shifts);
        if (slips.Count > 0)
        {
            return Refused(file, slips);
        }

        // An address of the job may name a shift or a lot, which stand in no plan.
        var own = new[] { job.Find(JobKeys.Shifts), job.Find(JobKeys.Lots) }.OfType<MapEntry>();
        var whole = new MapToken([.. common.Root.Entries, .. own], common.Root.Span);
        return new PlanFile([.. read.Select(shift => shift.Plan!)], []) { Job = new ReadJob(common with { Root = whole, Positions = new PlanPositions(whole) }, shifts, lots) };
    }

    private static PlanFile Refused(string file, IReadOnlyList<ReadingProblem> problems) => new([], ShownProblems.Of(file, problems));
}

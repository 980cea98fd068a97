using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Jobs;
using Laygate.Engineering.Quantities;
using Laygate.Reading.Jobs;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Cases;

/// <summary>A case whose base is a job of several shifts.</summary>
internal static class JobOfCase
{
    /// <summary>Whether a document is a job.</summary>
    public static bool Is(YamlDocument document) => JobReader.IsJob(document);

    /// <summary>The context in which the job is judged, on expected values: what is solved for a shift is not what such cases are about.</summary>
    /// <exception cref="CaseException">The job is refused.</exception>
    public static QuantityContext Context(PlanReader reader, YamlDocument document, QuantityCatalogue catalogue, AssumptionSet assumptions)
    {
        var read = reader.ReadDocuments("job", [document], new NoPartFiles());
        if (read.Job is not { } job)
        {
            throw new CaseException($"The changed job is refused: {read.Problems[0].Message} {read.Problems[0].Hint}".TrimEnd());
        }

        var shifts = read.Plans.Select((plan, index) => JobShift.Of(
            job.Shifts[index], new QuantityContext(plan.Plan, catalogue, assumptions, seed: 1) { IsQuick = true }, job.Whole.Plan));
        return QuantityContext.Of(new JobView(job.Whole.Plan, [.. shifts], job.Lots), catalogue, assumptions, seed: 1);
    }
}

using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Jobs;
using Laygate.Engineering.Quantities;
using Laygate.Reading.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Departures;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Jobs;

/// <summary>
/// Checks a job of several shifts: each shift by the check of a plan, one after the other, then what lies between them. Of a shift only its report and a few
/// answers are kept, so that a job of many shifts takes little more memory than one of them.
/// </summary>
internal sealed class JobCheck(PlanCheck check, RuleBook book, CheckSettings settings, IReadOnlyList<Departure> departures, PlanTools tools, AssumptionSet assumptions)
{
    /// <summary>Checks a job that was read.</summary>
    /// <param name="file">Name of its file, as it is to be shown.</param>
    /// <param name="hash">Hash of the bytes of the file.</param>
    /// <param name="read">The plans of its shifts.</param>
    /// <param name="job">The job.</param>
    /// <param name="cancel">Calls it off.</param>
    public FileResult Run(string file, string hash, PlanFile read, ReadJob job, CancellationToken cancel)
    {
        var (shifts, reports) = (new List<JobShift>(), new List<Report>());
        foreach (var (plan, index) in read.Plans.Select((plan, index) => (plan, index)))
        {
            var judged = check.Judged(plan, (file, index + 1, hash), cancel);
            shifts.Add(JobShift.Of(job.Shifts[index], judged.Context, job.Whole.Plan) with { HoursAsked = OpeningHours.Asked(plan.Plan, judged.Report) });
            reports.Add(judged.Report);
        }

        var view = new JobView(job.Whole.Plan, shifts, job.Lots);
        var between = Between(view, job, file, hash, cancel);
        return new FileResult(file, JobDepartures.Settled([between, .. reports]), []) { Job = JobSummaries.Of(view, reports) };
    }

    private Report Between(JobView view, ReadJob job, string file, string hash, CancellationToken cancel)
    {
        var context = QuantityContext.Of(view, tools.Catalogue, assumptions, settings.Seed, settings.Quick, cancel);
        var report = Evaluator.Evaluate(book, context, new EvaluationSettings
        {
            File = file,
            CheckedOn = settings.CheckDate,
            Stage = settings.AtLeastStage,
            PlanHash = hash,
            ProgramVersion = settings.ProgramVersion,
        });
        report = DepartureJudge.Apply(report, book, departures, context.Elements.All.Select(element => element.Address), settings.CheckDate);
        return report with
        {
            Settings = settings.SettingsFile,
            Uses = job.Whole.Uses,
            Findings = [.. report.Findings.Select(finding => PlanCheck.Placed(job.Whole.Positions, finding))],
        };
    }
}

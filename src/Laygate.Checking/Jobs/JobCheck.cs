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
/// Checks a job of several shifts: each shift by the check of a plan, one after the other, then what lies between them. For a report only the report of a shift
/// and a few answers are kept, so that a job of many shifts takes little more memory than one of them.
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
        var (view, between, reports) = Each((file, hash), read, job, judged => judged.Report, cancel);
        return new FileResult(file, JobDepartures.Settled([between.Report, .. reports]), []) { Job = JobSummaries.Of(view, reports) };
    }

    /// <summary>Checks a job and keeps what the reports were made from.</summary>
    /// <param name="file">Name of its file, as it is to be shown.</param>
    /// <param name="hash">Hash of the bytes of the file.</param>
    /// <param name="read">The plans of its shifts.</param>
    /// <param name="job">The job.</param>
    /// <param name="cancel">Calls it off.</param>
    /// <returns>What lies between the shifts, then each shift.</returns>
    public JudgedFile Judged(string file, string hash, PlanFile read, ReadJob job, CancellationToken cancel)
    {
        var (_, between, shifts) = Each((file, hash), read, job, judged => judged, cancel);
        return new JudgedFile([between, .. shifts], []) { Shifts = [null, .. job.Shifts] };
    }

    private (JobView View, JudgedPlan Between, IReadOnlyList<T> Kept) Each<T>((string File, string Hash) from, PlanFile read, ReadJob job, Func<JudgedPlan, T> keep, CancellationToken cancel)
    {
        var (shifts, kept) = (new List<JobShift>(), new List<T>());
        foreach (var (plan, index) in read.Plans.Select((plan, index) => (plan, index)))
        {
            var judged = check.Judged(plan, (from.File, index + 1, from.Hash), cancel);
            shifts.Add(JobShift.Of(job.Shifts[index], judged.Context, job.Whole.Plan) with { HoursAsked = OpeningHours.Asked(plan.Plan, judged.Report) });
            kept.Add(keep(judged));
        }

        var view = new JobView(job.Whole.Plan, shifts, job.Lots);
        return (view, Between(view, job, from, cancel), kept);
    }

    private JudgedPlan Between(JobView view, ReadJob job, (string File, string Hash) from, CancellationToken cancel)
    {
        var context = QuantityContext.Of(view, tools.Catalogue, assumptions, settings.Seed, settings.Quick, cancel);
        var report = Evaluator.Evaluate(book, context, new EvaluationSettings
        {
            File = from.File,
            CheckedOn = settings.CheckDate,
            Stage = settings.AtLeastStage,
            PlanHash = from.Hash,
            ProgramVersion = settings.ProgramVersion,
        });
        report = DepartureJudge.Apply(report, book, departures, context.Elements.All.Select(element => element.Address), settings.CheckDate);
        report = report with
        {
            Settings = settings.SettingsFile,
            Uses = job.Whole.Uses,
            Findings = [.. report.Findings.Select(finding => PlanCheck.Placed(job.Whole.Positions, finding))],
        };
        return new JudgedPlan(job.Whole.Root, job.Whole.Positions, context, report);
    }
}

using Laygate.Engineering.Outlook;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Outlook;

/// <summary>When to lay: each hour of the forecast, or without one the weather in which the plan still works.</summary>
public static class OutlookSearch
{
    /// <summary>Adds the outlook to a report.</summary>
    /// <param name="report">The report on the plan as it is.</param>
    /// <param name="book">Its rule book.</param>
    /// <param name="context">Its context, one that keeps its solves.</param>
    /// <param name="settings">Its settings.</param>
    /// <param name="workers">Threads; at least 1. The result does not depend on it.</param>
    public static Report AddTo(Report report, RuleBook book, QuantityContext context, EvaluationSettings settings, int workers = 2)
    {
        var plans = new WeatherPlans(context);
        var judge = new WeatherJudge(book, context, settings, plans);
        var leads = (context.Plan.Supply?.Trucks ?? [])
            .Select(trucks => (Trucks: trucks, Lead: plans.Lead(trucks)))
            .Where(item => item.Lead is not null)
            .ToList();
        var hours = plans.Hours();
        var judged = new HourOutlook[hours.Count];
        var longest = leads.Max(item => item.Lead);
        Parallel.For(0, hours.Count, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, workers), CancellationToken = context.Cancel }, i =>
        {
            var hour = judge.Judged(hours[i].Plan, withSpread: true);
            judged[i] = new HourOutlook(hours[i].At, hour.Verdict, hour.Broken, longest is { } lead ? hours[i].At.AddSeconds(-lead) : null, hour.Nearest) { Limits = hour.Limits };
        });
        var always = InEveryHour(judged);
        var weather = hours.Count == 0 && plans.Envelope() is { } stated
            ? new EnvelopeSearch(judge, plans, stated, context.System).Find()
            : null;
        return report with
        {
            Outlook = new LayingOutlook(
                [.. judged.Select(hour => hour with { Limits = [.. hour.Limits.Except(always)] })],
                [.. leads.Select(item => new PlantLead(item.Trucks.Id, item.Trucks.Plant, new ShownValue(item.Lead!.Value / 60, "min")))],
                weather,
                judge.Rules)
            {
                NotJudged = [.. judge.Unjudged.Select(finding => new UnjudgedRule(
                    new FindingReference(finding.Rule, finding.Title, finding.Address), finding.Outcome, finding.Status, finding.Missing, finding.Notes))],
                InEveryHour = always,
            },
        };
    }

    // One hour has no others to be the same as.
    private static IReadOnlyList<LimitMargin> InEveryHour(IReadOnlyList<HourOutlook> hours) => hours.Count < 2
        ? []
        : [.. hours[0].Limits.Where(limit => hours.Skip(1).All(hour => hour.Limits.Contains(limit)))];
}

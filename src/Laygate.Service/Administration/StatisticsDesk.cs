using Laygate.Register;
using Laygate.Rules.Results;
using Laygate.Service.Checking;

namespace Laygate.Service.Administration;

/// <summary>How often a rule is not met.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Title">What it is about.</param>
/// <param name="Failed">Plans that fail it.</param>
/// <param name="Warned">Plans that it warns of.</param>
internal sealed record RuleCount(string Rule, string Title, int Failed, int Warned);

/// <summary>How long submissions waited for their first decision, in days of 24 h from receipt.</summary>
/// <param name="Decided">Number of decided submissions.</param>
/// <param name="Median">Half of them were decided within these days; null where none was.</param>
/// <param name="NineOfTen">Nine of ten were decided within these days, by the nearest rank; null where none was.</param>
/// <param name="Longest">The longest wait; null where none was decided.</param>
internal sealed record DecisionTimes(int Decided, double? Median, double? NineOfTen, double? Longest)
{
    /// <summary>Of waits.</summary>
    /// <param name="days">Days, the shortest first.</param>
    public static DecisionTimes Of(IReadOnlyList<double> days) => days.Count == 0
        ? new DecisionTimes(0, null, null, null)
        : new DecisionTimes(days.Count, Tenth((days[(days.Count - 1) / 2] + days[days.Count / 2]) / 2), Tenth(days[(int)Math.Ceiling(0.9 * days.Count) - 1]), Tenth(days[^1]));

    private static double Tenth(double days) => Math.Round(days, 1, MidpointRounding.AwayFromZero);
}

/// <summary>Counts over the submissions that were received from one day to another, UTC.</summary>
/// <param name="From">First day.</param>
/// <param name="Until">Last day.</param>
/// <param name="Received">Submissions, each revision counted.</param>
/// <param name="Superseded">Submissions that were revised before anybody decided.</param>
/// <param name="Waiting">Submissions that wait for a decision or for their screening.</param>
/// <param name="Days">How long the others waited.</param>
/// <param name="Submitters">By submitter, the one with most returns first.</param>
/// <param name="Rules">By rule, the one that most plans fail first.</param>
/// <param name="Reports">Latest reports of latest revisions in which rules were counted.</param>
/// <param name="ReportsLeft">Reports in which they were not, because there are too many: ask for a shorter time.</param>
internal sealed record Statistics(
    DateOnly From, DateOnly Until, int Received, int Superseded, int Waiting, DecisionTimes Days, IReadOnlyList<SubmitterCounts> Submitters, IReadOnlyList<RuleCount> Rules, int Reports, int ReportsLeft);

/// <summary>Counts what the register holds.</summary>
internal sealed class StatisticsDesk(RegisterStatistics register, RegisterReader reader, TimeProvider clock)
{
    /// <summary>Most reports in which rules are counted: each is some megabytes (our judgement: a few seconds).</summary>
    public const int MostReports = 200;

    /// <summary>Counts.</summary>
    /// <param name="from">First day; null: a year before the last one.</param>
    /// <param name="until">Last day; null: today.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    /// <returns>The counts, and the days of each decided submission, the shortest first.</returns>
    /// <exception cref="BadHttpRequestException">The last day comes before the first.</exception>
    public async Task<(Statistics Counts, IReadOnlyList<double> Days)> CountAsync(DateOnly? from, DateOnly? until, Caller caller, CancellationToken cancel)
    {
        var last = until ?? DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        var first = from ?? (last.Year > 1 ? last.AddYears(-1) : last);
        if (first > last)
        {
            throw new BadHttpRequestException("The last day comes before the first. Turn them round.");
        }

        var (begin, end) = (Midnight(first), last == DateOnly.MaxValue ? DateTimeOffset.MaxValue : Midnight(last.AddDays(1)));
        var counts = await register.CountAsync(begin, end, cancel);
        var (rules, read, left) = await RulesAsync(new SubmissionFilter { From = begin, Until = end, LatestOnly = true }, caller, cancel);
        return (new Statistics(first, last, counts.Received, counts.Superseded, counts.Waiting, DecisionTimes.Of(counts.Days), counts.Submitters, rules, read, left), counts.Days);
    }

    private static DateTimeOffset Midnight(DateOnly day) => new(day, TimeOnly.MinValue, TimeSpan.Zero);

    private async Task<(IReadOnlyList<RuleCount> Rules, int Read, int Left)> RulesAsync(SubmissionFilter filter, Caller caller, CancellationToken cancel)
    {
        var counts = new Dictionary<string, RuleCount>(StringComparer.Ordinal);
        var (silent, read, left) = (0, 0, 0);
        await foreach (var one in reader.ExportAsync(filter, caller, cancel))
        {
            // What neither fails nor warns adds nothing, whatever its report says.
            if (one.Report is not { Counts: { Failed: > 0 } or { Warned: > 0 } })
            {
                silent += one.Report is null ? 0 : 1;
                continue;
            }

            if (read >= MostReports || await reader.ReportAsync(one.Id, one.Report.Screening, caller, cancel) is not { } report || !Add(counts, report))
            {
                left++;
                continue;
            }

            read++;
        }

        return ([.. counts.Values.OrderByDescending(one => one.Failed).ThenByDescending(one => one.Warned).ThenBy(one => one.Rule, StringComparer.Ordinal)], silent + read, left);
    }

    private static bool Add(Dictionary<string, RuleCount> counts, StoredReport report)
    {
        try
        {
            var findings = StoredReports.Read(report).Files.SelectMany(file => file.Reports).SelectMany(plan => plan.Findings);
            foreach (var rule in findings.Where(finding => finding.Status is Status.Fail or Status.Warn).GroupBy(finding => finding.Rule, StringComparer.Ordinal))
            {
                var before = counts.GetValueOrDefault(rule.Key, new RuleCount(rule.Key, rule.First().Title, 0, 0));
                counts[rule.Key] = rule.Any(finding => finding.Status == Status.Fail) ? before with { Failed = before.Failed + 1 } : before with { Warned = before.Warned + 1 };
            }

            return true;
        }
        catch (UnreadableReportException)
        {
            return false; // Of a version that is not read any more.
        }
    }
}

using Laygate.Rules.Definitions;
using Laygate.Rules.Departures;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Baselines;

/// <summary>Marks findings that a baseline knows. Their status stays; they are counted apart at the gate. What guards lives (severity A) is never known earlier.</summary>
public static class BaselineJudge
{
    /// <summary>Whether a finding belongs into a baseline: it warns or fails, a computation or silence decided it, and no life hangs on its rule.</summary>
    public static bool Belongs(Finding finding) =>
        finding is { Status: Status.Warn or Status.Fail, Severity: not Severity.A } && finding.Outcome != Outcome.NeedsPerson;

    /// <summary>A value as a baseline keeps it: to four digits, so that noise in the last digits is no change, and to six decimals, as measures are written.</summary>
    public static double Rounded(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value;
        }

        var decimals = 3 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        var scale = Math.Pow(10, Math.Max(0, -decimals));
        return Math.Round(value / scale, Math.Clamp(decimals, 0, 6)) * scale;
    }

    /// <summary>Applies a baseline.</summary>
    /// <param name="report">The report, departures applied.</param>
    /// <param name="book">The rule book of the report.</param>
    /// <param name="baseline">The baseline.</param>
    /// <param name="plan">File of the plan, from the folder of the baseline, with slashes.</param>
    public static Report Apply(Report report, RuleBook book, Baseline baseline, string plan)
    {
        var entries = baseline.Entries
            .Where(entry => string.Equals(entry.Plan, plan, StringComparison.Ordinal) && string.Equals(entry.PlanId, report.PlanId, StringComparison.Ordinal))
            .ToLookup(entry => (entry.Rule, entry.Address));
        var named = report.Findings.Where(finding => Belongs(finding) && entries.Contains((finding.Rule, finding.Address))).ToList();
        var dimensions = book.All.ToDictionary(merged => merged.Rule.Definition.Id, merged => merged.Rule.Quantity.Dimension, StringComparer.Ordinal);
        var known = named.Where(finding => entries[(finding.Rule, finding.Address)].Any(entry => Covers(entry, finding, dimensions[finding.Rule]))).ToHashSet();
        var places = named.Select(finding => (finding.Rule, finding.Address)).ToHashSet();
        return report with
        {
            Findings = [.. report.Findings.Select(finding => known.Contains(finding) ? finding with { Known = true } : finding)],
            Counts = report.Counts with
            {
                KnownFailed = known.Count(finding => finding.Status == Status.Fail),
                KnownWarned = known.Count(finding => finding is { Status: Status.Warn, Outcome: not Outcome.NotAssessed }),
                KnownNotAssessed = known.Count(finding => finding is { Status: Status.Warn, Outcome: Outcome.NotAssessed }),
            },
            Baseline = new BaselineUse(baseline.File, baseline.Written, known.Count, named.Count - known.Count, entries.Count(entry => !places.Contains(entry.Key))),
        };
    }

    private static bool Covers(BaselineEntry entry, Finding finding, Model.Measures.Dimension dimension) =>
        (entry.Status == Status.Fail || finding.Status == Status.Warn)
        && (finding.Value is null || finding.Check == CheckKind.Present || (entry.Value is { } value && AcceptedValues.IsWithin(value, AsKept(finding), dimension)));

    private static Finding AsKept(Finding finding) =>
        finding.Value is { Number: { } number } shown ? finding with { Value = shown with { Number = Rounded(number) } } : finding;
}

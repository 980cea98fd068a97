using Laygate.Model.Plans;
using Laygate.Register;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Service.Checking;

/// <summary>What a report says for the queue of reviewers.</summary>
internal static class QueueWords
{
    // Beside the severities A, B and C: a rule without one.
    private const int NoSeverity = 3;

    /// <summary>Stage, first shift, contract and worst finding of what a check found.</summary>
    /// <param name="result">What it found, with inputs.</param>
    public static QueueFacts Of(FileResult result)
    {
        var worst = FindingOrder.Of(result.Reports.SelectMany(report => report.Findings).Where(IsOfWeight)) is [var first, ..] ? first : null;
        return new QueueFacts(
            result.Reports.Count > 0 ? Words.Of(result.Reports.Max(report => report.Stage)) : null,
            result.Reports.Where(report => report.JudgedForShift).Select(report => (DateOnly?)report.JudgedFor).Min(),
            result.Reports.SelectMany(report => report.Inputs).FirstOrDefault(input => input.Key is "plan.contract" or "job.contract")?.Text,
            result.Problems.Count > 0 ? "cannot be read" : worst is null ? null : $"{Names.Of(FindingGroups.Of(worst))}: {Wording.Title(worst)}",
            result.Problems.Count > 0 ? -1 : worst is null ? null : Rank(worst));
    }

    private static bool IsOfWeight(Finding finding) => FindingGroups.Of(finding) is FindingGroup.Failed or FindingGroup.Warned or FindingGroup.NotAssessed or FindingGroup.NeedsPerson;

    private static int Rank(Finding finding) => ((int)FindingGroups.Of(finding) * 10) + (finding.Severity is { } severity ? (int)severity : NoSeverity);
}

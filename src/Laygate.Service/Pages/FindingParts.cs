using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>Sorts the findings of a report into parts of a page: what fails in full, what the plan is silent about by severity, the rest folded.</summary>
internal static class FindingParts
{
    /// <summary>The parts that have findings, what fails first.</summary>
    /// <param name="reports">All reports of the page.</param>
    /// <param name="report">The report.</param>
    /// <param name="id">What their ids begin with.</param>
    public static IReadOnlyList<FindingPart> Of(IReadOnlyCollection<Report> reports, Report report, string id)
    {
        var views = FindingOrder.Of(report.Findings.Where(finding => FindingGroups.Of(finding) != FindingGroup.NotApplicable))
            .Select((finding, index) => new FindingView(string.Create(CultureInfo.InvariantCulture, $"{id}-f{index + 1}"), finding, Threads.Key(reports, report, finding), FindingRows.Of(finding))).ToList();
        var silent = views.Where(view => view.Group == FindingGroup.Failed && Silence.Is(view.Finding)).ToList();
        List<FindingPart> parts =
        [
            Part(FindingGroup.Failed, "Fail"),
            .. silent.GroupBy(view => view.Finding.Severity).OrderBy(grade => grade.Key)
                .Select((grade, index) => new FindingPart(index == 0 ? $"{id}-safety" : $"{id}-safety-{grade.Key}", FindingGroup.Failed, Silent(grade.Count(), $"{grade.Key}"), false, [.. grade])),
            Part(FindingGroup.Warned, "Warn"),
            Part(FindingGroup.NotAssessed, "Not assessed"),
            Part(FindingGroup.NeedsPerson, "Needs a person"),
            Part(FindingGroup.Departed, "Departed"),
            Part(FindingGroup.Open, "Open: not due at this stage"),
            Part(FindingGroup.Passed, "Pass"),
        ];
        parts.RemoveAll(part => part.Findings.Count == 0);

        // Where nothing fails the first part that somebody must look at is open.
        return parts.Exists(part => part.Group == FindingGroup.Failed) || parts.FindIndex(part => part.Group is not (FindingGroup.Passed or FindingGroup.Open)) is not (>= 0 and var first)
            ? parts
            : [.. parts.Select((part, index) => part with { IsOpen = index == first })];

        FindingPart Part(FindingGroup group, string heading) =>
            new($"{id}-{group}", group, heading, group == FindingGroup.Failed, [.. views.Where(view => view.Group == group && !silent.Contains(view))]);
    }

    private static string Silent(int count, string severity) => string.Create(
        CultureInfo.InvariantCulture, $"The plan says nothing, or too little, about {(count == 1 ? "a hazard" : $"{count} hazards")} of severity {severity}");
}

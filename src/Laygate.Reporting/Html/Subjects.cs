using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Html;

/// <summary>Subjects of a report: the safety first, then the families of rules in the order in which a job goes.</summary>
internal static class Subjects
{
    private static readonly string[] Order =
        ["safety", "job", "consistency", "layers", "mixes", "weather", "supply", "paving", "rolling", "bond-and-joints", "friction-and-opening", "quality"];

    /// <summary>The family of a finding.</summary>
    public static string Of(Finding finding) => finding.RuleName.Split('/')[0];

    /// <summary>The families that a report has findings or plots of.</summary>
    public static IReadOnlyList<string> All(Report report, IEnumerable<string> alsoThese) =>
        [.. report.Findings.Select(Of).Concat(alsoThese).Distinct(StringComparer.Ordinal).OrderBy(family => Array.IndexOf(Order, family) is var place and >= 0 ? place : Order.Length).ThenBy(family => family, StringComparer.Ordinal)];

    /// <summary>Whether a finding is shown in full: somebody has to act on it or to know of it.</summary>
    public static bool IsShown(Finding finding) => FindingGroups.Of(finding) is not (FindingGroup.Passed or FindingGroup.Open or FindingGroup.NotApplicable);

    /// <summary>A family in words.</summary>
    public static string Name(string family) => Names.Capital(PlainText.Show(family).Replace('-', ' '));

    /// <summary>The findings that decide, in the order of the console (<see cref="FindingOrder"/>).</summary>
    /// <remarks>Silences of one severity and one result decide together: a list of five that names five of thirty would hide everything else.</remarks>
    public static IReadOnlyList<IReadOnlyList<Finding>> Deciding(Report report) =>
    [
        .. FindingOrder.Of(report.Findings.Where(finding => FindingGroups.Of(finding) is FindingGroup.Failed or FindingGroup.Warned or FindingGroup.NotAssessed))
            .OrderBy(finding => finding.Known)
            .GroupBy(finding => Silence.Is(finding) ? $"{finding.Known} {FindingGroups.Of(finding)} {finding.Severity}" : $"{finding.Rule} {finding.Address}", StringComparer.Ordinal)
            .Select(same => same.ToList()),
    ];

    /// <summary>Tone of a part of the report, as the style sheet names it; it never stands without word and sign.</summary>
    public static string Tone(FindingGroup group) => group switch
    {
        FindingGroup.Failed => "fail",
        FindingGroup.Warned => "warn",
        FindingGroup.Passed => "pass",
        _ => "plain",
    };

    /// <summary>Sign of a part of the report; it stands beside the word.</summary>
    public static string Sign(FindingGroup group) => group switch
    {
        FindingGroup.Failed => "■",
        FindingGroup.Warned => "▲",
        FindingGroup.NotAssessed => "◇",
        FindingGroup.NeedsPerson => "□",
        FindingGroup.Open => "○",
        FindingGroup.Departed => "→",
        FindingGroup.Passed => "●",
        _ => "–",
    };
}

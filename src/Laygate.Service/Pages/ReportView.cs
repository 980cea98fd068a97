using System.Globalization;
using System.Text;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Plots;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Service.Pages;

/// <summary>A finding as a page shows it.</summary>
/// <param name="Status">Its status.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Element of the plan.</param>
/// <param name="Title">Title.</param>
/// <param name="Message">What it says.</param>
/// <param name="Rows">Everything else, as every other form tells it.</param>
/// <param name="Line">Line of the text.</param>
public sealed record FindingView(string Status, string Rule, string Address, string Title, string Message, IReadOnlyList<FindingRow> Rows, int? Line)
{
    /// <summary>The file in which it stands, where that is another one than the plan; null: the plan.</summary>
    public string? File { get; init; }

    /// <summary>Family of the rule.</summary>
    public string Family { get; init; } = string.Empty;

    /// <summary>The part of the report in which it stands: not assessed and needs a person are told apart from warn, as in every other form.</summary>
    public string Group { get; init; } = string.Empty;

    /// <summary>Severity of a rule of safety; empty for others.</summary>
    public string Severity { get; init; } = string.Empty;
}

/// <summary>The report on one plan as a page shows it.</summary>
public sealed record PlanOnPage(string Title, string Plan, string? Revision, string Stage, string JudgedFor, IReadOnlyList<(string Name, int Count)> Counts, IReadOnlyList<FindingView> Findings)
{
    /// <summary>The plots of the plan; none where they were not worked out.</summary>
    public IReadOnlyList<PlotFigure> Plots { get; init; } = [];

    /// <summary>Laying hour by hour; null where it was not worked out.</summary>
    public LayingOutlook? Outlook { get; init; }

    /// <summary>All findings of the report: they name the rows of the hours.</summary>
    public IReadOnlyList<Finding> All { get; init; } = [];

    /// <summary>The plots that belong beside a finding: those of the family of its rule.</summary>
    public IEnumerable<PlotFigure> Beside(FindingView finding) => Plots.Where(plot => string.Equals(plot.Family, finding.Family, StringComparison.Ordinal));
}

/// <summary>A problem of a text that cannot be read.</summary>
public sealed record ProblemView(string Message, string? Hint, int? Line, int? Column)
{
    /// <summary>The file in which it stands.</summary>
    public string? File { get; init; }
}

/// <summary>A run as a page shows it, in the words of every other form.</summary>
public sealed record ReportView(IReadOnlyList<PlanOnPage> Plans, IReadOnlyList<ProblemView> Problems, IReadOnlyList<string> Caution)
{
    private static readonly string[] Order = ["fail", "warn", "departed", "pass"];

    /// <summary>The page of a run, of today or read back from a stored report; with the plots that its reports hold.</summary>
    public static ReportView Of(ReportedRun run) =>
        new([.. run.Reports.Select(Plan)], [.. run.AllProblems.Select(Problem)], Reporting.Language.Caution.Sentences);

    /// <summary>The worst status on each line of a text.</summary>
    /// <param name="file">The file.</param>
    public IReadOnlyDictionary<int, string> Marks(TextFile file)
    {
        var marks = new Dictionary<int, string>();
        foreach (var finding in Plans.SelectMany(plan => plan.Findings).Where(finding => finding.Line is not null && finding.Status is not "pass" && file.Is(finding.File)))
        {
            if (!marks.TryGetValue(finding.Line!.Value, out var worst) || Rank(finding.Status) < Rank(worst))
            {
                marks[finding.Line.Value] = finding.Status;
            }
        }

        foreach (var problem in Problems.Where(problem => problem.Line is not null && file.Is(problem.File)))
        {
            marks[problem.Line!.Value] = "fail";
        }

        return marks;
    }

    private static int Rank(string status) => Array.IndexOf(Order, status) is var at and >= 0 ? at : Order.Length;

    private static PlanOnPage Plan(Report report, int index) => new(
        PlainText.Show(report.PlanTitle ?? report.PlanId),
        PlainText.Show(report.PlanId),
        report.Revision is { } revision ? PlainText.Show(revision) : null,
        Words.Of(report.Stage),
        report.JudgedFor.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        Counts(report.Counts),
        [
            .. report.Findings.Where(finding => finding.Status != Status.None)
                .OrderBy(FindingGroups.Of).ThenBy(finding => finding.Severity is null).ThenBy(finding => finding.Severity).Select(Finding),
        ])
    {
        All = report.Findings,
        Outlook = report.Outlook is { Hours.Count: > 0 } outlook ? outlook : null,
        Plots = PlotFigures.Of(report, string.Create(CultureInfo.InvariantCulture, $"p{index + 1}")),
    };

    private static IReadOnlyList<(string Name, int Count)> Counts(Counts counts) =>
    [
        .. Enum.GetValues<FindingGroup>().Select(group => (Names.Of(group), FindingGroups.Count(counts, group))),
        ("departures that do not hold", counts.DepartureWarnings),
    ];

    private static FindingView Finding(Finding finding) => new(
        Words.Of(finding.Status),
        finding.Rule,
        PlainText.Show(finding.Address),
        Wording.Title(finding),
        Wording.Sentence(finding),
        FindingRows.Of(finding),
        finding.Position?.Line)
    {
        File = finding.Position?.File,
        Family = finding.RuleName.Split('/')[0],
        Group = Names.Of(FindingGroups.Of(finding)),
        Severity = finding.Severity?.ToString() ?? string.Empty,
    };

    private static ProblemView Problem(Problem problem) => new(
        PlainText.Show(problem.Message), problem.Hint is { } hint ? PlainText.Show(hint) : null, problem.Position?.Line, problem.Position?.Column)
    {
        File = problem.File,
    };
}

/// <summary>A file of a submission as a page shows it.</summary>
/// <param name="Name">Its name, as it is to be shown.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Prefix">What stands before the number of a line in the name of its place on the page.</param>
public sealed record TextFile(string Name, IReadOnlyList<string> Lines, string Prefix)
{
    private string OwnName { get; init; } = Name;

    /// <summary>Whether it is the plan.</summary>
    public bool IsPlan => Prefix is "L";

    /// <summary>The plan and the files that came with it.</summary>
    internal static IReadOnlyList<TextFile> Of(string name, byte[] text, IEnumerable<(string Name, byte[] Bytes)> others) =>
    [
        new(PlainText.Show(name), PlanLines.Of(text), "L") { OwnName = name },
        .. others.Select((file, index) => new TextFile(PlainText.Show(file.Name), PlanLines.Of(file.Bytes), string.Create(CultureInfo.InvariantCulture, $"F{index + 1}L")) { OwnName = file.Name }),
    ];

    /// <summary>The way to it below the address of its submission.</summary>
    public string Way => string.Join('/', OwnName.Split('/').Select(Uri.EscapeDataString));

    /// <summary>Whether a place names this file; one that names none means the plan.</summary>
    public bool Is(string? file) => file is null ? IsPlan : string.Equals(file, OwnName, StringComparison.Ordinal);
}

/// <summary>The text of a plan by lines, as it can be shown.</summary>
internal static class PlanLines
{
    private static readonly string[] Ends = ["\r\n", "\n", "\r"];

    /// <summary>Lines; what could hide or turn text is shown as its code.</summary>
    public static IReadOnlyList<string> Of(byte[] text) => [.. Encoding.UTF8.GetString(text).TrimStart('\uFEFF').Split(Ends, StringSplitOptions.None).Select(PlainText.Show)];
}

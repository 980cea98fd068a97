using Laygate.Model.Plans;
using Laygate.Register;
using Laygate.Reporting.Language;
using Laygate.Reporting.Plots;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>A finding as a page shows it.</summary>
/// <param name="Id">Id of its place on the page.</param>
/// <param name="Finding">The finding.</param>
/// <param name="Key">What names it in every revision.</param>
/// <param name="Rows">Everything but title and sentence, as every other form tells it.</param>
public sealed record FindingView(string Id, Finding Finding, FindingKey Key, IReadOnlyList<FindingRow> Rows)
{
    /// <summary>The part of the report in which it stands.</summary>
    public FindingGroup Group => FindingGroups.Of(Finding);

    /// <summary>Line of the text.</summary>
    public int? Line => Finding.Position?.Line;

    /// <summary>The file in which it stands, where that is another one than the plan; null: the plan.</summary>
    public string? File => Finding.Position?.File;

    /// <summary>Family of the rule.</summary>
    public string Family => Finding.RuleName.Split('/')[0];
}

/// <summary>Findings that stand together.</summary>
/// <param name="Id">Id of their place on the page.</param>
/// <param name="Group">The part of the report.</param>
/// <param name="Heading">What they have in common.</param>
/// <param name="IsOpen">Whether they are shown without being asked for.</param>
/// <param name="Findings">The findings, what decides first.</param>
public sealed record FindingPart(string Id, FindingGroup Group, string Heading, bool IsOpen, IReadOnlyList<FindingView> Findings)
{
    /// <summary>Most findings that are shown without being asked for.</summary>
    public const int Most = 12;

    /// <summary>Those that are shown at once.</summary>
    public IEnumerable<FindingView> Shown => IsOpen ? Findings.Take(Most) : [];

    /// <summary>Those that are folded.</summary>
    public IReadOnlyList<FindingView> Folded => IsOpen ? [.. Findings.Skip(Most)] : Findings;
}

/// <summary>The report on one plan as a page shows it.</summary>
/// <param name="Id">What the ids of its parts begin with.</param>
/// <param name="Report">The report.</param>
/// <param name="Parts">Its findings, what fails first.</param>
public sealed record PlanOnPage(string Id, Report Report, IReadOnlyList<FindingPart> Parts)
{
    /// <summary>The plots of the plan; none where they were not worked out.</summary>
    public IReadOnlyList<PlotFigure> Plots { get; init; } = [];

    /// <summary>Laying hour by hour; null where it was not worked out.</summary>
    public LayingOutlook? Outlook => Report.Outlook is { Hours.Count: > 0 } outlook ? outlook : null;

    /// <summary>Title of the plan.</summary>
    public string Title => PlainText.Show(Report.PlanTitle ?? Report.PlanId);

    /// <summary>All findings that the page shows.</summary>
    public IEnumerable<FindingView> Findings => Parts.SelectMany(part => part.Findings);

    /// <summary>The plots that belong beside a finding: those of the family of its rule.</summary>
    public IEnumerable<PlotFigure> Beside(FindingView finding) => Plots.Where(plot => string.Equals(plot.Family, finding.Family, StringComparison.Ordinal));

    /// <summary>Where the page shows a finding; null: nowhere.</summary>
    public string? At(Finding finding) => Findings.FirstOrDefault(view => ReferenceEquals(view.Finding, finding)) is { } view ? "#" + view.Id : null;
}

/// <summary>A problem of a text that cannot be read.</summary>
public sealed record ProblemView(string Message, string? Hint, int? Line, int? Column)
{
    /// <summary>The file in which it stands.</summary>
    public string? File { get; init; }
}

/// <summary>A mark at a line of a text.</summary>
/// <param name="Status">The worst status there.</param>
/// <param name="At">Where the page shows what it is about; null: nowhere.</param>
public sealed record LineMark(string Status, string? At);

/// <summary>A run as a page shows it, in the words of every other form.</summary>
public sealed record ReportView(IReadOnlyList<PlanOnPage> Plans, IReadOnlyList<ProblemView> Problems, IReadOnlyList<string> Caution)
{
    private static readonly string[] Order = ["fail", "warn", "departed", "pass"];

    /// <summary>The page of a run, of today or read back from a stored report.</summary>
    /// <param name="run">The run.</param>
    /// <param name="plots">The plots that were kept, report by report; null: those that the reports hold.</param>
    public static ReportView Of(ReportedRun run, IReadOnlyList<IReadOnlyList<PlotFigure>>? plots = null)
    {
        List<Report> reports = [.. run.Reports];
        plots ??= Pictures.Drawn(reports);
        return new(
            [.. reports.Select((report, index) => Plan(reports, report, Pictures.Prefix(index), index < plots.Count ? plots[index] : []))],
            [.. run.AllProblems.Select(Problem)],
            Reporting.Language.Caution.Sentences);
    }

    /// <summary>The worst status on each line of a text.</summary>
    /// <param name="file">The file.</param>
    public IReadOnlyDictionary<int, LineMark> Marks(TextFile file)
    {
        var marks = new Dictionary<int, LineMark>();
        foreach (var finding in Plans.SelectMany(plan => plan.Findings).Where(finding => finding.Line is not null && finding.Finding.Status is not (Status.Pass or Status.None) && file.Is(finding.File)))
        {
            var status = Words.Of(finding.Finding.Status);
            if (!marks.TryGetValue(finding.Line!.Value, out var worst) || Rank(status) < Rank(worst.Status))
            {
                marks[finding.Line.Value] = new LineMark(status, "#" + finding.Id);
            }
        }

        foreach (var problem in Problems.Where(problem => problem.Line is not null && file.Is(problem.File)))
        {
            marks[problem.Line!.Value] = new LineMark("fail", null);
        }

        return marks;
    }

    private static int Rank(string status) => Array.IndexOf(Order, status) is var at and >= 0 ? at : Order.Length;

    private static PlanOnPage Plan(IReadOnlyCollection<Report> reports, Report report, string id, IReadOnlyList<PlotFigure> plots) => new(id, report, FindingParts.Of(reports, report, id)) { Plots = plots };

    private static ProblemView Problem(Problem problem) => new(
        PlainText.Show(problem.Message), problem.Hint is { } hint ? PlainText.Show(hint) : null, problem.Position?.Line, problem.Position?.Column)
    {
        File = problem.File,
    };
}

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

    /// <summary>The plots that belong beside a finding: those of the family of its rule.</summary>
    public IEnumerable<PlotFigure> Beside(FindingView finding) => Plots.Where(plot => string.Equals(plot.Family, finding.Family, StringComparison.Ordinal));
}

/// <summary>A problem of a text that cannot be read.</summary>
public sealed record ProblemView(string Message, string? Hint, int? Line, int? Column);

/// <summary>A run as a page shows it, in the words of every other form.</summary>
public sealed record ReportView(IReadOnlyList<PlanOnPage> Plans, IReadOnlyList<ProblemView> Problems, IReadOnlyList<string> Caution)
{
    private static readonly string[] Order = ["fail", "warn", "departed", "pass"];

    /// <summary>The page of a run, of today or read back from a stored report; with the plots that its reports hold.</summary>
    public static ReportView Of(ReportedRun run) =>
        new([.. run.Reports.Select(Plan)], [.. run.AllProblems.Select(Problem)], Reporting.Language.Caution.Sentences);

    /// <summary>The worst status on each line of the text.</summary>
    public IReadOnlyDictionary<int, string> Marks()
    {
        var marks = new Dictionary<int, string>();
        foreach (var finding in Plans.SelectMany(plan => plan.Findings).Where(finding => finding.Line is not null && finding.Status is not "pass"))
        {
            if (!marks.TryGetValue(finding.Line!.Value, out var worst) || Rank(finding.Status) < Rank(worst))
            {
                marks[finding.Line.Value] = finding.Status;
            }
        }

        foreach (var problem in Problems.Where(problem => problem.Line is not null))
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
        Family = finding.RuleName.Split('/')[0],
        Group = Names.Of(FindingGroups.Of(finding)),
        Severity = finding.Severity?.ToString() ?? string.Empty,
    };

    private static ProblemView Problem(Problem problem) => new(
        PlainText.Show(problem.Message), problem.Hint is { } hint ? PlainText.Show(hint) : null, problem.Position?.Line, problem.Position?.Column);
}

/// <summary>The text of a plan by lines, as it can be shown.</summary>
internal static class PlanLines
{
    private static readonly string[] Ends = ["\r\n", "\n", "\r"];

    /// <summary>Lines; what could hide or turn text is shown as its code.</summary>
    public static IReadOnlyList<string> Of(byte[] text) => [.. Encoding.UTF8.GetString(text).TrimStart('\uFEFF').Split(Ends, StringSplitOptions.None).Select(PlainText.Show)];
}

/// <summary>A line of two texts side by side.</summary>
/// <param name="Left">Number and text on the left; null where the line is new.</param>
/// <param name="Right">Number and text on the right; null where the line is gone.</param>
public sealed record LinePair((int Number, string Text)? Left, (int Number, string Text)? Right)
{
    /// <summary>Whether the two sides differ.</summary>
    public bool Differs => Left is null || Right is null;
}

/// <summary>Sets two texts side by side, line by line.</summary>
internal static class SideBySide
{
    // The table of the longest common part grows with the product of the lines; beyond this the middle counts as changed.
    private const int LargestTable = 4_000_000;

    /// <summary>Pairs of lines: equal ones together, others alone.</summary>
    public static IReadOnlyList<LinePair> Of(IReadOnlyList<string> left, IReadOnlyList<string> right)
    {
        var start = 0;
        while (start < left.Count && start < right.Count && Same(left[start], right[start]))
        {
            start++;
        }

        var end = 0;
        while (end < left.Count - start && end < right.Count - start && Same(left[^(end + 1)], right[^(end + 1)]))
        {
            end++;
        }

        var pairs = new List<LinePair>();
        pairs.AddRange(Enumerable.Range(0, start).Select(at => Pair(left, right, at, at)));
        pairs.AddRange(Middle(left, right, start, left.Count - end, right.Count - end));
        pairs.AddRange(Enumerable.Range(0, end).Select(at => Pair(left, right, left.Count - end + at, right.Count - end + at)));
        return pairs;
    }

    private static List<LinePair> Middle(IReadOnlyList<string> left, IReadOnlyList<string> right, int start, int leftEnd, int rightEnd)
    {
        var (rows, columns) = (leftEnd - start, rightEnd - start);
        var longest = (long)rows * columns <= LargestTable ? Longest(left, right, start, rows, columns) : null;
        var pairs = new List<LinePair>();
        var (i, j) = (0, 0);
        while (i < rows || j < columns)
        {
            if (longest is not null && i < rows && j < columns && Same(left[start + i], right[start + j]))
            {
                pairs.Add(Pair(left, right, start + i++, start + j++));
            }
            else if (i < rows && (j == columns || longest is null || longest[i + 1, j] >= longest[i, j + 1]))
            {
                pairs.Add(new LinePair((start + i + 1, left[start + i]), null));
                i++;
            }
            else
            {
                pairs.Add(new LinePair(null, (start + j + 1, right[start + j])));
                j++;
            }
        }

        return pairs;
    }

    private static int[,] Longest(IReadOnlyList<string> left, IReadOnlyList<string> right, int start, int rows, int columns)
    {
        var longest = new int[rows + 1, columns + 1];
        for (var i = rows - 1; i >= 0; i--)
        {
            for (var j = columns - 1; j >= 0; j--)
            {
                longest[i, j] = Same(left[start + i], right[start + j]) ? longest[i + 1, j + 1] + 1 : Math.Max(longest[i + 1, j], longest[i, j + 1]);
            }
        }

        return longest;
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.Ordinal);

    private static LinePair Pair(IReadOnlyList<string> left, IReadOnlyList<string> right, int l, int r) => new((l + 1, left[l]), (r + 1, right[r]));
}

using System.Globalization;
using System.Text;
using System.Text.Json;
using Laygate.Reporting.Plots;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Service.Pages;

/// <summary>A finding as a page shows it.</summary>
public sealed record FindingView(
    string Status, string Rule, string Address, string Title, string Message, string Why, string Remedy, string Local, string Source, int? Line)
{
    /// <summary>Family of the rule.</summary>
    public string Family { get; init; } = string.Empty;

    /// <summary>The part of the report in which it stands: not assessed and needs a person are told apart from warn, as in every other form.</summary>
    public string Group { get; init; } = string.Empty;

    /// <summary>Severity of a rule of safety; empty for others.</summary>
    public string Severity { get; init; } = string.Empty;

    /// <summary>What to state in the plan.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>What is remarked, such as the entry to add.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>What would mend it, where that was looked for.</summary>
    public IReadOnlyList<string> Mends { get; init; } = [];
}

/// <summary>The report on one plan as a page shows it.</summary>
public sealed record PlanView(string Title, string Plan, string? Revision, string Stage, string JudgedFor, IReadOnlyList<(string Name, int Count)> Counts, IReadOnlyList<FindingView> Findings)
{
    /// <summary>The plots of the plan; none where they were not worked out.</summary>
    public IReadOnlyList<PlotFigure> Plots { get; init; } = [];

    /// <summary>The plots that belong beside a finding: those of the family of its rule.</summary>
    public IEnumerable<PlotFigure> Beside(FindingView finding) => Plots.Where(plot => string.Equals(plot.Family, finding.Family, StringComparison.Ordinal));
}

/// <summary>A problem of a text that cannot be read.</summary>
public sealed record ProblemView(string Message, string? Hint, int? Line, int? Column);

/// <summary>A report as a page shows it, read from the JSON that programs get: the page says nothing that the report does not.</summary>
public sealed record ReportView(IReadOnlyList<PlanView> Plans, IReadOnlyList<ProblemView> Problems, IReadOnlyList<string> Caution)
{
    private static readonly string[] Order = ["fail", "warn", "departed", "pass"];
    private static readonly string[] Groups = ["fail", "warn", "not assessed", "needs a person", "departed", "pass"];

    /// <summary>Reads a report.</summary>
    public static ReportView Of(byte[] bytes)
    {
        using var json = JsonDocument.Parse(bytes);
        var files = json.RootElement.GetProperty("files").EnumerateArray().ToList();
        return new ReportView(
            [.. files.SelectMany(file => file.GetProperty("reports").EnumerateArray()).Select(Plan)],
            [.. files.SelectMany(file => file.GetProperty("problems").EnumerateArray()).Select(Problem)],
            [.. json.RootElement.GetProperty("caution").EnumerateArray().Select(sentence => sentence.GetString()!)]);
    }

    /// <summary>The same with the plots of these reports, which the JSON does not carry.</summary>
    public ReportView With(IReadOnlyList<Report> reports) => this with
    {
        Plans = [.. Plans.Select((plan, index) => plan with { Plots = PlotFigures.Of(reports[index], string.Create(CultureInfo.InvariantCulture, $"p{index + 1}")) })],
    };

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

    private static PlanView Plan(JsonElement report)
    {
        var findings = report.GetProperty("findings").EnumerateArray().Select(Finding).Where(finding => finding.Status.Length > 0).ToList();
        return new PlanView(
            Text(report, "title") ?? Text(report, "plan")!,
            Text(report, "plan")!,
            Text(report, "revision"),
            Text(report, "stage")!,
            Text(report, "judged_for")!,
            [.. report.GetProperty("counts").EnumerateObject().Where(count => count.Value.ValueKind == JsonValueKind.Number).Select(count => (count.Name.Replace('_', ' '), count.Value.GetInt32()))],
            [.. findings.OrderBy(finding => Array.IndexOf(Groups, finding.Group)).ThenBy(finding => finding.Severity.Length == 0).ThenBy(finding => finding.Severity, StringComparer.Ordinal)]);
    }

    private static FindingView Finding(JsonElement finding) => new(
        Text(finding, "status") ?? string.Empty,
        Text(finding, "rule")!,
        Text(finding, "address")!,
        Text(finding, "title")!,
        Sentence(finding),
        Text(finding, "why")!,
        Text(finding, "remedy")!,
        Text(finding, "local")!,
        Source(finding.GetProperty("source")),
        finding.GetProperty("position") is { ValueKind: JsonValueKind.Object } place ? place.GetProperty("line").GetInt32() : null)
    {
        Family = Text(finding, "name") is { } name && name.IndexOf('/', StringComparison.Ordinal) is > 0 and var end ? name[..end] : string.Empty,
        Group = (Text(finding, "status"), Text(finding, "outcome")) switch
        {
            ("warn", "not-assessed") => "not assessed",
            ("warn", "needs-person") => "needs a person",
            var (status, _) => status ?? string.Empty,
        },
        Severity = Text(finding, "severity") ?? string.Empty,
        Missing = [.. Listed(finding, "missing", "state").Distinct(StringComparer.Ordinal).Except(Told(finding), StringComparer.Ordinal)],
        Notes = [.. Listed(finding, "notes", "text")],
        Mends = finding.TryGetProperty("remedies", out var found) && found.ValueKind == JsonValueKind.Array ? [.. found.EnumerateArray().Select(remedy => Text(remedy, "text")!)] : [],
    };

    // A list for which a note names the entry to add need not be named again.
    private static IEnumerable<string> Told(JsonElement finding) =>
        finding.TryGetProperty("notes", out var notes)
            ? notes.EnumerateArray().Where(note => Text(note, "id") is "entry-missing")
                .Select(note => note.TryGetProperty("arguments", out var arguments) && arguments.TryGetProperty("list", out var list) ? Text(list, "text") : null).OfType<string>()
            : [];

    private static IEnumerable<string> Listed(JsonElement finding, string list, string key) =>
        finding.TryGetProperty(list, out var entries) && entries.ValueKind == JsonValueKind.Array ? entries.EnumerateArray().Select(entry => Text(entry, key)).OfType<string>() : [];

    private static string Sentence(JsonElement finding)
    {
        var (title, message) = (Text(finding, "title")! + ": ", Text(finding, "message")!);
        return message.StartsWith(title, StringComparison.Ordinal) ? message[title.Length..] : message;
    }

    private static string Source(JsonElement source) => source.ValueKind != JsonValueKind.Object
        ? string.Empty
        : string.Join(", ", new[] { Text(source, "issuer"), Text(source, "title"), Text(source, "edition"), Text(source, "clause") }.Where(part => !string.IsNullOrEmpty(part)))
            + $" ({Text(source, "evidence")})";

    private static ProblemView Problem(JsonElement problem)
    {
        var place = problem.TryGetProperty("position", out var at) && at.ValueKind == JsonValueKind.Object ? at : (JsonElement?)null;
        return new ProblemView(Text(problem, "message")!, Text(problem, "hint"), place?.GetProperty("line").GetInt32(), place?.GetProperty("column").GetInt32());
    }

    private static string? Text(JsonElement element, string name) => element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
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

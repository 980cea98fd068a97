using System.Globalization;
using System.Text;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Annotations;

/// <summary>
/// Lines that a code host turns into remarks beside the plan's lines, worst first, because it shows ten of each kind at most; the
/// caution is a remark of its own on top. Text of a plan can neither end a line nor begin a command.
/// </summary>
public static class AnnotationWriter
{
    private const int ShownOfAKind = 10;

    /// <summary>Writes a run as UTF-8, one line for each remark.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        using var writer = new StreamWriter(output, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true) { NewLine = "\n" };
        var lines = run.AllProblems.Select(Of).Concat(Lines(Listing.Asked(run))).OrderBy(line => line.Kind).ThenBy(line => line.Severity).ToList();
        if (run.Reports.Any())
        {
            writer.WriteLine($"::notice title=Before you rely on this::{Data(string.Join('\n', Caution.Sentences))}");
        }

        lines.ForEach(line => writer.WriteLine(Text(line)));
        foreach (var kind in lines.GroupBy(line => line.Kind).Where(kind => kind.Count() > ShownOfAKind))
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{kind.Count() - ShownOfAKind} more of the kind {Word(kind.Key)} stand above only: ten of each are shown beside the files."));
        }
    }

    // Hosts show ten remarks of a kind: thirty hazards about which a plan says nothing are one remark, else they would hide everything else.
    private static IEnumerable<Line> Lines(IReadOnlyList<ListedItem> items)
    {
        var silent = items.Where(item => item.Finding is { } finding && Silence.Is(finding)).ToList();
        var many = silent.GroupBy(item => (item.Report, item.Group, item.Finding!.Severity)).Where(grade => grade.Count() > 1).ToList();
        var told = many.SelectMany(grade => grade).ToHashSet();
        return items.Where(item => !told.Contains(item)).Select(Of).Concat(many.Select(grade => Of([.. grade])));
    }

    private static Line Of(List<ListedItem> grade)
    {
        var silences = Silence.Of(grade.Select(item => item.Finding!));
        var listed = silences.Select(silence => $"{string.Join("; ", silence.Findings.Select(finding => $"{Wording.Title(finding)} ({finding.Rule})"))}: {string.Join(' ', silence.Sentences)}");
        return Of(grade[0]) with
        {
            Title = string.Create(CultureInfo.InvariantCulture, $"{grade.Count} hazards of severity {silences[0].Severity}: {Names.Of(grade[0].Group)}"),
            Text = string.Join('\n', [$"{Silence.Heading(silences)}.", .. listed]),
        };
    }

    private static Line Of(Problem problem) => new(
        Kind.Error, problem.File, problem.Position ?? new Position(1, 1, 1, 2), "cannot be read", $"{problem.Message} {problem.Hint}".TrimEnd());

    private static Line Of(ListedItem item) => new(
        item.Group switch
        {
            FindingGroup.Failed => Kind.Error,
            FindingGroup.Warned or FindingGroup.NotAssessed => Kind.Warning,
            _ => Kind.Notice,
        },
        item.File, item.Position, $"{item.Rule} {Names.Of(item.Group)}", item.Text, item.Finding?.Severity ?? Severity.C + 1);

    private static string Text(Line line)
    {
        var (at, single) = (line.Position, line.Position.Line == line.Position.EndLine);

        // Columns count only on one line; the host takes the last column itself.
        var columns = single ? string.Create(CultureInfo.InvariantCulture, $",col={at.Column},endColumn={Math.Max(at.Column, at.EndColumn - 1)}") : string.Empty;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"::{Word(line.Kind)} file={Property(FileNames.Plain(line.File))},line={at.Line},endLine={at.EndLine}{columns},title={Property(line.Title)}::{Data(line.Text)}");
    }

    private static string Word(Kind kind) => kind switch
    {
        Kind.Error => "error",
        Kind.Warning => "warning",
        _ => "notice",
    };

    private static string Data(string text) => string.Join('\n', text.Split('\n').Select(PlainText.Show)).Replace(PlainText.Glue, ' ')
        .Replace("%", "%25", StringComparison.Ordinal)
        .Replace("\r", "%0D", StringComparison.Ordinal)
        .Replace("\n", "%0A", StringComparison.Ordinal);

    private static string Property(string text) => Data(text)
        .Replace(":", "%3A", StringComparison.Ordinal)
        .Replace(",", "%2C", StringComparison.Ordinal);

    private enum Kind
    {
        Error,
        Warning,
        Notice,
    }

    private sealed record Line(Kind Kind, string File, Position Position, string Title, string Text, Severity Severity = default);
}

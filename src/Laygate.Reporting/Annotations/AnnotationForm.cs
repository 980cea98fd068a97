using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Annotations;

/// <summary>
/// Lines that a code host turns into remarks beside the plan's lines, worst first, because it shows ten of each kind at most; the caution is a
/// remark of its own on top. Text of a plan can neither end a line nor begin a command. Remarks are sorted by kind and severity over the whole
/// run: each is put aside, as finished text, with those of its own kind.
/// </summary>
public sealed class AnnotationForm : IRunForm
{
    private const int ShownOfAKind = 10;

    private readonly Stream output;
    private readonly Func<Stream> aside;
    private readonly Listing listing;
    private readonly List<Problem> problems;
    private readonly SortedDictionary<Rank, StreamWriter> ranks = [];
    private readonly SortedDictionary<Kind, int> counts = [];
    private bool hasReports;

    /// <summary>Begins.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write; stays open.</param>
    /// <param name="aside">Opens an empty place to write to and read from; each is closed with the form.</param>
    public AnnotationForm(RunHead head, Stream output, Func<Stream> aside)
    {
        (this.output, this.aside) = (output, aside);
        listing = new Listing(head);
        problems = [.. head.Problems];
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        problems.AddRange(result.Problems);
        hasReports |= result.Reports.Count > 0;
        var (single, merged) = Lines([.. listing.Asked(result)]);
        foreach (var line in single)
        {
            Put(line, Order.Single);
        }

        foreach (var line in merged)
        {
            Put(line, Order.Merged);
        }

        foreach (var writer in ranks.Values)
        {
            writer.Flush();
        }
    }

    /// <inheritdoc/>
    public void End()
    {
        problems.ForEach(problem => Put(Of(problem), Order.Problem));
        WriteCaution();
        foreach (var writer in ranks.Values)
        {
            writer.Flush();
            writer.BaseStream.CopyFrom(0, output);
        }

        using var last = Writer(output);
        foreach (var (kind, count) in counts.Where(kind => kind.Value > ShownOfAKind))
        {
            last.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count - ShownOfAKind} more of the kind {Word(kind)} stand above only: ten of each are shown beside the files."));
        }
    }

    // A clean result carries it too.
    private void WriteCaution()
    {
        if (hasReports)
        {
            using var first = Writer(output);
            first.WriteLine($"::notice title=Before you rely on this::{Data(string.Join('\n', Caution.Sentences))}");
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var writer in ranks.Values)
        {
            writer.BaseStream.Dispose();
        }
    }

    private void Put(Line line, Order order)
    {
        var rank = new Rank(line.Kind, line.Severity, order);
        if (!ranks.TryGetValue(rank, out var writer))
        {
            ranks[rank] = writer = Writer(aside());
        }

        writer.WriteLine(Text(line));
        counts[line.Kind] = counts.GetValueOrDefault(line.Kind) + 1;
    }

    private static StreamWriter Writer(Stream stream) => new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true) { NewLine = "\n" };

    // Hosts show ten remarks of a kind: thirty hazards about which a plan says nothing are one remark, else they would hide everything else.
    private static (IEnumerable<Line> Single, IEnumerable<Line> Merged) Lines(IReadOnlyList<ListedItem> items)
    {
        var silent = items.Where(item => item.Finding is { } finding && Silence.Is(finding)).ToList();
        var many = silent.GroupBy(item => (item.Report, item.Group, item.Finding!.Severity)).Where(grade => grade.Count() > 1).ToList();
        var told = many.SelectMany(grade => grade).ToHashSet(ReferenceEqualityComparer.Instance);
        return (items.Where(item => !told.Contains(item)).Select(Of), many.Select(grade => Of([.. grade])));
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

    // Of one kind and severity: what cannot be read, then remarks, then those that stand for several.
    private enum Order
    {
        Problem,
        Single,
        Merged,
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Rank(Kind Kind, Severity Severity, Order Order) : IComparable<Rank>
    {
        public int CompareTo(Rank other) => (Kind, Severity, Order).CompareTo((other.Kind, other.Severity, other.Order));

        public static bool operator <(Rank left, Rank right) => Comparer<Rank>.Default.Compare(left, right) < 0;
        public static bool operator <=(Rank left, Rank right) => Comparer<Rank>.Default.Compare(left, right) <= 0;
        public static bool operator >(Rank left, Rank right) => Comparer<Rank>.Default.Compare(left, right) > 0;
        public static bool operator >=(Rank left, Rank right) => Comparer<Rank>.Default.Compare(left, right) >= 0;
    }
}

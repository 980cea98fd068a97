using Laygate.Engineering.Quantities;
using Laygate.Reporting.Remedies;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>What a row of a finding tells.</summary>
public enum RowKind
{
    /// <summary>Element and place in the text.</summary>
    Where,

    /// <summary>That it is known earlier and does not count.</summary>
    Known,

    /// <summary>What to state in the plan.</summary>
    State,

    /// <summary>A remark.</summary>
    Note,

    /// <summary>Who permitted a departure, and until when.</summary>
    Allowed,

    /// <summary>What is done in place of what is departed from.</summary>
    Instead,

    /// <summary>What goes wrong on site.</summary>
    Why,

    /// <summary>What to do.</summary>
    Do,

    /// <summary>The smallest change that mends it, or why none does.</summary>
    Mend,

    /// <summary>Where the limit comes from, and how well that is known.</summary>
    Source,

    /// <summary>Whom the local code makes responsible.</summary>
    Ask,

    /// <summary>How the value was computed: a step, the inputs, or an assumed value.</summary>
    Working,

    /// <summary>Rule and severity.</summary>
    Rule,
}

/// <summary>One row of a finding.</summary>
/// <param name="Kind">What it tells.</param>
/// <param name="Text">The text; numbers are glued to their units.</param>
public sealed record FindingRow(RowKind Kind, string Text)
{
    /// <summary>The word in front of it.</summary>
    public string Label => Kind switch
    {
        RowKind.Where => "where",
        RowKind.Known => "known",
        RowKind.State => "state",
        RowKind.Note => "note",
        RowKind.Allowed => "allowed",
        RowKind.Instead => "instead",
        RowKind.Why => "why",
        RowKind.Do => "do",
        RowKind.Mend => "mend",
        RowKind.Source => "source",
        RowKind.Ask => "ask",
        RowKind.Working => "working",
        _ => "rule",
    };
}

/// <summary>A finding as rows, made once: console, page, Markdown and service lay them out and leave out none but what they fold.</summary>
public static class FindingRows
{
    /// <summary>The rows of a finding in order; title and sentence stand above them (<see cref="Wording"/>).</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="place">Where its text stands; null: the line.</param>
    public static IReadOnlyList<FindingRow> Of(Finding finding, string? place = null)
    {
        var rows = new List<FindingRow>();
        var at = place ?? (finding.Position is { } position ? Places.Line(position) : null);
        Add(RowKind.Where, PlainText.Show(finding.Address) + (at is null ? string.Empty : $", {at}"));
        Add(RowKind.Known, finding.Known ? "earlier, in the baseline; it does not count" : string.Empty);
        Add(RowKind.State, Listed(Names.Missing(finding)));
        rows.AddRange(finding.Notes.Select(note => new FindingRow(RowKind.Note, NoteWords.Glued(note))));
        if (finding.Departure is { } departure)
        {
            Add(RowKind.Allowed, DepartureWords.Permission(departure));
            Add(RowKind.Instead, PlainText.Show(departure.CompensatingMeasure));
        }

        Add(RowKind.Why, PlainText.Show(finding.Why));
        Add(RowKind.Do, PlainText.Show(finding.Remedy));
        rows.AddRange(RemedyWords.Of(finding).Select(sentence => new FindingRow(RowKind.Mend, sentence)));
        Add(RowKind.Source, finding.Limit is { } limit ? SourceWords.Line(limit) : string.Empty);
        Add(RowKind.Ask, PlainText.Show(finding.Local));
        rows.AddRange(WorkingLines(finding.Working).Select(line => new FindingRow(RowKind.Working, line)));
        Add(RowKind.Rule, PlainText.Show($"{finding.Rule} {finding.RuleName}") + (finding.Severity is { } severity ? $", severity {severity}" : string.Empty));
        return rows;

        void Add(RowKind kind, string text)
        {
            if (text.Length > 0)
            {
                rows.Add(new FindingRow(kind, text));
            }
        }
    }

    /// <summary>Keys of a plan in a sentence.</summary>
    internal static string Listed(IReadOnlyList<string> keys) =>
        keys.Count < 2 ? string.Concat(keys.Select(key => $"`{key}`")) : $"{string.Join(", ", keys.SkipLast(1).Select(key => $"`{key}`"))} and `{keys[^1]}`";

    private static IEnumerable<string> WorkingLines(Working? working)
    {
        foreach (var step in working?.Steps ?? [])
        {
            yield return $"{PlainText.Show(step.Expression)} = {Figures.WithUnit(Rounding.Text(step.Number, RoundingKind.General, 0), step.Unit)}";
        }

        if (working is { Inputs.Count: > 0 })
        {
            yield return $"with {string.Join("; ", working.Inputs.Select(Input))}";
        }

        foreach (var use in working?.Assumptions.Where(use => use.StandsFor is not null) ?? [])
        {
            yield return $"assumed: {PlainText.Show(use.Id)} = {Figures.WithUnit(Rounding.Plain(use.Number), use.Unit)} ({SourceWords.Of(use.Evidence)})";
        }
    }

    private static string Input(WorkingInput input) =>
        $"{PlainText.Show(input.Symbol)} = {(input.Number is { } number ? Figures.WithUnit(Rounding.Text(number, RoundingKind.General, 0), input.Unit) : PlainText.Show(input.Text ?? "—"))} ({PlainText.Show(Names.OfQuantity(input.Quantity))}, {PlainText.Show(input.Address)})";
}

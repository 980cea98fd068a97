using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>A finding in full: status and title, value against limit, where, what to state, why, what to do, where the limit comes from. What a rule says of every element is said once per part.</summary>
internal sealed class FindingBlock(Page page, string file, bool isFull)
{
    private const int Margin = 2;
    private const int TextColumn = 10;

    private readonly Dictionary<string, string> explained = new(StringComparer.Ordinal);

    public void Write(FindingGroup group, Finding finding)
    {
        page.Blank();
        page.Flow(0, Margin, [new TextSpan(Styles.Of(group), Names.Of(group).ToUpperInvariant().Replace(' ', '\u00A0')), new TextSpan(TextStyle.Heading, "\u00A0 " + Wording.Title(finding))]);
        page.Flow(Margin, Margin, [new TextSpan(TextStyle.Plain, Wording.Glued(finding))]);
        var known = explained.TryGetValue(finding.Rule, out var before);
        var told = finding with { Notes = [.. finding.Notes.Where(note => isFull || !Silence.Is(finding) || !Silence.IsReading(note))] };
        foreach (var row in FindingRows.Of(told, At(finding)).Where(row => row.Kind switch
        {
            RowKind.Why or RowKind.Do or RowKind.Ask => !known,
            RowKind.Source => !string.Equals(row.Text, before, StringComparison.Ordinal),
            RowKind.Working => isFull,
            _ => true,
        }))
        {
            Row(row.Label, row.Text + (known && row.Kind == RowKind.Rule ? "; why and what to do as above" : string.Empty));
        }

        explained[finding.Rule] = finding.Limit is { } limit ? SourceWords.Line(limit) : string.Empty;
    }

    /// <summary>One question that several rules wait for.</summary>
    public void Ask(FindingGroup group, IReadOnlyList<Finding> findings)
    {
        if (findings.Count == 1)
        {
            Write(group, findings[0]);
            return;
        }

        page.Blank();
        page.Flow(0, Margin, [new TextSpan(Styles.Of(group), Names.Of(group).ToUpperInvariant().Replace(' ', '\u00A0')), new TextSpan(TextStyle.Heading, "\u00A0 A question that several rules wait for")]);
        page.Flow(Margin, Margin, [new TextSpan(TextStyle.Plain, Wording.Glued(findings[0]))]);
        Row("where", $"{PlainText.Show(findings[0].Address)}, {At(findings[0])}");
        Row("state", Keys(findings[0]));
        foreach (var note in findings.SelectMany(finding => finding.Notes).Where(note => isFull || !Silence.IsReading(note)).DistinctBy(NoteWords.Glued, StringComparer.Ordinal))
        {
            Row("note", NoteWords.Glued(note));
        }

        Row("rules", Rules(findings));
    }

    /// <summary>What a plan does not say about hazards of one severity: for each what to write, what to do and the source.</summary>
    /// <param name="group">Part of the report.</param>
    /// <param name="grade">The silences.</param>
    /// <param name="isFirst">Whether it is to be explained what to do with them.</param>
    public void Silent(FindingGroup group, IReadOnlyList<Silence> grade, bool isFirst)
    {
        page.Blank();
        page.Flow(0, Margin, [new TextSpan(Styles.Of(group), Names.Of(group).ToUpperInvariant().Replace(' ', '\u00A0')), new TextSpan(TextStyle.Heading, "\u00A0 " + Silence.Heading(grade))]);
        if (isFirst)
        {
            page.Flow(Margin, Margin, [new TextSpan(TextStyle.Plain, "Write what is asked for, or say why it does not apply. --all gives why it matters, what other publications say and whom to ask; local law and the competent person come first.")]);
        }

        foreach (var silence in grade)
        {
            var first = silence.Findings[0];
            page.Blank();
            page.Flow(Margin, Margin + 2, [
                new TextSpan(TextStyle.Plain, string.Join("; ", silence.Findings.Select(finding => $"{Wording.Title(finding)} ({PlainText.Show(finding.Rule)})"))),
                new TextSpan(TextStyle.Quiet, $", {PlainText.Show(first.Address)}{Places.After(first.Position)}")]);
            Row("write", string.Join(' ', silence.Sentences));
            foreach (var remedy in silence.Findings.Select(finding => finding.Remedy).Distinct(StringComparer.Ordinal))
            {
                Row("do", PlainText.Show(remedy));
            }

            if (silence.Limits is { Count: > 0 } limits)
            {
                Row("source", string.Join(' ', limits));
            }
        }
    }

    /// <summary>Rules with title and severity.</summary>
    public static string Rules(IReadOnlyList<Finding> findings) => string.Join("; ", findings.Select(finding =>
        $"{PlainText.Show(finding.Rule)} {Wording.Title(finding)}{(finding.Severity is { } severity ? $" (severity {severity})" : string.Empty)}"));

    /// <summary>The inputs that would help.</summary>
    public static string Keys(Finding finding)
    {
        return FindingRows.Listed([.. finding.Missing.Select(Names.Of).Distinct(StringComparer.Ordinal)]);
    }

    private void Row(string label, string text) =>
        page.Labelled(Margin, TextColumn, label, [new TextSpan(TextStyle.Plain, text)]);

    private string At(Finding finding) => PlainText.Show(Places.Full(file, finding.Position));
}

using System.Globalization;
using System.Text;
using Laygate.Model.Plans;
using Laygate.Reporting.Comparing;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Markdown;

/// <summary>The report on one plan for a review comment: counts, then what somebody must act on, worst first.</summary>
internal sealed class MarkdownReport(StringBuilder text, Report report, EarlierState? earlier)
{
    private static readonly FindingGroup[] Shown =
        [FindingGroup.Failed, FindingGroup.Warned, FindingGroup.NotAssessed, FindingGroup.NeedsPerson, FindingGroup.Departed];

    private readonly ILookup<FindingGroup, Finding> parts = report.Findings.ToLookup(FindingGroups.Of);

    public void Write()
    {
        text.Append(CultureInfo.InvariantCulture, $"## {MarkdownText.Of(report.PlanTitle ?? report.PlanId)}\n\n");
        var revision = report.Revision is { Length: > 0 } known ? $", revision {MarkdownText.Of(known)}" : string.Empty;
        text.Append(CultureInfo.InvariantCulture, $"{MarkdownText.Of(report.File)}, plan {MarkdownText.Of(report.PlanId)}{revision}, judged at stage {Words.Of(report.Stage)}.\n\n");
        Counts();
        if (report.Baseline is { } baseline)
        {
            Item(MarkdownText.Of(BaselineWords.Of(baseline)));
        }

        foreach (var note in report.Notes)
        {
            Item($"**Note:** {MarkdownText.Of(NoteWords.Of(note))}");
        }

        foreach (var use in report.Departures.Where(use => use.State != DepartureState.Holds))
        {
            Item($"**Warn:** {MarkdownText.Of(DepartureWords.Of(use))}");
        }

        foreach (var group in Shown.Where(group => parts[group].Any()))
        {
            Part(group);
        }

        Open();
        Outlook();
        Changes();
        Rules();
    }

    private void Outlook()
    {
        if (report.Outlook is not { } outlook)
        {
            return;
        }

        text.Append(CultureInfo.InvariantCulture, $"\n### {(outlook.Hours.Count > 0 ? "Laying hour by hour" : "Weather in which the plan works")}\n\n");
        if (OutlookWords.Unsaid(outlook) is { } unsaid)
        {
            Item($"**{MarkdownText.Of(unsaid)}**");
            OutlookWords.NotJudged(outlook).ToList().ForEach(Under);
        }

        outlook.InEveryHour.ToList().ForEach(limit => Item("In every hour: " + MarkdownText.Of(OutlookWords.Always(limit))));
        foreach (var hour in outlook.Hours)
        {
            var margins = hour.Limits.Count > 0 ? ". Margins: " + string.Join("; ", OutlookWords.Margins(hour.Limits)).Replace(PlainText.Glue, ' ') : string.Empty;
            Item(MarkdownText.Of($"{OutlookWords.Time(hour.At)}: {OutlookWords.Of(hour.Verdict)}{margins}"));
        }

        foreach (var axis in outlook.Weather?.Alone ?? [])
        {
            Item(MarkdownText.Of(OutlookWords.Alone(axis, outlook.Weather!.IsUnknown)));
        }
    }

    private void Changes()
    {
        if (earlier is null)
        {
            return;
        }

        text.Append("\n### Changes since the last revision\n\n");
        if (earlier.Plan is { } plan)
        {
            ComparisonMarkdown.Write(text, earlier.File, plan, "#### ");
            return;
        }

        Item($"The earlier state in {MarkdownText.Of(earlier.File.OldFile)} could not be read, so nothing was compared.");
        foreach (var problem in earlier.File.Problems)
        {
            Under($"{problem.Message} {problem.Hint}".TrimEnd());
        }
    }

    // What is not due yet is many lines at the start of a plan, and nothing to act on in a review.
    private void Open()
    {
        var keys = parts[FindingGroup.Open].SelectMany(finding => finding.Missing).Select(Names.Of).Distinct(StringComparer.Ordinal).ToList();
        if (keys.Count > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"\nNot due at this stage, to be stated later: {string.Join(", ", keys.Select(MarkdownText.Of))}.\n");
        }
    }

    private void Counts()
    {
        var groups = Enum.GetValues<FindingGroup>().Where(group => FindingGroups.Count(report.Counts, group) > 0).ToList();
        Row(groups.Select(Names.Of));
        Row(groups.Select(_ => "---:"));
        Row(groups.Select(group => FindingGroups.Count(report.Counts, group).ToString(CultureInfo.InvariantCulture)));
        text.Append('\n');
    }

    private void Part(FindingGroup group)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n### {Names.Capital(Names.Of(group))}\n\n");
        var silences = Silence.Of(parts[group].Where(finding => !finding.Known)).GroupBy(silence => silence.Severity).Select(grade => grade.ToList()).ToList();
        foreach (var finding in Silence.Others(parts[group]))
        {
            One(group, finding);
        }

        silences.ForEach(Silent);
        foreach (var same in parts[group].Where(finding => finding.Severity is null || (finding.Known && Silence.Is(finding))).GroupBy(Waiting, StringComparer.Ordinal))
        {
            if (group is FindingGroup.NotAssessed && same.Key is not null && same.Skip(1).Any())
            {
                Waiting([.. same]);
            }
            else
            {
                same.ToList().ForEach(finding => One(group, finding));
            }
        }
    }

    // What several rules wait for is asked for once.
    private static string? Waiting(Finding finding) =>
        finding is { Outcome: Outcome.NotAssessed, Known: false, Missing.Count: > 0 } ? $"{finding.Status} {string.Join(' ', finding.Missing.Select(Names.Of))}" : null;

    private void Waiting(List<Finding> waiting)
    {
        var keys = string.Join(", ", waiting[0].Missing.Select(Names.Of).Distinct(StringComparer.Ordinal).Select(MarkdownText.Of));
        var rules = waiting.GroupBy(finding => finding.Rule, StringComparer.Ordinal).Select(rule => $"{MarkdownText.Of(Wording.Title(rule.First()))} ({MarkdownText.Of(rule.Key)})");
        Item($"**State {keys}**{Places.After(waiting[0].Position)}: {waiting.Count.ToString(CultureInfo.InvariantCulture)} findings wait for it. {string.Join("; ", rules)}.");
    }

    // A review does not need the same three sentences for each of thirty hazards: what to write, and where it comes from.
    private void Silent(List<Silence> grade)
    {
        Item($"**{Silence.Heading(grade)}.** Write, or state why it does not apply:");
        foreach (var silence in grade)
        {
            var first = silence.Findings[0];
            var line = Places.After(first.Position);
            var titles = string.Join("; ", silence.Findings.Select(finding => $"{Wording.Title(finding)} ({finding.Rule})"));
            Under($"{titles}, {first.Address}{line}. {string.Join(' ', silence.Sentences)} Source: {string.Join(' ', silence.Findings.Select(finding => finding.Limit).OfType<ShownLimit>().Select(limit => $"{SourceWords.Publication(limit)} ({SourceWords.HowKnown(limit)}).").Distinct(StringComparer.Ordinal).DefaultIfEmpty("see the rule."))}");
        }
    }

    private void One(FindingGroup group, Finding finding)
    {
        var line = Places.After(finding.Position);
        Item($"{(finding.Known ? "known earlier: " : string.Empty)}**{MarkdownText.Of(Wording.Title(finding))}** ({MarkdownText.Of(finding.Rule)}, {MarkdownText.Of(finding.Address)}{line}). {MarkdownText.Of(Wording.Sentence(finding))}{Missing(finding)}");
        if (group is (FindingGroup.Failed or FindingGroup.Warned or FindingGroup.Departed) && !finding.Known)
        {
            Details(finding);
        }
    }

    private void Details(Finding finding)
    {
        // Where, what to state, and the rule stand in the first line; why is left to the page.
        foreach (var row in FindingRows.Of(finding))
        {
            var told = row.Text.Replace(PlainText.Glue, ' ');
            switch (row.Kind)
            {
                case RowKind.Note or RowKind.Mend:
                    Under(told);
                    break;
                case RowKind.Allowed or RowKind.Instead or RowKind.Do or RowKind.Source or RowKind.Ask or RowKind.Working:
                    Under($"{Names.Capital(row.Label)}: {told}");
                    break;
            }
        }
    }

    private static string Missing(Finding finding) => Names.Missing(finding) is { Count: > 0 } missing
        ? $" State {string.Join(", ", missing.Select(MarkdownText.Of))}."
        : string.Empty;

    private void Rules()
    {
        var layers = report.Layers.Select(layer => MarkdownText.Of($"{layer.Title} {layer.Edition}".TrimEnd()));
        var hash = report.BookHash.Length > 12 ? report.BookHash[..12] : report.BookHash;
        text.Append(CultureInfo.InvariantCulture, $"\nRules: {string.Join("; then ", layers)}. Rule book {MarkdownText.Of(hash)}.\n");
    }

    private void Item(string line) => text.Append("- ").Append(line).Append('\n');

    private void Under(string line) => text.Append("  - ").Append(MarkdownText.Of(line)).Append('\n');

    private void Row(IEnumerable<string> cells) => text.Append("| ").AppendJoin(" | ", cells).Append(" |\n");
}

using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>Measures as the plan states them; none is judged adequate.</summary>
internal static class SafetyCard
{
    public static void Write(CardWriter card, SiteSheet sheet)
    {
        card.Card("Traffic and safety");
        card.Part("Anybody may stop the work");
        card.Item("In an emergency call the local emergency number first. Stop, and ask, in doubt: unknown line or buried service, suspected tar, spotter out of sight, closure breached.");
        foreach (var line in sheet.OverheadLines)
        {
            var at = line.At.Value is null ? string.Empty : $" at {SheetNumbers.Value(line.At)}";
            var height = line.Height.Value is null ? "not stated: ask the owner before any body is raised" : SheetNumbers.Of(line.Height);
            card.Item($"overhead line {MarkdownText.Of(line.Id)}{at}: height {height}");
        }

        if (sheet.Wrong.Count > 0)
        {
            card.Part("Found wrong in the plan: do not work by it");
            foreach (var finding in sheet.Wrong)
            {
                card.Item($"{MarkdownText.Of(finding.Title)}. {MarkdownText.Of(finding.Remedy)} ({MarkdownText.Of(finding.Rule)})");
            }
        }

        card.Part("Measures (stated, not judged adequate)");
        card.Table(["seen", "measure", "what", "where", "who", "when", "checked"], sheet.Measures.Select(measure => (IReadOnlyList<string>)
        [
            CardWriter.Box,
            measure.Kind is { } kind ? Words.Of(kind).Replace('-', ' ') : MarkdownText.Of(measure.Id),
            MarkdownText.Of(measure.What),
            MarkdownText.Of(measure.Where),
            MarkdownText.Of(measure.Who),
            MarkdownText.Of(measure.When),
            MarkdownText.Of(measure.Checked),
        ]));
        Opening(card, sheet);
    }

    private static void Opening(CardWriter card, SiteSheet sheet)
    {
        card.Part("Opening");
        var opening = sheet.Opening;
        card.Item(opening.Below.Value is not null
            ? $"not before the mat is below {SheetNumbers.Of(opening.Below)}; value found {CardWriter.Blank} at {CardWriter.Blank}"
            : "the plan states no temperature for opening: the competent person decides");
        card.Item($"released by: {(string.IsNullOrWhiteSpace(opening.ReleasedBy) ? "not stated: ask" : MarkdownText.Of(opening.ReleasedBy))}");
        if (opening.ClosureEnds is { } end)
        {
            card.Item($"closure ends {SheetNumbers.Time(end, sheet.ShiftStart)} (stated)");
        }
    }
}

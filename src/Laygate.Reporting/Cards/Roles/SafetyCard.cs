using System.Text.RegularExpressions;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>Who may stop the work, the opening, measures that have a person or a time tonight; the others as references.</summary>
internal sealed partial class SafetyCard
{
    private readonly CardWords card;
    private readonly SiteSheet sheet;
    private readonly CardTexts texts;
    private readonly CardNumbers numbers;
    private readonly List<SheetMeasure> tonight;

    public SafetyCard(CardWords card)
    {
        (this.card, sheet, texts, numbers) = (card, card.Sheet, card.Texts, card.Numbers);
        tonight = [.. sheet.Measures.Where(IsTonight).OrderBy(measure => !measure.IsLifeCritical)];
    }

    /// <summary>Measures that have a person or a time tonight.</summary>
    public int Tonight => tonight.Count;

    /// <summary>The card.</summary>
    /// <param name="full">How many of the measures of tonight stand there in full, those that guard lives first.</param>
    public IEnumerable<CardBlock> Blocks(int full)
    {
        yield return new CardList(texts["anybody"], [texts["emergency"], texts["doubt"], .. sheet.OverheadLines.Select(Overhead)]) { IsLarge = true };
        yield return new CardList(texts["wrong"], [.. sheet.Wrong.Select(card.Wrong)]);
        yield return new CardList(texts["opening"],
        [
            sheet.Opening.Below.Value is null ? texts["opening.none"] : texts["opening.below", numbers.Of(sheet.Opening.Below)],
            .. card.Limits(sheet.Limits.Where(limit => limit.IsOpening)),
            texts["opening.released", card.Or(sheet.Opening.ReleasedBy)],
            .. sheet.Opening.ClosureEnds is { } end ? [texts["opening.closure", numbers.Time(end)]] : Array.Empty<CardLine>(),
        ]);
        var shown = tonight.Take(full).ToList();
        var inFull = shown.GroupBy(measure => measure.Measure.Who?.Trim() ?? string.Empty, StringComparer.Ordinal).SelectMany(person => person.Select((measure, index) => Full(measure.Measure, index == 0)));
        yield return new CardList(texts["measures"], [.. inFull]);
        yield return new CardList(texts["measures.short"], [.. Short(tonight.Skip(full))]);
        yield return new CardList(texts["measures.rest"], [.. References(sheet.Measures.Where(measure => !IsTonight(measure)))]);
    }

    private static bool IsTonight(SheetMeasure measure) => measure.HasPerson || ClockTime().IsMatch(measure.Measure.When ?? string.Empty);

    private CardLine Full(SafetyMeasure measure, bool isFirst)
    {
        var when = ClockTime().IsMatch(measure.When ?? string.Empty) ? measure.When : null;
        var what = string.IsNullOrWhiteSpace(measure.What) ? Kind(measure) : card.Own(measure.What);
        return new CardLine(isFirst ? card.Own(measure.Who) : string.Empty, $"☐ {what}{(card.Own(measure.Where, when) is { Length: > 1 } where ? $" ({where})" : string.Empty)}");
    }

    private IEnumerable<CardLine> Short(IEnumerable<SheetMeasure> measures) => measures
        .GroupBy(measure => measure.Measure.Who?.Trim() ?? string.Empty, StringComparer.Ordinal)
        .Select(person => new CardLine(card.Own(person.Key), string.Join("; ", person.Select(measure => $"☐ {Kind(measure.Measure)}{(ClockTime().IsMatch(measure.Measure.When ?? string.Empty) ? $" ({card.Own(measure.Measure.When)})" : string.Empty)}"))));

    // By the document that has them in full.
    private IEnumerable<CardLine> References(IEnumerable<SheetMeasure> measures) => measures
        .GroupBy(measure => measure.Measure.Reference?.Trim() ?? string.Empty, StringComparer.Ordinal)
        .Select(document => new CardLine(document.Key.Length == 0 ? texts["measures.plan"] : card.Own(document.Key), string.Join(", ", document.Select(measure => Kind(measure.Measure)))));

    private string Kind(SafetyMeasure measure) => measure.Kind is { } kind ? texts[$"measure.{Words.Of(kind)}"] : card.Show(measure.Id);

    private CardLine Overhead(SheetOverheadLine line) => texts[
        "line.overhead", card.Show(line.Id), line.At.Value is { } at ? $" {texts["at"]} {CardNumbers.Whole(at)}" : string.Empty, line.Height.Value is null ? texts["line.unknown"] : numbers.Of(line.Height)];

    [GeneratedRegex(@"\b\d{1,2}:\d{2}\b", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex ClockTime();
}

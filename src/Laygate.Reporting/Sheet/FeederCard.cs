using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>Which mix next, by level; exchange, changeover, identification; loads in order.</summary>
internal static class FeederCard
{
    public static void Write(CardWriter card, SiteSheet sheet)
    {
        card.Card(sheet.Feeder is null ? "Loads and hopper" : "Feeder");
        Levels(card, sheet);
        Drill(card, sheet);
        Identification(card, sheet);
        Loads(card, sheet);
    }

    private static void Levels(CardWriter card, SiteSheet sheet)
    {
        card.Part("Levels");
        card.Table(["buffer", "capacity", "lowest", "call the next load at", "in time from", "fits up to"], sheet.Buffers.Select(buffer => (IReadOnlyList<string>)
        [
            $"{MarkdownText.Of(buffer.Paver)}: {MarkdownText.Of(buffer.Course)}",
            SheetNumbers.Of(buffer.Capacity),
            SheetNumbers.Of(buffer.Lowest),
            SheetNumbers.Of(buffer.Call),
            SheetNumbers.Of(buffer.CallLowest),
            SheetNumbers.Of(buffer.CallHighest),
        ]));
        card.Gap();
        foreach (var buffer in sheet.Buffers.Where(buffer => buffer.Call.Value is not null))
        {
            var highest = buffer.CallHighest.Value is null ? string.Empty : $" Never start one above {SheetNumbers.Of(buffer.CallHighest)}: it does not fit.";
            card.Item($"Next load for {MarkdownText.Of(buffer.Course)} when its buffer shows {SheetNumbers.Of(buffer.Call)}.{highest}");
        }

        card.Item("Levels decide; the list below is the order that an even balance gives.");
    }

    private static void Drill(CardWriter card, SiteSheet sheet)
    {
        if (sheet.Feeder is not { } feeder)
        {
            return;
        }

        card.Part("Exchange and changeover");
        card.Item($"exchange of trucks: {SheetNumbers.Of(feeder.Exchange)}; changeover each way: {SheetNumbers.Of(feeder.Changeover)}");
        card.Item(feeder.EmptiedBeforeChange switch
        {
            true => "empty the feeder before the mix changes (stated)",
            false => "the feeder is not emptied before the mix changes (stated)",
            _ => "the plan does not say whether the feeder is emptied before the mix changes: ask",
        });
        card.Item($"the rest goes to: {Or(feeder.RestGoesTo)}");
    }

    private static void Identification(CardWriter card, SiteSheet sheet)
    {
        if (sheet.Feeder is not { Identification: { } marks })
        {
            return;
        }

        card.Part("Right mix");
        card.Item($"on the truck: {Or(marks.OnTruck)}");
        card.Item($"on the ticket: {Or(marks.OnTicket)}");
        card.Item($"released by: {Or(marks.ReleasedBy)}");
        card.Item($"on a mismatch: {Or(marks.OnMismatch)}");
    }

    private static void Loads(CardWriter card, SiteSheet sheet)
    {
        card.Part("Loads in order (computed)");
        if (sheet.Loads.Count == 0)
        {
            card.Line("Not computed: the plan says too little about payloads, widths, thickness or density.");
        }

        card.Table(["load", "for", "of its mix", "size", "tip by", "ends at", "found"], sheet.Loads.Select(load => (IReadOnlyList<string>)
        [
            load.Number.ToString(CultureInfo.InvariantCulture),
            MarkdownText.Of(load.Course) + (load.IsLast ? " **last**" : string.Empty),
            load.OfMix.ToString(CultureInfo.InvariantCulture),
            SheetNumbers.Load(load.Size),
            SheetNumbers.Time(load.TipsBy, sheet.ShiftStart),
            load.EndsAt is null ? string.Empty : $"{MarkdownText.Of(load.Run)} {SheetNumbers.Along(load.EndsAt)}",
            CardWriter.Blank,
        ]));
    }

    private static string Or(string? text) => string.IsNullOrWhiteSpace(text) ? "not stated: ask" : MarkdownText.Of(text);
}

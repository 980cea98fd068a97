using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>One plant's dispatcher: loads with mix, size and leaving time, temperatures, words.</summary>
internal static class PlantCard
{
    public static void Write(CardWriter card, SiteSheet sheet, SheetPlant plant)
    {
        card.Card($"Dispatcher {MarkdownText.Of(plant.Id)}");
        card.Part("Mixes");
        card.Table(["mix", "loading lowest", "expected", "highest"], plant.Mixes.Select(mix => (IReadOnlyList<string>)
        [
            MarkdownText.Of(mix.Name), SheetNumbers.Value(mix.Lowest), SheetNumbers.Value(mix.Expected), SheetNumbers.Value(mix.Highest),
        ]));
        card.Gap();
        card.Item("temperatures are stated, in the load");
        card.Item($"output planned: {SheetNumbers.Of(plant.Planned)}; stands in: {(string.IsNullOrWhiteSpace(plant.Spare) ? "not stated" : MarkdownText.Of(plant.Spare))}");
        card.Item("words by radio or telephone: **go**, **hold** (load no more, keep what is loaded), **end** (last load named by the shift manager)");
        Loads(card, sheet, plant);
    }

    private static void Loads(CardWriter card, SiteSheet sheet, SheetPlant plant)
    {
        var own = sheet.Loads.Where(load => load.Plant is null
            ? plant.Mixes.Any(mix => string.Equals(mix.Id, load.Mix, StringComparison.Ordinal))
            : string.Equals(load.Plant, plant.Id, StringComparison.Ordinal)).ToList();
        card.Part("Loads (computed)");
        if (own.Count == 0)
        {
            card.Line("Not computed: the plan says too little.");
            return;
        }

        foreach (var last in own.Where(load => load.IsLast))
        {
            card.Item($"last load for {MarkdownText.Of(last.Course)}: **{SheetNumbers.Load(last.Size)}**, number {last.OfMix.ToString(CultureInfo.InvariantCulture)}; ask the shift manager before it is loaded");
        }

        card.Gap();
        card.Table(["load of the mix", "for", "trucks", "size", "leave by", "tip by", "left at"], own.Select(load => (IReadOnlyList<string>)
        [
            load.OfMix.ToString(CultureInfo.InvariantCulture),
            MarkdownText.Of(load.Course) + (load.IsLast ? " **last**" : string.Empty),
            MarkdownText.Of(load.Trucks),
            SheetNumbers.Load(load.Size),
            SheetNumbers.Time(load.LeavesAt, sheet.ShiftStart),
            SheetNumbers.Time(load.TipsBy, sheet.ShiftStart),
            CardWriter.Blank,
        ]));
    }
}

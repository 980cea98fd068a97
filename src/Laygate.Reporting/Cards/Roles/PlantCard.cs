using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>One plant's dispatcher: temperatures, rhythm, first and last load, what to do when the paver calls, loads in order.</summary>
internal sealed class PlantCard(CardWords card, SheetPlant plant)
{
    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;
    private readonly List<SheetLoad> own = [.. card.Sheet.Loads.Where(load => load.Plant is null
        ? plant.Mixes.Any(mix => string.Equals(mix.Id, load.Mix, StringComparison.Ordinal))
        : string.Equals(load.Plant, plant.Id, StringComparison.Ordinal))];

    public IEnumerable<CardBlock> Blocks()
    {
        yield return new CardList(texts["calls"], [Call("go"), Call("hold"), Call("end"), Call("silent")]);
        yield return new CardList(texts["rhythm"], [.. Rhythm()]);
        yield return card.Table(texts["mixes"], ["mix", "lowest", "expected", "highest", "refuse"], plant.Mixes, mix =>
            [card.Show(mix.Name), Figure(mix.Lowest), Figure(mix.Expected), Figure(mix.Highest), Figure(mix.RefuseBelow)]);
        yield return new CardList(texts["stop"], [.. card.Limits(sheet.Limits.Where(limit => StopLines.IsOfPlants(limit) && plant.Mixes.Any(mix => string.Equals(limit.Finding.Address, $"mix:{mix.Id}", StringComparison.Ordinal))))]);
        yield return own.Count == 0
            ? new CardList(texts["order"], [texts["order.none"]])
            : Loads();
    }

    // What a plant loads for one course only needs no name of the course.
    private CardRun Loads()
    {
        var one = own.Select(load => load.Course).Distinct(StringComparer.Ordinal).Count() == 1;
        string[] head = [texts["load"], .. one ? Array.Empty<string>() : [texts["for"]], CardNumbers.In(texts["size"], own[0].Size.Unit), texts["leave"], texts["left"], texts["tip"]];
        return new CardRun(texts["order"], head, [.. own.Select((load, index) => (IReadOnlyList<string>)
        [
            load.OfMix.ToString(CultureInfo.InvariantCulture), .. one ? Array.Empty<string>() : [card.Show(load.Course)], numbers.Bare(load.Size) + (load.IsLast ? $" {texts["last"]}" : string.Empty),
            numbers.TimeAfter(load.LeavesAt, index > 0 ? own[index - 1].LeavesAt : sheet.ShiftStart), string.Empty,
            numbers.TimeAfter(load.TipsBy, index > 0 ? own[index - 1].TipsBy : sheet.ShiftStart),
        ])])
        { IsLoads = true };
    }

    private CardLine Call(string word) => new(texts[$"call.{word}"], texts[$"call.{word}.do"]);

    private IEnumerable<CardLine> Rhythm()
    {
        foreach (var trucks in sheet.Trucks.Where(trucks => string.Equals(trucks.Plant, plant.Id, StringComparison.Ordinal) || (trucks.Plant is null && sheet.Plants.Count == 1)))
        {
            yield return new CardLine(card.Show(trucks.Mix), trucks.Interval.Value is { } interval ? texts["rhythm.every", numbers.Time(own.Find(load => string.Equals(load.Trucks, trucks.Id, StringComparison.Ordinal))?.LeavesAt), numbers.Tenth(interval)] : texts["rhythm.none"]);
            yield return texts["rhythm.queue", numbers.Of(trucks.Wait)] + (trucks.Waiting.Value is { Number: { } waiting } ? texts["rhythm.waiting", numbers.Local(waiting.ToString("0.#", CultureInfo.InvariantCulture))] : string.Empty);
            if (trucks.BeforeStart is { } before)
            {
                yield return texts["rhythm.before", before.ToString(CultureInfo.InvariantCulture)];
            }
        }

        foreach (var load in own.Where(load => load.IsLast))
        {
            yield return texts["plant.last", card.Show(load.Course), numbers.Tenth(load.Size), load.OfMix.ToString(CultureInfo.InvariantCulture), numbers.Time(load.LeavesAt)];
        }

        yield return texts["plant.output", numbers.Of(plant.Planned), string.IsNullOrWhiteSpace(plant.Spare) ? texts["none"] : card.Own(plant.Spare)];
    }

    private string Figure(SheetFigure figure) => figure.Value is null ? "—" : numbers.Of(figure);
}

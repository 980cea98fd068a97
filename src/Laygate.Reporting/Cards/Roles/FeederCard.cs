using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>Which mix next, by level; the drill of exchange and change; the right mix; loads in order.</summary>
internal sealed class FeederCard(CardWords card)
{
    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;

    public IEnumerable<CardBlock> Blocks()
    {
        yield return new CardList(texts["levels"],
        [
            .. sheet.Buffers.SelectMany(Levels), .. sheet.Buffers.Count > 0 && sheet.Loads.Count > 0 ? [texts["level.decide"]] : Array.Empty<CardLine>(),
        ])
        { IsLarge = true };
        if (sheet.Feeder is { } feeder)
        {
            yield return new CardList(texts["drill"],
            [
                texts["drill.times", numbers.Of(feeder.Exchange), numbers.Of(feeder.Changeover)],
                card.Flag(feeder.EmptiedBeforeChange, "drill.empty"),
                texts["drill.rest", card.Or(feeder.RestGoesTo)],
            ]);
            yield return new CardList(texts["right-mix"], feeder.Identification is not { } marks ? [] :
            [
                texts["mark.truck", card.Or(marks.OnTruck)], texts["mark.ticket", card.Or(marks.OnTicket)], texts["mark.released", card.Or(marks.ReleasedBy)], texts["mark.mismatch", card.Or(marks.OnMismatch)],
            ]);
        }

        yield return new CardList(texts["stop"], [.. new StopLines(card).Machines().Take(1)]);
        yield return sheet.Loads.Count == 0
            ? new CardList(texts["order"], [texts["order.none"]])
            : Loads();
    }

    private CardRun Loads()
    {
        var ends = sheet.Loads.Select(load => load.EndsAt?.Unit).FirstOrDefault(unit => unit is not null) ?? string.Empty;
        var one = sheet.Loads.Select(load => load.Course).Distinct(StringComparer.Ordinal).Count() == 1;
        string[] head = [texts["load"], .. one ? Array.Empty<string>() : [texts["for"]], CardNumbers.In(texts["size"], sheet.Loads[0].Size.Unit), texts["tip"], CardNumbers.In(texts["to-station"], ends), texts["found"]];
        return new CardRun(texts["order"], head, [.. sheet.Loads.Select((load, index) => (IReadOnlyList<string>)
        [
            load.Number.ToString(CultureInfo.InvariantCulture), .. one ? Array.Empty<string>() : [card.Show(load.Course)], numbers.Bare(load.Size) + (load.IsLast ? $" {texts["last"]}" : string.Empty),
            numbers.TimeAfter(load.TipsBy, index > 0 ? sheet.Loads[index - 1].TipsBy : sheet.ShiftStart), End(load, ends), string.Empty,
        ])])
        { IsLoads = true };
    }

    private static string End(SheetLoad load, string unit) => load.EndsAt is null ? "—" : string.Equals(load.EndsAt.Unit, unit, StringComparison.Ordinal) ? CardNumbers.Bare(load.EndsAt, 0) : CardNumbers.Whole(load.EndsAt);

    private IEnumerable<CardLine> Levels(SheetBuffer buffer)
    {
        if (buffer.Call.Value is not null)
        {
            yield return new CardLine(card.Show(buffer.Course), buffer.CallLowest.Value is { } lowest ? texts["level.in-time", numbers.Of(buffer.Call), numbers.Safe(lowest, up: true)] : texts["level.call", numbers.Of(buffer.Call)]);
        }

        if (buffer.CallHighest.Value is { } highest)
        {
            yield return new CardLine(card.Show(buffer.Course), texts["level.never", numbers.Safe(highest, up: false)]);
        }

        yield return new CardLine(card.Show(buffer.Course), texts["level.lowest", numbers.Of(buffer.Lowest), numbers.Of(buffer.Capacity)]);
    }
}

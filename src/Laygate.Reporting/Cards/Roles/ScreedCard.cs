using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>Thickness, width, speed, what lies in the width, joints.</summary>
internal sealed class ScreedCard(CardWords card)
{
    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;

    public IEnumerable<CardBlock> Blocks()
    {
        yield return new CardList(texts["speed"], [.. sheet.Speeds.SelectMany(Speed), texts["speed.keep"]]) { IsLarge = true };
        yield return card.Table(texts["thickness"], ["course", "compacted", "behind", "levelled", "found"], sheet.Courses, course =>
            [card.Show(course.Id), numbers.Of(course.Thickness), course.Behind.Value is null ? "—" : "≈ " + CardNumbers.Fine(course.Behind.Value, numbers), card.Own(course.LevelledOn), texts["blank"]]);
        yield return card.Table(texts["width"], ["run", "station", "width.head"], sheet.Widths, width =>
            [card.Show(width.Run), width.At is null ? texts["whole-run"] : CardNumbers.Whole(width.At), numbers.Of(width.Width, exact: true)]);
        yield return new CardList(texts["obstacles"], [.. sheet.Obstacles.Select(obstacle => new CardLine(
            $"{card.Show(obstacle.Run)}{(obstacle.At.Value is { } at ? " " + CardNumbers.Whole(at) : string.Empty)}", card.Own(obstacle.What, obstacle.Treatment, obstacle.Who, obstacle.When)))]);
        yield return new CardList(texts["joints"], [.. new SurfaceLines(card).Joints()]);
    }

    private IEnumerable<CardLine> Speed(SheetSpeed speed)
    {
        yield return new CardLine(texts["speed.paver", card.Show(speed.Paver)], texts["speed.planned", numbers.Of(speed.Planned)]);
        if (speed.Lowest.Value is { } low && speed.Highest.Value is { } high)
        {
            yield return texts["speed.band", texts["band", numbers.Of(low, exact: true), numbers.Of(high, exact: true)]];
        }

        if (speed.RollersAllow.Value is { } rollers)
        {
            yield return texts["speed.rollers", numbers.Safe(rollers, up: false)];
        }

        if (speed.SupplyAllows.Value is { } supply)
        {
            yield return texts["speed.supply", numbers.Safe(supply, up: false)];
        }

        yield return texts["speed.stop", numbers.Of(speed.StopLimit)];
    }
}

using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>Widths, thicknesses behind the screed, levels, speed band, stop limit.</summary>
internal static class ScreedCard
{
    public static void Write(CardWriter card, SiteSheet sheet)
    {
        card.Card("Screed and level");
        card.Part("Thickness");
        card.Table(["course", "compacted", "behind the screed", "levelled on", "found"], sheet.Courses.Select(course => (IReadOnlyList<string>)
        [
            MarkdownText.Of(course.Id), SheetNumbers.Of(course.Thickness), SheetNumbers.Of(course.Behind), MarkdownText.Of(course.LevelledOn), CardWriter.Blank,
        ]));
        Stations(card, sheet);
        Speeds(card, sheet);
    }

    private static void Stations(CardWriter card, SiteSheet sheet)
    {
        card.Part("Width");
        card.Table(["run", "from station", "width (stated)"], sheet.Widths.Select(width => (IReadOnlyList<string>)
        [
            MarkdownText.Of(width.Run), width.At is null ? "whole run" : SheetNumbers.Along(width.At), SheetNumbers.Value(new SheetFigure(width.Width, FigureKind.Stated)),
        ]));
        card.Gap();
        foreach (var obstacle in sheet.Obstacles)
        {
            var at = obstacle.At.Value is null ? string.Empty : $" at {SheetNumbers.Value(obstacle.At)}";
            card.Item($"{MarkdownText.Of(obstacle.Run)}{at}: {MarkdownText.Of(obstacle.What)}; {MarkdownText.Of(obstacle.Treatment)}; {MarkdownText.Of(obstacle.Who)}, {MarkdownText.Of(obstacle.When)}");
        }
    }

    private static void Speeds(CardWriter card, SiteSheet sheet)
    {
        card.Part("Speed");
        card.Table(["paver", "planned", "usual band", "rollers follow up to", "supply carries up to", "longest stop before a joint"], sheet.Speeds.Select(speed => (IReadOnlyList<string>)
        [
            MarkdownText.Of(speed.Paver),
            SheetNumbers.Of(speed.Planned),
            Band(speed),
            SheetNumbers.Of(speed.RollersAllow),
            SheetNumbers.Of(speed.SupplyAllows),
            SheetNumbers.Of(speed.StopLimit),
        ]));
        card.Gap();
        card.Line("Keep the planned speed. A higher one needs more than one of these figures; ask the shift manager.");
    }

    private static string Band(SheetSpeed speed) => (speed.Lowest.Value, speed.Highest.Value) switch
    {
        (null, null) => string.Empty,
        ({ }, null) => $"at least {SheetNumbers.Of(speed.Lowest)}",
        (null, { }) => $"at most {SheetNumbers.Of(speed.Highest)}",
        _ => $"{SheetNumbers.Value(speed.Lowest)} to {SheetNumbers.Of(speed.Highest)}",
    };
}

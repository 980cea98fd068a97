using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>What to lay, how long it can be rolled, joints, bond coat, grit, and three things to stop for.</summary>
internal sealed class ForemanCard(CardWords card)
{
    private const int Three = 3;

    // What stops the work first when all of them are watched: what cannot be made good afterwards.
    private static readonly string[] Gravest =
        ["course.last_densifying_pass", "existing.condition", "weather.dew_margin_lowest", "course.base_lowest", "weather.wind_highest_at_mat", "course.laying_temperature", "course.air_lowest"];

    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;
    private readonly SurfaceLines surface = new(card);

    public IEnumerable<CardBlock> Blocks()
    {
        yield return new CardList(texts["stop.three"], [.. new StopLines(card).Machines().Concat(card.Limits(Limits())).Take(Three)]) { IsLarge = true };
        yield return card.Table(texts["lay"], ["course", "per-area", "per-length", "a-load", "ends", "every"], sheet.Courses, course =>
        [
            $"{card.Show(course.Id)}: {card.Show(course.Mix)}", Figure(course.PerArea), Figure(course.PerLength),
            course.Payload.Value is { } payload ? numbers.Tenth(payload) : "—", Tenth(course.RunPerLoad), Tenth(course.Interval),
        ]);
        yield return new CardList(texts["times.foreman"], [.. Times()]);
        yield return Windows();
        yield return new CardList(texts["joints"], [.. surface.Joints()]);
        yield return new CardList(texts["bond"], [.. surface.BondCoats()]);
        yield return new CardList(texts["grit"], [.. surface.Grit()]);
        yield return new CardList(texts["rest"], [texts["rest.foreman"]]);
    }

    private IEnumerable<SheetLimit> Limits() => sheet.Limits.Where(StopLines.IsWhileLaying)
        .OrderBy(limit => Array.IndexOf(Gravest, limit.Finding.Quantity) is >= 0 and var place ? place : Gravest.Length);

    private IEnumerable<CardLine> Times() => sheet.Moments
        .Where(moment => moment.Kind is SheetMomentKind.Start or SheetMomentKind.LatestStart or SheetMomentKind.HalfWay or SheetMomentKind.LastMetre)
        .Select(moment => new CardLine(
            moment.Origin == FigureKind.Stated ? numbers.Time(moment.At) : $"≈{PlainText.Glue}" + numbers.About(moment.At, moment.Kind is SheetMomentKind.LatestStart), texts[$"moment.{Words.Of(moment.Kind)}"]));

    // A row per hour, a column per course; without hours the window at the worst moment.
    private CardBlock Windows()
    {
        var hours = sheet.Courses.SelectMany(course => course.Hours).Select(hour => hour.From).Distinct().Order().ToList();
        var courses = sheet.Courses.Where(course => course.Hours.Count > 0).ToList();
        return hours.Count == 0
            ? new CardList(texts["window"], [.. new StopLines(card).Windows()])
            : new CardRun(texts["window.hours"], [texts["laid-from"], .. courses.Select(course => card.Show(course.Id))], [.. hours.Select(hour => (IReadOnlyList<string>)
            [
                numbers.Time(hour),
                .. courses.Select(course => course.Hours.FirstOrDefault(one => one.From == hour) is { } known ? numbers.Safe(known.Value, up: false) : "—"),
            ])]);
    }

    private string Figure(SheetFigure? figure) => figure?.Value is null ? "—" : numbers.Of(figure);

    private string Tenth(SheetFigure figure) => figure.Value is { } value ? numbers.Tenth(value) : "—";
}

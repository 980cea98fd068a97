using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>Lines about what stops the work, for every role that watches it.</summary>
internal sealed class StopLines(CardWords card)
{
    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;

    /// <summary>Loads that are refused and a paver that stands, as the plan states them.</summary>
    public IEnumerable<CardLine> Machines() =>
    [
        .. sheet.Mixes.Where(mix => mix.RefuseBelow.Value is not null).GroupBy(mix => numbers.Of(mix.RefuseBelow), StringComparer.Ordinal).Select(same => new CardLine(
            texts["stop.load"], texts["stop.load.line", same.Key] + (same.Count() == sheet.Mixes.Count ? string.Empty : $" ({string.Join("; ", same.Select(mix => card.Show(mix.Name)))})"))),
        .. sheet.Speeds.Where(speed => speed.StopLimit.Value is not null).GroupBy(speed => numbers.Of(speed.StopLimit), StringComparer.Ordinal).Select(same => new CardLine(
            texts["stop.paver"], texts["stop.paver.line", same.Key] + (same.Count() == sheet.Speeds.Count ? string.Empty : $" ({string.Join(", ", same.Select(speed => card.Show(speed.Paver)))})"))),
    ];

    /// <summary>All of them, with the limits that rules set.</summary>
    public IEnumerable<CardLine> All() => Machines().Concat(card.Limits(sheet.Limits.Where(IsWhileLaying)));

    /// <summary>How long each course can be densified at the worst moment.</summary>
    public IEnumerable<CardLine> Windows() => sheet.Courses.Where(course => course.Window.Value is not null).Select(course =>
        new CardLine(card.Show(course.Id), texts["window.line", numbers.Safe(course.Window.Value!, up: false)] + Laid(course.Window)));

    /// <summary>As laid when.</summary>
    public string Laid(SheetFigure figure) => figure.Laid is { } moment ? texts["laid", numbers.Time(moment)] : string.Empty;

    /// <summary>Whether a limit is watched on the mat while it is laid; others stand on the cards of rollers and plants, or at the opening.</summary>
    public static bool IsWhileLaying(SheetLimit limit) => !limit.IsOpening && !IsOfRollers(limit) && !IsOfPlants(limit);

    /// <summary>Whether a limit is for those who roll.</summary>
    public static bool IsOfRollers(SheetLimit limit) => limit.Finding.Address.StartsWith("roller:", StringComparison.Ordinal) || limit.Finding.Address.StartsWith("phase:", StringComparison.Ordinal);

    /// <summary>Whether a limit is for those who load.</summary>
    public static bool IsOfPlants(SheetLimit limit) => limit.Finding.Quantity.StartsWith("mix.loading", StringComparison.Ordinal);
}

using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>The rollers of one phase: zone, passes, strips, mode, speed, what they must not do, where they park.</summary>
internal sealed class RollingCard(CardWords card, IReadOnlyList<SheetRoller> rollers)
{
    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;

    /// <summary>Rollers that share a card: those of one phase, and those that stand by.</summary>
    public static IEnumerable<IReadOnlyList<SheetRoller>> Groups(SiteSheet sheet) => sheet.Rollers.GroupBy(roller => roller.Phase ?? string.Empty, StringComparer.Ordinal).Select(group => group.ToList());

    /// <summary>Name of their card.</summary>
    public static string Role(CardWords card, IReadOnlyList<SheetRoller> rollers)
    {
        var names = string.Join(", ", rollers.Select(roller => card.Show(roller.Id)));
        return card.Texts[rollers[0].Phase is not null ? "card.roller" : rollers.All(roller => roller.IsSpare) ? "card.roller.spare" : "card.roller.free", names, card.Show(rollers[0].Phase)];
    }

    public IEnumerable<CardBlock> Blocks()
    {
        yield return new CardList(texts["pattern"], [.. Pattern(rollers[0])]) { IsLarge = true };
        yield return new CardList(texts["stop"], [.. card.Limits(Limits()), new CardLine(texts["never"], texts["never.all"])]);
        yield return card.Table(texts["machines"], ["roller", "mode", "care.water", "care.parking", "care.breaks"], rollers, roller =>
            [card.Show(roller.Id), $"{Mode(roller)}, {numbers.Of(roller.Speed)}", card.Or(roller.WaterAndFuel), card.Or(roller.Parking), card.Or(roller.Breaks)]);
        yield return new CardList(texts["care.check"], [.. rollers.Select(roller => new CardLine(card.Show(roller.Id), texts["care.boxes"]))]);
        foreach (var same in rollers.Where(roller => roller.Strips.Count > 0).GroupBy(Layout, StringComparer.Ordinal))
        {
            var names = string.Join(", ", same.Select(roller => card.Show(roller.Id)));
            yield return new CardStrips(same.Count() == rollers.Count ? texts["strips"] : texts["strips.of", names], same.First().Strips, texts["strips.order"]);
        }
    }

    private IEnumerable<SheetLimit> Limits() => sheet.Limits.Where(limit =>
        StopLines.IsOfRollers(limit)
            ? rollers.Any(roller => Is(limit, $"roller:{roller.Id}") || Is(limit, $"phase:{roller.Phase}"))
            : StopLines.IsWhileLaying(limit) && limit.Finding.RuleName.StartsWith("rolling/", StringComparison.Ordinal) && Concerns(limit));

    private static bool Is(SheetLimit limit, string address) => string.Equals(limit.Finding.Address, address, StringComparison.Ordinal);

    // The first pass is for the first phase, the last one that densifies for those that still densify.
    private bool Concerns(SheetLimit limit) => limit.Finding.Quantity.EndsWith("first_pass", StringComparison.Ordinal)
        ? rollers[0].Kind is PhaseKind.Initial
        : rollers[0].Kind is PhaseKind.Initial or PhaseKind.Main;

    private IEnumerable<CardLine> Pattern(SheetRoller roller)
    {
        if (roller.Phase is null)
        {
            yield return texts["roller.standby"];
            yield break;
        }

        yield return roller.Passes is { } passes ? texts["roller.passes", passes.ToString(CultureInfo.InvariantCulture)] : texts["roller.passes.none"];
        var (from, to) = (numbers.Of(roller.ZoneFrom), numbers.Of(roller.ZoneTo));
        yield return roller.FromMinutes.Value is not null && roller.DoneBy.Value is not null
            ? texts["roller.minutes", from, to, Minute(roller.FromMinutes.Value), Minute(roller.DoneBy.Value)]
            : texts["roller.zone", from, to];
        if (sheet.Grit?.By.Value is { Number: { } by } && roller.FromMinutes.Value?.Number <= by && by <= roller.DoneBy.Value?.Number)
        {
            yield return texts["roller.grit", numbers.Local(by.ToString("0.#", CultureInfo.InvariantCulture))];
        }
    }

    private string Mode(SheetRoller roller)
    {
        var mode = roller.Mode is { } known ? texts[$"mode.{Words.Of(known)}"] : texts["none"];
        var share = roller is { PassesInMode: { } some, Passes: { } all } && some < all
            ? texts["roller.mode.share", mode, some.ToString(CultureInfo.InvariantCulture), all.ToString(CultureInfo.InvariantCulture)]
            : mode;
        return share
            + (roller.Frequency.Value is not null && roller.Mode is not RollingMode.Static ? $", {numbers.Of(roller.Frequency)}" : string.Empty)
            + (roller.Amplitude.Value is not null && roller.Mode is RollingMode.Vibration ? ", " + texts["roller.amplitude", numbers.Of(roller.Amplitude)] : string.Empty);
    }

    private static string Minute(ShownValue value) => Math.Round(value.Number ?? 0, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);

    private static string Layout(SheetRoller roller) => string.Join(' ', roller.Strips.Select(strip => FormattableString.Invariant($"{strip.From.Number:0.00}-{strip.To.Number:0.00}")));
}

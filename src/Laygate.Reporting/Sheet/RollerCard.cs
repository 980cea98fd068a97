using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>One roller: zone, strips, passes, mode, speed, what it must not do, where it parks.</summary>
internal static class RollerCard
{
    public static void Write(CardWriter card, SiteSheet sheet, SheetRoller roller)
    {
        card.Card($"Roller {MarkdownText.Of(roller.Id)}{(roller.IsSpare ? " (spare)" : string.Empty)}");
        card.Part("Pattern");
        Zone(card, roller);
        card.Item($"mode: {Mode(roller)}");
        card.Item($"speed: {SheetNumbers.Of(roller.Speed)}");
        if (roller.Impact.Value is not null && roller.Mode == RollingMode.Vibration)
        {
            card.Item($"impacts {SheetNumbers.Of(roller.Impact)} apart");
        }

        Strips(card, roller);
        card.Part("Stop and ask");
        foreach (var finding in sheet.Limits.Where(finding => string.Equals(finding.Address, $"roller:{roller.Id}", StringComparison.Ordinal)))
        {
            card.Item($"{MarkdownText.Of(LimitWords.Of(finding))} (limit, {MarkdownText.Of(finding.Rule)})");
        }

        card.Item("Never: stand on the hot mat; turn or park on it; enter the zone of another roller; roll with anybody in the zone");
        card.Part("Water, fuel, rest");
        card.Item($"water and fuel: {Or(roller.WaterAndFuel)}");
        card.Item($"parking off the hot mat: {Or(roller.Parking)}");
        card.Item($"breaks: {Or(roller.Breaks)}");
        card.Item($"{CardWriter.Box} water full  {CardWriter.Box} sprinklers run  {CardWriter.Box} horn, alarm, lights and brakes tried  time {CardWriter.Blank}");
    }

    private static void Zone(CardWriter card, SheetRoller roller)
    {
        if (roller.Phase is not { } phase)
        {
            card.Item("stands by; the foreman gives it a zone");
            return;
        }

        card.Item($"phase: {MarkdownText.Of(phase)}; passes over every point: {roller.Passes?.ToString(CultureInfo.InvariantCulture) ?? "not stated"} (stated)");
        card.Item($"zone behind the last screed: from {SheetNumbers.Of(roller.ZoneFrom)} to {SheetNumbers.Of(roller.ZoneTo)}");
        card.Item($"minutes behind the last screed: from {SheetNumbers.Minutes(roller.FromMinutes)}, done by {SheetNumbers.Of(roller.DoneBy)}");
    }

    private static string Mode(SheetRoller roller)
    {
        if (roller.Mode is not { } mode)
        {
            return "not stated: ask";
        }

        var share = roller.PassesInMode is { } some && roller.Passes is { } all && some < all
            ? FormattableString.Invariant($" on {some} of {all} passes, the others static")
            : string.Empty;
        var drum = roller.Frequency.Value is not null && mode != RollingMode.Static ? $", {SheetNumbers.Value(roller.Frequency)}" : string.Empty;
        var amplitude = roller.Amplitude.Value is not null && mode == RollingMode.Vibration ? $", {SheetNumbers.Value(roller.Amplitude)}" : string.Empty;
        return $"{Words.Of(mode)}{share}{drum}{amplitude} (stated)";
    }

    private static void Strips(CardWriter card, SheetRoller roller)
    {
        if (roller.Strips.Count == 0)
        {
            return;
        }

        card.Part("Strips across the widest mat, from the left edge in the direction of laying (computed)");
        card.Table(["strip", "from", "to"], roller.Strips.Select((strip, i) => (IReadOnlyList<string>)
            [(i + 1).ToString(CultureInfo.InvariantCulture), Tenth(strip.From), Tenth(strip.To)]));
        card.Gap();
        card.Line("Below zero or beyond the width: the drum reaches over the edge. The order of the strips is the foreman's.");
    }

    private static string Tenth(ShownValue value) =>
        $"{(value.Number ?? 0).ToString("0.0", CultureInfo.InvariantCulture)} {value.Unit}";

    private static string Or(string? text) => string.IsNullOrWhiteSpace(text) ? "not stated: ask" : MarkdownText.Of(text);
}

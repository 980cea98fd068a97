using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>How far findings lie inside or outside their limits, and which of two is worse.</summary>
internal static class Margins
{
    private const double Rounding = 1e-9;

    /// <summary>Whether a number could mend a finding: it misses, or meets on expected values only, and value and limit are numbers or moments.</summary>
    public static bool IsTarget(Finding finding) =>
        finding.Status is Status.Warn or Status.Fail
        && !MayBeASlip(finding)
        && (finding.Outcome == Outcome.Missed || finding.OnExpectedValuesOnly)
        && Of(finding) is not null;

    // A number that is far from the usual is looked at; to tune it to what is usual would hide the slip.
    private static bool MayBeASlip(Finding finding) => finding.Notes.Any(note => string.Equals(note.Id, FindingNotes.UsualBecause, StringComparison.Ordinal));

    /// <summary>Distance of the expected value inside the deciding limit, below zero outside it, in the unit of the value; null for words and presence.</summary>
    public static double? Of(Finding finding)
    {
        if (NumberOf(finding.Value) is not { } value || finding.Limit is not { } limit)
        {
            return null;
        }

        var low = NumberOf(limit.Low);
        var high = NumberOf(limit.High);
        return low is null && high is null
            ? null
            : Math.Min(value - low ?? double.PositiveInfinity, high - value ?? double.PositiveInfinity);
    }

    /// <summary>What the expected value needs beyond its limit so that the unfavourable end meets it too, in the unit of the value.</summary>
    public static double Spread(Finding finding)
    {
        if (finding.Value is not { Number: { } value } shown || finding.Limit is not { } limit)
        {
            return 0;
        }

        var low = limit.Low?.Number is { } from ? value - (shown.Low ?? value) + ((limit.Low.High ?? from) - from) : 0;
        var high = limit.High?.Number is { } to ? (shown.High ?? value) - value + (to - (limit.High.Low ?? to)) : 0;
        return Math.Max(0, Math.Max(low, high));
    }

    /// <summary>
    /// How far inside its limit a remedy aims, in the unit of the value: as far as the spread asks, and where the limit is a band
    /// around another quantity (95 % of the tonnage that the course needs) to that quantity itself.
    /// </summary>
    public static double Aim(Finding finding)
    {
        var band = finding.Limit is not { Quantity: not null, Factor: > 0 and { } factor } limit ? 0
            : limit.Low?.Number is { } low && factor < 1 ? (low / factor) - low
            : limit.High?.Number is { } high && factor > 1 ? high - (high / factor)
            : 0;
        return Math.Max(Spread(finding), band);
    }

    /// <summary>Whether a finding is worse than before: a higher status, a miss in place of none, or a miss by more.</summary>
    public static bool IsWorse(Finding before, Finding after)
    {
        if (Rank(after) != Rank(before))
        {
            return Rank(after) > Rank(before);
        }

        if (after.Outcome == Outcome.Missed && before.Outcome == Outcome.Missed && Of(before) is { } was && Of(after) is { } now)
        {
            return now < was - (Rounding * Math.Max(1, Math.Abs(was)));
        }

        return after.Outcome == Outcome.Missed && before.Outcome != Outcome.Missed;
    }

    // A pass that only the expected value earns is a warning already; what cannot be assessed any more is one too.
    private static int Rank(Finding finding) => finding.Status switch
    {
        Status.Fail => 2,
        Status.Warn => 1,
        _ => 0,
    };

    private static double? NumberOf(ShownValue? value)
    {
        if (value?.Number is { } number)
        {
            return double.IsFinite(number) ? number : null;
        }

        return DateTimeOffset.TryParseExact(
            value?.Text, "yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment)
            ? moment.UtcTicks / (double)TimeSpan.TicksPerMinute
            : null;
    }
}

using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sizing;

/// <summary>What the lines of a first sizing are called.</summary>
internal static class SizingWords
{
    /// <summary>A line in a few words.</summary>
    public static string Label(SizedLine line)
    {
        var of = line.Address[(line.Address.IndexOf(':', StringComparison.Ordinal) + 1)..];
        return (line.Kind, line.Quantity) switch
        {
            (SizedKind.Rollers, _) => $"rollers, {of}",
            (SizedKind.RollersTogether, _) => "rollers together",
            (SizedKind.LengthPerShift, _) => "length per shift",
            (SizedKind.InWeather, _) when line.Air is { } air => $"window, {of}, {Rounding.Plain(air.Number ?? 0)} {air.Unit}",
            (SizedKind.InWeather, _) => $"window, {of}, stated weather",
            (_, "course.tonnage_computed") => $"mix, {of}",
            (_, "course.demand") => $"mix an hour, {of}",
            (_, "trucks.cycle") => $"truck round, {of}",
            (_, "trucks.minimum_count") => $"trucks, {of}",
            (_, "shift.time_needed") => "time for all strips",
            (_, "paver.speed_rollers_allow") => "rollers follow",
            _ => $"{Names.OfQuantity(line.Quantity)}, {of}",
        };
    }

    /// <summary>The latest month in a sentence.</summary>
    public static string Of(LatestMonth latest) => latest.Rule is { } rule
        ? $"Latest month: {Month(latest.Month)}. In {Month((latest.Month % 12) + 1)} {rule} is missed ({PlainText.Show(latest.Title ?? string.Empty)}, {PlainText.Show(latest.Address ?? string.Empty)}). By the stated means; single days are colder."
        : "Latest month: none, every month will do. By the stated means; single days are colder.";

    /// <summary>A usual value in a word or two: what the id says behind its family, or the key of the plan.</summary>
    public static string Short(UsualValue usual) => usual.Id is { } id ? id[(id.IndexOf('.', StringComparison.Ordinal) + 1)..].Replace('_', ' ') : usual.Key.Replace('.', ' ');

    private static string Month(int month) => System.Globalization.CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);

    /// <summary>A number as it deserves: counts as they are, minutes and others to what their range tells.</summary>
    public static string Number(double number, SizedLine line) => line.Kind is SizedKind.Rollers or SizedKind.RollersTogether || line.Quantity is "trucks.minimum_count"
        ? Rounding.Plain(Math.Round(number))
        : Rounding.Text(number, line.Value.Unit is "min" ? RoundingKind.Minutes : RoundingKind.General, 0, (line.Value.High ?? 0) - (line.Value.Low ?? 0));
}

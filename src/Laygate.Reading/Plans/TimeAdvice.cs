using System.Globalization;

namespace Laygate.Reading.Plans;

/// <summary>Says how to write a date, a time or an offset that is not written as it must be.</summary>
internal static class TimeAdvice
{
    private static readonly string OtherYear = string.Create(CultureInfo.InvariantCulture, $"Write a year from {ScalarTexts.FirstYear} to {ScalarTexts.LastYear}.");

    public static string Date(string text) => ScalarTexts.IsOfOtherYear(text) ? OtherYear : HasDateForm(text)
        ? "The calendar has no such day; check month and day."
        : "Write year, month and day with hyphens.";

    public static string Time(string text)
    {
        if (text.StartsWith("24:", StringComparison.Ordinal))
        {
            return "Midnight is `00:00` of the next day.";
        }

        return ScalarTexts.Time($"0{text}") is not null ? $"Write `0{text}`." : "Write hours and minutes with two digits each, 00:00 to 23:59.";
    }

    public static string Zone(string text)
    {
        if (text is "Z" or "UTC" or "GMT")
        {
            return "Write `+00:00`.";
        }

        return WithMinutes(text) is { } right
            ? $"Write `{right}`."
            : "Write the hours and minutes that local time is ahead of UTC (+) or behind it (-), at most 14 hours.";
    }

    public static string Moment(string text)
    {
        if (text.EndsWith('Z') && ScalarTexts.Moment(text[..^1]) is not null)
        {
            return "Write `+00:00` in place of `Z`.";
        }

        var joined = text.Replace(' ', 'T');
        if (ScalarTexts.Moment(joined) is not null)
        {
            return $"Write `{joined}`.";
        }

        if (ScalarTexts.Date(text) is not null)
        {
            return "Add the time of day behind a `T`.";
        }

        if (HasDateForm(text) && ScalarTexts.IsOfOtherYear(text[..10]))
        {
            return OtherYear;
        }

        return HasDateForm(text) && ScalarTexts.Date(text[..10]) is null
            ? "The calendar has no such day; check month and day."
            : "Write year, month and day, a `T`, hours and minutes, and nothing else but an offset from UTC.";
    }

    private static string? WithMinutes(string text)
    {
        if (text.Length is < 2 or > 3 || text[0] is not ('+' or '-'))
        {
            return null;
        }

        var right = $"{text[0]}{text[1..].PadLeft(2, '0')}:00";
        return ScalarTexts.Zone(right) is null ? null : right;
    }

    private static bool HasDateForm(string text) => text.Length >= 10 && text[4] == '-' && text[7] == '-';
}

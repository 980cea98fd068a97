using System.Globalization;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Converts the raw texts of dates, times, offsets and ids, each in its one form.</summary>
internal static class ScalarTexts
{
    private const int OffsetLength = 6;
    private const int LargestOffsetHours = 14;

    /// <summary>First year that is read: earlier and later ones are slips, and times near the ends of the calendar cannot be calculated with.</summary>
    public const int FirstYear = 1900;

    /// <summary>Last year that is read.</summary>
    public const int LastYear = 2199;

    /// <summary>A date, year first; null when the text is none, the calendar has no such day or its year cannot be meant.</summary>
    public static DateOnly? Date(string text) => AnyDate(text) is { Year: >= FirstYear and <= LastYear } date ? date : null;

    /// <summary>Whether a text is a date whose year cannot be meant.</summary>
    public static bool IsOfOtherYear(string text) => AnyDate(text) is { Year: < FirstYear or > LastYear };

    /// <summary>A time of day, 00:00 to 23:59.</summary>
    public static TimeOnly? Time(string text) =>
        TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;

    /// <summary>An offset from UTC, at most 14 hours.</summary>
    public static TimeSpan? Zone(string text)
    {
        if (text.Length != OffsetLength || text[0] is not ('+' or '-'))
        {
            return null;
        }

        if (!TimeSpan.TryParseExact(text[1..], @"hh\:mm", CultureInfo.InvariantCulture, out var offset))
        {
            return null;
        }

        if (offset > TimeSpan.FromHours(LargestOffsetHours))
        {
            return null;
        }

        return text[0] == '-' ? -offset : offset;
    }

    /// <summary>A local date and time with or without an offset.</summary>
    public static Moment? Moment(string text)
    {
        const int localLength = 16;
        if (text.Length is not (localLength or (localLength + OffsetLength)))
        {
            return null;
        }

        if (!DateTime.TryParseExact(text[..localLength], "yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
        {
            return null;
        }

        if (local.Year is < FirstYear or > LastYear)
        {
            return null;
        }

        if (text.Length == localLength)
        {
            return new Moment(local, null);
        }

        return Zone(text[localLength..]) is { } offset ? new Moment(local, offset) : null;
    }

    private static DateOnly? AnyDate(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;

    /// <summary>Whether a text has the form of an id.</summary>
    public static bool IsId(string text) =>
        text.Length > 0 && text[0] != '-' && text[^1] != '-'
        && !text.Contains("--", StringComparison.Ordinal)
        && text.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-');
}

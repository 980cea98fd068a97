using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;

namespace Laygate.Engineering.PlanViews;

/// <summary>What the stated hours of weather leave out of a time of laying, as remarks.</summary>
internal static class WeatherGaps
{
    /// <summary>The first thing that is left out: the start, a gap, or the end; null where nothing is.</summary>
    public static Note? Outside(WeatherTable table, IReadOnlyList<WeatherPart> parts, LayingSpan span)
    {
        if (table.First > span.First)
        {
            return Remark(NoteIds.HoursBeginLate, ("begin", table.First), ("laying", span.First));
        }

        if (parts.Count == 0 || (parts[^1].To < span.Last && parts[^1].To > table.Last))
        {
            return Remark(NoteIds.HoursEndEarly, ("end", table.Last), ("laying", span.Last));
        }

        var reached = span.First;
        foreach (var part in parts)
        {
            if (part.From > reached)
            {
                return Gap(table, reached);
            }

            reached = part.To;
        }

        return reached < span.Last ? Gap(table, reached) : null;
    }

    /// <summary>The longest gap that is bridged although it is longer than usual; null where there is none.</summary>
    public static Note? Bridged(WeatherTable table, LayingSpan span) => table.Bridged(span.First, span.Last).MaxBy(gap => gap.To - gap.From) is { } longest
        ? Remark(NoteIds.HoursBridged, ("from", longest.From), ("to", longest.To))
        : null;

    /// <summary>The gap in the table that leaves a moment out.</summary>
    private static Note Gap(WeatherTable table, DateTimeOffset moment) => Remark(
        NoteIds.HoursGap, ("from", table.Rows().Last(row => row.At <= moment).At), ("to", table.Rows().First(row => row.At > moment).At));

    private static Note Remark(string id, params (string Name, DateTimeOffset At)[] moments) =>
        Note.Of(id, [.. moments.Select(moment => (moment.Name, moment.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)))]);
}

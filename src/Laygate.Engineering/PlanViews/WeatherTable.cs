using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>A time without a break over which the stated hours speak.</summary>
/// <param name="From">Start.</param>
/// <param name="To">End.</param>
internal sealed record WeatherPart(DateTimeOffset From, DateTimeOffset To);

/// <summary>The stated hours of weather: straight lines between the entries, the last one held. One mechanism for all that is read from them.</summary>
internal sealed class WeatherTable
{
    private readonly List<(DateTimeOffset At, WeatherHour Hour)> rows;

    private WeatherTable(List<(DateTimeOffset At, WeatherHour Hour)> rows) => this.rows = rows;

    /// <summary>
    /// Gap that is bridged without a word. Judgement: weather services publish by the hour or by three hours, and a straight line over three hours
    /// misses little of a day's course.
    /// </summary>
    public static TimeSpan Usual { get; } = TimeSpan.FromHours(3);

    /// <summary>
    /// Longest gap that is bridged at all, with a note. Judgement: in more than six hours, a quarter of a day, the lowest or highest temperature of the
    /// day can lie between two entries, and no straight line knows it.
    /// </summary>
    public static TimeSpan Longest { get; } = TimeSpan.FromHours(6);

    /// <summary>How long an entry holds that nothing follows: it speaks for the hour that begins with it.</summary>
    public static TimeSpan Held { get; } = TimeSpan.FromHours(1);

    /// <summary>First entry.</summary>
    public DateTimeOffset First => rows[0].At;

    /// <summary>Last entry.</summary>
    public DateTimeOffset Last => rows[^1].At;

    /// <summary>Whether it says anything by the hour: two entries that are near enough for a line between them, or one that holds for its hour.</summary>
    public bool IsByHour => rows.Count == 1 || rows.Zip(rows.Skip(1)).Any(pair => pair.Second.At - pair.First.At <= Longest);

    /// <summary>The table of a plan; null where it states no hours.</summary>
    public static WeatherTable? Of(QuantityContext context) =>
        context.Plan.Weather?.Hours is { Count: > 0 } ? context.Service(c => new WeatherTable(Rows(c))) : null;

    /// <summary>The parts of a time over which the table speaks, in order; none where it says nothing about it.</summary>
    public IReadOnlyList<WeatherPart> Within(DateTimeOffset from, DateTimeOffset to)
    {
        var parts = new List<WeatherPart>();
        for (var i = 0; i < rows.Count; i++)
        {
            var first = rows[i].At;
            while (i + 1 < rows.Count && rows[i + 1].At - rows[i].At <= Longest)
            {
                i++;
            }

            var (start, end) = (Later(first, from), Earlier(rows[i].At + Held, to));
            if (start < end)
            {
                parts.Add(new WeatherPart(start, end));
            }
        }

        return parts;
    }

    /// <summary>Moments at which the weather bends within a part, its ends included.</summary>
    public IReadOnlyList<DateTimeOffset> Bends(WeatherPart part) =>
        [part.From, .. rows.Select(row => row.At).Where(at => at > part.From && at < part.To), part.To];

    /// <summary>Gaps that are bridged within a time although they are longer than usual.</summary>
    public IEnumerable<WeatherPart> Bridged(DateTimeOffset from, DateTimeOffset to) => rows.Zip(rows.Skip(1))
        .Where(pair => pair.Second.At > from && pair.First.At < to && pair.Second.At - pair.First.At is var gap && gap > Usual && gap <= Longest)
        .Select(pair => new WeatherPart(pair.First.At, pair.Second.At));

    /// <summary>Entries in order, each moment once.</summary>
    public IEnumerable<(DateTimeOffset At, WeatherHour Hour)> Rows() => rows;

    /// <summary>The weather at a moment: on the straight line between the entries beside it; a value that one of them does not state is not known between them.</summary>
    public WeatherHour At(DateTimeOffset moment)
    {
        var next = rows.FindIndex(row => row.At >= moment);
        if (next < 0 || rows[next].At == moment || next == 0)
        {
            return rows[next < 0 ? rows.Count - 1 : next].Hour;
        }

        var (a, b) = (rows[next - 1], rows[next]);
        var share = (moment - a.At) / (b.At - a.At);
        return new WeatherHour
        {
            At = new Moment(moment.DateTime, moment.Offset),
            Air = Between(a.Hour.Air, b.Hour.Air, share),
            Base = Between(a.Hour.Base, b.Hour.Base, share),
            Wind = Between(a.Hour.Wind, b.Hour.Wind, share),
            CloudEighths = b.Hour.CloudEighths is null ? null : a.Hour.CloudEighths,
            DewPoint = Between(a.Hour.DewPoint, b.Hour.DewPoint, share),
            RainChance = Between(a.Hour.RainChance, b.Hour.RainChance, share),
            Sun = Between(a.Hour.Sun, b.Hour.Sun, share),
        };
    }

    private static List<(DateTimeOffset At, WeatherHour Hour)> Rows(QuantityContext context)
    {
        var clock = PlanView.Of(context).Clock;
        return [.. context.Plan.Weather!.Hours.Select(hour => (At: clock.At(hour.At), Hour: hour)).OrderBy(row => row.At).DistinctBy(row => row.At)];
    }

    private static Measure<T>? Between<T>(Measure<T>? a, Measure<T>? b, double share)
        where T : IDimension => a is null || b is null ? null : a with { Number = a.Unit.FromSi(a.Si + (share * (b.Si - a.Si))) };

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private static DateTimeOffset Earlier(DateTimeOffset a, DateTimeOffset b) => a < b ? a : b;
}

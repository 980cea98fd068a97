using System.Globalization;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>What must come after something else.</summary>
internal static class Times
{
    public static void Check(Plan plan, PlanPart at)
    {
        var closure = plan.Site?.Closure;
        var (start, end) = ShiftTimes(plan.Shift);
        var zone = plan.Shift?.Zone;
        var zoneAtEnd = plan.Shift?.ZoneAtEnd ?? zone;
        var (from, to) = (Utc(closure?.From, zone), Utc(closure?.To, zoneAtEnd));
        if (plan.Shift is { Start: { } first, End: { } last } && first == last)
        {
            at.Inside("shift").Fail("end", "`end` is the same time as `start`.", "Correct one of the two.");
        }

        NotBefore(at.Inside("site").Inside("closure"), "to", to, from, "the closure ends before it starts");
        NotBefore(at.Inside("shift"), "start", start, from, "laying starts before the closure does");
        NotBefore(at.Inside("shift"), "end", to, end, "laying ends after the closure does");
        NotBefore(at.Inside("opening"), "at", Utc(plan.Opening?.At, zoneAtEnd), end, "the opening comes before laying ends");
        Hours(plan, at.Inside("weather"), zone);
    }

    private static void Hours(Plan plan, PlanPart at, TimeSpan? zone)
    {
        DateTime? before = null;
        foreach (var (hour, where) in at.Each("hours", plan.Weather?.Hours))
        {
            var now = Utc(hour.At, zone);
            if (now <= before)
            {
                where.Fail("at", "Each of the `hours` must start after the one above it.", "Sort them, and keep one entry for each.");
            }

            before = now;
        }
    }

    private static void NotBefore(PlanPart at, string key, DateTime? later, DateTime? earlier, string what)
    {
        if (later is { } second && earlier is { } first && second < first)
        {
            at.Fail(key, $"By the stated times {what} (by {Length(first - second)}).", "Check dates, times and offsets from UTC.");
        }
    }

    private static string Length(TimeSpan time) => time.TotalHours switch
    {
        < 2 => string.Create(CultureInfo.InvariantCulture, $"{time.TotalMinutes:0} min"),
        < 48 => string.Create(CultureInfo.InvariantCulture, $"{time.TotalHours:0.#} h"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{time.TotalDays:0} days"),
    };

    // Without an offset all times count as local ones of the same place.
    private static DateTime? Utc(Moment? moment, TimeSpan? zone) => moment?.Local - (moment?.Offset ?? zone ?? TimeSpan.Zero);

    private static (DateTime? Start, DateTime? End) ShiftTimes(Shift? shift)
    {
        if (shift?.Date is not { } date)
        {
            return (null, null);
        }

        var start = shift.Start is { } first ? new Moment(date.ToDateTime(first), null) : null;
        if (shift.Start is not { } begin || shift.End is not { } last)
        {
            return (Utc(start, shift.Zone), null);
        }

        var day = last < begin ? date.AddDays(1) : date;
        return (Utc(start, shift.Zone), Utc(new Moment(day.ToDateTime(last), null), shift.ZoneAtEnd ?? shift.Zone));
    }
}

using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>Levers of time: start of the shift, opening. Both stay inside the closure; a plan without one has neither.</summary>
internal static class TimeLevers
{
    private const double QuarterHour = 15;

    public static IEnumerable<Lever> Of(Plan plan)
    {
        if (plan.Shift is not { Date: { } date, Start: { } start, End: { } end } || plan.Site?.Closure is not { From: { } from, To: { } to })
        {
            yield break;
        }

        var midnight = date.ToDateTime(TimeOnly.MinValue);
        var begins = start.ToTimeSpan().TotalMinutes;
        var length = (end - start).TotalMinutes; // TimeOnly wraps at midnight.
        var opens = Minutes(from.Local, midnight);
        var closes = Minutes(to.Local, midnight);
        if (closes - length >= opens && length > 0)
        {
            yield return Clock(LeverKind.ShiftStart, "shift", "start", begins, opens, closes - length) with
            {
                Change = at => plan with { Shift = Moved(plan.Shift, midnight.AddMinutes(at), length) },
            };
        }

        if (plan.Opening?.At is { } opening)
        {
            yield return Clock(LeverKind.Opening, "opening", "at", Minutes(opening.Local, midnight), begins + length, closes) with
            {
                Change = at => plan with { Opening = plan.Opening with { At = opening with { Local = midnight.AddMinutes(at) } } },
            };
        }
        else if (plan.Opening?.After is { } after && closes > begins + length && PlanLevers.Measure(
            LeverKind.Opening, "opening", "after", after, (null, (closes - begins - length) * 60),
            later => plan with { Opening = plan.Opening with { After = later } }) is { } lever)
        {
            yield return lever with { Step = Math.Max(lever.Step, after.Unit.FromSi(QuarterHour * 60)) };
        }
    }

    private static Lever Clock(LeverKind kind, string address, string key, double current, double lowest, double highest) => new()
    {
        Kind = kind,
        Address = address,
        Key = key,
        IsClock = true,
        Current = current,
        Lowest = lowest,
        Highest = highest,
        Step = QuarterHour,
        Change = _ => throw new InvalidOperationException("The lever has no change yet."),
    };

    private static Shift Moved(Shift shift, DateTime start, double length) => shift with
    {
        Date = DateOnly.FromDateTime(start),
        Start = TimeOnly.FromDateTime(start),
        End = TimeOnly.FromDateTime(start.AddMinutes(length)),
    };

    private static double Minutes(DateTime moment, DateTime midnight) => (moment - midnight).TotalMinutes;
}

using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>
/// Turns local times into moments. A plan that states no offset from UTC anywhere has its local times compared with each
/// other only; they are then placed at offset zero.
/// </summary>
internal sealed class PlanClock
{
    private readonly TimeSpan zone;
    private readonly TimeSpan zoneAtEnd;
    private readonly DateTime? localEnd;

    public PlanClock(Plan plan)
    {
        var shift = plan.Shift;
        var stated = shift?.Zone ?? FirstOffset(plan);
        HasZone = stated is not null;
        zone = Usable(stated ?? TimeSpan.Zero);
        zoneAtEnd = Usable(shift?.ZoneAtEnd ?? zone);
        if (shift is { Date: { } date, Start: { } start })
        {
            Start = Place(date.ToDateTime(start), zone);
            if (shift.End is { } end)
            {
                localEnd = (end <= start && date < DateOnly.MaxValue ? date.AddDays(1) : date).ToDateTime(end);
                End = Place(localEnd.Value, zoneAtEnd);
            }
        }
    }

    /// <summary>Whether the plan states an offset from UTC.</summary>
    public bool HasZone { get; }

    /// <summary>Start of laying.</summary>
    public DateTimeOffset? Start { get; }

    /// <summary>End of laying.</summary>
    public DateTimeOffset? End { get; }

    /// <summary>The moment of a local time: its own offset, else that of the shift, after the end that of the shift's end.</summary>
    public DateTimeOffset At(Moment moment)
    {
        var offset = (HasZone ? moment.Offset : null) ?? (localEnd is { } end && moment.Local >= end ? zoneAtEnd : zone);
        return Place(moment.Local, Usable(offset));
    }

    private static TimeSpan? FirstOffset(Plan plan) =>
        (plan.Weather?.Hours is [var hour, ..] ? hour.At.Offset : null) ?? plan.Site?.Closure?.From?.Offset
        ?? plan.Site?.Closure?.To?.Offset ?? plan.Opening?.At?.Offset;

    /// <summary>Years at the very ends of the calendar would leave it with an offset.</summary>
    private static DateTimeOffset Place(DateTime local, TimeSpan offset) =>
        new(DateTime.SpecifyKind(local, DateTimeKind.Unspecified), local.Year is > 1 and < 9999 ? offset : TimeSpan.Zero);

    private static TimeSpan Usable(TimeSpan offset) =>
        offset.Ticks % TimeSpan.TicksPerMinute == 0 && offset.Duration() <= TimeSpan.FromHours(14) ? offset : TimeSpan.Zero;
}

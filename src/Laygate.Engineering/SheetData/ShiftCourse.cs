namespace Laygate.Engineering.SheetData;

/// <summary>A planned stop of the paver.</summary>
/// <param name="After">Seconds after the start of laying.</param>
/// <param name="Length">Length, s.</param>
public sealed record StopAfter(double After, double Length);

/// <summary>The way of a paver over the shift: constant speed while it moves, planned stops, nothing by chance.</summary>
/// <param name="Start">Start of laying.</param>
/// <param name="Speed">Average speed between stops, m/s: speed while it moves times the share of the time in which it moves.</param>
/// <param name="Stops">Planned stops in their order.</param>
public sealed record ShiftCourse(DateTimeOffset Start, double Speed, IReadOnlyList<StopAfter> Stops)
{
    /// <summary>When a distance from the start is laid; null where the speed is no positive number.</summary>
    /// <param name="distance">Distance, m.</param>
    public DateTimeOffset? At(double distance)
    {
        if (!(Speed > 0) || !double.IsFinite(distance / Speed) || distance / Speed > TimeSpan.FromDays(30).TotalSeconds)
        {
            return null;
        }

        var seconds = distance / Speed;
        foreach (var stop in Stops.OrderBy(stop => stop.After))
        {
            seconds += stop.After < seconds ? stop.Length : 0;
        }

        return Start.AddSeconds(seconds);
    }
}

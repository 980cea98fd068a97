using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Timeline;

/// <summary>The time over which one hot body is laid.</summary>
/// <param name="First">Moment at which its first metre is laid.</param>
/// <param name="Last">Moment at which its last metre is laid.</param>
internal sealed record LayingSpan(DateTimeOffset First, DateTimeOffset Last)
{
    /// <summary>
    /// The span of a hot body: from the moment at which its first run can be begun at the earliest, by order, speed and the shortest
    /// moves, to the end of the shift, as what is late can only be laid later. Where the runs do not tell it, or only begin after
    /// the shift, the whole shift. Null where the plan states no start or end.
    /// </summary>
    /// <param name="context">The plan.</param>
    /// <param name="pass">The courses laid together; null for whatever is laid first and last in the shift.</param>
    public static LayingSpan? Of(QuantityContext context, PavingPass? pass)
    {
        var clock = PlanView.Of(context).Clock;
        return clock is { Start: { } start, End: { } end } && end > start ? new LayingSpan(Begun(context, pass, start, end), end) : null;
    }

    private static DateTimeOffset Begun(QuantityContext context, PavingPass? pass, DateTimeOffset start, DateTimeOffset end)
    {
        var strips = ShiftTimeline.Of(context)?.Strips ?? [];
        var own = strips.Where(strip => pass is null || strip.Courses.Contains(pass.Courses[0])).ToList();
        if (own.Count == 0 || own.Min(strip => strip.Begins) <= 0)
        {
            return start;
        }

        var (travel, reset) = (context.Assumptions[AssumptionIds.PaverTravel], context.Assumptions[AssumptionIds.PaverReset]);
        var soon = context.Under(context.Assumptions.With([travel with { Number = travel.High }, reset with { Number = reset.Low }]));
        var begins = ShiftTimeline.Of(soon)!.Strips.Where(strip => pass is null || strip.Courses.Any(course => PlanView.Same(course.Id, pass.Courses[0].Id))).Min(strip => strip.Begins);
        return begins < (end - start).TotalSeconds ? start.AddSeconds(begins) : start;
    }
}

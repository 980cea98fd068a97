using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;

namespace Laygate.Engineering.Timeline;

/// <summary>The time over which one hot body is laid.</summary>
/// <param name="First">Moment at which its first metre is laid.</param>
/// <param name="Last">Moment at which its last metre is laid.</param>
internal sealed record LayingSpan(DateTimeOffset First, DateTimeOffset Last)
{
    /// <summary>The span of a hot body: the planned shift from start to end. Null where the plan does not state one of them.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="pass">The courses laid together; null for whatever is laid first and last in the shift.</param>
    public static LayingSpan? Of(QuantityContext context, PavingPass? pass)
    {
        _ = pass; // Every body is laid over the whole shift, as long as nothing tells its runs apart.
        var clock = PlanView.Of(context).Clock;
        return clock is { Start: { } start, End: { } end } && end > start ? new LayingSpan(start, end) : null;
    }
}

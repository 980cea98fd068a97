using Laygate.Engineering.PlanViews;

namespace Laygate.Engineering.Quantities;

/// <summary>The end of laying that counts for what comes after it.</summary>
internal static class LayingEnd
{
    /// <summary>The end of the shift, as laying may go on until then; the last metre where the plan lays it later still. Null where no end is stated.</summary>
    public static DateTimeOffset? Of(QuantityContext context) =>
        PlanView.Of(context).Clock.End is not { } end ? null
        : context.Get("shift.last_metre", context.Elements.Find("shift")!).Value is MomentValue moment && moment.At > end ? moment.At : end;
}

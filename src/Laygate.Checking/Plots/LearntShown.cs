using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Checking.Plots;

/// <summary>What recorded shifts taught, as it is shown.</summary>
internal static class LearntShown
{
    /// <summary>One entry with its 5 % and 95 % points.</summary>
    public static PlotLearnt Of(LearntValues entry) => new(
        entry.Id,
        entry.Conductivity is { } share ? new ShownValue(100 * share.Value.Si, "%", 100 * share.Low.Si, 100 * share.High.Si) : null,
        entry.Laying is { } laying ? new ShownValue(laying.Value.Si, "K", laying.Low.Si, laying.High.Si) : null);
}

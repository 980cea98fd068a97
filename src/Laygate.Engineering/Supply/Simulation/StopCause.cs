using System.Runtime.InteropServices;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What a paver that stands for want of mix waits for.</summary>
public enum StopCause
{
    /// <summary>The load could have left earlier, and was held back until timetable or call let it go.</summary>
    Dispatch,

    /// <summary>The truck stood in a queue for the loading place.</summary>
    Loading,

    /// <summary>No truck was back at the plant: too few, or too long a round.</summary>
    Trucks,

    /// <summary>The mix of the load was not made yet.</summary>
    Plant,

    /// <summary>Trucks with the mix are on site; feeder or tipping place cannot pass on as much as the paver takes.</summary>
    Feeder,

    /// <summary>Trucks with the mix are on site; the buffer does not last until the next of them is fed.</summary>
    Buffer,
}

/// <summary>Share of the time stopped for want of mix that went to one cause.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Share">Share of the time, 0 to 1.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct StopShare(StopCause Cause, double Share)
{
    /// <summary>The shares of times, largest first; empty where all are zero.</summary>
    /// <param name="times">Time of each cause, s, in the order of the causes.</param>
    internal static IReadOnlyList<StopShare> Of(IReadOnlyList<double> times)
    {
        var sum = times.Sum();
        return !(sum > 0) ? [] :
        [
            .. times.Select((time, cause) => new StopShare((StopCause)cause, time / sum))
                .Where(share => share.Share > 0).OrderByDescending(share => share.Share).ThenBy(share => share.Cause),
        ];
    }
}

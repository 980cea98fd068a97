using System.Runtime.InteropServices;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What happened in one simulated shift.</summary>
[StructLayout(LayoutKind.Auto)]
public record struct ShiftOutcome
{
    /// <summary>Stops of the paver for want of mix.</summary>
    public int Stops { get; set; }

    /// <summary>Time stopped for want of mix, s.</summary>
    public double Stopped { get; set; }

    /// <summary>Longest of these stops, s.</summary>
    public double LongestStop { get; set; }

    /// <summary>Moment of the first stop for want of mix that began after the plant stopped, or else of the end; s.</summary>
    public double FirstStopAfterPlant { get; set; }

    /// <summary>Length laid, m.</summary>
    public double Metres { get; set; }

    /// <summary>When the first metre was laid, s; the end where none was.</summary>
    public double Started { get; set; }

    /// <summary>Delay of the first metre, s.</summary>
    public double Late { get; set; }

    /// <summary>When laying ended, s.</summary>
    public double Ended { get; set; }

    /// <summary>Whether all was laid.</summary>
    public bool Finished { get; set; }

    /// <summary>Share of the time of laying in which the feeder was busy; holding a truck in front of a full buffer does not count.</summary>
    public double FeederUse { get; set; }

    /// <summary>Most mix on the road, waiting and in buffers at the moments looked at, kg.</summary>
    public double CommittedHighest { get; set; }

    /// <summary>Most trucks in the queue on site.</summary>
    public int QueueHighest { get; set; }

    /// <summary>Loads that left the feeder with a rest, to make way for another mix.</summary>
    public int BrokenOff { get; set; }

    /// <summary>Events of the shift.</summary>
    public long Events { get; set; }
}

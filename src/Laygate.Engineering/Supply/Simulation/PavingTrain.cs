using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Mix of one course on one machine.</summary>
/// <param name="Train">Number of the train in the timeline.</param>
/// <param name="Course">The course.</param>
/// <param name="Paver">The machine that lays it.</param>
internal sealed record TrainLane(int Train, Course Course, Paver Paver);

/// <summary>What is simulated as one: a paving train, or two in echelon.</summary>
/// <param name="Strips">Strips in order; in echelon those of the leading train.</param>
/// <param name="Beside">In echelon the strips of the following train, each beside the one at its place; else none.</param>
/// <param name="Lanes">Mixes on the machines, in the order of the buffers.</param>
/// <param name="Stops">Planned stops.</param>
internal sealed record PavingTrain(
    IReadOnlyList<LaidStrip> Strips, IReadOnlyList<LaidStrip> Beside, IReadOnlyList<TrainLane> Lanes, IReadOnlyList<TrainStop> Stops)
{
    /// <summary>Whether two trains lay side by side.</summary>
    public bool IsEchelon => Beside.Count > 0;

    /// <summary>When the first metre is laid, s after the start of laying.</summary>
    public double Begins => Strips[0].Begins;

    /// <summary>When the last metre is laid if nothing is late, s after the start of laying.</summary>
    public double Ends => Strips.Concat(Beside).Max(strip => strip.Ends);

    /// <summary>Average speed between stops, m/s.</summary>
    public double Speed => Strips.Min(strip => strip.Speed);
}

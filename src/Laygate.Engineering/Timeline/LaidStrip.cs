using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Timeline;

/// <summary>A stretch of a strip that is laid without a stop; times in s after the start of the shift's laying, lengths in m from the first station.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Begins">When it begins.</param>
/// <param name="Ends">When it ends.</param>
internal sealed record StripLeg(double From, double To, double Begins, double Ends);

/// <summary>A planned stop of a train.</summary>
/// <param name="At">When, s after the start of laying; a stop that falls into a move is made when the train lays again.</param>
/// <param name="Length">Length, s.</param>
internal sealed record TrainStop(double At, double Length);

/// <summary>One pass of one paving train over one run.</summary>
/// <param name="Run">The run.</param>
/// <param name="Pass">The courses that are laid together.</param>
/// <param name="Courses">Those of them that the run has, from bottom to top.</param>
/// <param name="Pavers">Pavers of the train.</param>
/// <param name="Length">Length, m.</param>
internal sealed record LaidStrip(Run Run, PavingPass Pass, IReadOnlyList<Course> Courses, IReadOnlyList<Paver> Pavers, double Length)
{
    /// <summary>Number of the train, from 0 in the order in which the trains are named.</summary>
    public int Train { get; init; }

    /// <summary>Average speed between planned stops, m/s: speed while it moves · availability.</summary>
    public double Speed { get; init; }

    /// <summary>Time between the last metre of the strip before it and its own first, s; 0 where it follows without a move.</summary>
    public double Move { get; init; }

    /// <summary>Stretches in order; at least one.</summary>
    public IReadOnlyList<StripLeg> Legs { get; init; } = [];

    /// <summary>Whether the plan says when it begins; no where a further train is only supposed to begin with the shift.</summary>
    public bool IsPlaced { get; init; } = true;

    /// <summary>First station, m.</summary>
    public double First => Run.From!.Si;

    /// <summary>Last station, m.</summary>
    public double Last => Run.To!.Si;

    /// <summary>When its first metre is laid, s after the start of laying.</summary>
    public double Begins => Legs[0].Begins;

    /// <summary>When its last metre is laid, s after the start of laying.</summary>
    public double Ends => Legs[^1].Ends;

    /// <summary>When a place is laid, s after the start of laying; a place outside counts as the nearer end.</summary>
    /// <param name="along">Distance from the first station, m.</param>
    public double At(double along)
    {
        foreach (var leg in Legs)
        {
            if (along <= leg.To)
            {
                var share = leg.To > leg.From ? Math.Clamp((along - leg.From) / (leg.To - leg.From), 0, 1) : 0;
                return leg.Begins + (share * (leg.Ends - leg.Begins));
            }
        }

        return Ends;
    }

    /// <summary>When a station is laid, s after the start of laying.</summary>
    /// <param name="station">Station, m.</param>
    public double AtStation(double station) => At(Math.Abs(station - First));

    /// <summary>Stretch of stations that two strips share; null where they only touch or lie apart.</summary>
    public (double Low, double High)? Shared(LaidStrip other)
    {
        var (low, high) = (Math.Max(Low, other.Low), Math.Min(High, other.High));
        return high - low > Touching ? (low, high) : null;
    }

    /// <summary>Stations, m, at which a strip begins, ends or stops.</summary>
    public IEnumerable<double> Stations => Legs.SelectMany(leg => new[] { leg.From, leg.To }).Distinct().Select(along => First + (Math.Sign(Last - First) * along));

    /// <summary>Stations nearer than this are one, m.</summary>
    internal const double Touching = 1e-6;

    private double Low => Math.Min(First, Last);

    private double High => Math.Max(First, Last);
}

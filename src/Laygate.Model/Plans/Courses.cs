using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <summary>An asphalt mixture.</summary>
public sealed record Mix
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Designation, for example <c>AC 16 binder</c>.</summary>
    public string? Name { get; init; }

    /// <summary>Kind of mixture.</summary>
    public MixKind? Kind { get; init; }

    /// <summary>Grading of a dense mix.</summary>
    public Gradation? Gradation { get; init; }

    /// <summary>Largest aggregate, on the stated basis.</summary>
    public AggregateSize? AggregateSize { get; init; }

    /// <summary>Binder.</summary>
    public Binder? Binder { get; init; }

    /// <summary>Density.</summary>
    public MixDensity? Density { get; init; }

    /// <summary>Temperature at loading; place: in the load.</summary>
    public TemperatureBand? Loading { get; init; }

    /// <summary>Temperature on delivery; place: in the load.</summary>
    public TemperatureBand? Delivery { get; init; }

    /// <summary>Loads below this temperature are refused.</summary>
    public PlacedTemperature? RefuseBelow { get; init; }

    /// <summary>Above it the course shoves under the roller.</summary>
    public PlacedTemperature? Start { get; init; }

    /// <summary>Below it rolling no longer densifies.</summary>
    public PlacedTemperature? Cessation { get; init; }

    /// <summary>Where the stated cessation temperature comes from.</summary>
    public CessationOrigin? CessationFrom { get; init; }

    /// <summary>Range in which the mix is tender under vibrating steel.</summary>
    public TemperatureBand? Tender { get; init; }

    /// <summary>Below it grit is no longer embedded.</summary>
    public PlacedTemperature? GritEmbedment { get; init; }

    /// <summary>Longest time from loading to the mat.</summary>
    public Measure<Duration>? AgeLimit { get; init; }

    /// <summary>Additive or foaming that lowers the laying temperature.</summary>
    public string? TemperatureReduction { get; init; }

    /// <summary>Share of reclaimed asphalt.</summary>
    public Measure<Ratio>? Reclaimed { get; init; }
}

/// <summary>Largest aggregate of a mix. A sieve designation is a name with a tabled size, never a unit conversion.</summary>
/// <param name="Sieve">Designation of the sieve as stated, for example <c>16 mm</c> or <c>1/2 in</c>.</param>
/// <param name="Basis">Basis on which it is stated.</param>
public sealed record AggregateSize(Sieve Sieve, SizeBasis? Basis);

/// <summary>Binder of a mix.</summary>
/// <param name="Grade">Grade as the specification names it, for example <c>50/70</c> or <c>PG 64-22</c>.</param>
/// <param name="Modified">Modified with polymer or rubber.</param>
public sealed record Binder(string? Grade, bool? Modified);

/// <summary>Density of a mix in the finished course.</summary>
/// <param name="Compacted">Density of the finished course.</param>
/// <param name="Reference">The density to which the degree of compaction refers.</param>
/// <param name="Degree">Degree of compaction of the finished course.</param>
public sealed record MixDensity(Measure<Density>? Compacted, DensityReference? Reference, Measure<Ratio>? Degree);

/// <summary>A temperature and where it is measured.</summary>
/// <param name="Value">Temperature.</param>
/// <param name="Place">Where it is measured; null when the plan does not say.</param>
public sealed record PlacedTemperature(Measure<Temperature>? Value, Place? Place);

/// <summary>A band of temperatures at one place.</summary>
/// <param name="Lowest">Lowest.</param>
/// <param name="Expected">Expected or target.</param>
/// <param name="Highest">Highest.</param>
/// <param name="Place">Where it is measured; null when the plan does not say.</param>
public sealed record TemperatureBand(
    Measure<Temperature>? Lowest, Measure<Temperature>? Expected, Measure<Temperature>? Highest, Place? Place);

/// <summary>One layer of one mix.</summary>
public sealed record Course
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Part in the pavement.</summary>
    public CourseKind? Kind { get; init; }

    /// <summary>Id of its mix.</summary>
    public required string Mix { get; init; }

    /// <summary>Nominal compacted thickness.</summary>
    public required Measure<Length> Thickness { get; init; }

    /// <summary>Smallest compacted thickness at any point.</summary>
    public Measure<Length>? ThicknessLowest { get; init; }

    /// <summary>Largest compacted thickness at any point.</summary>
    public Measure<Length>? ThicknessHighest { get; init; }

    /// <summary>Permitted deviation from the nominal thickness.</summary>
    public Measure<Length>? Tolerance { get; init; }

    /// <summary>How it is laid on what lies below.</summary>
    public Laying? Laid { get; init; }

    /// <summary>Id of the warm or hot course on which it is laid.</summary>
    public string? On { get; init; }

    /// <summary>Distance between the screed that lays the lower course and the one that lays this.</summary>
    public Measure<Length>? Distance { get; init; }

    /// <summary>Time between the two screeds at one point.</summary>
    public Measure<Duration>? Delay { get; init; }

    /// <summary>Temperature behind the screed.</summary>
    public TemperatureBand? LayingTemperature { get; init; }

    /// <summary>Lowest temperature of the lower course when this one is laid on it.</summary>
    public PlacedTemperature? LowerTemperatureLowest { get; init; }

    /// <summary>Density behind the screed as a share of the reference density.</summary>
    public DensityBehindScreed? DensityBehindScreed { get; init; }

    /// <summary>Tonnage ordered for the course.</summary>
    public Measure<Mass>? Tonnage { get; init; }
}

/// <summary>Expected density behind the screed.</summary>
/// <param name="Value">Share of the reference density.</param>
/// <param name="Evidence">Where the statement comes from.</param>
/// <param name="Date">Date of the trial or statement.</param>
public sealed record DensityBehindScreed(Measure<Ratio>? Value, DensityEvidence? Evidence, DateOnly? Date);

/// <summary>One strip laid end to end.</summary>
public sealed record Run
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Ids of the courses laid in it; empty means all courses.</summary>
    public IReadOnlyList<string> Courses { get; init; } = [];

    /// <summary>Id of the paver.</summary>
    public string? Paver { get; init; }

    /// <summary>Place in the order of laying, from 1; without it the place in the list.</summary>
    public int? Order { get; init; }

    /// <summary>Time between the last metre of the run that the paver lays before and the first metre of this one.</summary>
    public Measure<Duration>? Move { get; init; }

    /// <summary>Time after the start of laying at which this run is begun.</summary>
    public Measure<Duration>? StartsAfter { get; init; }

    /// <summary>First station.</summary>
    public Measure<Length>? From { get; init; }

    /// <summary>Last station.</summary>
    public Measure<Length>? To { get; init; }

    /// <summary>Width along the run; one entry without a station holds everywhere.</summary>
    public IReadOnlyList<AtStation<Length>> Width { get; init; } = [];

    /// <summary>Crossfall along the run.</summary>
    public IReadOnlyList<AtStation<Ratio>> Crossfall { get; init; } = [];

    /// <summary>The low side.</summary>
    public Side? LowSide { get; init; }

    /// <summary>Gradient in the direction of laying, uphill positive.</summary>
    public Measure<Ratio>? Gradient { get; init; }

    /// <summary>Left edge.</summary>
    public EdgeKind? LeftEdge { get; init; }

    /// <summary>Right edge.</summary>
    public EdgeKind? RightEdge { get; init; }

    /// <summary>How far the drum reaches past the left edge; negative where it stays off.</summary>
    public Measure<Length>? LeftReach { get; init; }

    /// <summary>How far the drum reaches past the right edge; negative where it stays off.</summary>
    public Measure<Length>? RightReach { get; init; }

    /// <summary>Slope of a free edge, height over width: 100 % is 1:1.</summary>
    public Measure<Ratio>? EdgeSlope { get; init; }

    /// <summary>Height of the finished surface above the gutter after the last pass; negative below it.</summary>
    public Measure<Length>? AboveGutter { get; init; }

    /// <summary>Fixed points to which the finished surface must fit.</summary>
    public IReadOnlyList<FixedLevel> Levels { get; init; } = [];

    /// <summary>Thickness that differs along the run.</summary>
    public IReadOnlyList<ThicknessAt> Thickness { get; init; } = [];

    /// <summary>Ironwork, gullies, rails and the like inside the width.</summary>
    public IReadOnlyList<Obstacle> Obstacles { get; init; } = [];

    /// <summary>Areas laid by hand.</summary>
    public IReadOnlyList<HandLaid> HandLaid { get; init; } = [];

    /// <summary>Ends tied into existing levels.</summary>
    public IReadOnlyList<TieIn> TieIns { get; init; } = [];
}

/// <summary>A value at a station.</summary>
/// <param name="At">Station; null when the value holds along the whole run.</param>
/// <param name="Value">Value.</param>
/// <typeparam name="T">Dimension of the value.</typeparam>
public sealed record AtStation<T>(Measure<Length>? At, Measure<T> Value)
    where T : IDimension;

/// <summary>Thickness of a course from a station on.</summary>
/// <param name="Course">Id of the course.</param>
/// <param name="At">Station.</param>
/// <param name="Nominal">Nominal compacted thickness.</param>
/// <param name="Lowest">Smallest at any point.</param>
/// <param name="Highest">Largest at any point.</param>
public sealed record ThicknessAt(
    string Course, Measure<Length> At, Measure<Length>? Nominal, Measure<Length>? Lowest, Measure<Length>? Highest);

/// <summary>Something inside the width that the screed meets.</summary>
/// <param name="Id">Id.</param>
/// <param name="At">Station.</param>
/// <param name="What">What it is.</param>
/// <param name="Treatment">How it is treated.</param>
/// <param name="Who">Who does it.</param>
/// <param name="When">When it is done.</param>
public sealed record Obstacle(string Id, Measure<Length>? At, string? What, string? Treatment, string? Who, string? When)
{
    /// <summary>Its kind, on which conditions of the site depend; null where the plan only describes it.</summary>
    public ObstacleKind? Kind { get; init; }
}

/// <summary>A fixed point to which the finished surface must fit, such as a kerb, a gutter, a cover or a threshold.</summary>
/// <param name="Id">Id.</param>
/// <param name="At">Station.</param>
/// <param name="What">What it is.</param>
/// <param name="Above">Height of the finished surface above it after the last pass; negative below it.</param>
/// <param name="RollDown">What the mat goes down under the rollers there; the screed is set higher by as much.</param>
public sealed record FixedLevel(string Id, Measure<Length>? At, string? What, Measure<Length>? Above, Measure<Length>? RollDown);

/// <summary>An area laid by hand.</summary>
/// <param name="Id">Id.</param>
/// <param name="At">Station.</param>
/// <param name="Area">Area.</param>
/// <param name="Thickness">Compacted thickness.</param>
/// <param name="Mix">Id of the mix.</param>
/// <param name="Compactor">What compacts it.</param>
public sealed record HandLaid(
    string Id, Measure<Length>? At, Measure<Area>? Area, Measure<Length>? Thickness, string? Mix, string? Compactor);

/// <summary>An end tied into existing levels.</summary>
/// <param name="Id">Id.</param>
/// <param name="At">Station.</param>
/// <param name="Length">Length of the transition.</param>
/// <param name="Treatment">How it is made.</param>
public sealed record TieIn(string Id, Measure<Length>? At, Measure<Length>? Length, string? Treatment);

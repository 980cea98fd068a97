using Laygate.Model.Plans;

namespace Laygate.Rules.Results;

/// <summary>What a crew needs from one plan and its check, to be worded and laid out as cards by Reporting.</summary>
public sealed record SiteSheet
{
    /// <summary>Id of the plan.</summary>
    public required string PlanId { get; init; }

    /// <summary>Title of the plan.</summary>
    public string? PlanTitle { get; init; }

    /// <summary>Revision.</summary>
    public string? Revision { get; init; }

    /// <summary>ISO 639 code of the language of the plan's free texts; null where it does not say.</summary>
    public string? Language { get; init; }

    /// <summary>SHA-256 of the plan's bytes, lower-case hex.</summary>
    public required string PlanHash { get; init; }

    /// <summary>Hash of the rule book.</summary>
    public required string BookHash { get; init; }

    /// <summary>Version of the program.</summary>
    public required string ProgramVersion { get; init; }

    /// <summary>Day on which the sheet was made.</summary>
    public required DateOnly Issued { get; init; }

    /// <summary>Whether it is only a draft: the plan fails, or is not yet for release.</summary>
    public required bool IsDraft { get; init; }

    /// <summary>Findings that fail.</summary>
    public required IReadOnlyList<Finding> Failing { get; init; }

    /// <summary>Findings that warn: what the crew must know besides.</summary>
    public required IReadOnlyList<Finding> Warnings { get; init; }

    /// <summary>Start of the shift; null where it is not stated.</summary>
    public DateTimeOffset? ShiftStart { get; init; }

    /// <summary>End of the shift.</summary>
    public DateTimeOffset? ShiftEnd { get; init; }

    /// <summary>Moments in their order.</summary>
    public required IReadOnlyList<SheetMoment> Moments { get; init; }

    /// <summary>Courses from bottom to top.</summary>
    public required IReadOnlyList<SheetCourse> Courses { get; init; }

    /// <summary>Loads in the order in which they are fed.</summary>
    public required IReadOnlyList<SheetLoad> Loads { get; init; }

    /// <summary>Widths by station.</summary>
    public required IReadOnlyList<SheetWidth> Widths { get; init; }

    /// <summary>Speeds of pavers.</summary>
    public required IReadOnlyList<SheetSpeed> Speeds { get; init; }

    /// <summary>Buffers.</summary>
    public required IReadOnlyList<SheetBuffer> Buffers { get; init; }

    /// <summary>The feeder; null where there is none.</summary>
    public SheetFeeder? Feeder { get; init; }

    /// <summary>Rollers.</summary>
    public required IReadOnlyList<SheetRoller> Rollers { get; init; }

    /// <summary>Plants.</summary>
    public required IReadOnlyList<SheetPlant> Plants { get; init; }

    /// <summary>Most tonnes by mix that are on the way at one time, and in full buffers.</summary>
    public required IReadOnlyList<SheetCommitted> Committed { get; init; }

    /// <summary>Time in which grit holds.</summary>
    public required SheetFigure GritWindow { get; init; }

    /// <summary>Limits that the crew watches, with what to do.</summary>
    public required IReadOnlyList<SheetLimit> Limits { get; init; }

    /// <summary>Groups of trucks.</summary>
    public IReadOnlyList<SheetTrucks> Trucks { get; init; } = [];

    /// <summary>Joints, as stated.</summary>
    public IReadOnlyList<SheetJoint> Joints { get; init; } = [];

    /// <summary>Bond coats, as stated.</summary>
    public IReadOnlyList<SheetBondCoat> BondCoats { get; init; } = [];

    /// <summary>Grit, as stated; null where none is spread.</summary>
    public SheetGrit? Grit { get; init; }

    /// <summary>Mixes.</summary>
    public required IReadOnlyList<SheetMix> Mixes { get; init; }

    /// <summary>Obstacles.</summary>
    public required IReadOnlyList<SheetObstacle> Obstacles { get; init; }

    /// <summary>Overhead lines.</summary>
    public required IReadOnlyList<SheetOverheadLine> OverheadLines { get; init; }

    /// <summary>Opening.</summary>
    public required SheetOpening Opening { get; init; }

    /// <summary>Whom to call, as stated.</summary>
    public required IReadOnlyList<Person> People { get; init; }

    /// <summary>Hold points, as stated.</summary>
    public required IReadOnlyList<HoldPoint> HoldPoints { get; init; }

    /// <summary>Actions for events, as stated.</summary>
    public required IReadOnlyList<Contingency> Contingencies { get; init; }

    /// <summary>Tests, as stated, with the figures of the plan that they are held against.</summary>
    public required IReadOnlyList<SheetTest> Tests { get; init; }

    /// <summary>Safety measures, as stated; none is judged adequate. One that the check found harmful is left out: see <see cref="Wrong"/>.</summary>
    public required IReadOnlyList<SheetMeasure> Measures { get; init; }

    /// <summary>Findings that something stated about safety is wrong; only drafts and warnings have any.</summary>
    public IReadOnlyList<Finding> Wrong { get; init; } = [];
}

/// <summary>What became of the request for a site sheet.</summary>
/// <param name="File">Name of the file as given.</param>
/// <param name="Sheets">Sheets; none when there are problems or a plan of the file fails.</param>
/// <param name="Refused">Reports of the plans for which a sheet is refused because they fail.</param>
/// <param name="Problems">Why the file could not be read.</param>
public sealed record SheetResult(
    string File, IReadOnlyList<SiteSheet> Sheets, IReadOnlyList<Report> Refused, IReadOnlyList<Problem> Problems)
{
    /// <summary>The reports that the sheets were made from or refused by, one for each plan.</summary>
    public IReadOnlyList<Report> Reports { get; init; } = [];
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Rules.Results;

/// <summary>Values along an axis.</summary>
/// <param name="Name">What it is, in words; for the mean of a course its id.</param>
/// <param name="Place">Where a temperature is; null for anything else.</param>
/// <param name="Values">Values at the points of the axis; null where there is none.</param>
public sealed record PlotLine(string Name, Place? Place, IReadOnlyList<double?> Values)
{
    /// <summary>Moment of laying that a temperature follows; null where it follows none, such as the weather of an envelope.</summary>
    public DateTimeOffset? Laid { get; init; }

    /// <summary>What recorded shifts taught of the course, where the line follows it: it then is more careful than what is assumed; null else.</summary>
    public PlotLearnt? Learnt { get; init; }
}

/// <summary>What a line follows of what recorded shifts taught.</summary>
/// <param name="Entry">Id of the entry that the plan names.</param>
/// <param name="Conductivity">Conductivity as a share of the assumed one, with its 5 % and 95 % points; null where none was learnt.</param>
/// <param name="Laying">Temperature behind the screed against the plan, with its 5 % and 95 % points; null where none was learnt.</param>
public sealed record PlotLearnt(string Entry, ShownValue? Conductivity, ShownValue? Laying);

/// <summary>A stretch of the axis with a name, such as a rolling phase or a planned stop.</summary>
/// <param name="Name">Name.</param>
/// <param name="From">Start.</param>
/// <param name="To">End.</param>
public sealed record PlotSpan(string Name, double From, double To);

/// <summary>Where a course reaches its cessation temperature.</summary>
/// <param name="Course">Course.</param>
/// <param name="Temperature">Cessation temperature.</param>
/// <param name="At">Minutes after the last screed; null where it is not reached in the time that is computed.</param>
/// <param name="Earliest">Low end.</param>
/// <param name="Latest">High end.</param>
public sealed record CessationMark(string Course, double Temperature, double? At, double? Earliest, double? Latest);

/// <summary>One pass over a point of the mat; minutes after the last screed, temperatures at the middle of its time.</summary>
/// <param name="Phase">Phase.</param>
/// <param name="Number">Number in the phase, from 1.</param>
/// <param name="Earliest">Earliest time.</param>
/// <param name="Latest">Time by which it has come everywhere.</param>
/// <param name="Skin">Skin.</param>
/// <param name="Core">Hottest point.</param>
/// <param name="Means">Mean of each course of the body, from bottom to top.</param>
public sealed record PassMark(
    string Phase, int Number, double Earliest, double Latest, ShownValue Skin, ShownValue Core, IReadOnlyList<ShownValue> Means);

/// <summary>Cooling and rolling of one hot body, each course as laid at the moment that is worst for it.</summary>
/// <param name="Courses">Courses from bottom to top.</param>
/// <param name="Unit">Unit of temperatures.</param>
/// <param name="Minutes">Minutes after the last screed.</param>
/// <param name="Lines">Skin, core, mean of each course.</param>
/// <param name="Phases">Phases of rolling.</param>
/// <param name="Cessations">Cessation of each course that has one.</param>
/// <param name="Passes">Passes in order of time; none where the plan does not tell them.</param>
public sealed record BodyPlot(
    IReadOnlyList<string> Courses,
    string Unit,
    IReadOnlyList<double> Minutes,
    IReadOnlyList<PlotLine> Lines,
    IReadOnlyList<PlotSpan> Phases,
    IReadOnlyList<CessationMark> Cessations,
    IReadOnlyList<PassMark> Passes);

/// <summary>The level of one buffer in the simulated shifts.</summary>
/// <param name="Course">Course that it feeds.</param>
/// <param name="Mix">Its mix.</param>
/// <param name="Capacity">Capacity.</param>
/// <param name="Lowest">Lowest workable level.</param>
/// <param name="Call">Level at which the next load is called.</param>
/// <param name="Low">Below it lie 5 % of the shifts.</param>
/// <param name="Middle">Median.</param>
/// <param name="High">Above it lie 5 % of the shifts.</param>
public sealed record BufferCurve(
    string Course, string Mix, double Capacity, double Lowest, double? Call, IReadOnlyList<double> Low, IReadOnlyList<double> Middle, IReadOnlyList<double> High);

/// <summary>Buffers over the shift.</summary>
/// <param name="Start">Planned start of laying; null without a time.</param>
/// <param name="Unit">Unit of mass.</param>
/// <param name="Minutes">Minutes after the planned start.</param>
/// <param name="Buffers">Buffers from the lower to the upper course.</param>
/// <param name="Stops">Stops that the plan itself has, by the planned speed.</param>
/// <param name="StopChance">Chance of at least one stop for want of mix.</param>
/// <param name="StopsExpected">Stops for want of mix in a shift.</param>
/// <param name="StopLength">Length of one; null where none was seen.</param>
/// <param name="Shifts">Simulated shifts.</param>
public sealed record BufferPlot(
    DateTimeOffset? Start,
    string Unit,
    IReadOnlyList<double> Minutes,
    IReadOnlyList<BufferCurve> Buffers,
    IReadOnlyList<PlotSpan> Stops,
    ShownValue StopChance,
    ShownValue StopsExpected,
    ShownValue? StopLength,
    int Shifts);

/// <summary>A load in the order in which it is needed.</summary>
/// <param name="Number">Number, from 1.</param>
/// <param name="Course">Course.</param>
/// <param name="Mix">Mix.</param>
/// <param name="Size">Size.</param>
/// <param name="NeededAt">Length laid when it must tip.</param>
/// <param name="EndsAt">Length laid when it is used up.</param>
/// <param name="TipsBy">Latest time to tip; null without times.</param>
public sealed record LoadMark(int Number, string Course, string Mix, double Size, double NeededAt, double EndsAt, DateTimeOffset? TipsBy);

/// <summary>Order of the loads of one pass.</summary>
/// <param name="MassUnit">Unit of sizes.</param>
/// <param name="LengthUnit">Unit of lengths laid.</param>
/// <param name="Loads">Loads in order.</param>
public sealed record LoadPlot(string MassUnit, string LengthUnit, IReadOnlyList<LoadMark> Loads);

/// <summary>A width from a station on.</summary>
/// <param name="Station">Station.</param>
/// <param name="Width">Width.</param>
public sealed record WidthMark(double Station, double Width);

/// <summary>Something at a station of a run.</summary>
/// <param name="Id">Id.</param>
/// <param name="What">What it is.</param>
/// <param name="Station">Station; null where the plan says it in words only.</param>
/// <param name="Words">Where it is, in the plan's words.</param>
public sealed record StationMark(string Id, string What, double? Station, string? Words);

/// <summary>One run seen from above.</summary>
/// <param name="Id">Id.</param>
/// <param name="Courses">Courses laid in it.</param>
/// <param name="From">First station.</param>
/// <param name="To">Last station.</param>
/// <param name="Widths">Widths along it.</param>
/// <param name="Joints">Joints at its sides or ends.</param>
/// <param name="Obstacles">Obstacles in its width.</param>
public sealed record RunOutline(
    string Id, IReadOnlyList<string> Courses, double From, double To, IReadOnlyList<WidthMark> Widths, IReadOnlyList<StationMark> Joints, IReadOnlyList<StationMark> Obstacles);

/// <summary>Runs and joints seen from above.</summary>
/// <param name="Unit">Unit of stations and widths.</param>
/// <param name="Runs">Runs in the order of the plan.</param>
public sealed record LayoutPlot(string Unit, IReadOnlyList<RunOutline> Runs);

/// <summary>Why a plot is not drawn.</summary>
/// <param name="Plot">Which one, in words.</param>
/// <param name="Missing">Inputs that would help.</param>
/// <param name="Note">What stands in the way, where it is not a missing input.</param>
public sealed record PlotAbsence(string Plot, IReadOnlyList<InputReference> Missing, Note? Note);

/// <summary>What the plots of a report are drawn from. Worked out only for a report that shows them.</summary>
public sealed record PlanPlots
{
    /// <summary>Hot bodies from bottom to top.</summary>
    public IReadOnlyList<BodyPlot> Bodies { get; init; } = [];

    /// <summary>Buffers; null where the shift cannot be simulated.</summary>
    public BufferPlot? Buffers { get; init; }

    /// <summary>Order of loads; null where it is not known.</summary>
    public LoadPlot? Loads { get; init; }

    /// <summary>Runs from above; null where no run has stations and a width.</summary>
    public LayoutPlot? Layout { get; init; }

    /// <summary>Plots that are not drawn, and why.</summary>
    public IReadOnlyList<PlotAbsence> Absent { get; init; } = [];
}

/// <summary>A value as the plan states it.</summary>
/// <param name="Key">Keys from the top, with dots; elements of a list by their id, or by their number from 1.</param>
/// <param name="Text">As written.</param>
/// <param name="Line">Line in the file.</param>
public sealed record StatedInput(string Key, string Text, int Line)
{
    /// <summary>The file of parts in which it stands; null: the plan's own.</summary>
    public string? File { get; init; }
}

using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>What may be changed in a plan to mend a finding.</summary>
public enum LeverKind
{
    /// <summary>Speed of a paver.</summary>
    PaverSpeed,

    /// <summary>Number of trucks of a group.</summary>
    TruckCount,

    /// <summary>Loads that wait on site before the paver starts.</summary>
    LoadsBeforeStart,

    /// <summary>How loads are sent.</summary>
    Dispatch,

    /// <summary>Places at which a plant loads one mix.</summary>
    LoadingPlaces,

    /// <summary>Output planned of a plant.</summary>
    PlantOutput,

    /// <summary>Tonnage ordered for a course.</summary>
    Tonnage,

    /// <summary>Number of rollers of a phase; one more is a copy of one that is there.</summary>
    Rollers,

    /// <summary>Speed of a roller.</summary>
    RollerSpeed,

    /// <summary>Length of the zone of a phase.</summary>
    ZoneLength,

    /// <summary>Temperature of a mix: loading, delivery and laying move together.</summary>
    MixTemperature,

    /// <summary>Capacity of a buffer.</summary>
    BufferCapacity,

    /// <summary>Level at which a buffer calls its next load.</summary>
    CallLevel,

    /// <summary>Time of opening.</summary>
    Opening,

    /// <summary>Hour at which the shift starts; its length stays.</summary>
    ShiftStart,

    /// <summary>Nominal thickness of a course, inside the tolerance of the design.</summary>
    Thickness,

    /// <summary>Minutes behind the screed at which the last grit is spread.</summary>
    GritBy,

    /// <summary>Minutes behind the screed within which the passes of a phase are made.</summary>
    DoneWithin,

    /// <summary>Rate of a bond coat.</summary>
    BondCoatRate,
}

/// <summary>A stated quantity that may be changed: where it stands, how far it may go, in which steps, and how a changed copy of the plan is made.</summary>
public sealed record Lever
{
    /// <summary>What it is.</summary>
    public required LeverKind Kind { get; init; }

    /// <summary>Address of the element.</summary>
    public required string Address { get; init; }

    /// <summary>Key inside the element.</summary>
    public required string Key { get; init; }

    /// <summary>Unit of value, range and step; null for counts and for clock times, which count minutes from midnight before the shift.</summary>
    public Unit? Unit { get; init; }

    /// <summary>Whether the value is a clock time, in minutes from midnight before the shift.</summary>
    public bool IsClock { get; init; }

    /// <summary>Whether only whole numbers make sense.</summary>
    public bool IsCount { get; init; }

    /// <summary>Words for the values 0, 1, 2 … of a lever that chooses from a list; null for numbers.</summary>
    public IReadOnlyList<string>? Names { get; init; }

    /// <summary>Value in the plan.</summary>
    public required double Current { get; init; }

    /// <summary>Lowest value that a remedy may propose.</summary>
    public required double Lowest { get; init; }

    /// <summary>Highest value that a remedy may propose.</summary>
    public required double Highest { get; init; }

    /// <summary>Step; proposed values are multiples of it, or an end of the range.</summary>
    public required double Step { get; init; }

    /// <summary>Whether the designer must agree.</summary>
    public bool ByDesigner { get; init; }

    /// <summary>
    /// Whether machine or plant give the value: it is moved to learn how much would be needed, but never proposed, alone or in a pair.
    /// </summary>
    public bool IsGiven { get; init; }

    /// <summary>Makes a copy of the plan with another value; everything that must move with it moves.</summary>
    public required Func<double, Plan> Change { get; init; }

    /// <summary>Values from the present one to an end of the range, nearest first; the present one is left out.</summary>
    /// <param name="up">Towards the highest.</param>
    /// <returns>
    /// Multiples of the step, then the end itself. Empty where the present value is at or beyond that end, and where more than a
    /// thousand million steps lie between: a plan with such a figure is mended by its writer. None is made before it is asked for.
    /// </returns>
    public IReadOnlyList<double> Values(bool up)
    {
        var end = up ? Highest : Lowest;
        if (up ? end <= Current : end >= Current)
        {
            return [];
        }

        var first = up ? Math.Floor((Current / Step) + Rounding) + 1 : Math.Ceiling((Current / Step) - Rounding) - 1;
        var multiples = up ? Math.Ceiling((end / Step) - Rounding) - first : first - Math.Floor((end / Step) + Rounding);
        return multiples <= MostSteps ? new LeverValues(first, Step, up, Math.Max(0, (int)multiples), end) : [];
    }

    /// <summary>
    /// How much of the room in its direction a change uses, 0 to 1: by it changes of unlike things are set in order, since the ends
    /// say how far each may go at all.
    /// </summary>
    /// <param name="value">Proposed value.</param>
    public double Share(double value)
    {
        var room = Math.Abs((value > Current ? Highest : Lowest) - Current);
        return value.Equals(Current) ? 0 : room > 0 ? Math.Abs(value - Current) / room : 1;
    }

    private const double Rounding = 1e-9;
    private const int MostSteps = 1_000_000_000;
}

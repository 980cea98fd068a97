using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Kinds of plan element that a rule may be about. The words are also the first part of an address and of a quantity's name.</summary>
public enum ElementKind
{
    /// <summary>The plan as a whole.</summary>
    Plan,

    /// <summary>Where the job lies.</summary>
    Location,

    /// <summary>Use, traffic, closure and conditions.</summary>
    Site,

    /// <summary>The working period.</summary>
    Shift,

    /// <summary>The weather as planned.</summary>
    Weather,

    /// <summary>What is laid upon.</summary>
    Existing,

    /// <summary>A mix.</summary>
    Mix,

    /// <summary>A course.</summary>
    Course,

    /// <summary>Two courses laid hot-on-hot.</summary>
    Pair,

    /// <summary>A strip laid end to end.</summary>
    Run,

    /// <summary>Plants, trucks and feeder together.</summary>
    Supply,

    /// <summary>A mixing plant.</summary>
    Plant,

    /// <summary>Trucks that carry one mix from one plant.</summary>
    Trucks,

    /// <summary>The machine that passes mix from truck to paver; absent when the plan has none.</summary>
    Feeder,

    /// <summary>A paver.</summary>
    Paver,

    /// <summary>A phase of the rolling.</summary>
    Phase,

    /// <summary>A roller.</summary>
    Roller,

    /// <summary>A bond coat.</summary>
    BondCoat,

    /// <summary>A joint.</summary>
    Joint,

    /// <summary>Measures for the skid resistance of the fresh surface.</summary>
    EarlyFriction,

    /// <summary>The opening to traffic.</summary>
    Opening,

    /// <summary>A test.</summary>
    Test,

    /// <summary>A hold point.</summary>
    HoldPoint,

    /// <summary>An action held ready.</summary>
    Contingency,

    /// <summary>A safety measure.</summary>
    Measure,

    /// <summary>An overhead line.</summary>
    OverheadLine,

    /// <summary>Light at one place for one task.</summary>
    Light,

    /// <summary>What people breathe.</summary>
    Exposure,

    /// <summary>A condition of the site that the plan states.</summary>
    Condition,

    /// <summary>A job of several shifts as a whole.</summary>
    Job,

    /// <summary>A shift of a job.</summary>
    JobShift,

    /// <summary>What lies between two shifts of a job that follow each other or lay at the same time.</summary>
    Interval,

    /// <summary>A course of a job, over all its shifts.</summary>
    JobCourse,

    /// <summary>A run of a job, whichever shift lays it.</summary>
    JobRun,

    /// <summary>A plant of a job, over all its shifts.</summary>
    JobPlant,

    /// <summary>A joint of a job, whichever shifts lay its two sides.</summary>
    JobJoint,

    /// <summary>A lot of acceptance of a job, over all shifts in which it is laid.</summary>
    JobLot,

    /// <summary>A single number that the plan states. Only its rules are asked whether it is usual; what is usual is no finding.</summary>
    Value,
}

/// <summary>One element of a plan.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Id">Its id; empty for what a plan has once.</param>
/// <param name="Subject">The stated record; null where the plan says nothing about it.</param>
public sealed record Element(ElementKind Kind, string Id, object? Subject)
{
    /// <summary>Kind and id, for example <c>course:wearing</c>; for what a plan has once, the kind alone; for a single number its element and key, <c>course:wearing/thickness</c>.</summary>
    public string Address => Kind == ElementKind.Value ? Id : Id.Length == 0 ? Words.Of(Kind) : $"{Words.Of(Kind)}:{Id}";
}

/// <summary>Two courses laid hot-on-hot, as one hot body.</summary>
/// <param name="Lower">The lower course.</param>
/// <param name="Upper">The upper course.</param>
public sealed record Pair(Course Lower, Course Upper);

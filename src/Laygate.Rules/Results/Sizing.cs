using Laygate.Engineering.Quantities;

namespace Laygate.Rules.Results;

/// <summary>What a line of a first sizing shows.</summary>
public enum SizedKind
{
    /// <summary>A quantity of the catalogue, under the usual values.</summary>
    Quantity,

    /// <summary>Rollers that a phase needs to follow the paver: the first number that the rule on its speed accepts.</summary>
    Rollers,

    /// <summary>Rollers of all phases together.</summary>
    RollersTogether,

    /// <summary>Length of all strips that one shift lays.</summary>
    LengthPerShift,

    /// <summary>A quantity of the mat in one weather.</summary>
    InWeather,
}

/// <summary>A line of a first sizing.</summary>
/// <param name="Kind">What it shows.</param>
/// <param name="Quantity">The quantity of the catalogue that it shows or that decides it.</param>
/// <param name="Address">The element.</param>
/// <param name="Value">Expected value; low and high are the 5 % and 95 % points of the samples.</param>
/// <param name="Air">Air and surface temperature of the weather in the unit of the plan; null where no weather goes in.</param>
/// <param name="Rule">Id of the rule that the value meets later; null when none reads it.</param>
/// <param name="Driver">The usual value or assumption whose ends move it most, by id; null when none moves it.</param>
/// <param name="State">Key of the plan that replaces that one; null when no plan states it.</param>
/// <param name="Working">How it was found.</param>
public sealed record SizedLine(SizedKind Kind, string Quantity, string Address, ShownValue Value, ShownValue? Air, string? Rule, string? Driver, string? State, Working Working);

/// <summary>A usual value that was taken because the plan does not state it.</summary>
/// <param name="Key">Key of the plan that replaces it, entries of lists by their id.</param>
/// <param name="Id">Id of the assumption; null for a word.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Value">The value with its range, or a word.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Evidence">How it is known.</param>
public sealed record UsualValue(string Key, string? Id, string Meaning, ShownValue Value, string Source, Evidence Evidence);

/// <summary>The first sizing of one plan.</summary>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="Title">Its title.</param>
/// <param name="Lines">The lines.</param>
/// <param name="Usual">Usual values that were taken.</param>
/// <param name="Missing">What keeps lines from being computed.</param>
public sealed record PlanSizing(string PlanId, string? Title, IReadOnlyList<SizedLine> Lines, IReadOnlyList<UsualValue> Usual, IReadOnlyList<InputReference> Missing)
{
    /// <summary>The latest month; null where no monthly temperatures were stated.</summary>
    public LatestMonth? Months { get; init; }
}

/// <summary>The latest month of the year in which a plan can be laid, by the mean temperatures of the months.</summary>
/// <param name="Month">Its number, from 1.</param>
/// <param name="Rule">Rule whose limit is missed in the month after it, and not in the warmest; null where every month will do.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Address">The element.</param>
public sealed record LatestMonth(int Month, string? Rule, string? Title, string? Address);

/// <summary>First sizings of the plans of one file.</summary>
/// <param name="File">Name of the file as given.</param>
/// <param name="Plans">The plans.</param>
/// <param name="Problems">Why the file cannot be read; then there are no plans.</param>
public sealed record SizingResult(string File, IReadOnlyList<PlanSizing> Plans, IReadOnlyList<Problem> Problems);

using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>What a reading says of the value that is asked for.</summary>
public enum KnownSide
{
    /// <summary>It is the value, within its uncertainty.</summary>
    Value,

    /// <summary>The value is at least that of the reading: a mat that was read some minutes after its screed was no colder when it was laid.</summary>
    AtLeast,
}

/// <summary>One value of what happened.</summary>
/// <param name="Si">Value in the SI unit of the quantity (°C for temperatures).</param>
/// <param name="Standard">Standard uncertainty in SI (K for temperatures); 0 for what is counted; null where the record states none.</param>
/// <param name="Rows">Rows that it comes from, the one that was read first.</param>
public sealed record HappenedValue(double Si, double? Standard, IReadOnlyList<RowPlace> Rows)
{
    /// <summary>When.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Station, m.</summary>
    public double? Station { get; init; }

    /// <summary>What it is of, such as a number of a ticket; null where time and station say it.</summary>
    public string? Of { get; init; }

    /// <summary>Where a temperature was read; null where the record does not say it, or for all else.</summary>
    public Place? Place { get; init; }

    /// <summary>What it says of the value that is asked for.</summary>
    public KnownSide Side { get; init; }
}

/// <summary>Something that the record does not say.</summary>
/// <param name="What">What, in a few words; null: nothing of the kind was recorded.</param>
/// <param name="Row">The row in which it is missing.</param>
public sealed record LackingRow(string? What, RowPlace? Row = null);

/// <summary>All that a record says of a quantity for one element.</summary>
/// <param name="Values">Values in the order of their rows.</param>
/// <param name="Lacking">What is missing, so that the values do not speak for the whole; none where they do.</param>
public sealed record HappenedSet(IReadOnlyList<HappenedValue> Values, IReadOnlyList<LackingRow> Lacking)
{
    /// <summary>Nothing was recorded.</summary>
    public static HappenedSet Nothing { get; } = new([], [new LackingRow(null)]);

    /// <summary>These values; where there are none, nothing was recorded.</summary>
    public static HappenedSet Of(IEnumerable<HappenedValue> values) => values.ToList() is { Count: > 0 } all ? new HappenedSet(all, []) : Nothing;
}

/// <summary>A quantity of the catalogue whose value as it happened can be read from a record.</summary>
/// <param name="Quantity">Its name in the catalogue.</param>
/// <param name="What">What was read, in a few words.</param>
/// <param name="Rows">Kind of rows that show it.</param>
/// <param name="Columns">Columns of these rows that it needs.</param>
/// <param name="Uncertainty">Keys under <c>uncertainty</c> of the mapping from which its uncertainty follows; empty for what is counted.</param>
/// <param name="Read">Reads it for the element that it belongs to.</param>
public sealed record HappenedQuantity(string Quantity, string What, string Rows, string Columns, string Uncertainty, Func<HappenedShift, Element, HappenedSet> Read)
{
    /// <summary>A flag of the plan that says whether there is anything to judge; what was recorded answers it with yes. Null where there is none.</summary>
    public string? Implies { get; init; }

    /// <summary>Whether rules have it as their limit: what the plan states is then held against what happened.</summary>
    public bool IsLimit { get; init; }

    /// <summary>Whether a rule whose limit follows from it takes its value at the time of the reading that is judged, and not that of the plan.</summary>
    public bool GoesWithTime { get; init; }
}

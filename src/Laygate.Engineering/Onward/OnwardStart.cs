using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>Where the shift of one train goes on from.</summary>
/// <param name="Model">The shift as the plan has it, with what the record and the events change.</param>
/// <param name="State">The state.</param>
public sealed record OnwardStart(ShiftModel Model, ShiftState State)
{
    /// <summary>The moment of the state: that of the last station, or now.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>Run and station that are reached; null before laying.</summary>
    public (string Run, double Station)? Place { get; init; }

    /// <summary>Length that is laid, m.</summary>
    public double Laid { get; init; }

    /// <summary>Since when the paver stands; null while it lays.</summary>
    public DateTimeOffset? StandsSince { get; init; }

    /// <summary>Loads of which the site has written no discharge, by the position of their course's first buffer.</summary>
    public IReadOnlyList<(int Buffer, Load Load)> UnderWay { get; init; } = [];
}

/// <summary>Times of one shift in seconds after its planned start of laying.</summary>
/// <param name="Start">That start.</param>
/// <param name="Now">The moment of the re-plan.</param>
internal sealed record OnwardClock(DateTimeOffset Start, DateTimeOffset Now)
{
    public double Of(DateTimeOffset moment) => (moment - Start).TotalSeconds;

    public DateTimeOffset At(double seconds) => Start.AddSeconds(seconds);
}

/// <summary>What is known of one shift, gathered while its state is read.</summary>
/// <param name="Record">The record up to now.</param>
/// <param name="Ledger">Its ledger; null where no row has a time.</param>
/// <param name="Events">The events.</param>
/// <param name="Clock">Times.</param>
/// <param name="Units">Units.</param>
internal sealed record OnwardKnown(ShiftRecord Record, ShiftLedger? Ledger, OnwardEvents Events, OnwardClock Clock, LedgerUnits Units)
{
    public List<OnwardFact> Facts { get; } = [];

    public List<OnwardNote> Notes { get; } = [];
}

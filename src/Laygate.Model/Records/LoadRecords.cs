namespace Laygate.Model.Records;

/// <summary>What became of a load.</summary>
public enum LoadState
{
    /// <summary>It counts.</summary>
    Valid,

    /// <summary>The ticket was cancelled.</summary>
    Void,

    /// <summary>The site did not take the load.</summary>
    Refused,

    /// <summary>The load went back whole.</summary>
    Returned,
}

/// <summary>One load as its ticket and the site tell it, after double and void tickets were set apart. Masses in kg, temperatures in °C, stations in m.</summary>
/// <param name="Place">Row of the ticket that counts.</param>
/// <param name="Ticket">Number of the ticket.</param>
/// <param name="Net">Net mass, kg: gross less tare where both are recorded, else the printed net.</param>
public sealed record Load(RowPlace Place, string Ticket, double Net)
{
    /// <summary>Last state.</summary>
    public LoadState State { get; init; }

    /// <summary>Id of the course; null where the record does not say it.</summary>
    public string? Course { get; init; }

    /// <summary>Id of the mix; null where the record does not say it.</summary>
    public string? Mix { get; init; }

    /// <summary>The truck.</summary>
    public string? Vehicle { get; init; }

    /// <summary>The plant.</summary>
    public string? Plant { get; init; }

    /// <summary>Whether the tare was weighed on this trip; null where the record does not say it.</summary>
    public bool? TareWeighed { get; init; }

    /// <summary>When it was loaded or weighed out.</summary>
    public DateTimeOffset? Loaded { get; init; }

    /// <summary>When it arrived on site.</summary>
    public DateTimeOffset? Arrived { get; init; }

    /// <summary>When its discharge began.</summary>
    public DateTimeOffset? Started { get; init; }

    /// <summary>When it was empty.</summary>
    public DateTimeOffset? Emptied { get; init; }

    /// <summary>Station of the screed when the load was empty, m.</summary>
    public double? StationAtEnd { get; init; }

    /// <summary>Run in which it was laid.</summary>
    public string? Run { get; init; }

    /// <summary>Mass that went back or was thrown away, kg; subtracted once.</summary>
    public double NotLaid { get; init; }

    /// <summary>Row of its delivery; null where there is none.</summary>
    public RowPlace? Delivery { get; init; }

    /// <summary>Temperature when it was loaded, °C.</summary>
    public double? LoadingTemperature { get; init; }

    /// <summary>Temperature in the load on site, °C.</summary>
    public double? SiteTemperature { get; init; }

    /// <summary>Mass that may be laid, kg: net less what was not laid; 0 unless the load counts.</summary>
    public double Laid => State == LoadState.Valid ? Math.Max(0, Net - NotLaid) : 0;
}

namespace Laygate.Engineering.Onward;

/// <summary>A plant that sends nothing until a moment.</summary>
/// <param name="Plant">Id of the plant.</param>
/// <param name="Until">When it sends again; null: not any more in this shift.</param>
public sealed record PlantDown(string Plant, DateTimeOffset? Until);

/// <summary>What somebody on site knows and no file of the record holds. Without any, the shift goes on as the record and the plan say.</summary>
public sealed record OnwardEvents
{
    /// <summary>When the site must be free; null: the end of the shift in the plan.</summary>
    public DateTimeOffset? Closing { get; init; }

    /// <summary>A plant that is down.</summary>
    public PlantDown? Plant { get; init; }

    /// <summary>When rain, or something else that stops laying for good, is expected.</summary>
    public DateTimeOffset? RainAt { get; init; }

    /// <summary>Until when the paver stands from now on.</summary>
    public DateTimeOffset? StandsUntil { get; init; }

    /// <summary>Average speed from now on, m/s.</summary>
    public double? Speed { get; init; }

    /// <summary>Length of the way after which the work ends, m; null: where the plan ends.</summary>
    public double? EndsAfter { get; init; }

    /// <summary>Run and station at which the work ends; null: where the plan ends.</summary>
    public (string? Run, double Station)? EndsAt { get; init; }

    /// <summary>Trucks from now on, by group.</summary>
    public IReadOnlyDictionary<string, int> Trucks { get; init; } = new Dictionary<string, int>(StringComparer.Ordinal);

    /// <summary>Rollers that are lost, by id.</summary>
    public IReadOnlyList<string> RollersLost { get; init; } = [];

    /// <summary>Air from now on, °C.</summary>
    public double? Air { get; init; }

    /// <summary>Surface that is laid upon from now on, °C.</summary>
    public double? Base { get; init; }

    /// <summary>Wind from now on at the height of the plan's forecast, m/s.</summary>
    public double? Wind { get; init; }
}

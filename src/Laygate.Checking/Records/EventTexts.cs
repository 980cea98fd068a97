namespace Laygate.Checking.Records;

/// <summary>Events as somebody writes them with a call; null or empty where nothing is said.</summary>
public sealed record EventTexts
{
    /// <summary>When the site closes.</summary>
    public string? Closing { get; init; }

    /// <summary>PLANT=TIME: nothing is sent until then; PLANT=end: not any more.</summary>
    public string? PlantDown { get; init; }

    /// <summary>When rain stops laying.</summary>
    public string? Rain { get; init; }

    /// <summary>Until when the paver stands.</summary>
    public string? StandsUntil { get; init; }

    /// <summary>Average speed from now on.</summary>
    public string? Speed { get; init; }

    /// <summary>STATION or RUN=STATION: where the work ends.</summary>
    public string? EndAt { get; init; }

    /// <summary>GROUP=COUNT: trucks from now on.</summary>
    public IReadOnlyList<string> Trucks { get; init; } = [];

    /// <summary>Rollers that are lost.</summary>
    public IReadOnlyList<string> RollersLost { get; init; } = [];

    /// <summary>Air from now on.</summary>
    public string? Air { get; init; }

    /// <summary>Surface that is laid upon from now on.</summary>
    public string? Base { get; init; }

    /// <summary>Wind from now on.</summary>
    public string? Wind { get; init; }
}

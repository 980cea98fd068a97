namespace Laygate.Model.Records;

/// <summary>The station that the screed has reached at a time.</summary>
/// <param name="Place">Its row.</param>
/// <param name="At">When.</param>
/// <param name="Station">Station, m.</param>
public sealed record StationReading(RowPlace Place, DateTimeOffset At, double Station)
{
    /// <summary>Run or lane.</summary>
    public string? Run { get; init; }

    /// <summary>Course, where the screeds of two courses stand apart.</summary>
    public string? Course { get; init; }

    /// <summary>Width that is laid, m.</summary>
    public double? Width { get; init; }

    /// <summary>Mix of the course in feeder, hopper and auger box at this moment, kg.</summary>
    public double? OnMachine { get; init; }
}

/// <summary>A stop of the paver.</summary>
/// <param name="Place">Its row.</param>
/// <param name="From">When it began.</param>
/// <param name="To">When it ended; null while it lasts.</param>
public sealed record PaverStop(RowPlace Place, DateTimeOffset From, DateTimeOffset? To)
{
    /// <summary>Why.</summary>
    public string? Reason { get; init; }

    /// <summary>Station, m.</summary>
    public double? Station { get; init; }

    /// <summary>Paver.</summary>
    public string? Paver { get; init; }
}

/// <summary>Weather as measured. Temperatures in °C, speeds in m/s, rain in mm.</summary>
/// <param name="Place">Its row.</param>
/// <param name="At">When.</param>
public sealed record WeatherReading(RowPlace Place, DateTimeOffset At)
{
    /// <summary>Air, °C.</summary>
    public double? Air { get; init; }

    /// <summary>Surface of the base, °C.</summary>
    public double? Surface { get; init; }

    /// <summary>Wind, m/s.</summary>
    public double? Wind { get; init; }

    /// <summary>Rain since the row before, m.</summary>
    public double? Rain { get; init; }

    /// <summary>Dew point of the air, °C.</summary>
    public double? DewPoint { get; init; }
}

/// <summary>A pass of a roller over a place.</summary>
/// <param name="Place">Its row.</param>
/// <param name="At">When.</param>
/// <param name="Roller">Id of the roller.</param>
public sealed record PassReading(RowPlace Place, DateTimeOffset At, string Roller)
{
    /// <summary>Station, m.</summary>
    public double? Station { get; init; }

    /// <summary>Number of the pass at this place, one direction.</summary>
    public int? Pass { get; init; }

    /// <summary>Skin of the mat, °C.</summary>
    public double? Skin { get; init; }

    /// <summary>Density of the mat after the pass, kg/m³.</summary>
    public double? Density { get; init; }
}

/// <summary>Bond coat that was sprayed on a stretch.</summary>
/// <param name="Place">Its row.</param>
/// <param name="From">First station, m.</param>
/// <param name="To">Last station, m.</param>
/// <param name="Width">Width, m.</param>
public sealed record BondCoatReading(RowPlace Place, double From, double To, double Width)
{
    /// <summary>When.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Mass that was sprayed, kg.</summary>
    public double? Mass { get; init; }

    /// <summary>What was taken from the tank, in its own temperature: two readings of the tank, or one of a meter.</summary>
    public TankVolume? Taken { get; init; }

    /// <summary>Course below which it lies.</summary>
    public string? Below { get; init; }

    /// <summary>Area, m².</summary>
    public double Area => Math.Abs(To - From) * Width;

    /// <summary>Rate, kg/m²; null without a mass or an area.</summary>
    public double? Rate => Mass is { } mass && Area is > 0 and var area ? mass / area : null;
}

/// <summary>Readings of a tank before and after spraying; a meter reads nothing at the end.</summary>
/// <param name="Before">Volume at the beginning, or volume that the meter counted, m³.</param>
/// <param name="BeforeTemperature">Its temperature, °C.</param>
/// <param name="After">Volume at the end, m³; 0 for a meter.</param>
/// <param name="AfterTemperature">Its temperature, °C.</param>
public sealed record TankVolume(double Before, double BeforeTemperature, double After, double AfterTemperature);

/// <summary>A hold point that somebody released.</summary>
/// <param name="Place">Its row.</param>
/// <param name="HoldPoint">Id of the hold point in the plan.</param>
public sealed record HoldPointRelease(RowPlace Place, string HoldPoint)
{
    /// <summary>When it was released.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Who released it.</summary>
    public string? By { get; init; }

    /// <summary>What it rests on, such as the number of a form.</summary>
    public string? Evidence { get; init; }
}

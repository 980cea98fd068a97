namespace Laygate.Model.Records;

/// <summary>Relative standard uncertainties that the record states, 1; null where it states none.</summary>
/// <param name="Mass">Of a sum of masses.</param>
/// <param name="Density">Of the density.</param>
/// <param name="Width">Of the width.</param>
/// <param name="Length">Of the length.</param>
public sealed record RecordUncertainty(double? Mass, double? Density, double? Width, double? Length)
{
    /// <summary>Relative standard uncertainty of a volume that was taken from a tank, 1.</summary>
    public double? Volume { get; init; }

    /// <summary>Standard uncertainty of a temperature in a load, of a probe, and of the weather, K.</summary>
    public double? Temperature { get; init; }

    /// <summary>Standard uncertainty of a temperature of the skin, K: what an infrared reading misses is more than its instrument.</summary>
    public double? Skin { get; init; }

    /// <summary>Standard uncertainty of a thickness, m.</summary>
    public double? Thickness { get; init; }

    /// <summary>Standard uncertainty of a wind speed, m/s.</summary>
    public double? Wind { get; init; }

    /// <summary>Standard uncertainty of a time of day, s.</summary>
    public double? Time { get; init; }
}

/// <summary>What happened in a shift, row by row, as it was recorded; nothing is judged.</summary>
public sealed record ShiftRecord
{
    /// <summary>Id of the plan; null where the record does not say it.</summary>
    public string? Plan { get; init; }

    /// <summary>What the record says about itself, for example that it is invented.</summary>
    public string? About { get; init; }

    /// <summary>Whether it is the record of a trial length, and not of a shift of its plan.</summary>
    public bool IsTrial { get; init; }

    /// <summary>Laboratory whose results count for acceptance; null where the record does not say it.</summary>
    public string? Laboratory { get; init; }

    /// <summary>Uncertainties.</summary>
    public RecordUncertainty Uncertainty { get; init; } = new(null, null, null, null);

    /// <summary>Raw files in the order of the mapping.</summary>
    public IReadOnlyList<RawFile> Files { get; init; } = [];

    /// <summary>Loads, each once, in the order of their times.</summary>
    public IReadOnlyList<Load> Loads { get; init; } = [];

    /// <summary>Stations in the order of their times.</summary>
    public IReadOnlyList<StationReading> Stations { get; init; } = [];

    /// <summary>Stops in the order of their times.</summary>
    public IReadOnlyList<PaverStop> Stops { get; init; } = [];

    /// <summary>Temperatures of the mat.</summary>
    public IReadOnlyList<MatTemperature> Temperatures { get; init; } = [];

    /// <summary>Thermal profile.</summary>
    public IReadOnlyList<ThermalLine> Thermal { get; init; } = [];

    /// <summary>Gauge readings.</summary>
    public IReadOnlyList<GaugeReading> Gauges { get; init; } = [];

    /// <summary>Cores.</summary>
    public IReadOnlyList<Core> Cores { get; init; } = [];

    /// <summary>Dips.</summary>
    public IReadOnlyList<Dip> Dips { get; init; } = [];

    /// <summary>Weather.</summary>
    public IReadOnlyList<WeatherReading> Weather { get; init; } = [];

    /// <summary>Roller passes.</summary>
    public IReadOnlyList<PassReading> Passes { get; init; } = [];

    /// <summary>Bond coat.</summary>
    public IReadOnlyList<BondCoatReading> BondCoats { get; init; } = [];

    /// <summary>Hold points that were released, in the order of their times.</summary>
    public IReadOnlyList<HoldPointRelease> HoldPoints { get; init; } = [];

    /// <summary>The last moment of any row; null without times.</summary>
    public DateTimeOffset? Last { get; init; }
}

namespace Laygate.Model.Records;

/// <summary>A temperature of the mat at a place.</summary>
/// <param name="Place">Its row.</param>
/// <param name="At">When.</param>
/// <param name="Value">Temperature, °C.</param>
public sealed record MatTemperature(RowPlace Place, DateTimeOffset At, double Value)
{
    /// <summary>Station, m.</summary>
    public double? Station { get; init; }

    /// <summary>Run, where several hold the station.</summary>
    public string? Run { get; init; }

    /// <summary>Offset from the left edge, m.</summary>
    public double? Offset { get; init; }

    /// <summary>Course.</summary>
    public string? Course { get; init; }

    /// <summary>Depth below the surface, m; 0: skin; null where the record does not say it.</summary>
    public double? Depth { get; init; }

    /// <summary>Instrument.</summary>
    public string? Instrument { get; init; }
}

/// <summary>One line across the mat of a thermal profile.</summary>
/// <param name="Place">Its row.</param>
/// <param name="Station">Station, m.</param>
/// <param name="Skin">Temperatures of the skin from left to right, °C; NaN where there is no reading.</param>
public sealed record ThermalLine(RowPlace Place, double Station, IReadOnlyList<double> Skin)
{
    /// <summary>When.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Offsets of the readings from the left edge, m.</summary>
    public IReadOnlyList<double> Offsets { get; init; } = [];
}

/// <summary>A reading of a density gauge.</summary>
/// <param name="Place">Its row.</param>
/// <param name="Test">Number of the test.</param>
/// <param name="Density">Density as the gauge shows it, kg/m³.</param>
public sealed record GaugeReading(RowPlace Place, string Test, double Density)
{
    /// <summary>When.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Station, m.</summary>
    public double? Station { get; init; }

    /// <summary>Offset from the left edge, m.</summary>
    public double? Offset { get; init; }

    /// <summary>Course.</summary>
    public string? Course { get; init; }

    /// <summary>Which gauge.</summary>
    public string? Gauge { get; init; }

    /// <summary>Core that was cut at the same place.</summary>
    public string? Core { get; init; }
}

/// <summary>A core, or the slice of one course of it.</summary>
/// <param name="Place">Its row.</param>
/// <param name="Number">Number of the core.</param>
public sealed record Core(RowPlace Place, string Number)
{
    /// <summary>When it was cut.</summary>
    public DateTimeOffset? Cut { get; init; }

    /// <summary>Station, m.</summary>
    public double? Station { get; init; }

    /// <summary>Offset from the left edge, m.</summary>
    public double? Offset { get; init; }

    /// <summary>Laboratory that tested it, such as contractor or agency.</summary>
    public string? Laboratory { get; init; }

    /// <summary>Course of the slice.</summary>
    public string? Course { get; init; }

    /// <summary>Whether it was cut over a longitudinal joint.</summary>
    public bool AtJoint { get; init; }

    /// <summary>Readings of the thickness, m.</summary>
    public IReadOnlyList<double> Thickness { get; init; } = [];

    /// <summary>Dry mass in air, kg.</summary>
    public double? Dry { get; init; }

    /// <summary>Mass saturated, surface dry, kg.</summary>
    public double? SurfaceDry { get; init; }

    /// <summary>Mass in water, kg.</summary>
    public double? InWater { get; init; }

    /// <summary>Bulk density as the laboratory reports it, kg/m³.</summary>
    public double? Bulk { get; init; }

    /// <summary>Maximum density of the mix, kg/m³, or its specific gravity times that of water.</summary>
    public double? Maximum { get; init; }

    /// <summary>Reference density of the mix, kg/m³.</summary>
    public double? Reference { get; init; }
}

/// <summary>A thickness taken by dip or by levels. Lengths in m.</summary>
/// <param name="Place">Its row.</param>
/// <param name="Station">Station, m.</param>
/// <param name="Depth">Thickness, m.</param>
public sealed record Dip(RowPlace Place, double Station, double Depth)
{
    /// <summary>Offset from the left edge, m.</summary>
    public double? Offset { get; init; }

    /// <summary>Course.</summary>
    public string? Course { get; init; }

    /// <summary>Whether the mat was still loose.</summary>
    public bool Loose { get; init; }
}

namespace Laygate.Model.Records;

/// <summary>The words by which a mapping says what the rows of a file are.</summary>
public static class RowsOf
{
    /// <summary>Loads that left a plant.</summary>
    public const string Tickets = "load-tickets";

    /// <summary>Loads on site.</summary>
    public const string Deliveries = "deliveries";

    /// <summary>Stations of the screed.</summary>
    public const string Stations = "stations";

    /// <summary>Stops of the paver.</summary>
    public const string Stops = "stops";

    /// <summary>Temperatures of the mat.</summary>
    public const string Temperatures = "mat-temperatures";

    /// <summary>Lines of readings across the mat.</summary>
    public const string Thermal = "thermal-profile";

    /// <summary>Readings of a density gauge.</summary>
    public const string Gauges = "gauge-readings";

    /// <summary>Cores.</summary>
    public const string Cores = "cores";

    /// <summary>Thicknesses taken by dip or by levels.</summary>
    public const string Dips = "dips";

    /// <summary>Weather.</summary>
    public const string Weather = "weather";

    /// <summary>Passes of rollers.</summary>
    public const string Passes = "roller-passes";

    /// <summary>Stretches that were sprayed.</summary>
    public const string BondCoat = "bond-coat";

    /// <summary>Releases of hold points.</summary>
    public const string HoldPoints = "hold-points";
}

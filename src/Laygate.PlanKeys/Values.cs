namespace Laygate.PlanKeys;

/// <summary>The definitions of the schema that are single values, as the model and the reader of plans know them.</summary>
internal static class Values
{
    public static readonly KeyValue Text = new("Text", "string");
    public static readonly KeyValue Count = new("Count", "int");

    private static readonly IReadOnlyDictionary<string, KeyValue> Known = new Dictionary<string, KeyValue>(StringComparer.Ordinal)
    {
        ["text"] = Text,
        ["count"] = Count,
        ["id"] = new("Id", "string"),
        ["flag"] = new("Flag", "bool"),
        ["date"] = new("Date", "DateOnly"),
        ["time"] = new("Time", "TimeOnly"),
        ["zone"] = new("Zone", "TimeSpan"),
        ["moment"] = new("Moment", "Moment"),
        ["sieve"] = new("Sieve", "Sieve"),
        ["length"] = Measure("Length"),
        ["area"] = Measure("Area"),
        ["temperature"] = Measure("Temperature"),
        ["temperature_difference"] = Measure("TemperatureDelta"),
        ["duration"] = Measure("Duration"),
        ["speed"] = Measure("Speed"),
        ["mass"] = Measure("Mass"),
        ["mass_flow"] = Measure("MassFlow"),
        ["density"] = Measure("Density"),
        ["mass_per_area"] = Measure("AreaDensity"),
        ["spray_rate"] = new("Either", "IMeasure", "AreaDensity, FilmThickness"),
        ["proportion"] = Measure("Ratio"),
        ["frequency"] = Measure("Frequency"),
        ["force_per_length"] = Measure("ForcePerLength"),
        ["irradiance"] = Measure("Irradiance"),
        ["voltage"] = Measure("ElectricPotential"),
        ["illuminance"] = Measure("Illuminance"),
        ["concentration"] = Measure("MassConcentration"),
        ["acceleration"] = Measure("Acceleration"),
        ["angle"] = Measure("Angle"),
    };

    /// <summary>The value that a definition names; null where it is none of these.</summary>
    public static KeyValue? Find(string definition) => Known.TryGetValue(definition, out var value) ? value : null;

    private static KeyValue Measure(string dimension) => new("Measure", $"Measure<{dimension}>", dimension);
}

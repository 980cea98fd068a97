namespace Laygate.Model.Measures;

/// <summary>What a measure measures. Each dimension has one SI unit in which values are compared.</summary>
public enum Dimension
{
    /// <summary>Length; SI unit m.</summary>
    Length,

    /// <summary>Area; SI unit m².</summary>
    Area,

    /// <summary>Temperature; compared in °C.</summary>
    Temperature,

    /// <summary>Difference of two temperatures; SI unit K.</summary>
    TemperatureDifference,

    /// <summary>Elapsed time; SI unit s.</summary>
    Duration,

    /// <summary>Speed; SI unit m/s.</summary>
    Speed,

    /// <summary>Mass; SI unit kg.</summary>
    Mass,

    /// <summary>Mass per time; SI unit kg/s.</summary>
    MassFlow,

    /// <summary>Mass per volume; SI unit kg/m³.</summary>
    Density,

    /// <summary>Mass per area; SI unit kg/m².</summary>
    MassPerArea,

    /// <summary>Volume; SI unit m³.</summary>
    Volume,

    /// <summary>Volume per area, which is a film thickness; SI unit m (1 L/m² is 1 mm).</summary>
    VolumePerArea,

    /// <summary>Proportion of a whole, or a slope; SI unit 1.</summary>
    Proportion,

    /// <summary>Frequency; SI unit Hz.</summary>
    Frequency,

    /// <summary>Pressure; SI unit Pa.</summary>
    Pressure,

    /// <summary>Load per width of a drum; SI unit N/m.</summary>
    ForcePerLength,

    /// <summary>Radiant power per area; SI unit W/m².</summary>
    Irradiance,

    /// <summary>Electric voltage; SI unit V.</summary>
    Voltage,

    /// <summary>Illuminance; SI unit lx.</summary>
    Illuminance,

    /// <summary>Mass of a substance per volume of air; SI unit kg/m³.</summary>
    Concentration,

    /// <summary>Acceleration of vibration on people; SI unit m/s².</summary>
    Acceleration,

    /// <summary>Geographic angle; compared in degrees.</summary>
    Angle,

    /// <summary>A plain count or ratio without a unit.</summary>
    None,
}

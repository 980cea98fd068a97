using System.Collections.Frozen;
using Laygate.Model.Measures;

namespace Laygate.Reading.Measures;

/// <summary>How to call a dimension in a message.</summary>
internal static class MeasureDimensions
{
    private static readonly FrozenDictionary<Dimension, (string Noun, string Example)> Wordings = new Dictionary<Dimension, (string, string)>
    {
        [Dimension.Length] = ("a length", "45 mm"),
        [Dimension.Area] = ("an area", "12 m2"),
        [Dimension.Temperature] = ("a temperature", "9 °C"),
        [Dimension.TemperatureDifference] = ("a temperature difference", "6 K"),
        [Dimension.Duration] = ("a length of time", "25 min"),
        [Dimension.Speed] = ("a speed", "3.5 m/min"),
        [Dimension.Mass] = ("a mass", "22 t"),
        [Dimension.MassFlow] = ("a mass per time", "180 t/h"),
        [Dimension.Density] = ("a density", "2.4 t/m3"),
        [Dimension.MassPerArea] = ("a mass per area", "0.3 kg/m2"),
        [Dimension.Volume] = ("a volume", "850 L"),
        [Dimension.VolumePerArea] = ("a volume per area", "0.25 L/m2"),
        [Dimension.Proportion] = ("a share in percent", "85 %"),
        [Dimension.Frequency] = ("a frequency", "45 Hz"),
        [Dimension.Pressure] = ("a pressure", "300 kPa"),
        [Dimension.ForcePerLength] = ("a load per width", "29 kN/m"),
        [Dimension.Irradiance] = ("a solar power per area", "350 W/m2"),
        [Dimension.Voltage] = ("a voltage", "20 kV"),
        [Dimension.Illuminance] = ("an illuminance", "60 lx"),
        [Dimension.Concentration] = ("a concentration in air", "0.5 mg/m3"),
        [Dimension.Acceleration] = ("an acceleration", "2.1 m/s2"),
        [Dimension.Angle] = ("an angle", "48.25 °"),
        [Dimension.None] = ("a number without a unit", "3"),
    }.ToFrozenDictionary();

    /// <summary>The dimension with its article: "a length".</summary>
    public static string Noun(Dimension dimension) => Wordings[dimension].Noun;

    /// <summary>A well-written measure of the dimension.</summary>
    public static string Example(Dimension dimension) => Wordings[dimension].Example;
}

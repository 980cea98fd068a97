using Laygate.Model.Measures;
using Laygate.Reading.Measures;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>
/// What a value of one kind can be at all. Beyond it nothing is tight or loose: a unit, a point or a digit has slipped, and whatever is computed from
/// it says nothing. No limit of a specification stands here, and no figure that somebody could wish to try.
/// </summary>
/// <param name="What">What is bounded, as the subject of a sentence.</param>
/// <param name="Low">Least value in the SI unit of its dimension (°C for temperatures).</param>
/// <param name="High">Greatest value, likewise.</param>
/// <param name="Typical">An ordinary value, likewise (common practice, no published source): of several units that could be meant, the one that comes nearest to it is named.</param>
/// <remarks>
/// Records of the weather: archive of extremes of the World Meteorological Organization (recalled): air −89.2 °C (Vostok 1983) and 56.7 °C (Furnace
/// Creek 1913), gust 113 m/s (Barrow Island 1996); dew point 35 °C (Dhahran 2003). Ground in the sun 80.8 °C (Zhao and others 2021, Lut desert,
/// recalled). Above the air the sun gives 1361 W/m² in the mean and 1407 W/m² in January (Kopp and Lean 2011, recalled). The other figures lie well
/// beyond the machines and roads that the trade knows (common practice, no published source).
/// </remarks>
internal sealed record Possible(string What, double Low, double High, double Typical)
{
    private const double PerMinute = 1.0 / 60;
    private const double KilometresPerHour = 1 / 3.6;

    public static readonly Possible Air = new("the air", -90, 60, 15);
    public static readonly Possible DewPoint = new("the dew point", -100, 40, 8);
    public static readonly Possible Ground = new("the ground under the sun", -90, 90, 20);
    public static readonly Possible Wind = new("wind", double.NegativeInfinity, 115, 4);
    public static readonly Possible WindHeight = new("the height of a station for the wind", 0.5, 300, 10);
    public static readonly Possible RaisedBody = new("a raised body", 1.5, 20, 6);
    public static readonly Possible Sun = new("the sun", double.NegativeInfinity, 1420, 400);
    public static readonly Possible Altitude = new("the altitude of a road", -500, 6500, 300);
    public static readonly Possible HotMix = new("a hot mix", 40, 250, 160);
    public static readonly Possible Asphalt = new("asphalt that is rolled, gritted or opened", -90, 250, 90);
    public static readonly Possible Thickness = new("the thickness of a course", 0.004, 0.6, 0.05);
    public static readonly Possible Width = new("the width of a run or screed", 0.2, 30, 4);
    public static readonly Possible Gradient = new("the gradient of a road", -0.45, 0.45, 0.02);
    public static readonly Possible PaverSpeed = new("the speed of a paver that lays", double.NegativeInfinity, 40 * PerMinute, 4 * PerMinute);
    public static readonly Possible RollerSpeed = new("the speed of a roller", double.NegativeInfinity, 30 * KilometresPerHour, 5 * KilometresPerHour);
    public static readonly Possible TrafficSpeed = new("the speed of traffic", double.NegativeInfinity, 200 * KilometresPerHour, 50 * KilometresPerHour);
    public static readonly Possible RollerMass = new("the mass of a roller or plate", 30, 80e3, 9e3);
    public static readonly Possible Payload = new("the load of a truck", 100, 100e3, 20e3);
    public static readonly Possible Frequency = new("the frequency of a drum", double.NegativeInfinity, 200, 50);
    public static readonly Possible Amplitude = new("the amplitude of a drum", double.NegativeInfinity, 0.01, 0.0004);
    public static readonly Possible Degree = new("the degree of compaction", double.NegativeInfinity, 1.15, 0.97);
    public static readonly Possible TruckTime = new("a part of a truck's round", double.NegativeInfinity, 24 * 3600, 20 * 60);
    public static readonly Possible Voltage = new("the voltage of a line", double.NegativeInfinity, 1500e3, 20e3);
    public static readonly Possible Light = new("light, the midday sun included,", double.NegativeInfinity, 150e3, 100);

    /// <summary>Whether a value lies within.</summary>
    public bool Has(double si) => si >= Low && si <= High;

    /// <summary>What is wrong with a value that lies outside, in its own unit.</summary>
    public string Message(string key, IMeasure measure) => measure.Si > High
        ? $"`{key}` is {MeasureReader.Write(measure)}; {What} is never above {Edge(High, measure.Unit)}."
        : $"`{key}` is {MeasureReader.Write(measure)}; {What} is never below {Edge(Low, measure.Unit)}.";

    /// <summary>The unit in which the same number could be, where there is one: of several, the one that comes nearest to an ordinary value.</summary>
    public string Hint(IMeasure measure) =>
        UnitTable.Of(measure.Unit.Dimension).Where(unit => unit.Spelling is not ("C" or "F") && Has(unit.ToSi(measure.Number)))
            .MinBy(unit => Distance(unit.ToSi(measure.Number), unit.Dimension)) is { } meant
            ? $"Check the unit: {MeasureReader.WriteNumber(measure.Number)} {meant.Spelling} would be possible."
            : "Check the unit and the point.";

    // Of lengths, times and masses the ratio tells how far apart they are, of temperatures the difference.
    private double Distance(double si, Dimension dimension) =>
        dimension == Dimension.Temperature || si * Typical <= 0 ? Math.Abs(si - Typical) : Math.Abs(Math.Log(si / Typical));

    private static string Edge(double si, Unit unit)
    {
        var number = unit.FromSi(si);
        return $"{MeasureReader.WriteNumber(Math.Round(number, Math.Abs(number) < 10 ? 2 : 0))} {unit.Spelling}";
    }
}

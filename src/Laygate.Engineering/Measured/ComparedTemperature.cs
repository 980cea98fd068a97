using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Records;

namespace Laygate.Engineering.Measured;

/// <summary>A measured temperature beside the computed one at its place and minute.</summary>
/// <param name="Row">The row.</param>
/// <param name="Course">Course.</param>
/// <param name="Age">Time since the screed of the course passed, s.</param>
/// <param name="Expected">Expected, °C.</param>
/// <param name="Low">5 % point of the samples, °C.</param>
/// <param name="High">95 % point, °C.</param>
public sealed record ComparedTemperature(MatTemperature Row, string Course, double Age, double Expected, double Low, double High)
{
    /// <summary>Whether it is one of the skin; skins are compared with skins only.</summary>
    public bool IsSkin => Row.Depth is 0;

    /// <summary>Measured less expected, K.</summary>
    public double Difference => Row.Value - Expected;

    /// <summary>Whether the measured value lies in the band.</summary>
    public bool IsInside => Row.Value >= Low && Row.Value <= High;
}

/// <summary>Why a row is not compared.</summary>
public enum NotCompared
{
    /// <summary>It states no station, no depth, or a course that the plan does not have.</summary>
    NoPlace,

    /// <summary>The station lies in no run, or in several.</summary>
    NoRun,

    /// <summary>The record does not tell when the place was laid.</summary>
    NotLaid,

    /// <summary>It was read before the screed of its course passed.</summary>
    BeforeScreed,

    /// <summary>It was read later than the mat is followed.</summary>
    TooLate,

    /// <summary>Plan or record do not give what the computation needs: weather, temperatures, layers.</summary>
    NoInput,

    /// <summary>More places than are solved.</summary>
    TooMany,
}

/// <summary>Readings of one kind over a time after the screed.</summary>
/// <param name="IsSkin">Whether they are of the skin.</param>
/// <param name="From">From this time after the screed on, s.</param>
/// <param name="To">Up to this time, s; infinite for the last group.</param>
/// <param name="Readings">How many.</param>
/// <param name="Places">At how many places: readings at one place are not independent.</param>
/// <param name="Inside">Share in the band, with the 90 % limits that as many independent places would have.</param>
/// <param name="Bias">Mean of measured less expected, K.</param>
/// <param name="Deviation">Standard deviation of the differences, K; null for one reading.</param>
public sealed record TemperatureGroup(bool IsSkin, double From, double To, int Readings, int Places, Band Inside, double Bias, double? Deviation);

/// <summary>Measured against computed temperatures of one shift.</summary>
/// <param name="Compared">Rows that are compared.</param>
/// <param name="Left">Rows that are not, by reason.</param>
/// <param name="Groups">Skin, then inside: all of them, then by time after the screed.</param>
/// <param name="WithMeasuredWeather">Whether the weather of the shift was measured.</param>
/// <param name="WithMeasuredLoads">Places whose load had its temperature measured.</param>
/// <param name="Places">Places.</param>
public sealed record MatComparison(
    IReadOnlyList<ComparedTemperature> Compared, IReadOnlyList<(NotCompared Reason, int Count)> Left, IReadOnlyList<TemperatureGroup> Groups, bool WithMeasuredWeather, int WithMeasuredLoads, int Places);

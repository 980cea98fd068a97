using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.Mat;
using Laygate.Model.Records;

namespace Laygate.Engineering.Measured;

/// <summary>A place whose temperatures were measured, as it was laid.</summary>
/// <param name="Inputs">Courses with the temperature of their loads, and what lies below.</param>
/// <param name="Weather">Weather from then on.</param>
/// <param name="Start">When the first course that counts was laid there.</param>
/// <param name="Rows">Rows, each with a depth and behind its screed.</param>
internal sealed record ComparedPlace(MatInputs Inputs, MatWeather Weather, DateTimeOffset Start, IReadOnlyList<MatTemperature> Rows)
{
    /// <summary>Times of the rows, s after the start.</summary>
    public double[] Times { get; } = [.. Rows.Select(row => (row.At - Start).TotalSeconds)];

    /// <summary>Time to solve for, s.</summary>
    public double Duration => Times.Max() + 60;

    /// <summary>What is asked of a curve: the temperature of each row.</summary>
    public IReadOnlyList<CoolingQuestion> Questions { get; } =
        [.. Rows.Select((row, i) => CoolingQuestion.Temperature($"row {i}", row.Depth is 0 ? CoolingPlace.Skin : CoolingPlace.Depth(row.Depth!.Value), (row.At - Start).TotalSeconds))];
}

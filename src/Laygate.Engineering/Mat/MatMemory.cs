using System.Collections.Concurrent;
using Laygate.Engineering.Cooling;

namespace Laygate.Engineering.Mat;

/// <summary>
/// Solves of one plan and of changed copies of it, found again by the numbers that went in: an answer that a change does
/// not touch is kept because its question is the same, and one that it does touch cannot be taken for it. Serves several threads.
/// </summary>
internal sealed class MatMemory
{
    private readonly ConcurrentDictionary<MatKey, (MatReading?, CoolingFailure?)> readings = new();
    private readonly ConcurrentDictionary<MatKey, CoolingResult> curves = new();
    private readonly ConcurrentDictionary<MatKey, (double?, CoolingFailure?)> times = new();

    /// <summary>Solves that were kept; for tests and measurements.</summary>
    public int Count => readings.Count + curves.Count + times.Count;

    /// <summary>A reading, from memory or newly solved.</summary>
    public (MatReading?, CoolingFailure?) Reading(MatKey key, Func<(MatReading?, CoolingFailure?)> solve) =>
        readings.TryGetValue(key, out var known) ? known : readings.GetOrAdd(key, solve());

    /// <summary>A whole curve, from memory or newly solved.</summary>
    public CoolingResult Curve(MatKey key, Func<CoolingResult> solve)
    {
        if (curves.TryGetValue(key, out var known))
        {
            return known;
        }

        var result = solve();
        return curves.GetOrAdd(key, new CoolingResult(result.Curve?.Keep(), result.Failure));
    }

    /// <summary>A time, from memory or newly solved.</summary>
    public (double?, CoolingFailure?) Time(MatKey key, Func<(double?, CoolingFailure?)> solve) =>
        times.TryGetValue(key, out var known) ? known : times.GetOrAdd(key, solve());
}

/// <summary>All numbers of a question to the solver of a cooling mat, in a fixed order; equal only bit by bit.</summary>
internal sealed class MatKey : IEquatable<MatKey>
{
    private readonly double[] numbers;
    private readonly string form;
    private readonly SpecificHeatLaw?[] laws;
    private readonly int hash;

    private MatKey(double[] numbers, string form, SpecificHeatLaw?[] laws)
    {
        this.numbers = numbers;
        this.form = form;
        this.laws = laws;
        var code = new HashCode();
        code.Add(form, StringComparer.Ordinal);
        foreach (var number in numbers)
        {
            code.Add(BitConverter.DoubleToInt64Bits(number));
        }

        hash = code.ToHashCode();
    }

    /// <summary>The key of a problem as <see cref="MatModel"/> builds it, and of what is looked for in its curve.</summary>
    public static MatKey Of(CoolingProblem problem, IEnumerable<double> lookedFor)
    {
        var weather = (TopBoundary.Weather)problem.Top;
        var all = new List<double>(128)
        {
            problem.Duration,
            problem.StopAt?.Layer ?? -1,
            problem.StopAt?.Celsius ?? double.NaN,
            problem.Bottom is BottomBoundary.GivenTemperature given ? given.Celsius : double.NaN,
            problem.Bottom is BottomBoundary.ConstantCoefficient hung ? hung.Coefficient : double.NaN,
            problem.Bottom is BottomBoundary.ConstantCoefficient air ? air.Fluid : double.NaN,
            problem.Layers.Count,
        };
        foreach (var layer in problem.Layers)
        {
            var material = layer.Material;
            all.AddRange([
                (int)layer.Role, layer.Thickness, layer.Initial.At(0), layer.Initial.Mean(0, layer.Thickness), layer.LaidAt, layer.ResistanceBelow,
                material.Conductivity, material.Density, material.SpecificHeat, material.Emissivity, material.Absorptivity]);
        }

        for (var i = 0; i < weather.Series.Count; i++)
        {
            var point = weather.Series[i];
            all.AddRange([point.Time, point.Air, point.Wind, point.Sky, point.Sun, point.AddedHeat, point.Rain, point.DewPoint]);
        }

        all.AddRange(lookedFor);
        return new MatKey([.. all], weather.Convection.Id, [.. problem.Layers.Select(layer => layer.Material.HeatLaw)]);
    }

    /// <inheritdoc/>
    public bool Equals(MatKey? other) => other is not null && hash == other.hash
        && string.Equals(form, other.form, StringComparison.Ordinal)
        && laws.AsSpan().SequenceEqual(other.laws)
        && System.Runtime.InteropServices.MemoryMarshal.AsBytes(numbers.AsSpan()).SequenceEqual(System.Runtime.InteropServices.MemoryMarshal.AsBytes(other.numbers.AsSpan()));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as MatKey);

    /// <inheritdoc/>
    public override int GetHashCode() => hash;
}

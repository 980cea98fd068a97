using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.SheetData;

/// <summary>A place along the runs of a pass.</summary>
/// <param name="Run">The run.</param>
/// <param name="Station">Station in m.</param>
public sealed record PlaceAlong(Run Run, double Station);

/// <summary>Mix of one course along its runs, laid one after the other in the given order.</summary>
internal sealed class MassAlong
{
    private readonly List<(Run Run, RunPart Part, double Start, double Mass)> parts = [];
    private readonly double density;

    /// <summary>Takes the runs.</summary>
    /// <param name="runs">Runs in their order.</param>
    /// <param name="course">The course.</param>
    /// <param name="density">Density of the finished course, kg/m³.</param>
    public MassAlong(IEnumerable<Run> runs, Course course, double density)
    {
        this.density = density;
        foreach (var run in runs)
        {
            foreach (var part in RunProfile.Parts(run, course))
            {
                parts.Add((run, part, Length, Total));
                Length += part.Length;
                Total += part.Volume * density;
            }
        }
    }

    /// <summary>Length of all runs, m.</summary>
    public double Length { get; private set; }

    /// <summary>Mix for all runs, kg.</summary>
    public double Total { get; private set; }

    /// <summary>Mix per length at the start, kg/m; NaN without runs.</summary>
    public double PerMetreAtStart => parts.Count == 0 ? double.NaN : parts[0].Part.WidthAtStart * parts[0].Part.Thickness * density;

    /// <summary>Mix from the start to a distance, kg, and the area that it covers, m²; a distance outside counts as the nearer end.</summary>
    /// <param name="distance">Distance from the start, m.</param>
    public (double Mass, double Area) Upto(double distance)
    {
        var (mass, area) = (0.0, 0.0);
        foreach (var (_, part, start, _) in parts)
        {
            var x = Math.Clamp(distance - start, 0, part.Length);
            var slope = part.Length > 0 ? (part.WidthAtEnd - part.WidthAtStart) / part.Length : 0;
            var covered = (part.WidthAtStart * x) + (slope * x * x / 2);
            (mass, area) = (mass + (covered * part.Thickness * density), area + covered);
        }

        return (mass, area);
    }

    /// <summary>Distance that a mass covers, m.</summary>
    /// <param name="mass">Mass from the start, kg.</param>
    public double Reached(double mass)
    {
        if (parts.Count == 0 || mass <= 0)
        {
            return 0;
        }

        var (_, part, start, before) = parts.FindLast(item => item.Mass <= mass);
        return start + Within(part, (mass - before) / density);
    }

    /// <summary>The place at a distance from the start; null without runs.</summary>
    public PlaceAlong? PlaceAt(double distance)
    {
        if (parts.Count == 0)
        {
            return null;
        }

        var run = parts.FindLast(item => item.Start < distance) is { Run: { } found } ? found : parts[0].Run;
        var into = distance - parts.First(item => ReferenceEquals(item.Run, run)).Start;
        var from = run.From?.Si ?? 0;
        return new PlaceAlong(run, run.To is { } to && to.Si < from ? from - into : from + into);
    }

    // Between two widths the section grows evenly: volume = t · (w0 · x + (w1 − w0) · x² / 2L).
    private static double Within(RunPart part, double volume)
    {
        var area = volume / part.Thickness;
        var slope = part.Length > 0 ? (part.WidthAtEnd - part.WidthAtStart) / part.Length : 0;
        var x = Math.Abs(slope) < 1e-12
            ? area / part.WidthAtStart
            : (Math.Sqrt(Math.Max(0, (part.WidthAtStart * part.WidthAtStart) + (2 * slope * area))) - part.WidthAtStart) / slope;
        return Math.Clamp(x, 0, part.Length);
    }
}

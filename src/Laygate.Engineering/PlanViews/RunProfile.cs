using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>A part of a run between two neighbouring stations: width changes evenly, thickness is constant.</summary>
/// <param name="Length">Length in m.</param>
/// <param name="WidthAtStart">Width at its start in m.</param>
/// <param name="WidthAtEnd">Width at its end in m.</param>
/// <param name="Thickness">Nominal compacted thickness in m.</param>
internal sealed record RunPart(double Length, double WidthAtStart, double WidthAtEnd, double Thickness)
{
    /// <summary>Greatest product of width and thickness, m².</summary>
    public double LargestSection => Math.Max(WidthAtStart, WidthAtEnd) * Thickness;

    /// <summary>Compacted volume, m³.</summary>
    public double Volume => 0.5 * (WidthAtStart + WidthAtEnd) * Length * Thickness;
}

/// <summary>
/// A run along its stations, in the direction of laying. Between two stated widths the width changes evenly (a taper);
/// two widths at one station are a step. A stated thickness holds from its station on.
/// </summary>
internal static class RunProfile
{
    /// <summary>Parts of a run for one course; empty when no width is stated.</summary>
    public static IReadOnlyList<RunPart> Parts(Run run, Course course)
    {
        if (run.WidthAlong.Count == 0)
        {
            return [];
        }

        var widths = Widths(run);
        var (start, end) = Ends(run);
        var thicknesses = Thicknesses(run, course);
        var stops = Stops(widths, thicknesses, start, end);
        var parts = new List<RunPart>(stops.Count);
        for (var i = 0; i + 1 < stops.Count; i++)
        {
            parts.Add(new RunPart(
                stops[i + 1] - stops[i], After(widths, stops[i]), Before(widths, stops[i + 1]), ThicknessFrom(thicknesses, course, stops[i])));
        }

        return parts.Count > 0
            ? parts
            : [new RunPart(0, After(widths, start), After(widths, start), ThicknessFrom(thicknesses, course, start))];
    }

    /// <summary>Length of a run in m, or null where a station is missing.</summary>
    public static double? Length(Run run) =>
        run is { From: { } from, To: { } to } ? Math.Abs(to.Si - from.Si) : null;

    /// <summary>Stretch of a run along the stations in m; null where a station is missing.</summary>
    public static (double Low, double High)? Stretch(Run run) => run is { From: { } from, To: { } to }
        ? (Math.Min(from.Si, to.Si), Math.Max(from.Si, to.Si))
        : null;

    /// <summary>Stated widths in m.</summary>
    public static IEnumerable<double> StatedWidths(Run run) => run.WidthAlong.Select(width => width.Value.Si);

    private static double Direction(Run run) => run is { From: { } from, To: { } to } && to.Si < from.Si ? -1 : 1;

    private static (double Start, double End) Ends(Run run)
    {
        var sign = Direction(run);
        IEnumerable<double> stations =
        [
            .. run.WidthAlong.Where(width => width.At is not null).Select(width => sign * width.At!.Si),
            .. run.Thickness.Select(thickness => sign * thickness.At.Si),
        ];
        var start = run.From is { } from ? sign * from.Si : stations.DefaultIfEmpty(0).Min();
        var end = run.To is { } to ? sign * to.Si : stations.DefaultIfEmpty(start).Max();
        return (start, Math.Max(start, end));
    }

    private static List<(double At, double Width)> Widths(Run run)
    {
        var sign = Direction(run);
        return [.. run.WidthAlong
            .Select(width => (At: width.At is null ? double.NegativeInfinity : sign * width.At.Si, width.Value.Si))
            .OrderBy(width => width.At)];
    }

    private static List<double> Stops(List<(double At, double Width)> widths, List<(double At, double Thickness)> thicknesses, double start, double end)
    {
        IEnumerable<double> inside = [.. widths.Select(width => width.At), .. thicknesses.Select(thickness => thickness.At)];
        return [.. inside.Where(at => at > start && at < end).Append(start).Append(end).Distinct().Order()];
    }

    private static bool IsOf(ThicknessAt thickness, Course course) =>
        thickness.Nominal is not null && string.Equals(thickness.Course, course.Id, StringComparison.Ordinal);

    private static List<(double At, double Thickness)> Thicknesses(Run run, Course course)
    {
        var sign = Direction(run);
        return [.. run.Thickness.Where(at => IsOf(at, course)).Select(at => (At: sign * at.At.Si, at.Nominal!.Si)).OrderBy(at => at.At)];
    }

    private static double ThicknessFrom(List<(double At, double Thickness)> thicknesses, Course course, double at) =>
        Upto(thicknesses, at) is >= 0 and var i ? thicknesses[i].Thickness : course.Thickness.Si;

    /// <summary>Place of the last of ordered stations that does not lie beyond a point; −1 where all do.</summary>
    private static int Upto(List<(double At, double Value)> ordered, double at)
    {
        var (low, high) = (0, ordered.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = ordered[middle].At <= at ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }

    private static double After(List<(double At, double Width)> widths, double at)
    {
        var i = Upto(widths, at);
        return i < 0 ? widths[0].Width : i == widths.Count - 1 ? widths[i].Width : Between(widths[i], widths[i + 1], at);
    }

    private static double Before(List<(double At, double Width)> widths, double at)
    {
        // The first that does not lie before the point: one of several at one station comes first.
        var j = Upto(widths, Math.BitDecrement(at)) + 1;
        return j == widths.Count ? widths[^1].Width : j == 0 ? widths[0].Width : Between(widths[j - 1], widths[j], at);
    }

    private static double Between((double At, double Width) a, (double At, double Width) b, double at) =>
        double.IsFinite(a.At) && b.At > a.At
            ? a.Width + ((b.Width - a.Width) * (at - a.At) / (b.At - a.At))
            : a.Width;
}

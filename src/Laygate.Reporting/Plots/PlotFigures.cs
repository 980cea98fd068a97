using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Plots;

/// <summary>All plots of a report. What has no data gives no plot, never empty axes.</summary>
public static class PlotFigures
{
    /// <summary>The plots in the order in which a job goes.</summary>
    /// <param name="report">The report.</param>
    /// <param name="prefix">Begins each id, so that several reports fit on a page.</param>
    public static IReadOnlyList<PlotFigure> Of(Report report, string prefix) =>
        [.. All(report).Select((make, index) => make(string.Create(CultureInfo.InvariantCulture, $"{prefix}-plot{index + 1}")))];

    private static IEnumerable<Func<string, PlotFigure>> All(Report report)
    {
        if (report.Plots is not { } plots)
        {
            yield break;
        }

        foreach (var buffer in plots.Buffers is { Minutes.Count: > 1 } shift ? shift.Buffers : [])
        {
            yield return id => BufferFigure.Of(plots.Buffers!, buffer, id);
        }

        if (plots.Loads is { Loads.Count: > 0 } loads)
        {
            yield return id => LoadFigure.Of(loads, id);
        }

        foreach (var body in plots.Bodies.Where(body => body.Minutes.Count > 1))
        {
            yield return id => CoolingFigure.Of(body, id);
        }

        foreach (var body in plots.Bodies.Where(body => body.Passes.Count > 0 && body.Passes.Max(pass => pass.Latest) > 0))
        {
            yield return id => RollingFigure.Of(body, id);
        }

        if (plots.Layout is { Runs.Count: > 0 } layout)
        {
            yield return id => LayoutFigure.Of(layout, id);
        }
    }
}

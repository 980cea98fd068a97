using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>Order of the loads: one lane for each course, each load from where it is needed to where it is used up.</summary>
internal static class LoadFigure
{
    private const int LongestTable = 400;

    public static PlotFigure Of(LoadPlot plot, string id)
    {
        const string Title = "Order of the loads along the length laid";
        var courses = plot.Loads.Select(load => load.Course).Distinct(StringComparer.Ordinal).ToList();
        var description = $"{plot.Loads.Count.ToString(CultureInfo.InvariantCulture)} loads: "
            + string.Join(", ", courses.Select(course => $"{plot.Loads.Count(load => string.Equals(load.Course, course, StringComparison.Ordinal)).ToString(CultureInfo.InvariantCulture)} for {PlainText.Show(course)}"))
            + ". The order is computed; on site the levels of the buffers decide.";
        return new PlotFigure(id, "supply", Title, description, SvgFinish.Of(Draw(plot, courses), id, Title, description), Table(plot));
    }

    private static Canvas Draw(LoadPlot plot, List<string> courses)
    {
        var end = plot.Loads.Max(load => load.EndsAt);
        var canvas = new Canvas($"length laid, {plot.LengthUnit}", null, 70 + (60 * courses.Count)).Span(0, end * 1.001, 0, courses.Count);
        for (var lane = 0; lane < courses.Count; lane++)
        {
            var own = plot.Loads.Where(load => string.Equals(load.Course, courses[lane], StringComparison.Ordinal)).ToList();
            for (var i = 0; i < own.Count; i++)
            {
                canvas.Box(own[i].NeededAt, own[i].EndsAt, lane + 0.12, lane + 0.62, i % 2 == 0 ? Ink.Hatch(lane) : OxyColors.White, Ink.Mid);
            }

            canvas.Say(0, lane + 0.8, $"{courses[lane]} ({own[0].Mix}), {own.Count.ToString(CultureInfo.InvariantCulture)} loads, last {Digits.Tenth(own[^1].Size)} {plot.MassUnit}", strong: true);
        }

        return canvas;
    }

    private static PlotTable Table(LoadPlot plot)
    {
        var start = plot.Loads.Select(load => load.TipsBy).FirstOrDefault(at => at is not null);
        return new PlotTable(
            ["load", "for", $"size, {plot.MassUnit}", $"needed at, {plot.LengthUnit}", $"used up at, {plot.LengthUnit}", "tip by"],
            [.. plot.Loads.Take(LongestTable).Select(load => (IReadOnlyList<string>)
            [
                load.Number.ToString(CultureInfo.InvariantCulture), PlainText.Show(load.Course), Digits.Tenth(load.Size), Digits.Whole(load.NeededAt), Digits.Whole(load.EndsAt),
                load.TipsBy is { } at && start is { } first ? Digits.Clock(at, first) : "—",
            ])]);
    }
}

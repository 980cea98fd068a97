using System.Globalization;
using Laygate.Engineering.Records.Happened;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>A course along its run: each load from where the one before was empty to where it was, as high as its temperature; half hours above, stops and hold points as lines.</summary>
internal static class StripFigure
{
    private const int LongestTable = 400;

    public static PlotFigure Of(HeldReport report, RunStrip strip, string id)
    {
        var title = $"Loads of {PlainText.Show(strip.Course)} along the run";
        var read = strip.Loads.Select(load => load.Temperature).OfType<double>().ToList();
        var description = $"{Count(strip.Loads.Count)} loads, {(read.Count == 0 ? "none with a temperature" : $"{Degrees(report, read.Min())} to {Degrees(report, read.Max())} on site")}; {Count(strip.Stops.Count)} stops. Numbers above the loads are times of day; a load without a temperature is empty.";
        return new PlotFigure(id, "supply", title, description, SvgFinish.Of(Draw(report, strip), id, title, description), Table(report, strip));
    }

    private static Canvas Draw(HeldReport report, RunStrip strip)
    {
        double Place(double station) => report.Length.FromSi(station);
        var read = strip.Loads.Select(load => load.Temperature).OfType<double>().Concat(strip.RefuseBelow is { } refused ? [refused] : Array.Empty<double>()).Select(one => Shown(report, one)).DefaultIfEmpty(0).ToList();
        var (low, high) = (Math.Floor((read.Min() - 8) / 10) * 10, Math.Ceiling((read.Max() + 4) / 10) * 10);
        var room = (high - low) * 0.34;
        var (from, to) = (strip.Loads.Min(load => Math.Min(load.From, load.To)), strip.Loads.Max(load => Math.Max(load.From, load.To)));
        var canvas = new Canvas($"station, {report.Length.Spelling}", $"in the load, {(IsMetric(report) ? "°C" : "°F")}", 300).Span(Place(from), Place(to), low, high + (1.1 * room));
        foreach (var (load, index) in strip.Loads.Select((load, index) => (load, index)))
        {
            canvas.Box(
                Place(Math.Min(load.From, load.To)), Place(Math.Max(load.From, load.To)), low, load.Temperature is { } temperature ? Shown(report, temperature) : low + (0.1 * (high - low)),
                load.Temperature is null ? OxyColors.White : Ink.Hatch(index % 2), Ink.Mid);
        }

        if (strip.RefuseBelow is { } limit)
        {
            canvas.Level(Shown(report, limit), "refused below");
        }

        foreach (var time in strip.Times.Where(time => strip.Times.Count <= 10 || time.At.Minute == 0))
        {
            canvas.Line([(Place(time.Station), high), (Place(time.Station), high + (0.12 * room))], Ink.Dark, LineStyle.Solid, 1);
            canvas.Say(Place(time.Station), high + (0.25 * room), time.At.ToString("HH:mm", CultureInfo.InvariantCulture), HorizontalAlignment.Center, size: 11);
        }

        foreach (var stop in strip.Stops)
        {
            canvas.Line([(Place(stop.Station), low), (Place(stop.Station), high + (0.42 * room))], Ink.Dark, LineStyle.Solid, 2.5);
            canvas.Say(Place(stop.Station), high + (0.55 * room), $"stop {stop.Text}", HorizontalAlignment.Center, size: 11);
        }

        // Names of neighbours stand at two heights, so that they do not run into each other.
        foreach (var (point, index) in strip.HoldPoints.Select((point, index) => (point, index)))
        {
            var top = index % 2 == 0 ? 0.72 : 0.88;
            canvas.Line([(Place(point.Station), low), (Place(point.Station), high + (top * room))], Ink.Mid, LineStyle.Dash, 1.3);
            canvas.Say(Place(point.Station), high + ((top + 0.07) * room), point.Text, Place(point.Station) > (Place(from) + Place(to)) / 2 ? HorizontalAlignment.Right : HorizontalAlignment.Left, size: 11);
        }

        return canvas;
    }

    private static PlotTable Table(HeldReport report, RunStrip strip) => new(
        ["load", $"from, {report.Length.Spelling}", $"to, {report.Length.Spelling}", "empty at", $"in the load, {(IsMetric(report) ? "°C" : "°F")}", "row"],
        [.. strip.Loads.Take(LongestTable).Select(load => (IReadOnlyList<string>)
        [
            PlainText.Show(load.Ticket), Digits.Whole(report.Length.FromSi(load.From)), Digits.Whole(report.Length.FromSi(load.To)), Digits.Clock(load.Emptied, strip.Loads[0].Emptied),
            load.Temperature is { } temperature ? Digits.Whole(Shown(report, temperature)) : "—", string.Create(CultureInfo.InvariantCulture, $"{PlainText.Show(load.Row.File)}:{load.Row.Line}"),
        ])]);

    private static bool IsMetric(HeldReport report) => report.Length.Spelling is not ("ft" or "yd");

    private static double Shown(HeldReport report, double celsius) => IsMetric(report) ? celsius : (celsius * 1.8) + 32;

    private static string Degrees(HeldReport report, double celsius) => Figures.WithUnit(Digits.Whole(Shown(report, celsius)), IsMetric(report) ? "°C" : "°F");

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}

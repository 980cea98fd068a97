using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>Rolling timetable against temperature: each pass with the time in which it comes and the mean temperature of the upper course then.</summary>
internal static class RollingFigure
{
    public static PlotFigure Of(BodyPlot body, string id)
    {
        var top = PlainText.Show(body.Courses[^1]);
        var title = $"Passes over a point of {top} and its temperature";
        var late = body.Cessations.FirstOrDefault(mark => string.Equals(mark.Course, body.Courses[^1], StringComparison.Ordinal)) is { } mark
            ? body.Passes.Count(pass => pass.Means[^1].Number < mark.Temperature)
            : (int?)null;
        var description = string.Create(CultureInfo.InvariantCulture, $"{body.Passes.Count} passes, the last by {Digits.Minutes(body.Passes.Max(pass => pass.Latest))} min after the last screed. ")
            + (late is null ? "No cessation temperature is known." : late == 0 ? $"All come while the mean of {top} is above its cessation temperature." : string.Create(CultureInfo.InvariantCulture, $"{late} of them come when the mean of {top} is below its cessation temperature."));
        return new PlotFigure(id, "rolling", title, description, SvgFinish.Of(Draw(body), id, title, description), Table(body));
    }

    /// <summary>Phases as stretches of time, with their names at the top in two rows.</summary>
    public static void Phases(Canvas canvas, BodyPlot body, double low, double high, double end)
    {
        for (var i = 0; i < body.Phases.Count; i++)
        {
            var phase = body.Phases[i];
            canvas.Box(phase.From, Math.Min(phase.To, end), low, high, Ink.Stretch, Ink.Faint);
            canvas.Say(Math.Max(phase.From, 0) + (0.004 * end), high - ((0.035 + ((i % 2) * 0.07)) * (high - low)), phase.Name);
        }
    }

    private static Canvas Draw(BodyPlot body)
    {
        var means = body.Passes.Select(pass => pass.Means[^1]).ToList();
        var levels = body.Cessations.Where(mark => string.Equals(mark.Course, body.Courses[^1], StringComparison.Ordinal)).ToList();
        var low = Math.Floor((Math.Min(means.Min(mean => mean.Low ?? mean.Number!.Value), levels.Select(mark => mark.Temperature).DefaultIfEmpty(double.MaxValue).Min()) - 8) / 10) * 10;
        var high = Math.Ceiling((means.Max(mean => mean.High ?? mean.Number!.Value) + 15) / 10) * 10;
        var end = body.Passes.Max(pass => pass.Latest) * 1.04;
        var canvas = new Canvas("minutes after the last screed", $"mean of {PlainText.Show(body.Courses[^1])}, {body.Unit}", 300).Span(0, end, low, high);
        Phases(canvas, body, low, high, end);
        foreach (var pass in body.Passes)
        {
            var mean = pass.Means[^1];
            canvas.Box(pass.Earliest, pass.Latest, mean.Low ?? mean.Number!.Value, mean.High ?? mean.Number!.Value, Ink.Hatch(1), Ink.Mid);
            canvas.Mark((pass.Earliest + pass.Latest) / 2, mean.Number!.Value, MarkerType.Diamond, 4);
        }

        levels.ForEach(mark => canvas.Level(mark.Temperature, $"cessation {Digits.Whole(mark.Temperature)} {body.Unit}"));
        return canvas;
    }

    private static PlotTable Table(BodyPlot body) => new(
        ["pass", "from, min", "done by, min", $"skin, {body.Unit}", $"core, {body.Unit}", .. body.Courses.Select(course => $"mean of {PlainText.Show(course)}, {body.Unit}")],
        [.. body.Passes.Select(pass => (IReadOnlyList<string>)
        [
            string.Create(CultureInfo.InvariantCulture, $"{PlainText.Show(pass.Phase)} {pass.Number}"), Digits.Tenth(pass.Earliest), Digits.Tenth(pass.Latest),
            Band(pass.Skin), Band(pass.Core), .. pass.Means.Select(Band),
        ])]);

    private static string Band(ShownValue value) => value is { Low: { } low, High: { } high }
        ? $"{Digits.Whole(value.Number)} ({Digits.Whole(low)} to {Digits.Whole(high)})"
        : Digits.Whole(value.Number);
}

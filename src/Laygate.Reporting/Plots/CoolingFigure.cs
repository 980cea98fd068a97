using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>Temperature of each course over time with rolling phases and cessation.</summary>
internal static class CoolingFigure
{
    public static PlotFigure Of(BodyPlot body, string id)
    {
        var title = $"Temperature of {string.Join(" and ", body.Courses.Select(PlainText.Show))} behind the last screed";
        var description = Description(body);
        return new PlotFigure(id, "rolling", title, description, SvgFinish.Of(Draw(body), id, title, description), Table(body));
    }

    private static Canvas Draw(BodyPlot body)
    {
        var values = body.Lines.SelectMany(line => line.Values).OfType<double>().Concat(body.Cessations.Select(mark => mark.Temperature)).ToList();
        var (from, to) = (body.Minutes[0], body.Minutes[^1]);
        var (low, high) = (Math.Floor((values.Min() - 5) / 10) * 10, Math.Ceiling((values.Max() + 12) / 10) * 10);
        var canvas = new Canvas("minutes after the last screed", $"temperature, {body.Unit}", 360).Span(from, to, low, high);
        RollingFigure.Phases(canvas, body, low, high, to);
        foreach (var line in body.Lines)
        {
            Line(canvas, body, line, to - from);
        }

        foreach (var level in body.Cessations.GroupBy(mark => mark.Temperature))
        {
            canvas.Level(level.Key, $"cessation {string.Join(", ", level.Select(mark => mark.Course))}: {Digits.Whole(level.Key)} {body.Unit}");
        }

        foreach (var mark in body.Cessations.Where(mark => mark.At >= from && mark.At <= to))
        {
            canvas.Mark(mark.At!.Value, mark.Temperature, MarkerType.Circle);
        }

        return canvas;
    }

    private static void Line(Canvas canvas, BodyPlot body, PlotLine line, double length)
    {
        var points = body.Minutes.Zip(line.Values).Where(point => point.Second is not null).Select(point => (X: point.First, Y: point.Second!.Value)).ToList();
        if (points.Count == 0)
        {
            return;
        }

        var course = body.Courses.ToList().IndexOf(line.Name);
        var (colour, style, width) = line.Place switch
        {
            Place.Skin => (Ink.Mid, LineStyle.Dot, 1.3),
            Place.Core => (Ink.Mid, LineStyle.DashDotDot, 1.3),
            _ => (Ink.Dark, Ink.Dash(course), 2.4),
        };
        canvas.Line(points, colour, style, width);

        // Each name stands on its own part of the line, so that names of neighbouring lines do not meet.
        var share = line.Place switch { Place.Skin => 0.12, Place.Core => 0.3, _ => 0.5 + (0.2 * course) };
        var at = points.MinBy(point => Math.Abs(point.X - (body.Minutes[0] + (share * length))));
        canvas.Say(at.X, at.Y, Name(line), HorizontalAlignment.Left, line.Place == Place.Skin ? VerticalAlignment.Top : VerticalAlignment.Bottom, strong: line.Name.Length > 0);
    }

    private static string Name(PlotLine line) => (line.Place switch
    {
        Place.Skin => "skin",
        Place.Core => "core",
        _ => $"mean of {line.Name}",
    }) + (line.Learnt is null ? string.Empty : ", as learnt");

    /// <summary>What the lines follow of what recorded shifts taught, with its uncertainty.</summary>
    private static string Learnt(BodyPlot body) => string.Concat(body.Lines.Where(line => line is { Learnt: not null, Name.Length: > 0 })
        .Select(line => $"{PlainText.Show(line.Name)} follows what recorded shifts taught, {LearntText.Of(line.Learnt!)}; it is more careful than what is assumed. "));

    private static string Description(BodyPlot body)
    {
        var parts = body.Cessations.Select(mark => mark.At is { } at
            ? $"The mean of {PlainText.Show(mark.Course)} reaches its cessation temperature of {Digits.Whole(mark.Temperature)} {body.Unit} {Digits.Minutes(at)} min after the last screed{Band(mark)}."
            : $"The mean of {PlainText.Show(mark.Course)} has no moment at which it reaches its cessation temperature of {Digits.Whole(mark.Temperature)} {body.Unit} while it is rolled.");
        return When(body) + Learnt(body) + string.Join(' ', parts.DefaultIfEmpty("No cessation temperature is known."));
    }

    /// <summary>Which moment of laying the lines follow: each course the one that is worst for it, skin and core that of the uppermost course.</summary>
    private static string When(BodyPlot body)
    {
        var moments = body.Lines.Select(line => line.Laid).Distinct().ToList();
        return moments switch
        {
            [null] => "Worst stated weather. ",
            [{ } one] => $"As laid at {At(one)}, the worst moment. ",
            _ => $"Each course as laid at the moment that is worst for it: {string.Join(", ", body.Lines.Where(line => line.Name.Length > 0).Select(line => $"{PlainText.Show(line.Name)} {At(line.Laid)}"))}; skin and core with the uppermost. ",
        };

        static string At(DateTimeOffset? moment) => moment?.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "in the stated envelope";
    }

    private static string Band(CessationMark mark) => mark is { Earliest: { } low, Latest: { } high } ? $" ({Digits.Minutes(low)} to {Digits.Minutes(high)})" : string.Empty;

    private static PlotTable Table(BodyPlot body)
    {
        var step = body.Minutes[^1] - body.Minutes[0] > 90 ? 20 : 10;
        var rows = new List<IReadOnlyList<string>>();
        for (var i = 0; i < body.Minutes.Count; i += step)
        {
            rows.Add([Digits.Tenth(body.Minutes[i]), .. body.Lines.Select(line => Digits.Whole(line.Values[i]))]);
        }

        return new PlotTable(["min after the last screed", .. body.Lines.Select(line => $"{PlainText.Show(Name(line))}, {body.Unit}")], rows);
    }
}

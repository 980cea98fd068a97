using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>Runs and joints from above: a lane for each run, its width to scale within the lanes, joints and obstacles at their stations.</summary>
internal static class LayoutFigure
{
    public static PlotFigure Of(LayoutPlot plot, string id)
    {
        const string Title = "Runs and joints from above";
        var joints = plot.Runs.Sum(run => run.Joints.Count);
        var placed = plot.Runs.Sum(run => run.Joints.Count(joint => joint.Station is not null));
        var description = string.Create(CultureInfo.InvariantCulture, $"{plot.Runs.Count} {(plot.Runs.Count == 1 ? "run" : "runs")}, {joints} {(joints == 1 ? "joint" : "joints")}. ")
            + (joints > placed ? "A joint whose station the plan does not give is only in the table. " : string.Empty)
            + "Lanes stand one above the other in the order of the plan: how runs lie beside each other is not stated. Width is drawn larger than length.";
        return new PlotFigure(id, "bond-and-joints", Title, description, SvgFinish.Of(Draw(plot), id, Title, description), Table(plot));
    }

    private static Canvas Draw(LayoutPlot plot)
    {
        var widest = plot.Runs.Max(run => run.Widths.Max(width => width.Width));
        var (from, to) = (plot.Runs.Min(run => Math.Min(run.From, run.To)), plot.Runs.Max(run => Math.Max(run.From, run.To)));
        var margin = 0.02 * (to - from);
        var canvas = new Canvas($"station, {plot.Unit}", null, 70 + (95 * plot.Runs.Count)).Span(from - margin, to + margin, 0, plot.Runs.Count);
        for (var i = 0; i < plot.Runs.Count; i++)
        {
            Run(canvas, plot.Runs[i], plot.Runs.Count - 1 - i, widest, plot.Unit);
        }

        return canvas;
    }

    private static void Run(Canvas canvas, RunOutline run, int lane, double widest, string unit)
    {
        var middle = lane + 0.4;
        var widths = run.Widths.OrderBy(width => width.Station * Math.Sign(run.To - run.From)).ToList();
        for (var i = 0; i < widths.Count; i++)
        {
            // Between two stated stations the width is drawn as stated at the first; the check itself goes from one to the other.
            var end = i + 1 < widths.Count ? widths[i + 1].Station : run.To;
            var half = 0.32 * widths[i].Width / widest;
            canvas.Box(Math.Min(widths[i].Station, end), Math.Max(widths[i].Station, end), middle - half, middle + half, Ink.Hatch(2), Ink.Dark);
        }

        foreach (var joint in run.Joints.Where(joint => joint.Station is not null))
        {
            canvas.Line([(joint.Station!.Value, middle - 0.38), (joint.Station!.Value, middle + 0.38)], Ink.Dark, LineStyle.Solid, 3);
            canvas.Say(joint.Station!.Value, middle - 0.38, joint.Id, joint.Station > (run.From + run.To) / 2 ? HorizontalAlignment.Right : HorizontalAlignment.Left, VerticalAlignment.Middle);
        }

        foreach (var obstacle in run.Obstacles.Where(obstacle => obstacle.Station is not null))
        {
            canvas.Mark(obstacle.Station!.Value, middle, MarkerType.Square, 4);
        }

        var span = run.Widths.Select(width => width.Width).ToList();
        var wide = span.Min().Equals(span.Max()) ? Digits.Tenth(span[0]) : $"{Digits.Tenth(span.Min())} to {Digits.Tenth(span.Max())}";
        canvas.Say(Math.Min(run.From, run.To), lane + 0.87, $"{run.Id}: {string.Join(" and ", run.Courses)}, {wide} {unit} wide, laid {(run.To > run.From ? "to the right" : "to the left")}", strong: true);
    }

    private static PlotTable Table(LayoutPlot plot) => new(
        ["what", $"from, {plot.Unit}", $"to, {plot.Unit}", $"width, {plot.Unit}", "where the plan says"],
        [.. plot.Runs.SelectMany(Rows)]);

    private static IEnumerable<IReadOnlyList<string>> Rows(RunOutline run)
    {
        yield return [$"run {PlainText.Show(run.Id)}", Digits.Whole(run.From), Digits.Whole(run.To), string.Join("; ", run.Widths.Select(width => Digits.Tenth(width.Width))), "—"];
        foreach (var mark in run.Joints.Concat(run.Obstacles))
        {
            yield return [$"{PlainText.Show(mark.What)} {PlainText.Show(mark.Id)}", Digits.Whole(mark.Station), Digits.Whole(mark.Station), "—", PlainText.Show(mark.Words ?? "—")];
        }
    }
}

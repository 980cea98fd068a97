using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>Level of one buffer over the shift: median, band of nine shifts in ten, and the levels between which it may move.</summary>
internal static class BufferFigure
{
    private const int Rows = 13;

    public static PlotFigure Of(BufferPlot plot, BufferCurve buffer, string id)
    {
        var title = $"Mix held for {PlainText.Show(buffer.Course)} over the shift";
        var description = Description(plot, buffer);
        return new PlotFigure(id, "supply", title, description, SvgFinish.Of(Draw(plot, buffer), id, title, description), Table(plot, buffer));
    }

    private static Canvas Draw(BufferPlot plot, BufferCurve buffer)
    {
        // Clock times have their ticks on the full hour.
        var shift = plot.Start?.Minute ?? 0;
        var end = plot.Minutes[^1] + shift;
        var top = 1.12 * Math.Max(buffer.Capacity, buffer.High.Max());
        var canvas = new Canvas(plot.Start is null ? "minutes after the start of laying" : "local time", $"held, {plot.Unit}", 260).Span(shift, end, 0, top);
        if (plot.Start is { } start)
        {
            canvas.LabelAcross(minute => Digits.Clock(start.AddMinutes(minute - shift), start), end > 600 ? 120 : 60);
        }

        foreach (var stop in plot.Stops)
        {
            canvas.Box(stop.From + shift, stop.To + shift, 0, top, Ink.Stretch, Ink.Mid);
            canvas.Say(stop.From + shift, top, stop.Name, HorizontalAlignment.Left, VerticalAlignment.Top);
        }

        canvas.Band([.. plot.Minutes.Select((minute, i) => (minute + shift, buffer.Low[i], buffer.High[i]))], Ink.Hatch(1));
        canvas.Line(plot.Minutes.Select(minute => minute + shift).Zip(buffer.Middle), Ink.Dark, LineStyle.Solid, 2.2);
        canvas.Level(buffer.Capacity, $"full: {Digits.Tenth(buffer.Capacity)} {plot.Unit}", LineStyle.Solid);
        canvas.Level(buffer.Lowest, $"lowest workable: {Digits.Tenth(buffer.Lowest)} {plot.Unit}");
        if (buffer.Call is { } call)
        {
            canvas.Level(call, $"call the next load: {Digits.Tenth(call)} {plot.Unit}", LineStyle.Dot);
        }

        return canvas;
    }

    private static string Description(BufferPlot plot, BufferCurve buffer)
    {
        var near = Enumerable.Range(0, plot.Minutes.Count).Count(i => buffer.Low[i] <= buffer.Lowest * 1.001);
        var share = Digits.Whole(100.0 * near / plot.Minutes.Count);
        var stops = $"Chance that the paver stops at least once for want of mix: {Text(plot.StopChance, RoundingKind.Probability)}; stops in ten shifts: {Digits.Tenth(10 * plot.StopsExpected.Number)}"
            + (plot.StopLength is { } length ? $", each of {Text(length, RoundingKind.Minutes)} on average." : ".");
        return $"{plot.Shifts.ToString(CultureInfo.InvariantCulture)} simulated shifts: line is the median, nine shifts in ten lie in the band. In {share} % of the time at least one shift in twenty is at or below the lowest workable level. {stops}";
    }

    private static string Text(ShownValue value, RoundingKind kind) => Figures.WithUnit(Rounding.Text(value.Number ?? 0, kind, 0), value.Unit);

    private static PlotTable Table(BufferPlot plot, BufferCurve buffer)
    {
        var step = Math.Max(1, (plot.Minutes.Count - 1) / (Rows - 1));
        return new PlotTable(
            [plot.Start is null ? "min after the start" : "time", $"5 % of shifts below, {plot.Unit}", $"median, {plot.Unit}", $"5 % of shifts above, {plot.Unit}"],
            [.. Enumerable.Range(0, plot.Minutes.Count).Where(i => i % step == 0).Select(i => (IReadOnlyList<string>)
            [
                plot.Start is { } start ? Digits.Clock(start.AddMinutes(plot.Minutes[i]), start) : Digits.Whole(plot.Minutes[i]),
                Digits.Tenth(buffer.Low[i]), Digits.Tenth(buffer.Middle[i]), Digits.Tenth(buffer.High[i]),
            ])]);
    }
}

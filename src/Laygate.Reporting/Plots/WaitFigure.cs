using System.Globalization;

namespace Laygate.Reporting.Plots;

/// <summary>How many days submissions waited for a decision.</summary>
public static class WaitFigure
{
    private const int Last = 14;

    /// <summary>One bar for each day, all beyond two weeks in the last one.</summary>
    /// <param name="days">Days of each decided submission; at least one.</param>
    /// <param name="id">Id in the page.</param>
    public static PlotFigure Of(IReadOnlyList<double> days, string id)
    {
        const string Title = "Days from receipt to the first decision";
        var counts = Enumerable.Range(0, Last + 1).Select(day => days.Count(one => Math.Min(Math.Floor(one), Last) == day)).ToList();
        var description = string.Create(CultureInfo.InvariantCulture, $"{days.Count} decided submissions, {counts[0]} of them within a day, {counts[Last]} after {Last} days or more.");
        return new PlotFigure(id, "queue", Title, description, SvgFinish.Of(Draw(counts), id, Title, description), new PlotTable(
            ["days", "submissions"],
            [.. counts.Select((count, day) => (IReadOnlyList<string>)[Name(day), count.ToString(CultureInfo.InvariantCulture)])]));
    }

    private static Canvas Draw(List<int> counts)
    {
        var canvas = new Canvas("days", "submissions", 240).Span(0, Last + 1, 0, Math.Max(1, counts.Max() * 1.08));
        for (var day = 0; day < counts.Count; day++)
        {
            canvas.Box(day + 0.1, day + 0.9, 0, counts[day], Ink.Hatch(0), Ink.Mid);
        }

        return canvas;
    }

    private static string Name(int day) => day == Last ? FormattableString.Invariant($"{day} and more") : FormattableString.Invariant($"{day} to {day + 1}");
}

using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>Laying hour by hour: pass, warn or fail, each by word, shape and tone.</summary>
internal static class HourFigure
{
    public static PlotFigure Of(LayingOutlook outlook, string id)
    {
        const string Title = "Laying hour by hour";
        var description = string.Join(", ", outlook.Hours.GroupBy(hour => hour.Verdict).OrderBy(group => group.Key)
            .Select(group => $"{group.Count().ToString(CultureInfo.InvariantCulture)} {(group.Count() == 1 ? "hour" : "hours")} {OutlookWords.Of(group.Key)}"))
            + $". Judged by the rules that depend on the weather: {string.Join(", ", outlook.Rules.Select(PlainText.Show))}.";
        return new PlotFigure(id, "weather", Title, description, SvgFinish.Of(Draw(outlook), id, Title, description), Table(outlook));
    }

    private static Sheet Draw(LayingOutlook outlook)
    {
        var start = outlook.Hours[0].At;
        var hours = outlook.Hours.Select(hour => (hour, X: (hour.At - start).TotalHours)).ToList();
        var sheet = new Sheet($"start of the hour, local time, from {start.ToString("ddd yyyy-MM-dd", CultureInfo.InvariantCulture)}", null, 150) { Rim = false }.Span(0, hours[^1].X + 1, 0, 3);
        sheet.LabelAcross(x => start.AddHours(x).ToString("HH:mm", CultureInfo.InvariantCulture), hours.Count > 12 ? 2 : 1);
        foreach (var (hour, x) in hours)
        {
            // Height says the same as tone and word.
            var (top, tone) = hour.Verdict switch
            {
                LayingVerdict.Pass => (1.0, OxyColor.FromRgb(0xbf, 0xe3, 0xc9)),
                LayingVerdict.Warn => (2.0, OxyColor.FromRgb(0xff, 0xdf, 0x9e)),
                _ => (3.0, OxyColor.FromRgb(0xf6, 0xc1, 0xbb)),
            };
            sheet.Box(x + 0.03, x + 0.97, 0, top, tone, Ink.Dark);
            sheet.Say(x + 0.5, 0.5, OutlookWords.Of(hour.Verdict), HorizontalAlignment.Center, strong: true, size: hours.Count > 12 ? 9 : hours.Count > 8 ? 11 : 13);
        }

        return sheet;
    }

    private static PlotTable Table(LayingOutlook outlook) => new(
        ["hour", "laying", "decided by", "margins", "call the plant by"],
        [.. outlook.Hours.Select(hour => (IReadOnlyList<string>)
        [
            OutlookWords.Time(hour.At), OutlookWords.Of(hour.Verdict), hour.Broken.Count > 0 ? OutlookWords.Of(hour.Broken[0]).Replace(PlainText.Glue, ' ') : "—",
            hour.Limits.Count > 0 ? string.Join("; ", OutlookWords.Margins(hour.Limits)).Replace(PlainText.Glue, ' ') : "—",
            hour.CallBy is { } by ? OutlookWords.Time(by) : "—",
        ])]);
}

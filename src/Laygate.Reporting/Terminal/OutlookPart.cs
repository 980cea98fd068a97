using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>Laying hour by hour, or workable weather.</summary>
internal sealed class OutlookPart(Page page)
{
    public void Write(LayingOutlook? outlook)
    {
        if (outlook is null)
        {
            return;
        }

        page.Blank();
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, outlook.Hours.Count > 0 ? "Laying hour by hour" : "Weather in which the plan works"),
            new TextSpan(TextStyle.Quiet, outlook.Rules.Count > 0 ? $" (judged by {PlainText.Show(string.Join(", ", outlook.Rules))})" : string.Empty)]);
        WriteUnsaid(outlook);
        WriteOnce(outlook);
        foreach (var hour in outlook.Hours)
        {
            Write(hour, outlook.InEveryHour);
        }

        foreach (var lead in outlook.Leads)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Quiet, $"From the call to the first load at the mat with {PlainText.Show(lead.Trucks)}: {OutlookWords.Number(lead.Lead)} (loading before the start, ticket, journey on a bad day).")]);
        }

        Write(outlook.Weather, outlook.Hours.Count == 0);
    }

    // What nobody can read out of the rest comes first.
    private void WriteUnsaid(LayingOutlook outlook)
    {
        if (OutlookWords.Unsaid(outlook) is { } unsaid)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Warn, unsaid)]);
            OutlookWords.NotJudged(outlook).ToList().ForEach(line => page.Flow(4, 6, [new TextSpan(TextStyle.Plain, line)]));
        }
    }

    private void WriteOnce(LayingOutlook outlook)
    {
        if (outlook.Hours.Count == 0)
        {
            return;
        }

        page.Flow(2, 4, [new TextSpan(TextStyle.Quiet, "What does not depend on the weather stands with the findings; no hour changes it. Margins are the distance of the expected value inside its limit, below zero outside, the least of each rule.")]);
        if (OutlookWords.Legend(outlook) is { Length: > 0 } legend)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Quiet, legend + ".")]);
        }

        if (outlook.InEveryHour.Count > 0)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, "The same in every hour:")]);
            outlook.InEveryHour.ToList().ForEach(limit => page.Flow(4, 6, [new TextSpan(TextStyle.Plain, OutlookWords.Always(limit) + ".")]));
        }
    }

    private void Write(HourOutlook hour, IReadOnlyList<LimitMargin> always)
    {
        var call = hour.CallBy is { } by ? $"; call the plant by {OutlookWords.Time(by)}" : string.Empty;
        page.Flow(2, 4, [
            new TextSpan(TextStyle.Plain, OutlookWords.Time(hour.At) + "\u00A0 "),
            new TextSpan(StyleOf(hour.Verdict), OutlookWords.Of(hour.Verdict)),
            new TextSpan(TextStyle.Plain, call)]);
        var broken = hour.Broken.Except(always.Select(limit => limit.Limit)).ToList();
        if (broken.Count > 0)
        {
            var more = broken.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $", and {broken.Count - 1} more") : string.Empty;
            page.Flow(6, 8, [new TextSpan(TextStyle.Plain, OutlookWords.Of(broken[0]) + more)]);
        }
        else if (hour.Nearest is { } nearest)
        {
            page.Flow(6, 8, [new TextSpan(TextStyle.Quiet, "nearest limit: " + OutlookWords.Of(nearest))]);
        }

        if (hour.Limits.Count > 0)
        {
            page.Flow(6, 8, [new TextSpan(TextStyle.Quiet, "margins: " + string.Join("; ", OutlookWords.Margins(hour.Limits)))]);
        }
    }

    private void Write(WorkableWeather? weather, bool wanted)
    {
        if (weather is null)
        {
            if (wanted)
            {
                page.Flow(2, 4, [new TextSpan(TextStyle.Plain, "Not computed: state `weather.hours`, or in `weather.envelope` the keys `air_lowest`, `base_lowest` and `wind_highest`.")]);
            }

            return;
        }

        foreach (var axis in weather.Alone)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, OutlookWords.Alone(axis, weather.IsUnknown))]);
        }

        foreach (var pair in weather.Pairs)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, Pair(pair))]);
        }
    }

    private static string Pair(PairLimit pair)
    {
        var level = pair.Level == LayingVerdict.Pass ? "everything passes" : "nothing fails";
        return pair.SecondValue is { } value
            ? $"With {OutlookWords.Of(pair.First)} {OutlookWords.Number(pair.FirstValue)}, {level} to {OutlookWords.Of(pair.Second)} {OutlookWords.Number(value)}."
            : $"With {OutlookWords.Of(pair.First)} {OutlookWords.Number(pair.FirstValue)} there is no {OutlookWords.Of(pair.Second)} with which {level}.";
    }

    private static TextStyle StyleOf(LayingVerdict verdict) => verdict switch
    {
        LayingVerdict.Pass => Styles.Of(FindingGroup.Passed),
        LayingVerdict.Warn => Styles.Of(FindingGroup.Warned),
        _ => Styles.Of(FindingGroup.Failed),
    };
}

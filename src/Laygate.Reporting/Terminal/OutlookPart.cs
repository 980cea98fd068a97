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
            new TextSpan(TextStyle.Quiet, $" (judged by {PlainText.Show(string.Join(", ", outlook.Rules))})")]);
        foreach (var hour in outlook.Hours)
        {
            Write(hour);
        }

        foreach (var lead in outlook.Leads)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Quiet, $"From the call to the first load at the mat with {PlainText.Show(lead.Trucks)}: {OutlookWords.Number(lead.Lead)} (loading before the start, ticket, journey on a bad day).")]);
        }

        Write(outlook.Weather, outlook.Hours.Count == 0);
    }

    private void Write(HourOutlook hour)
    {
        var call = hour.CallBy is { } by ? $"; call the plant by {OutlookWords.Time(by)}" : string.Empty;
        page.Flow(2, 4, [
            new TextSpan(TextStyle.Plain, OutlookWords.Time(hour.At) + "\u00A0 "),
            new TextSpan(StyleOf(hour.Verdict), OutlookWords.Of(hour.Verdict)),
            new TextSpan(TextStyle.Plain, call)]);
        if (hour.Broken.Count > 0)
        {
            var more = hour.Broken.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $", and {hour.Broken.Count - 1} more") : string.Empty;
            page.Flow(6, 8, [new TextSpan(TextStyle.Plain, OutlookWords.Of(hour.Broken[0]) + more)]);
        }
        else if (hour.Nearest is { } nearest)
        {
            page.Flow(6, 8, [new TextSpan(TextStyle.Quiet, "nearest limit: " + OutlookWords.Of(nearest))]);
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
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, Alone(axis))]);
        }

        foreach (var pair in weather.Pairs)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, Pair(pair))]);
        }
    }

    private static string Alone(AxisLimit axis)
    {
        var name = Names.Capital(OutlookWords.Of(axis.Axis));
        var go = axis.Go is { } value ? $"everything passes to {OutlookWords.Number(value)}" : "not everything passes at any value looked at";
        var safe = axis.NoFailure is { } still ? $"nothing fails to {OutlookWords.Number(still)}" : "something fails at every value looked at";
        var first = axis.BreaksFirst is { } broken ? $"; then: {OutlookWords.Of(broken)}" : string.Empty;
        return $"{name}, the others as stated (plan: {OutlookWords.Number(axis.Stated)}): {go}; {safe}{first}.";
    }

    private static string Pair(PairLimit pair)
    {
        var level = pair.Level == LayingVerdict.Go ? "everything passes" : "nothing fails";
        return pair.SecondValue is { } value
            ? $"With {OutlookWords.Of(pair.First)} {OutlookWords.Number(pair.FirstValue)}, {level} to {OutlookWords.Of(pair.Second)} {OutlookWords.Number(value)}."
            : $"With {OutlookWords.Of(pair.First)} {OutlookWords.Number(pair.FirstValue)} there is no {OutlookWords.Of(pair.Second)} with which {level}.";
    }

    private static TextStyle StyleOf(LayingVerdict verdict) => verdict switch
    {
        LayingVerdict.Go => Styles.Of(FindingGroup.Passed),
        LayingVerdict.Caution => Styles.Of(FindingGroup.Warned),
        _ => Styles.Of(FindingGroup.Failed),
    };
}

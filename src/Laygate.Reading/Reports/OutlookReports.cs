using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Reads laying hour by hour, or workable weather.</summary>
internal static class OutlookReports
{
    /// <summary>The outlook.</summary>
    public static LayingOutlook Of(JsonPlace place) => new(
        place.List("hours", Hour),
        place.List("leads", Lead),
        place.Maybe("weather") is { } weather ? new WorkableWeather(weather.List("alone", Alone), weather.List("pairs", Pair)) { IsUnknown = weather.Flag("unknown") } : null,
        place.List("rules", rule => rule.AsText()))
    {
        NotJudged = place.List("not_judged", Unjudged),
        InEveryHour = place.List("in_every_hour", Margin),
    };

    private static HourOutlook Hour(JsonPlace place) => new(
        place.Moment("at"), Verdict(place, "verdict"), place.List("broken", Broken), place.MaybeMoment("call_by"), MaybeBroken(place, "nearest"))
    {
        Limits = place.List("limits", Margin),
    };

    /// <summary>A report of version 1 calls an hour go, caution or no-go.</summary>
    private static LayingVerdict Verdict(JsonPlace place, string key) => place.Text(key) switch
    {
        "go" => LayingVerdict.Pass,
        "caution" => LayingVerdict.Warn,
        "no-go" => LayingVerdict.Fail,
        _ => place.Word<LayingVerdict>(key),
    };

    private static UnjudgedRule Unjudged(JsonPlace place) => new(
        new FindingReference(place.Text("rule"), place.Text("title"), place.Text("address")),
        place.Word<Outcome>("outcome"),
        place.MaybeWord<Status>("status") ?? Status.None,
        place.List("missing", ReportParts.Input),
        place.List("notes", ReportParts.Note));

    private static LimitMargin Margin(JsonPlace place) => new(Broken(place), ReportParts.MaybeValue(place, "margin"));

    private static BrokenLimit? MaybeBroken(JsonPlace place, string key) => place.Maybe(key) is { } broken ? Broken(broken) : null;

    private static BrokenLimit Broken(JsonPlace place) => new(
        new FindingReference(place.Text("rule"), place.Text("title"), place.Text("address")),
        place.Word<Status>("status"),
        ReportParts.MaybeValue(place, "value"),
        ReportParts.MaybeLimit(place, "limit"),
        place.Flag("on_expected_values_only"));

    private static PlantLead Lead(JsonPlace place) => new(place.Text("trucks"), place.MaybeText("plant"), ReportParts.Value(place.Of("lead")));

    private static AxisLimit Alone(JsonPlace place) => new(
        place.Word<WeatherAxis>("axis"),
        ReportParts.Value(place.Of("stated")),
        ReportParts.MaybeValue(place, "all_pass") ?? ReportParts.MaybeValue(place, "go"),
        ReportParts.MaybeValue(place, "no_failure"),
        MaybeBroken(place, "breaks_first"))
    {
        NotBeyond = ReportParts.MaybeValue(place, "not_beyond"),
    };

    private static PairLimit Pair(JsonPlace place) => new(
        place.Word<WeatherAxis>("first"),
        ReportParts.Value(place.Of("first_value")),
        place.Word<WeatherAxis>("second"),
        ReportParts.MaybeValue(place, "second_value"),
        Verdict(place, "level"));
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Levers;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Reads one finding.</summary>
internal static class FindingReports
{
    /// <summary>The finding.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="departures">Departures of the same report.</param>
    public static Finding Of(JsonPlace place, IReadOnlyList<DepartureUse> departures) => new()
    {
        Rule = place.Text("rule"),
        RuleName = place.Text("name"),
        Title = place.Text("title"),
        Why = place.Text("why"),
        Remedy = place.Text("remedy"),
        Local = place.Text("local"),
        Severity = place.Maybe("severity") is { } severity ? SeverityOf(severity) : null,
        Check = place.Word<CheckKind>("check"),
        Address = place.Text("address"),
        Outcome = place.Word<Outcome>("outcome"),
        Status = place.MaybeWord<Status>("status") ?? Status.None,
        Quantity = place.Text("quantity"),
        QuantityMeaning = place.Text("quantity_meaning"),
        Value = ReportParts.MaybeValue(place, "value"),
        Origin = place.MaybeWord<Origin>("origin"),
        Limit = ReportParts.MaybeLimitBesideSource(place, "limit"),
        OtherLimit = ReportParts.MaybeLimit(place, "other_limit"),
        OnExpectedValuesOnly = place.Flag("on_expected_values_only"),
        FavourableEndMeets = place.Flag("favourable_end_meets"),
        Working = ReportParts.MaybeWorking(place),
        Missing = place.List("missing", ReportParts.Input),
        Notes = place.List("notes", ReportParts.Note),
        Remedies = place.Maybe("remedies") is null ? null : new RemedySet(place.List("remedies", Remedy), place.List("cannot_be_mended_by", Failed)),
        Departure = place.Maybe("departure") is { } departure ? DepartureOf(place, departure, departures) : null,
        Known = place.Flag("known"),
        Position = ReportParts.MaybePosition(place),
    };

    private static Severity SeverityOf(JsonPlace place) => place.AsText() switch
    {
        "A" => Severity.A,
        "B" => Severity.B,
        "C" => Severity.C,
        _ => throw place.Wrong("should be one of A, B, C"),
    };

    private static Departure DepartureOf(JsonPlace finding, JsonPlace departure, IReadOnlyList<DepartureUse> departures)
    {
        var (id, rule, address) = (departure.AsText(), finding.Text("rule"), finding.Text("address"));
        return departures.Select(use => use.Departure).FirstOrDefault(one =>
            string.Equals(one.Id, id, StringComparison.Ordinal) && string.Equals(one.Rule, rule, StringComparison.Ordinal) && string.Equals(one.Address, address, StringComparison.Ordinal))
            ?? throw departure.Wrong("names a departure that the report does not list");
    }

    private static Remedy Remedy(JsonPlace place) => new(
        place.List("changes", Change),
        ReportParts.MaybeValue(place, "value"),
        ReportParts.MaybeLimit(place, "limit"),
        place.Word<Status>("status"),
        place.Flag("on_expected_values_only"));

    private static FailedRemedy Failed(JsonPlace place) => new(
        Change(place.Of("change")),
        place.Word<RemedyObstacle>("obstacle"),
        ReportParts.MaybeValue(place, "value"),
        ReportParts.MaybeLimit(place, "limit"),
        place.List("worsened", Reference));

    // Earlier reports name what gets worse without its title; no form shows it there.
    private static FindingReference Reference(JsonPlace place) => new(place.Text("rule"), place.MaybeText("title") ?? string.Empty, place.Text("address"));

    private static LeverSetting Change(JsonPlace place) => new(
        place.Word<LeverKind>("lever"),
        place.Text("address"),
        place.Text("key"),
        ReportParts.Value(place.Of("from")),
        ReportParts.Value(place.Of("to")),
        place.Flag("by_designer"));
}

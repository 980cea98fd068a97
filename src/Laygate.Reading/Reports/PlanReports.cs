using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Reads the report on one plan.</summary>
internal static class PlanReports
{
    /// <summary>The report.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="file">Name of the plan's file.</param>
    /// <param name="version">Version of the program that wrote it.</param>
    public static Report Of(JsonPlace place, string file, string version)
    {
        var departures = place.List("departures", Departure);
        return new Report
        {
            File = file,
            Document = place.Whole("document"),
            PlanId = place.Text("plan"),
            PlanTitle = place.MaybeText("title"),
            Revision = place.MaybeText("revision"),
            PlanHash = place.Text("plan_hash"),
            Jurisdiction = place.MaybeText("jurisdiction"),
            Stage = place.Word<Stage>("stage"),
            JudgedFor = place.Day("judged_for"),
            JudgedForShift = place.Flag("judged_for_shift"),
            ProgramVersion = version,
            Layers = place.List("layers", Layer),
            BookHash = place.Text("book_hash"),
            Settings = place.MaybeText("settings"),
            IsQuick = place.Flag("quick"),
            Counts = Counts(place.Of("counts")),
            Baseline = place.Maybe("baseline") is { } baseline ? Baseline(baseline) : null,
            Findings = place.List("findings", finding => FindingReports.Of(finding, departures)),
            Outlook = place.Maybe("outlook") is { } outlook ? OutlookReports.Of(outlook) : null,
            Departures = departures,
            Assumptions = place.List("assumptions", ReportParts.Assumption),
            Notes = place.List("notes", ReportParts.Note),
        };
    }

    private static BookLayer Layer(JsonPlace place) => new(
        place.Text("name"), place.Text("title"), place.Text("edition"), place.MaybeText("status"), place.Word<Layer>("layer"), place.Text("jurisdiction"))
    {
        Coverage = place.MaybeText("coverage"),
        Clauses = place.List("clauses", Clause),
    };

    private static ClauseCoverage Clause(JsonPlace place) => new(
        place.Text("number"), place.Text("subject"), place.Word<ClauseStatus>("status"), place.List("rules", rule => rule.AsText()), place.MaybeText("note"));

    private static Counts Counts(JsonPlace place) => new(
        place.Whole("failed"),
        place.Whole("warned"),
        place.Whole("passed"),
        place.Whole("not_assessed"),
        place.Whole("needs_person"),
        place.Whole("open"),
        place.Whole("not_applicable"),
        place.Whole("departed"))
    {
        DepartureWarnings = place.WholeOrZero("departure_warnings"),
        KnownFailed = place.WholeOrZero("known_failed"),
        KnownWarned = place.WholeOrZero("known_warned"),
        KnownNotAssessed = place.WholeOrZero("known_not_assessed"),
    };

    private static BaselineUse Baseline(JsonPlace place) =>
        new(place.Text("file"), place.Day("written"), place.Whole("known"), place.Whole("worse"), place.Whole("gone"));

    // Earlier reports say what a departure met only in words.
    private static DepartureUse Departure(JsonPlace place) => new(
        new Departure
        {
            Id = place.Text("id"),
            Rule = place.Text("rule"),
            Address = place.Text("address"),
            Plan = place.MaybeText("plan"),
            Reason = place.Text("reason"),
            CompensatingMeasure = place.Text("compensating_measure"),
            AskedBy = place.Text("asked_by"),
            ApprovedBy = place.Text("approved_by"),
            ApprovedOn = place.Day("approved_on"),
            ExpiresOn = place.Day("expires_on"),
            Accepted = place.MaybeText("accepted") is { } accepted ? new AcceptedValue(accepted, Si: null, Moment: null) : null,
            Reference = place.MaybeText("reference"),
            File = place.Text("file"),
        },
        place.Word<DepartureState>("state"),
        place.MaybeWord<Status>("status"),
        place.MaybeWord<Outcome>("outcome"),
        ReportParts.MaybeValue(place, "value"));
}

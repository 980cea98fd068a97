using Laygate.Exchange.Reports;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>The report on one plan from its shape.</summary>
internal static class PlanReports
{
    /// <summary>The report.</summary>
    /// <param name="shape">Its shape.</param>
    /// <param name="file">Name of the plan's file.</param>
    /// <param name="version">Version of the program that wrote it.</param>
    public static Report Of(ReportShape shape, string file, string version)
    {
        var departures = shape.Departures.Each(Departure);
        return new Report
        {
            File = file,
            Document = shape.Document,
            PlanId = shape.Plan,
            PlanTitle = shape.Title,
            Revision = shape.Revision,
            PlanHash = shape.PlanHash,
            Uses = shape.Uses ?? [],
            Jurisdiction = shape.Jurisdiction,
            Stage = shape.Stage,
            JudgedFor = shape.JudgedFor,
            JudgedForShift = shape.JudgedForShift,
            ProgramVersion = version,
            Layers = shape.Layers.Each(Layer),
            BookHash = shape.BookHash,
            Settings = shape.Settings,
            IsQuick = shape.Quick,
            Counts = Counts(shape.Counts),
            Baseline = shape.Baseline,
            Findings = shape.Findings.Each(finding => FindingReports.Of(finding, departures)),
            Outlook = shape.Outlook is { } outlook ? OutlookReports.Of(outlook) : null,
            Departures = departures,
            Assumptions = shape.Assumptions.Each(ReportParts.Assumption),
            Notes = shape.Notes.Each(ReportParts.Note),
        };
    }

    private static BookLayer Layer(LayerShape shape) => new(shape.Name, shape.Title, shape.Edition, shape.Status, shape.Layer, shape.Jurisdiction)
    {
        Coverage = shape.Coverage,
        Clauses = shape.Clauses.Each(clause => clause with { Rules = clause.Rules ?? [] }),
    };

    private static Counts Counts(CountsShape shape) =>
        new(shape.Failed, shape.Warned, shape.Passed, shape.NotAssessed, shape.NeedsPerson, shape.Open, shape.NotApplicable, shape.Departed)
        {
            DepartureWarnings = shape.DepartureWarnings,
            KnownFailed = shape.KnownFailed,
            KnownWarned = shape.KnownWarned,
            KnownNotAssessed = shape.KnownNotAssessed,
        };

    // Earlier reports say what a departure met only in words.
    private static DepartureUse Departure(DepartureShape shape) => new(
        new Departure
        {
            Id = shape.Id,
            Rule = shape.Rule,
            Address = shape.Address,
            Plan = shape.Plan,
            Reason = shape.Reason,
            CompensatingMeasure = shape.CompensatingMeasure,
            AskedBy = shape.AskedBy,
            ApprovedBy = shape.ApprovedBy,
            ApprovedOn = shape.ApprovedOn,
            ExpiresOn = shape.ExpiresOn,
            Accepted = shape.Accepted is { } accepted ? new AcceptedValue(accepted, Si: null, Moment: null) : null,
            Reference = shape.Reference,
            File = shape.File,
        },
        shape.State,
        shape.Status,
        shape.Outcome,
        shape.Value);
}

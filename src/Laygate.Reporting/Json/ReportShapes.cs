using Laygate.Exchange.Reports;
using Laygate.Reporting.Language;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Reports as programs get them: the same results, with their sentences. Findings are made while they are written.</summary>
internal static class ReportShapes
{
    /// <summary>One file.</summary>
    public static FileShape Of(FileResult result) => new(result.File, [.. result.Reports.Select(Of)], PartShapes.Of(result.Problems), result.Job, result.Job is { Lots.Count: > 0 } job ? job.Lots : null);

    private static ReportShape Of(Report report) => new(
        report.PlanId,
        report.PlanTitle,
        report.Revision,
        report.Document,
        report.PlanHash,
        report.Uses.Count > 0 ? report.Uses : null,
        report.Jurisdiction,
        report.Stage,
        report.JudgedFor,
        report.JudgedForShift,
        [.. report.Layers.Select(Of)],
        report.BookHash,
        report.Settings,
        report.IsQuick,
        Of(report.Counts),
        report.Baseline,
        report.Findings.Select(FindingShapes.Of),
        report.Outlook is { } outlook ? OutlookShapes.Of(outlook) : null,
        [.. report.Departures.Select(Of)],
        PartShapes.Of(report.Assumptions),
        PartShapes.Of(report.Notes));

    private static LayerShape Of(BookLayer layer) =>
        new(layer.Name, layer.Title, layer.Edition, layer.Status, layer.Layer, layer.Jurisdiction, layer.Coverage, layer.Clauses);

    private static CountsShape Of(Counts counts) => new(
        counts.Failed,
        counts.Warned,
        counts.NotAssessed,
        counts.NeedsPerson,
        counts.Open,
        counts.Departed,
        counts.Passed,
        counts.NotApplicable,
        counts.DepartureWarnings,
        counts.KnownFailed,
        counts.KnownWarned,
        counts.KnownNotAssessed);

    private static DepartureShape Of(DepartureUse use) => Of(use, use.Departure);

    private static DepartureShape Of(DepartureUse use, Departure departure) => new(
        departure.Id,
        departure.Rule,
        departure.Address,
        departure.Plan,
        departure.Reason,
        departure.CompensatingMeasure,
        departure.AskedBy,
        departure.ApprovedBy,
        departure.ApprovedOn,
        departure.ExpiresOn,
        departure.Accepted?.Text,
        departure.Reference,
        departure.File,
        use.State,
        DepartureWords.Of(use),
        use.Status,
        use.Outcome,
        use.Value);
}

using Laygate.Exchange.Reports;
using Laygate.Reporting.Language;
using Laygate.Reporting.Remedies;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Findings as programs get them.</summary>
internal static class FindingShapes
{
    /// <summary>One finding.</summary>
    public static FindingShape Of(Finding finding) => new(
        finding.Rule,
        finding.RuleName,
        PartShapes.Of(finding.Status),
        finding.Outcome,
        finding.Address,
        finding.Departure?.Id,
        finding.Known,
        finding.Title,
        Wording.Message(finding),
        finding.Value,
        PartShapes.Bare(finding.Limit),
        finding.Limit is { } limit ? PartShapes.Source(limit) : null,
        PartShapes.Of(finding.Position),
        finding.Check,
        finding.Quantity,
        finding.QuantityMeaning,
        finding.Origin,
        finding.OnExpectedValuesOnly,
        finding.FavourableEndMeets,
        finding.Severity,
        PartShapes.Of(finding.OtherLimit),
        finding.Why,
        finding.Remedy,
        finding.Local,
        finding.Outcome == Outcome.NotApplicable ? null : finding.Asks,
        finding.Outcome == Outcome.NotApplicable ? null : finding.Holds,
        finding.Remedies?.Found.Select(remedy => Of(finding, remedy)).ToList(),
        finding.Remedies?.CannotBy.Select(failed => Of(finding, failed)).ToList(),
        PartShapes.Of(finding.Missing),
        PartShapes.Of(finding.Notes),
        finding.Working is { } working ? PartShapes.Of(working) : null);

    private static RemedyShape Of(Finding finding, Remedy remedy) =>
        new(RemedyWords.Found(finding, remedy), remedy.Changes, remedy.Value, PartShapes.Of(remedy.Limit), remedy.Status, remedy.OnExpectedValuesOnly);

    private static FailedRemedyShape Of(Finding finding, FailedRemedy failed) => new(
        RemedyWords.Failed(finding, failed),
        failed.Change,
        failed.Obstacle,
        failed.Value,
        PartShapes.Of(failed.Limit),
        [.. failed.Worsened.Select(worse => new WorsenedShape(worse.Rule, worse.Title, worse.Address))]);
}

using Laygate.Exchange.Reports;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Findings from their shape.</summary>
internal static class FindingReports
{
    /// <summary>The finding.</summary>
    /// <param name="shape">Its shape.</param>
    /// <param name="departures">Departures of the same report.</param>
    public static Finding Of(FindingShape shape, IReadOnlyList<DepartureUse> departures) => new()
    {
        Rule = shape.Rule,
        RuleName = shape.Name,
        Title = shape.Title,
        Why = shape.Why,
        Remedy = shape.Remedy,
        Local = shape.Local,
        Asks = shape.Asks,
        Holds = shape.Holds,
        Severity = shape.Severity,
        Check = shape.Check,
        Address = shape.Address,
        Outcome = shape.Outcome,
        Status = shape.Status ?? Status.None,
        Quantity = shape.Quantity,
        QuantityMeaning = shape.QuantityMeaning,
        Value = shape.Value,
        Origin = shape.Origin,
        Limit = shape.Limit is { } limit ? ReportParts.Limit(limit, shape.Source) : null,
        OtherLimit = ReportParts.MaybeLimit(shape.OtherLimit),
        OnExpectedValuesOnly = shape.OnExpectedValuesOnly,
        FavourableEndMeets = shape.FavourableEndMeets,
        Working = ReportParts.MaybeWorking(shape.Working),
        Missing = shape.Missing.Each(ReportParts.Input),
        Notes = shape.Notes.Each(ReportParts.Note),
        Remedies = shape.Remedies is { } remedies ? new RemedySet(remedies.Each(Remedy), shape.CannotBeMendedBy.Each(Failed)) : null,
        Departure = departures.Select(use => use.Departure).FirstOrDefault(departure => Covers(departure.Id, departure.Rule, departure.Address, shape)),
        Known = shape.Known,
        Position = ReportParts.MaybePosition(shape.Position),
    };

    /// <summary>The first finding that names a departure which its report does not list; null when there is none.</summary>
    public static ShapeFault? Unlisted(RunShape run) =>
        (from file in (run.Files ?? []).Index()
         from report in (file.Item.Reports ?? []).Index()
         from finding in (report.Item.Findings ?? []).Index()
         where finding.Item.Departure is not null
            && !(report.Item.Departures ?? []).Any(departure => Covers(departure.Id, departure.Rule, departure.Address, finding.Item))
         select new ShapeFault(
             FormattableString.Invariant($"files[{file.Index}].reports[{report.Index}].findings[{finding.Index}].departure"),
             "names a departure that the report does not list")).FirstOrDefault();

    private static bool Covers(string id, string rule, string address, FindingShape finding) => string.Equals(id, finding.Departure, StringComparison.Ordinal)
        && string.Equals(rule, finding.Rule, StringComparison.Ordinal)
        && string.Equals(address, finding.Address, StringComparison.Ordinal);

    private static Remedy Remedy(RemedyShape shape) =>
        new(shape.Changes ?? [], shape.Value, ReportParts.MaybeLimit(shape.Limit), shape.Status, shape.OnExpectedValuesOnly);

    private static FailedRemedy Failed(FailedRemedyShape shape) =>
        new(shape.Change, shape.Obstacle, shape.Value, ReportParts.MaybeLimit(shape.Limit), shape.Worsened.Each(Reference));

    // Earlier reports name what gets worse without its title; no form shows it there.
    private static FindingReference Reference(WorsenedShape shape) => new(shape.Rule, shape.Title ?? string.Empty, shape.Address);
}

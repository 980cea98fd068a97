using Laygate.Rules.Definitions;
using Laygate.Rules.Held;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>Counts what came of the findings of plans over a folder that holds plans and records.</summary>
public static class HeldFolder
{
    /// <summary>Counts.</summary>
    /// <param name="found">The records.</param>
    /// <param name="problems">What is wrong with others.</param>
    /// <param name="book">The merged rule book.</param>
    /// <param name="departures">Departures, checked against the book.</param>
    /// <param name="today">Day of checking.</param>
    /// <param name="version">Version of the program.</param>
    public static FeedbackReport Count(IReadOnlyList<FoundRecord> found, IReadOnlyList<Problem> problems, RuleBook book, IReadOnlyList<Departure> departures, DateOnly today, string version)
    {
        var reports = found.Select(one => one.Shift.Held(book, departures, today, simpleBy: null, version)).ToList();
        return new FeedbackReport([.. found.Zip(reports, (one, report) => new CountedRecord(one.Mapping, one.PlanId, report.Record.About))], RuleFeedbacks.Of(reports), problems);
    }
}

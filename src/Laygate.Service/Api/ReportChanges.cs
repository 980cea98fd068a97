using Laygate.Model.Plans;
using Laygate.Register;
using Laygate.Reporting.Language;
using Laygate.Rules.Comparing;
using Laygate.Rules.Results;
using Laygate.Service.Checking;

namespace Laygate.Service.Api;

/// <summary>One finding in two reports.</summary>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Kind">Whether it is new, gone or changed: in outcome, status, value, limit or missing inputs.</param>
/// <param name="Direction">Which way it went at the gate.</param>
/// <param name="Before">Status in the earlier report; null where it has no such finding or the finding no status.</param>
/// <param name="After">Status in the later report; likewise.</param>
/// <param name="Message">What the later report says, or else the earlier one.</param>
internal sealed record FindingChange(string Plan, string Rule, string Address, ChangeKind Kind, ChangeDirection Direction, string? Before, string? After, string Message);

/// <summary>What one report says otherwise than an earlier one.</summary>
/// <param name="From">Number of the earlier screening.</param>
/// <param name="To">Number of the later screening.</param>
/// <param name="BookChanged">Whether the rule book is another one.</param>
/// <param name="Findings">Findings that are new, gone or changed, by plan, rule and address.</param>
internal sealed record ReportChanges(int From, int To, bool BookChanged, IReadOnlyList<FindingChange> Findings)
{
    /// <summary>Compares two reports finding by finding, as two states of a plan are compared.</summary>
    /// <exception cref="UnreadableReportException">A report cannot be read back.</exception>
    public static ReportChanges Between(StoredReport earlier, StoredReport later) => new(
        earlier.Summary.Screening,
        later.Summary.Screening,
        !string.Equals(earlier.Summary.BookHash, later.Summary.BookHash, StringComparison.Ordinal),
        [
            .. ReportPairs.Compare(Reports(earlier), Reports(later)).SelectMany(Changes)
                .OrderBy(change => change.Plan, StringComparer.Ordinal).ThenBy(change => change.Rule, StringComparer.Ordinal).ThenBy(change => change.Address, StringComparer.Ordinal),
        ]);

    private static List<Report> Reports(StoredReport stored) => [.. StoredReports.Read(stored).Files.SelectMany(file => file.Reports)];

    private static IEnumerable<FindingChange> Changes(PlanComparison plan) => plan.Findings.Where(change => change.Kind != ChangeKind.Unchanged).Select(change => new FindingChange(
        (plan.New ?? plan.Old)!.PlanId,
        change.Either.Rule,
        change.Either.Address,
        change.Kind,
        change.Direction,
        Word(change.Old),
        Word(change.New),
        Wording.Message(change.Either)));

    private static string? Word(Finding? finding) => finding is null or { Status: Status.None } ? null : Words.Of(finding.Status);
}

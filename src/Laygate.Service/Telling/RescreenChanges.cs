using Laygate.Register;
using Laygate.Rules.Comparing;
using Laygate.Rules.Results;
using Laygate.Service.Checking;

namespace Laygate.Service.Telling;

/// <summary>Counts what another screening says otherwise than the one before.</summary>
internal static class RescreenChanges
{
    /// <summary>The counts; null where the earlier report is not read any more.</summary>
    /// <param name="before">The earlier report.</param>
    /// <param name="after">The later one, as JSON.</param>
    public static ScreeningChanges? Between(StoredReport before, byte[] after)
    {
        try
        {
            var (old, now) = (StoredReports.Read(before).Files, StoredReports.Read(before with { Json = after }).Files);
            var findings = ReportPairs.Compare([.. old.SelectMany(file => file.Reports)], [.. now.SelectMany(file => file.Reports)])
                .SelectMany(plan => plan.Findings).Where(change => change.Kind != ChangeKind.Unchanged).ToList();
            var read = old.Any(file => file.Problems.Count > 0) != now.Any(file => file.Problems.Count > 0);
            return Count(findings, read ? 1 : 0);
        }
        catch (UnreadableReportException)
        {
            return null;
        }
    }
    private static ScreeningChanges Count(List<FindingChange> findings, int read)
    {
        var both = findings.Where(change => change is { Old: not null, New: not null }).ToList();
        return new ScreeningChanges(
            both.Count(change => change.Direction == ChangeDirection.Worse),
            both.Count(change => change.Direction == ChangeDirection.Better),
            findings.Count(change => change.Old is null),
            findings.Count(change => change.New is null),
            both.Count(change => change.Direction == ChangeDirection.Level) + read);
    }
}

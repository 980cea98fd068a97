using System.Text.Json;
using Laygate.Register;

namespace Laygate.Service.Api;

/// <summary>One finding in two reports.</summary>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Before">Status in the earlier report; null where it has no such finding or the finding no status.</param>
/// <param name="After">Status in the later report; likewise.</param>
/// <param name="Message">What the later report says, or else the earlier one.</param>
internal sealed record FindingChange(string Plan, string Rule, string Address, string? Before, string? After, string Message);

/// <summary>What one report says otherwise than an earlier one.</summary>
/// <param name="From">Number of the earlier screening.</param>
/// <param name="To">Number of the later screening.</param>
/// <param name="BookChanged">Whether the rule book is another one.</param>
/// <param name="Findings">Findings whose status differs, by plan, rule and address.</param>
internal sealed record ReportChanges(int From, int To, bool BookChanged, IReadOnlyList<FindingChange> Findings)
{
    /// <summary>Compares two reports finding by finding.</summary>
    public static ReportChanges Between(StoredReport earlier, StoredReport later)
    {
        var before = Read(earlier);
        var after = Read(later);
        var changes = before.Keys.Union(after.Keys).Order()
            .Select(key => (Key: key, Before: before.GetValueOrDefault(key), After: after.GetValueOrDefault(key)))
            .Where(pair => !string.Equals(pair.Before.Status, pair.After.Status, StringComparison.Ordinal))
            .Select(pair => new FindingChange(pair.Key.Plan, pair.Key.Rule, pair.Key.Address, pair.Before.Status, pair.After.Status, pair.After.Message ?? pair.Before.Message ?? string.Empty));
        return new ReportChanges(
            earlier.Summary.Screening, later.Summary.Screening, !string.Equals(earlier.Summary.BookHash, later.Summary.BookHash, StringComparison.Ordinal), [.. changes]);
    }

    private static Dictionary<(string Plan, string Rule, string Address), (string? Status, string? Message)> Read(StoredReport stored)
    {
        using var json = JsonDocument.Parse(stored.Json);
        var findings = new Dictionary<(string, string, string), (string?, string?)>();
        foreach (var report in json.RootElement.GetProperty("files").EnumerateArray().SelectMany(file => file.GetProperty("reports").EnumerateArray()))
        {
            foreach (var finding in report.GetProperty("findings").EnumerateArray())
            {
                var key = (report.GetProperty("plan").GetString()!, finding.GetProperty("rule").GetString()!, finding.GetProperty("address").GetString()!);
                findings[key] = (finding.GetProperty("status").GetString(), finding.GetProperty("message").GetString());
            }
        }

        return findings;
    }
}

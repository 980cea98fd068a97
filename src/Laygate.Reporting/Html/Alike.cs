using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Html;

/// <summary>Findings of one rule that say the same of several elements: one row of a table instead of forty.</summary>
/// <param name="Findings">The findings, in the order of the report; never empty.</param>
internal sealed record Alike(IReadOnlyList<Finding> Findings)
{
    /// <summary>The first of them, which speaks for all.</summary>
    public Finding First => Findings[0];

    /// <summary>The elements, each once; many of one kind share its name.</summary>
    public string Addresses => string.Join("; ", Findings.Select(finding => PlainText.Show(finding.Address)).Distinct(StringComparer.Ordinal).GroupBy(Kind, StringComparer.Ordinal).SelectMany(Shown));

    private static IEnumerable<string> Shown(IGrouping<string, string> kind) =>
        kind.Key.Length == 0 || kind.Count() == 1 ? kind : [$"{kind.Key}: {string.Join(", ", kind.Select(address => address[(kind.Key.Length + 1)..]))}"];

    // An element below another keeps its whole address.
    private static string Kind(string address) =>
        address.IndexOf(':', StringComparison.Ordinal) is var end and > 0 && !address.Contains('/', StringComparison.Ordinal) ? address[..end] : string.Empty;

    /// <summary>Findings put together where rule, result, what they say and what they rest on are the same; the order of the first of each stays.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="also">What must be the same besides, for example the limit's source.</param>
    public static IReadOnlyList<Alike> Of(IEnumerable<Finding> findings, Func<Finding, string>? also = null) =>
        [.. findings.GroupBy(finding => (finding.Rule, FindingGroups.Of(finding), Wording.Sentence(finding), also?.Invoke(finding))).Select(same => new Alike([.. same]))];
}

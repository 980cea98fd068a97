using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>A limit as the crew reads it: the bad situation that its rule is named after, and the figure.</summary>
internal static class LimitWords
{
    /// <summary>For example "Surface below too cold for the thickness of the course; allowed is at least 4 °C": under a heading "stop work when" the bare limit would read as the reason to stop.</summary>
    public static string Of(Finding finding) =>
        $"{finding.Title}; allowed is {Wording.LimitText(Plain(finding.Limit!), Figures.Of(finding)).Replace(PlainText.Glue, ' ')}";

    // The same limit in another unit with all its digits is nothing for a crew.
    private static ShownLimit Plain(ShownLimit limit) => limit.Quantity is null ? limit : limit with { Stated = null };
}

using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>Findings that somebody asks for: those of a rule, at every element or at one.</summary>
/// <param name="Rule">Id of the rule; capitals do not matter.</param>
/// <param name="Address">Address of the element; null for all.</param>
public sealed record FindingChoice(string Rule, string? Address)
{
    /// <summary>Reads <c>RULE</c> or <c>RULE@ADDRESS</c>.</summary>
    public static FindingChoice Of(string text) => text.Split('@', 2, StringSplitOptions.TrimEntries) is [var rule, { Length: > 0 } address]
        ? new(rule, address)
        : new(text.Trim().TrimEnd('@'), null);

    /// <summary>Whether a finding belongs to the rule.</summary>
    public bool IsRuleOf(Finding finding) => string.Equals(finding.Rule, Rule, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a finding is one of those.</summary>
    public bool Holds(Finding finding) => IsRuleOf(finding) && (Address is null || string.Equals(finding.Address, Address, StringComparison.Ordinal));
}

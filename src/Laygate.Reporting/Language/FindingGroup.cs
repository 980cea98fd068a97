using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>The part of a report in which a finding stands; the same eight parts as the counts, worst first.</summary>
public enum FindingGroup
{
    /// <summary>Status fail, silence that fails included.</summary>
    Failed,

    /// <summary>Status warn on a missed or barely met bound.</summary>
    Warned,

    /// <summary>Not assessed, with status warn.</summary>
    NotAssessed,

    /// <summary>A person must decide.</summary>
    NeedsPerson,

    /// <summary>Not due at the plan's stage.</summary>
    Open,

    /// <summary>Covered by a valid departure.</summary>
    Departed,

    /// <summary>Status pass.</summary>
    Passed,

    /// <summary>The rule's conditions do not hold.</summary>
    NotApplicable,
}

/// <summary>Sorts findings into the parts of a report.</summary>
public static class FindingGroups
{
    /// <summary>The part in which a finding stands; each finding stands in exactly one.</summary>
    public static FindingGroup Of(Finding finding) => (finding.Status, finding.Outcome) switch
    {
        (Status.Fail, _) => FindingGroup.Failed,
        (Status.Departed, _) => FindingGroup.Departed,
        (_, Outcome.NotApplicable) => FindingGroup.NotApplicable,
        (_, Outcome.Open) => FindingGroup.Open,
        (_, Outcome.NotAssessed) => FindingGroup.NotAssessed,
        (_, Outcome.NeedsPerson) => FindingGroup.NeedsPerson,
        (Status.Warn, _) => FindingGroup.Warned,
        _ => FindingGroup.Passed,
    };

    /// <summary>How many findings of a report stand in a part.</summary>
    public static int Count(Counts counts, FindingGroup group) => group switch
    {
        FindingGroup.Failed => counts.Failed,
        FindingGroup.Warned => counts.Warned,
        FindingGroup.NotAssessed => counts.NotAssessed,
        FindingGroup.NeedsPerson => counts.NeedsPerson,
        FindingGroup.Open => counts.Open,
        FindingGroup.Departed => counts.Departed,
        FindingGroup.Passed => counts.Passed,
        _ => counts.NotApplicable,
    };
}

using Laygate.Model.Levers;

namespace Laygate.Rules.Results;

/// <summary>A changed value of the plan.</summary>
/// <param name="Lever">What is changed.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Key">Key inside the element.</param>
/// <param name="From">Value in the plan.</param>
/// <param name="To">Proposed value.</param>
/// <param name="ByDesigner">Whether the designer must agree.</param>
public sealed record LeverSetting(LeverKind Lever, string Address, string Key, ShownValue From, ShownValue To, bool ByDesigner);

/// <summary>A change of the plan that mends a finding and makes no finding worse; confirmed by the whole rule set with its spread.</summary>
/// <param name="Changes">One change, or two that belong together.</param>
/// <param name="Value">Value that the rule finds afterwards.</param>
/// <param name="Limit">Limit that decides afterwards.</param>
/// <param name="Status">Status afterwards.</param>
/// <param name="OnExpectedValuesOnly">Whether afterwards only the expected value meets the limit, not the unfavourable end.</param>
public sealed record Remedy(
    IReadOnlyList<LeverSetting> Changes, ShownValue? Value, ShownLimit? Limit, Status Status, bool OnExpectedValuesOnly);

/// <summary>Why a change that helps is no remedy.</summary>
public enum RemedyObstacle
{
    /// <summary>At the end of its range the limit is still missed.</summary>
    EndOfRange,

    /// <summary>It would mend the finding and make another one worse.</summary>
    WorsensAnother,

    /// <summary>It mends the expected value, but in the worse case it still misses at the end of its range.</summary>
    SpreadRemains,

    /// <summary>It would mend the expected value, but the machine gives it: no plan chooses it.</summary>
    GivenByMachine,
}

/// <summary>A change that helps without being a remedy.</summary>
/// <param name="Change">How far it was tried.</param>
/// <param name="Obstacle">What stands in the way.</param>
/// <param name="Value">Value that the rule finds there.</param>
/// <param name="Limit">Limit that decides there.</param>
/// <param name="Worsened">Rule and address of findings that would become worse.</param>
public sealed record FailedRemedy(
    LeverSetting Change, RemedyObstacle Obstacle, ShownValue? Value, ShownLimit? Limit, IReadOnlyList<FindingReference> Worsened);

/// <summary>Names a finding.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Address">Address of the element.</param>
public sealed record FindingReference(string Rule, string Title, string Address);

/// <summary>What was found for one finding that a number might mend.</summary>
/// <param name="Found">Remedies; none when nothing within the ranges mends it.</param>
/// <param name="CannotBy">Changes that help but do not mend it, or not without harm.</param>
public sealed record RemedySet(IReadOnlyList<Remedy> Found, IReadOnlyList<FailedRemedy> CannotBy);

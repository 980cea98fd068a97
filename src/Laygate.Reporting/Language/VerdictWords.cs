using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>What a check comes to, in a few words.</summary>
public static class VerdictWords
{
    /// <summary>The words, in capitals, and the group of findings whose tone they take.</summary>
    public static (string Text, FindingGroup Tone) Of(Counts counts) => counts switch
    {
        { Failed: var failed, KnownFailed: var known } when failed > known => ("DOES NOT PASS", FindingGroup.Failed),
        { Failed: > 0 } => ("NO NEW FAILURE", FindingGroup.Warned),
        { Warned: > 0 } or { NotAssessed: > 0 } or { NeedsPerson: > 0 } or { DepartureWarnings: > 0 } => ("NO FAILURE, BUT WARNINGS", FindingGroup.Warned),
        _ => ("NO FAILURE, NO WARNING", FindingGroup.Passed),
    };

    /// <summary>Groups that are counted behind the verdict: those with findings, and failures and warnings in any case.</summary>
    public static IReadOnlyList<(FindingGroup Group, int Count)> Counted(Counts counts) =>
        [.. Enum.GetValues<FindingGroup>().Select(group => (Group: group, Count: FindingGroups.Count(counts, group))).Where(part => part.Count > 0 || part.Group is FindingGroup.Failed or FindingGroup.Warned)];
}

using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>In which order changes that mend a finding are proposed.</summary>
internal static class RemedyOrder
{
    /// <summary>
    /// Operations before the design, what the finding says is its cause first, then what it is about (its own element), then one
    /// change before two, then the change that uses least of its room.
    /// </summary>
    public static IEnumerable<Candidate> Of(Finding target, IEnumerable<Candidate> candidates) => candidates
        .OrderBy(candidate => candidate.IsDesign)
        .ThenBy(candidate => !StopLevers.Aims(target, candidate.Effect.Lever.Kind))
        .ThenBy(candidate => !string.Equals(candidate.Effect.Lever.Address, target.Address, StringComparison.Ordinal))
        .ThenBy(candidate => candidate.Change.Count)
        .ThenBy(candidate => candidate.Change.Max(setting => setting.Lever.Share(setting.Value)));
}

using System.Collections.Concurrent;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>What a change makes worse, on expected values. Serves several threads; a change is judged once.</summary>
internal sealed class HarmCheck(Judge judge, Before before)
{
    private readonly ConcurrentDictionary<string, IReadOnlyList<Finding>> known = new(StringComparer.Ordinal);

    /// <summary>Number of changes that were judged.</summary>
    public int Judged => known.Count;

    /// <summary>Findings that a change makes worse; the change must leave the plan consistent.</summary>
    public IReadOnlyList<Finding> Of(IReadOnlyList<Setting> change)
    {
        var name = string.Join('|', change.Select(one => FormattableString.Invariant($"{one.Lever.Kind} {one.Lever.Address} {one.Lever.Key} {one.Value:R}")));
        return known.TryGetValue(name, out var worsened) ? worsened : known.GetOrAdd(name, before.Worsened(judge.Expected(change)!.Bad()));
    }

    /// <summary>Whether one finding on a changed plan is worse than before.</summary>
    public bool IsWorse(Finding? finding) => finding is not null && before.IsWorse(finding);
}

using Laygate.Rules.Results;

namespace Laygate.Rules.Comparing;

/// <summary>Finds what belongs together in two runs on one file.</summary>
public static class ReportPairs
{
    /// <summary>Pairs plans by their id; a file with one plan on each side is one pair whatever the ids. Plans of the later run come first and in its order, then those that are gone.</summary>
    /// <param name="old">Plans of the earlier run.</param>
    /// <param name="new">Plans of the later run.</param>
    /// <param name="id">Id of a plan.</param>
    public static IReadOnlyList<(T? Old, T? New)> Of<T>(IReadOnlyList<T> old, IReadOnlyList<T> @new, Func<T, string> id)
        where T : class
    {
        if (old.Count == 1 && @new.Count == 1)
        {
            return [(old[0], @new[0])];
        }

        var left = old.ToList();
        var pairs = new List<(T?, T?)>();
        foreach (var plan in @new)
        {
            var same = left.Find(other => string.Equals(id(other), id(plan), StringComparison.Ordinal));
            pairs.Add((same, plan));
            _ = same is not null && left.Remove(same);
        }

        return [.. pairs, .. left.Select(plan => ((T?)plan, (T?)null))];
    }

    /// <summary>Sets the reports of two runs on one file against each other; what changed in the text is not known.</summary>
    /// <param name="old">Reports of the earlier run.</param>
    /// <param name="new">Reports of the later run.</param>
    public static IReadOnlyList<PlanComparison> Compare(IReadOnlyList<Report> old, IReadOnlyList<Report> @new) =>
        [.. Of(old, @new, report => report.PlanId).Select(pair => ReportComparer.Compare(pair.Old, pair.New))];
}

namespace Laygate.Reading.Schema;

/// <summary>Finds the names that a mistyped one may have been meant for.</summary>
public static class NearestNames
{
    private const int Most = 3;
    private const int Farthest = 3;

    /// <summary>The nearest names, nearest first, at most three; none when nothing is near enough to be worth saying.</summary>
    /// <param name="name">The name as written.</param>
    /// <param name="known">The names that would be right.</param>
    public static IReadOnlyList<string> Of(string name, IEnumerable<string> known)
    {
        // In a short name three changes make any other short name.
        var limit = Math.Min(Farthest, Math.Max(1, name.Length / 2));
        return known
            .Select(candidate => (candidate, distance: Distance(Plain(name), Plain(candidate), limit)))
            .Where(pair => pair.distance <= limit)
            .OrderBy(pair => pair.distance).ThenBy(pair => pair.candidate, StringComparer.Ordinal)
            .Take(Most).Select(pair => pair.candidate).ToList();
    }

    /// <summary>Asks whether one of the names was meant.</summary>
    /// <param name="near">The names, at least one.</param>
    public static string Asked(IReadOnlyList<string> near) => $"Did you mean {string.Join(" or ", near.Select(name => $"`{name}`"))}?";

    private static string Plain(string name) => name.Replace('-', '_').Replace(' ', '_').ToLowerInvariant().Trim('_', '\u00A0');

    // Changes, insertions, removals and swaps of neighbours; beyond the limit the exact number does not matter.
    private static int Distance(string left, string right, int limit)
    {
        if (Math.Abs(left.Length - right.Length) > limit)
        {
            return limit + 1;
        }

        var rows = new int[left.Length + 1, right.Length + 1];
        for (var i = 0; i <= left.Length; i++)
        {
            rows[i, 0] = i;
        }

        for (var j = 0; j <= right.Length; j++)
        {
            rows[0, j] = j;
        }

        for (var i = 1; i <= left.Length; i++)
        {
            for (var j = 1; j <= right.Length; j++)
            {
                rows[i, j] = Step(rows, left, right, i, j);
            }
        }

        return rows[left.Length, right.Length];
    }

    private static int Step(int[,] rows, string left, string right, int i, int j)
    {
        var change = left[i - 1] == right[j - 1] ? 0 : 1;
        var least = Math.Min(Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1, rows[i - 1, j - 1] + change);
        var isSwap = i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1];
        return isSwap ? Math.Min(least, rows[i - 2, j - 2] + 1) : least;
    }
}

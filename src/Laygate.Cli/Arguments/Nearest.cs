namespace Laygate.Cli.Arguments;

/// <summary>Finds the word that somebody probably meant.</summary>
internal static class Nearest
{
    private const int Farthest = 3;

    /// <summary>The known word with the fewest changed letters; null when none is near.</summary>
    public static string? To(string word, IEnumerable<string> known) => known
        .Select(candidate => (candidate, distance: Distance(word, candidate)))
        .Where(pair => pair.distance <= Math.Min(Farthest, pair.candidate.Length / 2))
        .OrderBy(pair => pair.distance)
        .ThenBy(pair => pair.candidate, StringComparer.Ordinal)
        .Select(pair => pair.candidate)
        .FirstOrDefault();

    // Letters inserted, removed or replaced (Levenshtein, "Binary codes capable of correcting deletions, insertions, and reversals", 1966).
    private static int Distance(string left, string right)
    {
        var row = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 1; i <= left.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j] + 1, row[j - 1] + 1), diagonal + (left[i - 1] == right[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[^1];
    }
}

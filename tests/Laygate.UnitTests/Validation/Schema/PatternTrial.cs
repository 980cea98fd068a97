using System.Text.RegularExpressions;
using Laygate.Validation.Schema;

namespace Laygate.UnitTests.Validation.Schema;

/// <summary>
/// Looks for patterns of a schema that never come to an end. The validator matches without a time limit, so a pattern that backtracks
/// without bound would let a plan hang it.
/// </summary>
public static class PatternTrial
{
    private const int Length = 1000;

    /// <summary>Runs every pattern of a schema on adversarial texts of 1,000 characters.</summary>
    /// <param name="schema">The schema.</param>
    /// <param name="patience">When a pattern counts as endless: sound ones need microseconds, the others longer than the world exists.</param>
    /// <returns>Those that are still at work then.</returns>
    public static IReadOnlyList<string> Endless(LoadedSchema schema, TimeSpan patience) =>
        [.. schema.Patterns.Where(pattern => Texts(pattern).Any(text => IsEndless(pattern, text, patience)))];

    // Long runs of what a pattern repeats, ended by what it cannot take: where backtracking hurts most.
    private static IEnumerable<string> Texts(string pattern)
    {
        var letters = pattern.Where(letter => letter is > ' ' and < '\u007F').Concat("aA0 .-_:,").Distinct().ToList();
        var seeds = letters.Select(letter => letter.ToString())
            .Concat(letters.SelectMany(first => "a0 .-".Select(second => $"{first}{second}")));
        return seeds.SelectMany(seed => new[] { string.Empty, "0", "a", "0 " }.Select(start => start + Repeat(seed) + "\u0001"));
    }

    private static string Repeat(string seed) => string.Concat(Enumerable.Repeat(seed, Length / seed.Length));

    private static bool IsEndless(string pattern, string text, TimeSpan patience)
    {
        try
        {
            _ = Regex.IsMatch(text, pattern, RegexOptions.None, patience);
            return false;
        }
        catch (RegexMatchTimeoutException)
        {
            return true;
        }
    }
}

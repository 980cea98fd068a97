using System.Diagnostics;
using System.Text.RegularExpressions;
using Laygate.Reading.Schema;

namespace Laygate.UnitTests.Reading.Schema;

/// <summary>
/// Holds the patterns of a schema to a time limit. The validator matches without one, so a pattern that backtracks without
/// bound would let a plan hang it.
/// </summary>
public static class PatternTrial
{
    private const int Length = 1000;

    /// <summary>Runs every pattern of a schema on adversarial texts of 1,000 characters.</summary>
    /// <param name="schema">The schema.</param>
    /// <returns>The slowest pattern and its time; texts that exceed the patience count as just that.</returns>
    public static (string Pattern, TimeSpan Time) Slowest(LoadedSchema schema, TimeSpan patience) =>
        schema.Patterns.Select(pattern => (pattern, Texts(pattern).Max(text => Time(pattern, text, patience)))).DefaultIfEmpty().MaxBy(pair => pair.Item2);

    // Long runs of what a pattern repeats, ended by what it cannot take: where backtracking hurts most.
    private static IEnumerable<string> Texts(string pattern)
    {
        var letters = pattern.Where(letter => letter is > ' ' and < '\u007F').Concat("aA0 .-_:,").Distinct().ToList();
        var seeds = letters.Select(letter => letter.ToString())
            .Concat(letters.SelectMany(first => "a0 .-".Select(second => $"{first}{second}")));
        return seeds.SelectMany(seed => new[] { string.Empty, "0", "a", "0 " }.Select(start => start + Repeat(seed) + "\u0001"));
    }

    private static string Repeat(string seed) => string.Concat(Enumerable.Repeat(seed, Length / seed.Length));

    private static TimeSpan Time(string pattern, string text, TimeSpan patience)
    {
        var regex = new Regex(pattern, RegexOptions.None, patience);
        var start = Stopwatch.GetTimestamp();
        try
        {
            regex.IsMatch(text);
        }
        catch (RegexMatchTimeoutException)
        {
            return patience;
        }

        return Stopwatch.GetElapsedTime(start);
    }
}

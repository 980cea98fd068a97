using Laygate.Rules.Results;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>What every refusal must have: a sentence, and a place that lies in the file.</summary>
internal static class Refusal
{
    /// <summary>Judges the problems of one file.</summary>
    /// <param name="problems">The problems.</param>
    /// <param name="bytes">The file.</param>
    /// <param name="mayLackPlace">Which problem may speak of the file as a whole; none when left out.</param>
    /// <exception cref="ComplaintException">One lacks words or place.</exception>
    public static void Check(IReadOnlyList<Problem> problems, byte[] bytes, Func<Problem, bool>? mayLackPlace = null)
    {
        Require(problems.Count is > 0 and <= 100 + 1, $"{problems.Count} problems for one file");
        var lines = ByteDamage.LinesOf(bytes);
        foreach (var problem in problems)
        {
            Require(!string.IsNullOrWhiteSpace(problem.Message), "a refusal without words");
            Require(problem.Message.Length < 2000 && (problem.Hint?.Length ?? 0) < 2000, $"a refusal of {problem.Message.Length} characters: {problem.Message[..Math.Min(80, problem.Message.Length)]}");
            if (problem.Position is not { } at)
            {
                Require(mayLackPlace?.Invoke(problem) == true, $"a refusal without a place: {problem.Message}");
                continue;
            }

            Require(ByteDamage.IsInside(lines, at.Line, at.Column, at.EndLine, at.EndColumn), $"a place outside the file, {at} of {lines.Length} lines: {problem.Message}");
        }
    }

    /// <summary>Judges places where they are given.</summary>
    /// <exception cref="ComplaintException">One lies outside the file.</exception>
    public static void Places(IEnumerable<Position?> places, byte[] bytes)
    {
        var lines = ByteDamage.LinesOf(bytes);
        foreach (var at in places.OfType<Position>())
        {
            Require(ByteDamage.IsInside(lines, at.Line, at.Column, at.EndLine, at.EndColumn), $"a place outside the file, {at} of {lines.Length} lines");
        }
    }

    /// <summary>Complains unless something holds.</summary>
    /// <exception cref="ComplaintException">It does not hold.</exception>
    public static void Require(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new ComplaintException(otherwise);
        }
    }
}

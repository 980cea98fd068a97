using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Verification;

/// <summary>A verification run as plain lines for a terminal, with full digits.</summary>
public static class VerificationText
{
    /// <summary>All lines: per topic each case with its checks, last the tally. Problems of files are worded elsewhere, as for plans.</summary>
    public static IReadOnlyList<string> Lines(VerificationResult result) =>
        [.. result.Topics.SelectMany(Topic), VerificationWords.Tally(result.Tally)];

    private static IEnumerable<string> Topic(VerificationTopic topic)
    {
        yield return topic.Name;
        foreach (var line in topic.Cases.SelectMany(Case))
        {
            yield return line;
        }

        yield return string.Empty;
    }

    private static IEnumerable<string> Case(VerificationCase one)
    {
        yield return $"  {one.Title} ({one.File})";
        yield return $"    Source: {VerificationWords.Of(one.Source)}. Evidence: {VerificationWords.Of(one.Evidence)}.";
        foreach (var check in one.Checks)
        {
            yield return $"    {VerificationWords.Of(check.Verdict)}: {VerificationWords.Of(check.Quantity)}: {Values(check)}";
        }
    }

    private static string Values(VerificationCheck check)
    {
        var expected = $"expected {VerificationWords.WithUnit(VerificationWords.Full(check.Expected), check.Unit)}";
        if (check.Computed is not { } computed || check.Difference is not { } difference)
        {
            return $"{expected}, tolerance {check.Tolerance}. {check.Reason}";
        }

        var gap = difference.ToString("+0.###e+0;-0.###e+0;0", CultureInfo.InvariantCulture);
        return $"{expected}, computed {VerificationWords.WithUnit(VerificationWords.Full(computed), check.Unit)}, "
            + $"difference {VerificationWords.WithUnit(gap, VerificationWords.DifferenceUnit(check.Unit))}, tolerance {check.Tolerance}";
    }
}

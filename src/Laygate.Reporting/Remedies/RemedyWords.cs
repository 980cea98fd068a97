using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Remedies;

/// <summary>Sentences about what would mend a finding, and what would not.</summary>
public static class RemedyWords
{
    private const int MostFailed = 3;

    /// <summary>One sentence per remedy; where there is none, what cannot mend it. The whole list stands in the JSON report.</summary>
    public static IEnumerable<string> Of(Finding finding)
    {
        if (finding.Remedies is not { } set)
        {
            yield break;
        }

        foreach (var remedy in set.Found)
        {
            yield return Found(finding, remedy);
        }

        foreach (var failed in set.Found.Count > 0 ? [] : set.CannotBy.Take(MostFailed))
        {
            yield return Failed(finding, failed);
        }
    }

    /// <summary>A remedy with both values, for example <c>paver speed (paver:p1) from 5 m/min to 3.2 m/min: then 100 t/h against at least 98 t/h</c>.</summary>
    internal static string Found(Finding finding, Remedy remedy)
    {
        var changes = string.Join(", together with ", remedy.Changes.Select(LeverWords.Change));
        var tight = remedy.OnExpectedValuesOnly ? "; only the expected value meets it, in the worse case it does not" : string.Empty;
        return $"{Capital(changes)}: {Then(finding, remedy.Value, remedy.Limit)}{tight}. No finding gets worse.";
    }

    /// <summary>Why a change that helps is no remedy.</summary>
    internal static string Failed(Finding finding, FailedRemedy failed)
    {
        var name = LeverWords.Name(failed.Change);
        var to = LeverWords.Value(failed.Change.To);
        return failed.Obstacle switch
        {
            RemedyObstacle.WorsensAnother => $"Not mended by {name} alone: {to} would mend it but worsen {Others(failed.Worsened)}.",
            RemedyObstacle.SpreadRemains => $"Cannot be mended by {name}: even at {to} in the worse case it still misses.",
            RemedyObstacle.EndOfRange when finding.Outcome == Outcome.Met =>
                $"Cannot be mended by {name} alone: even at {to} only the expected value meets it, {Then(finding, failed.Value, failed.Limit)}.",
            RemedyObstacle.GivenByMachine => $"Not mended by {name}: the machine gives it. It would take {to}, which only another machine or an attachment can give.",
            _ => $"Cannot be mended by {name} alone: even at {to} it is {Then(finding, failed.Value, failed.Limit)}.",
        };
    }

    private static string Then(Finding finding, ShownValue? value, ShownLimit? limit)
    {
        var figures = Figures.Of(finding with { Value = value, Limit = limit, OtherLimit = null });
        var shown = figures.Value() ?? "not known";
        return limit is null ? shown : (limit.Low, limit.High) switch
        {
            ({ } low, { } high) => $"{shown} against {figures.End(low, limit)} to {figures.End(high, limit)}",
            ({ } low, null) => $"{shown} against at least {figures.End(low, limit)}",
            (null, { } high) => $"{shown} against at most {figures.End(high, limit)}",
            _ => shown,
        };
    }

    private static string Others(IReadOnlyList<FindingReference> worsened)
    {
        var first = worsened.Count > 0 ? $"{PlainText.Show(worsened[0].Rule)} at {PlainText.Show(worsened[0].Address)}" : "another finding";
        return worsened.Count > 1 ? FormattableString.Invariant($"{first} and {worsened.Count - 1} more") : first;
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}

using Laygate.Rules.Results;

namespace Laygate.Checking.Verification;

/// <summary>Counts a run and finds its largest differences.</summary>
internal static class VerificationSummary
{
    public static VerificationResult Of(IReadOnlyList<VerificationFileResult> files)
    {
        var cases = files.SelectMany(file => file.Cases).ToList();
        var topics = cases.GroupBy(one => one.Topic, StringComparer.Ordinal).Select(Topic).ToList();
        return new VerificationResult(
            files, topics, Tally(files.Count, files.Count(file => file.Problems.Count > 0), cases), Worst(cases));
    }

    private static VerificationTopic Topic(IGrouping<string, VerificationCase> group)
    {
        var cases = group.ToList();
        var files = cases.Select(one => one.File).Distinct(StringComparer.Ordinal).Count();
        return new VerificationTopic(group.Key, cases, Tally(files, 0, cases), Worst(cases));
    }

    private static VerificationTally Tally(int files, int unreadable, List<VerificationCase> cases)
    {
        var verdicts = cases.SelectMany(one => one.Checks).Select(check => check.Verdict).ToList();
        int Count(VerificationVerdict verdict) => verdicts.Count(one => one == verdict);
        return new VerificationTally(
            files, unreadable, cases.Count, verdicts.Count, Count(VerificationVerdict.Within), Count(VerificationVerdict.Off), Count(VerificationVerdict.NotComputed));
    }

    private static List<WorstDifference> Worst(List<VerificationCase> cases) =>
        [.. cases.SelectMany(one => one.Checks).Where(check => check.Difference is not null)
            .GroupBy(check => (check.Quantity.Kind, check.Tolerance)).OrderBy(group => group.Key.Kind)
            .Select(group => Worst(group.Key.Kind, group.Key.Tolerance, [.. group]))];

    private static WorstDifference Worst(VerifiedKind kind, string tolerance, List<VerificationCheck> checks) => new(
        kind,
        tolerance,
        checks.Count,
        kind == VerifiedKind.Formula ? null : checks.Max(AbsoluteSi),
        kind == VerifiedKind.Temperature || checks.Any(check => check.Expected.Equals(0)) ? null : checks.Max(check => Math.Abs(check.Difference!.Value / check.Expected)),
        checks.Max(OfTolerance));

    private static double AbsoluteSi(VerificationCheck check)
    {
        var factor = check.Unit.Length == 0 ? 1 : Model.Measures.UnitTable.Find(check.Unit)?.Factor ?? 1;
        return Math.Abs(check.Difference!.Value) * factor;
    }

    // A tolerance of zero is met by exact agreement only.
    private static double OfTolerance(VerificationCheck check)
    {
        var gap = Math.Abs(check.Difference!.Value);
        return check.Allowed > 0 ? gap / check.Allowed : gap.Equals(0) ? 0 : double.PositiveInfinity;
    }
}

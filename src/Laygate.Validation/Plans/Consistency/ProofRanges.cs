using Laygate.Model.Plans;

namespace Laygate.Validation.Plans.Consistency;

/// <summary>Values of tests and documents that cannot be.</summary>
internal static class ProofRanges
{
    public static void Check(Plan plan, Where at)
    {
        foreach (var (test, where) in at.Each("tests", plan.Tests))
        {
            if (test.Cores?.Count < 1) where.Inside("cores").Fail("count", "A test on cores needs at least one.", "Correct the number, or leave `cores` out.");
        }

        foreach (var (document, where) in at.Each("documents", plan.Documents))
        {
            if (document.ValidTo < document.ValidFrom) where.Fail("valid_to", "The edition ends before it begins.", "Correct `valid_from` or `valid_to`.");
        }
    }
}

using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>What a plan says of its own revisions that cannot be.</summary>
internal static class Revisions
{
    public static void Check(Plan plan, PlanPart at)
    {
        var inside = at.Inside("plan");
        var identity = plan.Identity;
        if (Same(identity.Supersedes, identity.Revision))
        {
            inside.Fail("supersedes", $"Revision {identity.Revision!.Trim()} says that it replaces itself.", "Name the revision before, or leave `supersedes` out.");
        }
    }

    private static bool Same(string? one, string? other) =>
        !string.IsNullOrWhiteSpace(one) && string.Equals(one.Trim(), other?.Trim(), StringComparison.OrdinalIgnoreCase);
}

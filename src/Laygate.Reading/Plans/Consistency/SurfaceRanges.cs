using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of bond coats, joints, early friction and opening that cannot be.</summary>
internal static class SurfaceRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        foreach (var (coat, where) in at.Each("bond_coats", plan.BondCoats))
        {
            Coat(coat, where);
        }

        foreach (var (joint, where) in at.Each("joints", plan.Joints))
        {
            where.NotNegative("offset_below", joint.OffsetBelow);
            where.NotNegative("delay", joint.Delay);
            where.NotNegative("removed", joint.Removed);
        }

        if (plan.EarlyFriction is { } friction)
        {
            Friction(friction, at.Inside("early_friction"));
        }

        at.Inside("opening").NotNegative("after", plan.Opening?.After);
        at.Inside("opening").Placed("below", plan.Opening?.Below);
    }

    private static void Coat(BondCoat coat, PlanPart at)
    {
        IMeasure? rate = coat.MassRate is null ? coat.VolumeRate : coat.MassRate;
        at.Positive("rate", rate);
        at.PositiveShare("residue", coat.Residue);
        if (coat.Applied == false && rate is not null)
        {
            at.Fail("rate", "No bond coat is applied here, but its rate is stated.", "Remove `rate`, or write `applied: yes`.");
        }
    }

    private static void Friction(EarlyFriction friction, PlanPart at)
    {
        at.Positive("rate", friction.Rate);
        at.NotNegative("grit_by", friction.GritBy);
        at.Positive("temporary_limit", friction.TemporaryLimit);
        if (friction is { Grit: false, Rate: not null })
        {
            at.Fail("rate", "No grit is spread here, but its rate is stated.", "Remove `rate`, or write `grit: yes`.");
        }
    }
}

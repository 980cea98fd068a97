using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of tests and documents that cannot be.</summary>
internal static class ProofRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        foreach (var (test, where) in at.Each("tests", plan.Tests))
        {
            if (test.Cores?.Count < 1)
            {
                where.Inside("cores").Fail("count", "A test on cores needs at least one.", "Correct the number, or leave `cores` out.");
            }

            Reached(test, where);
        }

        foreach (var (document, where) in at.Each("documents", plan.Documents))
        {
            if (document.ValidTo < document.ValidFrom)
            {
                where.Fail("valid_to", "The edition ends before it begins.", "Correct `valid_from` or `valid_to`.");
            }
        }
    }

    private static void Reached(Test test, PlanPart where)
    {
        if (test.Reached is not { } reached)
        {
            return;
        }

        var inside = where.Inside("reached");
        if (test.Kind is { } kind && kind != TestKind.TrialLength)
        {
            where.Fail("reached", "Only a trial length states what it reached.", "Set `kind: trial-length`, or leave `reached` out.");
        }

        inside.Positive("thickness", reached.Thickness);
        inside.Temperature("laying_temperature", reached.LayingTemperature);
        inside.CanBe("laying_temperature", reached.LayingTemperature, Possible.HotMix);
        foreach (var (phase, entry) in inside.Each("passes", reached.Passes))
        {
            entry.AtLeast("passes", phase.Passes, 1);
        }

        inside.Positive("density_behind_screed", reached.DensityBehindScreed);
        inside.Positive("density", reached.Density);
        inside.Ascending(("density_behind_screed", reached.DensityBehindScreed), ("density", reached.Density));
    }
}

using Laygate.Model.Plans;
using Laygate.Reading.Measures;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of mixes that cannot be.</summary>
internal static class MixRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        foreach (var (mix, where) in at.Each("mixes", plan.Mixes))
        {
            Mix(mix, where);
        }
    }

    private static void Mix(Mix mix, PlanPart at)
    {
        at.Inside("density").Positive("compacted", mix.Density?.Compacted);
        Degree(mix.Density, at.Inside("density"));
        at.Band("loading", mix.Loading, Possible.HotMix);
        at.Band("delivery", mix.Delivery, Possible.HotMix);
        at.Band("tender", mix.Tender, Possible.Asphalt);
        at.Placed("refuse_below", mix.RefuseBelow);
        at.Placed("start", mix.Start);
        at.Placed("cessation", mix.Cessation);
        at.Placed("grit_embedment", mix.GritEmbedment);
        StartAndCessation(mix, at);
        at.Positive("age_limit", mix.AgeLimit);
        at.Share("reclaimed", mix.Reclaimed);
    }

    // A course may be denser than a laboratory specimen, but no course is denser than the mix without voids.
    private static void Degree(MixDensity? density, PlanPart at)
    {
        if (density?.Reference == DensityReference.Maximum)
        {
            at.PositiveShare("degree", density.Degree);
        }
        else
        {
            at.Positive("degree", density?.Degree);
        }

        if (density?.Reference != DensityReference.Maximum)
        {
            at.CanBe("degree", density?.Degree, Possible.Degree);
        }
    }

    private static void StartAndCessation(Mix mix, PlanPart at)
    {
        if (mix is not { Start: { Value: { } start, Place: { } place }, Cessation: { Value: { } cessation } end } || end.Place != place)
        {
            return;
        }

        if (PlanPart.IsLess(start, cessation))
        {
            at.Inside("cessation").Fail("value", $"Rolling would end at {MeasureReader.Write(cessation)}, before it starts at {MeasureReader.Write(start)}.", "Correct `start` or `cessation`.");
        }
    }
}

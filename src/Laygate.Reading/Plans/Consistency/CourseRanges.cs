using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of courses that cannot be.</summary>
internal static class CourseRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        foreach (var (course, where) in at.Each("courses", plan.Courses))
        {
            var mix = plan.Mixes.FirstOrDefault(mix => string.Equals(mix.Id, course.Mix, StringComparison.Ordinal));
            Thickness(course, where);
            where.NotNegative("distance", course.Distance);
            where.NotNegative("delay", course.Delay);
            where.Band("laying_temperature", course.LayingTemperature, Possible.HotMix);
            where.Placed("lower_temperature_lowest", course.LowerTemperatureLowest);
            BehindScreed(course.DensityBehindScreed, mix, where.Inside("density_behind_screed"));
            where.Positive("tonnage", course.Tonnage);
        }
    }

    private static void Thickness(Course course, PlanPart at)
    {
        at.Positive("thickness", course.Thickness);
        at.CanBe("thickness", course.Thickness, Possible.Thickness);
        at.Positive("thickness_lowest", course.ThicknessLowest);
        at.Positive("thickness_highest", course.ThicknessHighest);
        at.NotNegative("tolerance", course.Tolerance);
        if (course.ThicknessLowest is { } lowest && PlanPart.IsLess(course.Thickness, lowest))
        {
            at.Fail("thickness_lowest", $"`thickness_lowest` is {Written(lowest)}, more than `thickness` with {Written(course.Thickness)}.", "Correct one of the two.");
        }

        at.Ascending(("thickness", course.Thickness), ("thickness_highest", course.ThicknessHighest));
    }

    private static void BehindScreed(DensityBehindScreed? density, Mix? mix, PlanPart at)
    {
        if (mix?.Density?.Reference == DensityReference.Maximum)
        {
            at.PositiveShare("value", density?.Value);
        }
        else
        {
            at.Positive("value", density?.Value);
        }

        if (mix?.Density?.Reference != DensityReference.Maximum)
        {
            at.CanBe("value", density?.Value, Possible.Degree);
        }
    }

    private static string Written(Laygate.Model.Measures.IMeasure measure) => Measures.MeasureReader.Write(measure);
}

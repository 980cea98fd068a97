using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>Levers of mixes, courses, bond coats and grit.</summary>
internal static class MixLevers
{
    public static IEnumerable<Lever> Of(Plan plan) => plan.Mixes.Select(mix => Temperature(plan, mix))
        .Concat(plan.Courses.Select(course => Thickness(plan, course)))
        .Concat(plan.BondCoats.Select(coat => Rate(plan, coat)))
        .Append(GritBy(plan))
        .OfType<Lever>();

    /// <summary>
    /// Hotter on the mat means hotter at the plant: loading, delivery and laying temperatures move together, up to the
    /// highest loading temperature that the plan states. A plan that states none has no such lever.
    /// </summary>
    private static Lever? Temperature(Plan plan, Mix mix)
    {
        if (mix.Loading is not { Expected: { } expected, Highest: { } highest } || expected.Si > highest.Si)
        {
            return null;
        }

        return new Lever
        {
            Kind = LeverKind.MixTemperature,
            Address = $"mix:{mix.Id}",
            Key = "loading.expected",
            Unit = expected.Unit,
            Current = expected.Number,
            Lowest = mix.Loading.Lowest is { } lowest ? double.Round(expected.Unit.FromSi(lowest.Si), 9) : expected.Number,
            Highest = double.Round(expected.Unit.FromSi(highest.Si), 9),
            Step = Steps.Of(expected.Unit, expected.Number),
            Change = number => Moved(plan, mix, expected with { Number = number }, expected.Unit.ToSi(number) - expected.Si),
        };
    }

    private static Plan Moved(Plan plan, Mix mix, Measure<Temperature> loading, double by)
    {
        var changed = mix with { Loading = mix.Loading! with { Expected = loading }, Delivery = Moved(mix.Delivery, by) };
        return plan with
        {
            Mixes = PlanCopy.Replace(plan.Mixes, item => item.Id, changed),
            Courses =
            [
                .. plan.Courses.Select(course => string.Equals(course.Mix, mix.Id, StringComparison.Ordinal)
                    ? course with { LayingTemperature = Moved(course.LayingTemperature, by) }
                    : course),
            ],
        };
    }

    private static TemperatureBand? Moved(TemperatureBand? band, double by) => band is null ? null : band with
    {
        Lowest = PlanCopy.Moved(band.Lowest, by),
        Expected = PlanCopy.Moved(band.Expected, by),
        Highest = PlanCopy.Moved(band.Highest, by),
    };

    private static Lever? Thickness(Plan plan, Course course)
    {
        if (course.Tolerance is not { Si: > 0 } tolerance)
        {
            return null;
        }

        var lever = PlanLevers.Measure(
            LeverKind.Thickness, $"course:{course.Id}", "thickness", course.Thickness,
            (course.Thickness.Si - tolerance.Si, course.Thickness.Si + tolerance.Si),
            thickness => PlanCopy.WithCourse(plan, Thicker(course, thickness)));
        return lever is null ? null : lever with { ByDesigner = true };
    }

    private static Course Thicker(Course course, Measure<Length> thickness)
    {
        var by = thickness.Si - course.Thickness.Si;
        return course with
        {
            Thickness = thickness,
            ThicknessLowest = PlanCopy.Moved(course.ThicknessLowest, by),
            ThicknessHighest = PlanCopy.Moved(course.ThicknessHighest, by),
        };
    }

    private static Lever? Rate(Plan plan, BondCoat coat) =>
        PlanLevers.Measure(
            LeverKind.BondCoatRate, $"bond-coat:{coat.Id}", "rate", coat.MassRate, (null, null),
            rate => PlanCopy.WithCoat(plan, coat with { Rate = rate }))
        ?? PlanLevers.Measure(
            LeverKind.BondCoatRate, $"bond-coat:{coat.Id}", "rate", coat.VolumeRate, (null, null),
            rate => PlanCopy.WithCoat(plan, coat with { Rate = rate }));

    private static Lever? GritBy(Plan plan) => PlanLevers.Measure(
        LeverKind.GritBy, "early-friction", "grit_by", plan.EarlyFriction?.GritBy, (null, null),
        by => plan with { EarlyFriction = plan.EarlyFriction! with { GritBy = by } });
}

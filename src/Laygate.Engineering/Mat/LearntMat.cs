using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>
/// What recorded shifts taught about a course: a conductivity and a temperature behind the screed, each within the range that is assumed
/// without it. It never stands alone: every question to the mat has the more careful answer of the two.
/// </summary>
internal static class LearntMat
{
    /// <summary>Id of a learnt conductivity among the assumptions of a report.</summary>
    public const string Conductivity = "learnt_conductivity";

    /// <summary>Id of a learnt temperature behind the screed.</summary>
    public const string Laying = "learnt_laying_temperature";

    /// <summary>Whether a plan names something that was learnt about a course of a pass.</summary>
    public static bool IsFor(Plan plan, PavingPass pass) => pass.Courses.Any(course => plan.Learnt.Any(entry => IsFor(entry, course)));

    /// <summary>The first entry for the mix of a course; null where there is none.</summary>
    public static LearntValues? Of(IReadOnlyList<LearntValues> learnt, Course course) => learnt.FirstOrDefault(entry => IsFor(entry, course));

    /// <summary>A course with what was learnt about it.</summary>
    /// <param name="entry">What was learnt; null leaves the course as it is.</param>
    /// <param name="course">The course as it is assumed.</param>
    /// <param name="assumptions">The assumptions in force.</param>
    /// <param name="isGiven">Whether its temperature is given by the plan for a moment after laying, which nothing learnt moves.</param>
    public static MatCourse Over(LearntValues? entry, MatCourse course, AssumptionSet assumptions, bool isGiven)
    {
        if (entry is null)
        {
            return course;
        }

        var with = entry.Laying is { } laying && !isGiven ? Shifted(course, laying.Value.Si, laying.Low.Si, laying.High.Si) : course;
        return entry.Conductivity is { } known ? with with { Conductivity = Within(assumptions, course.Material, known) } : with;
    }

    /// <summary>A course that lies hotter or colder behind the screed, within its own range.</summary>
    /// <param name="course">The course.</param>
    /// <param name="value">By how much, K.</param>
    /// <param name="low">5 % point, K.</param>
    /// <param name="high">95 % point, K.</param>
    public static MatCourse Shifted(MatCourse course, double value, double low, double high)
    {
        var expected = Inside(course.Celsius + value);
        return course with { Celsius = expected, Coldest = Math.Min(expected, Inside(course.Celsius + low)), Hottest = Math.Max(expected, Inside(course.Celsius + high)) };

        double Inside(double celsius) => Math.Clamp(celsius, course.Coldest, course.Hottest);
    }

    /// <summary>Shows in the working that something learnt is used.</summary>
    public static void Show(Calculation calculation, Course course)
    {
        if (Of(calculation.Context.Plan.Learnt, course) is not { } entry)
        {
            return;
        }

        var source = FormattableString.Invariant($"learnt from {entry.Shifts} shifts, entry `{entry.Id}` of the plan; the more careful of this and what is assumed counts");
        if (entry.Conductivity is { } conductivity)
        {
            calculation.Use(new AssumptionUse(Conductivity, $"course:{course.Id}", conductivity.Value.Number, conductivity.Value.Unit.Spelling, Evidence.Derived, source, null));
        }

        if (entry.Laying is { } laying)
        {
            calculation.Use(new AssumptionUse(Laying, $"course:{course.Id}", laying.Value.Number, laying.Value.Unit.Spelling, Evidence.Derived, source, null));
        }
    }

    private static MatRange Within(AssumptionSet assumptions, MaterialClass material, LearntConductivity known)
    {
        var assumed = assumptions[AssumptionIds.ConductivityOf(material)];
        var expected = Inside(known.Value.Si);
        return new MatRange(expected, Math.Min(expected, Inside(known.Low.Si)), Math.Max(expected, Inside(known.High.Si)));

        double Inside(double share) => Math.Clamp(share * assumed.Number, assumed.Low, assumed.High);
    }

    private static bool IsFor(LearntValues entry, Course course) => course.Mix is { } mix && entry.Mixes.Any(one => PlanView.Same(one, mix));
}

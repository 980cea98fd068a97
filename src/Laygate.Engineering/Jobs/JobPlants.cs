using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>Plants that several shifts of a job take mix from at one time.</summary>
internal static class JobPlants
{
    /// <summary>Mix that shifts which lay at one time take from a plant together, when it is most.</summary>
    public static Answer Demand(QuantityContext context, Element element)
    {
        var plant = (Plant)element.Subject!;
        var calculation = new Calculation(context);
        var sum = 0.0;
        foreach (var shift in Busiest(context.Job!, plant))
        {
            foreach (var course in Courses(shift, plant))
            {
                calculation.Take(course.Demand);
                var share = course.Demand.Value is NumberValue demand ? demand.Si / Makers(shift, course.Course).Count() : double.NaN;
                calculation.Show("Rm", "course.demand_average", $"job-shift:{shift.Id}", course.Course.Id);
                sum += share;
            }
        }

        return calculation.Result("job-plant.demand_together", "R", "R = Σ Rm", sum > 0 ? sum : null) with { Input = new InputReference(element.Address, "nameplate") };
    }

    /// <summary>The shifts that lay at one time and take most from a plant; a single one where none lay at one time.</summary>
    public static IReadOnlyList<JobShift> Busiest(JobView job, Plant plant)
    {
        var takers = job.Shifts.Where(shift => Courses(shift, plant).Any()).ToList();
        // Whatever goes on together goes on when one of them begins.
        return takers.Select(first => takers.FindAll(other => ReferenceEquals(first, other) || (other.Start <= first.Start && first.Start < other.End)))
            .OrderByDescending(together => together.Sum(shift => Courses(shift, plant).Sum(course => course.Demand.Value is NumberValue demand ? demand.Si : 0))).FirstOrDefault() ?? [];
    }

    private static IEnumerable<CourseOfShift> Courses(JobShift shift, Plant plant) =>
        shift.Courses.Where(course => Makers(shift, course.Course).Any(maker => string.Equals(maker.Id, plant.Id, StringComparison.Ordinal)));

    private static IEnumerable<Plant> Makers(JobShift shift, Course course) =>
        (shift.Plan.Supply?.Plants ?? []).Where(plant => CourseSupplyQuantities.Makes(plant, course, shift.Plan));
}

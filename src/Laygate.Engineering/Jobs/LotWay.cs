using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>A lot when a shift has laid its part of it.</summary>
/// <param name="Shift">The shift.</param>
/// <param name="Mix">Id of the mix that it lays.</param>
/// <param name="SoFar">Mass in kg or length in m that the lot holds then, in the dimension of its size; null where it is not known.</param>
public sealed record LotAfter(JobShift Shift, string Mix, double? SoFar);

/// <summary>
/// How a lot goes over the shifts of its job. Lots of one course for one test follow each other: what one has taken of a shift
/// is not there for the next.
/// </summary>
/// <param name="Lot">The lot.</param>
/// <param name="After">The lot after each of its shifts that lays its course, in the order of laying.</param>
/// <param name="EndsIn">The shift in which it ends; null where it ends in none, or where that is not known.</param>
/// <param name="Missing">What is not stated that its course takes in these shifts.</param>
public sealed record LotWay(Lot Lot, IReadOnlyList<LotAfter> After, JobShift? EndsIn, IReadOnlyList<InputReference> Missing)
{
    // A lot is full but for rounding: a billionth of it is no mix.
    private const double Rounding = 1e-9;

    /// <summary>What the lot holds at its end, or after the last shift of the job; null where it is not known.</summary>
    public double? Whole => After is [.., var last] ? last.SoFar : 0;

    /// <summary>Sublots that are begun when the lot holds so much; null where it states none, or the amount is not known.</summary>
    /// <param name="amount">Mass in kg or length in m.</param>
    public int? Sublots(double? amount) => Lot.Sublot is { } part && amount / part.Si is { } parts and < 1e6 ? (int)Math.Ceiling(parts - Rounding) : null;

    /// <summary>The lots of a job, as it lists them.</summary>
    internal static IReadOnlyList<LotWay> Of(JobView job)
    {
        var order = job.InOrder;
        int Place(string id) => order.ToList().FindIndex(shift => PlanView.Same(shift.Id, id));
        var ways = new Dictionary<Lot, LotWay>(ReferenceEqualityComparer.Instance);
        foreach (var following in job.Lots.GroupBy(lot => (lot.Course, lot.Test)))
        {
            var left = order.ToDictionary(shift => shift.Id, _ => 1.0, StringComparer.Ordinal);
            foreach (var lot in following.OrderBy(lot => Place(lot.BeginsIn)))
            {
                var last = lot.EndsIn is null ? order.Count - 1 : Place(lot.EndsIn);
                ways[lot] = Walk(lot, [.. order.Take(last + 1).Skip(Place(lot.BeginsIn))], left);
            }
        }

        return [.. job.Lots.Select(lot => ways[lot])];
    }

    private static LotWay Walk(Lot lot, IReadOnlyList<JobShift> shifts, Dictionary<string, double> left)
    {
        var (after, missing, sum) = (new List<LotAfter>(), new List<InputReference>(), (double?)0);
        foreach (var shift in shifts)
        {
            if (shift.Courses.FirstOrDefault(course => PlanView.Same(course.Course.Id, lot.Course)) is not { } course)
            {
                continue;
            }

            var whole = Amount(lot, shift, course, missing);
            var taken = lot.Size is { } size && whole * left[shift.Id] > size.Si - sum ? size.Si - sum : whole * left[shift.Id];
            left[shift.Id] = whole > 0 ? Math.Max(0, left[shift.Id] - ((taken ?? 0) / whole.Value)) : left[shift.Id];
            sum += taken;
            after.Add(new LotAfter(shift, course.Course.Mix, sum));
            if (lot.Size is { } full && sum >= full.Si * (1 - Rounding))
            {
                return new LotWay(lot, after, shift, missing);
            }
        }

        return new LotWay(lot, after, lot.EndsIn is not null && shifts is [.., var end] ? end : null, missing);
    }

    private static double? Amount(Lot lot, JobShift shift, CourseOfShift course, List<InputReference> missing)
    {
        if ((lot.Size ?? lot.Sublot)?.Unit.Dimension == Dimension.Length)
        {
            var runs = shift.Plan.Runs.Where(run => PlanView.Lays(run, course.Course)).ToList();
            missing.AddRange(runs.Where(run => run.From is null).Select(run => new InputReference($"run:{run.Id}", "from")));
            missing.AddRange(runs.Where(run => run.To is null).Select(run => new InputReference($"run:{run.Id}", "to")));
            return runs.Any(run => run.From is null || run.To is null) ? null : runs.Sum(run => Math.Abs(run.To!.Si - run.From!.Si));
        }

        missing.AddRange(course.Mass.Absence?.Missing ?? []);
        return course.Mass.Value is NumberValue mass ? mass.Si : null;
    }
}

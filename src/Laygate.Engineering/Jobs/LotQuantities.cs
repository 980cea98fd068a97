using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Jobs;

/// <summary>What there is to judge of a lot of acceptance that goes over several shifts.</summary>
internal static class LotQuantities
{
    private static readonly Define OfLot = new(ElementKind.JobLot);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        OfLot.Number("mixes", Shape.None, "Mixes of which the lot is laid.", Mixes, new Method("number of mixes of its course in its shifts", Sources.Definition, "whole numbers")),
        OfLot.Number("shifts_without_course", Shape.None, "Shifts in which the lot begins or ends and which do not lay its course.", WithoutCourse, new Method(
            "number of shifts of `begins_in` and `ends_in` without a run of its course", Sources.Definition, "whole numbers")),
        OfLot.Number("ends", Shape.None, "Whether the lot ends within the job: 1 where it is full in a shift or a shift ends it, else 0.", Ends, new Method(
            "1 where a shift fills or ends it, else 0", Sources.Definition, "lots of one course for one test follow each other; what one has taken of a shift is not there for the next")),
        OfLot.Flag("sublots_compared", "Whether the tests and the sublot of the lot are stated, so that both can be compared.", (_, e) =>
            Answers.Follows(Of(e).Lot is { Tests: not null, Sublot: not null }, new InputReference(e.Address, "tests"))),
        OfLot.Number("sublots", Shape.None, "Sublots that are begun in the lot by its end.", Sublots, new Method(
            "N = amount of the lot by its end ÷ sublot, rounded up", Sources.Balance, "a sublot that is begun counts; how much is laid in each shift follows from its runs")),
        OfLot.Number("tests", Shape.None, "Tests that the lot needs, as stated.", (_, e) => Answers.Count(Of(e).Lot.Tests, new InputReference(e.Address, "tests"))),
    ];

    private static LotWay Of(Element element) => (LotWay)element.Subject!;

    private static Answer Mixes(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var mixes = Of(element).After.Select(after => (after.Shift.Id, after.Mix)).ToList();
        foreach (var (shift, mix) in mixes)
        {
            calculation.Show("m", "mix", $"job-shift:{shift}", mix);
        }

        return calculation.Result("job-lot.mixes", "N", "N = mixes of its course", mixes.Select(one => one.Mix).Distinct(StringComparer.Ordinal).Count()) with { Input = new InputReference(element.Address, "ends_in") };
    }

    private static Answer WithoutCourse(QuantityContext context, Element element)
    {
        var (lot, calculation) = (Of(element).Lot, new Calculation(context));
        string[] named = [lot.BeginsIn, .. lot.EndsIn is { } end ? [end] : Array.Empty<string>()];
        var without = named.Distinct(StringComparer.Ordinal).Where(id => !Lays(context.Job!, id, lot.Course)).ToList();
        foreach (var id in without)
        {
            calculation.Show("N", "shift without the course", $"job-shift:{id}", id);
        }

        var key = without is [var only] && !PlanView.Same(only, lot.BeginsIn) ? "ends_in" : "begins_in";
        return calculation.Result("job-lot.shifts_without_course", "N", "N = shifts that do not lay the course", without.Count) with { Input = new InputReference(element.Address, key) };
    }

    private static bool Lays(JobView job, string shift, string course) =>
        job.Shifts.First(one => PlanView.Same(one.Id, shift)).Courses.Any(one => PlanView.Same(one.Course.Id, course));

    private static Answer Ends(QuantityContext context, Element element)
    {
        var (way, calculation) = (Of(element), new Calculation(context));
        if (way.EndsIn is null && way.Lot.Size is not null)
        {
            calculation.Miss(way.Missing);
        }

        Show(calculation, way);
        return calculation.Result("job-lot.ends", "N", "N = shifts that fill or end it", way.EndsIn is null ? 0 : 1) with { Input = new InputReference(element.Address, "ends_in") };
    }

    private static Answer Sublots(QuantityContext context, Element element)
    {
        var (way, calculation) = (Of(element), new Calculation(context));
        calculation.Miss(way.Missing);
        Show(calculation, way);
        calculation.Stated("Ms", way.Lot.Sublot, element.Address, "sublot");
        return calculation.Result("job-lot.sublots", "N", "N = M ÷ Ms, rounded up", way.Sublots(way.Whole)) with { Input = new InputReference(element.Address, "sublot") };
    }

    private static void Show(Calculation calculation, LotWay way)
    {
        var unit = (way.Lot.Size ?? way.Lot.Sublot)?.Unit;
        foreach (var after in way.After.Where(after => after.SoFar is not null && unit is not null))
        {
            calculation.Show("M", "in the lot so far", $"job-shift:{after.Shift.Id}", after.SoFar!.Value, unit);
        }
    }
}

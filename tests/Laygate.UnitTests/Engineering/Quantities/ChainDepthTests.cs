using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.UnitTests.Reading.Plans;

namespace Laygate.UnitTests.Engineering.Quantities;

/// <summary>
/// A quantity that asks another stands on its call stack. The chains are as long as the formulas make them and do not grow
/// with the plan: that no thread runs out of stack rests on it.
/// </summary>
public sealed class ChainDepthTests
{
    private const int Longest = 10;

    [Theory]
    [InlineData("separately")]
    [InlineData("hot-on-warm")]
    [InlineData("hot-on-hot")]
    public void Chains_do_not_grow_with_the_courses(string laid)
    {
        var (few, many) = (Deepest(Courses(4, laid)), Deepest(Courses(24, laid)));
        Assert.InRange(few, 2, Longest);
        Assert.Equal(few, many);
    }

    [Fact]
    public void No_chain_is_long_on_a_plan_that_says_everything() => Assert.InRange(Deepest(PlanFiles.EveryKey), 2, Longest);

    private static int Deepest(string text)
    {
        var (depth, deepest) = (0, 0);
        var counting = new QuantityCatalogue(LaygateQuantities.Catalogue().All.Select(quantity => quantity with
        {
            Compute = (context, element) =>
            {
                deepest = Math.Max(deepest, ++depth);
                var answer = quantity.Compute(context, element);
                depth--;
                return answer;
            },
        }));
        // From the last quantity of the catalogue to the first: what is asked early is kept and shortens the chains of those behind it.
        var all = counting.All.Reverse().ToList();
        var plan = PlanFiles.Plan(text);
        foreach (var quantity in all)
        {
            var context = new QuantityContext(plan, counting, LaygateAssumptions.Set(), 1) { Samples = 2 };
            foreach (var element in context.Elements.All.Where(element => element.Kind == quantity.Element).TakeLast(1))
            {
                _ = context.Get(quantity.Name, element);
            }
        }

        return deepest;
    }

    private static string Courses(int count, string laid) =>
        "format: 1\nplan: { id: job, stage: release }\nmixes:\n  - { id: m, kind: asphalt-concrete, delivery: { expected: 165 °C, place: in-load } }\ncourses:\n"
        + string.Concat(Enumerable.Range(0, count).Select(at => string.Create(
            CultureInfo.InvariantCulture,
            $"  - {{ id: c{at}, mix: m, thickness: 40 mm{(at == 0 ? string.Empty : $", on: c{at - 1}")}{(at == 0 ? string.Empty : $", laid: {laid}")} }}\n")))
        + $"runs:\n  - {{ id: r, from: 0 m, to: 100 m, width: 4 m, courses: [{string.Join(", ", Enumerable.Range(0, count).Select(at => $"c{at}"))}] }}\n"
        + "weather:\n  envelope: { air_lowest: 8 °C, base_lowest: 9 °C, wind_highest: 4 m/s }\n";
}

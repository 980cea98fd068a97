using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>A difference of stated figures that is exact on paper meets a limit on which it lies: decimal arithmetic says what is exact.</summary>
public sealed class ExactDifferenceTests
{
    private static readonly Laygate.Rules.Merging.RuleBook Book = Repository.Bound();
    private static readonly Plan Single = Base("single");

    public static TheoryData<string, decimal, decimal, decimal, decimal, decimal, decimal> Ordinary => new()
    {
        // unit, thickness from, to and step, tolerance from, to and step
        { "mm", 20, 120, 1, 1, 10, 1 },
        { "cm", 2, 12, 0.5m, 0.1m, 1, 0.1m },
        { "in", 1, 6, 0.25m, 0.0625m, 0.5m, 0.0625m },
    };

    [Theory]
    [MemberData(nameof(Ordinary))]
    public void Nominal_less_tolerance_reaches_the_smallest_thickness_exactly(
        string unit, decimal from, decimal to, decimal step, decimal least, decimal most, decimal by)
    {
        var (combinations, wrong) = (0, new List<string>());
        for (var t = from; t <= to; t += step)
        {
            for (var tolerance = least; tolerance <= most && tolerance < t; tolerance += by)
            {
                combinations++;
                var on = Margin(t, tolerance, t - tolerance, unit);
                var below = Margin(t, tolerance, t - tolerance + by, unit);
                if (on.Outcome != Outcome.Met || on.Value!.Number is not 0 || below.Outcome != Outcome.Missed)
                {
                    wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{t} - {tolerance} {unit}: {on.Outcome} {on.Value?.Number}, {below.Outcome}"));
                }
            }
        }

        Assert.True(combinations >= 160, $"{combinations} combinations");
        Assert.Empty(wrong);
    }

    /// <summary>By hand: each pair of the two temperatures has exactly the margin that is asked for, 3 °C (5 °F is no whole number of °C).</summary>
    [Theory]
    [InlineData("°C", 3)]
    [InlineData("°F", 5)]
    public void The_base_above_the_dew_point_by_exactly_the_margin(string unit, int margin)
    {
        for (var dew = -5.0m; dew <= 30; dew += 0.1m)
        {
            var plan = Single with { Weather = new Weather { Hours = [], Envelope = new WeatherEnvelope { BaseLowest = T(dew + margin), DewPointHighest = T(dew) } } };
            var value = Assert.IsType<NumberValue>(Value(plan, "weather.dew_margin_lowest"));
            var limit = margin * (unit is "°F" ? 5.0 / 9 : 1);
            Assert.True(LimitComparison.AreEqual(value.Si, limit, Dimension.TemperatureDifference, value.Scale), $"{dew} {unit}: {value.Si}");
        }

        Measure<Temperature> T(decimal number) => new((double)number, UnitTable.Find(unit)!);
    }

    /// <summary>What makes it hold everywhere: each difference that a rule compares knows the size of what it was made of.</summary>
    [Fact]
    public void Every_difference_that_a_rule_compares_carries_the_size_of_its_figures()
    {
        var asked = Book.InForce.Select(rule => rule.Quantity).Where(IsDifference).Distinct().ToList();
        var seen = 0;
        foreach (var plan in (Plan[])[Single, Base("pair")])
        {
            var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), 1) { IsQuick = true };
            foreach (var (quantity, element) in asked.SelectMany(quantity => context.Elements.All.Where(element => element.Kind == quantity.Element).Select(element => (quantity, element))))
            {
                var answer = context.Get(quantity.Name, element);
                if (answer is not { Origin: not Origin.Stated, Value: NumberValue number })
                {
                    continue;
                }

                seen++;
                var inputs = answer.Working.Inputs.Where(input => input.Number is not null && DimensionOf(input.Unit) == quantity.Dimension).Select(input => Math.Abs(Si(input)));
                Assert.True(number.Scale >= inputs.DefaultIfEmpty(0).Max() * (1 - 1e-9), $"{quantity.Name} of {element.Address}: {number}");
                Assert.True(LimitComparison.AreEqual(number.Si, number.Si + (1e-13 * number.Scale), quantity.Dimension, number.Scale));
            }
        }

        Assert.InRange(asked.Count, 8, 60);
        Assert.True(seen >= 8, $"{seen} of {asked.Count} were there: {string.Join(' ', asked.Select(one => one.Name))}");

        static double Si(WorkingInput input) => UnitTable.Find(input.Unit)?.ToSi(input.Number!.Value) ?? input.Number!.Value;
        static Dimension DimensionOf(string unit) => UnitTable.Find(unit)?.Dimension ?? Dimension.None;
    }

    [Theory]
    [InlineData(0.0, 0.09, true)]
    [InlineData(1e-12, 0.09, false)]
    [InlineData(-1.4e-17, 0.09, true)]
    [InlineData(-1e-6, 0.09, false)]
    public void Nothing_but_rounding_is_forgiven(double margin, double scale, bool equal) =>
        Assert.Equal(equal, LimitComparison.AreEqual(margin, 0, Dimension.Length, scale));

    private static bool IsDifference(QuantityDefinition quantity) => quantity.Kind == ValueKind.Number && quantity.Formula.Contains('−', StringComparison.Ordinal);

    private static Finding Margin(decimal thickness, decimal tolerance, decimal lowest, string unit)
    {
        var course = Single.Courses[0] with { Thickness = L(thickness), Tolerance = L(tolerance), ThicknessLowest = L(lowest) };
        var context = new QuantityContext(Single with { Courses = [course, .. Single.Courses.Skip(1)] }, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), 1);
        return Evaluator.Evaluate(Book, context, new EvaluationSettings { File = "t", CheckedOn = Repository.CheckDate, OnlyRule = "LAY-005" })
            .Findings.Single(finding => string.Equals(finding.Address, $"course:{course.Id}", StringComparison.Ordinal));

        Measure<Length> L(decimal number) => new((double)number, UnitTable.Find(unit)!);
    }

    private static Laygate.Engineering.Quantities.QuantityValue? Value(Plan plan, string quantity)
    {
        var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), 1);
        return context.Get(quantity, context.Elements.Find("weather")!).Value;
    }

    private static Plan Base(string name) => PlanMapper.Map(YamlReader.Read(Repository.Bytes($"rules/bases/{name}.yaml")).Documents[0]).Plan!;
}

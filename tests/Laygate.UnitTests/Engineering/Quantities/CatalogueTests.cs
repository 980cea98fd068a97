using System.Reflection;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Quantities;

public class CatalogueTests
{
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();

    public static TheoryData<string> Names() => [.. Catalogue.All.Select(definition => definition.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Definition_is_complete(string name)
    {
        var definition = Catalogue.Find(name)!;
        Assert.StartsWith(Words.Of(definition.Element) + ".", name, StringComparison.Ordinal);
        Assert.EndsWith(".", definition.Meaning, StringComparison.Ordinal);
        if (definition.Kind == ValueKind.Number && definition.Dimension != Dimension.None)
        {
            Assert.Equal(definition.Dimension, UnitTable.Find(definition.MetricUnit)!.Dimension);
            Assert.Equal(definition.Dimension, UnitTable.Find(definition.UsUnit)!.Dimension);
        }

        Assert.Equal(definition.Formula.Length > 0, definition.Source.Length > 0 && definition.Range.Length > 0);
    }

    [Theory]
    [InlineData("site.measures")]
    [InlineData("site.overhead_line")]
    [InlineData("plan.test_mix_temperature")]
    [InlineData("plan.action_truck_shortage")]
    [InlineData("bond-coat.residual_rate")]
    [InlineData("early-friction.grit_window")]
    [InlineData("hold-point.complete")]
    public void Has_names_that_rules_use(string name) => Assert.NotNull(Catalogue.Find(name));

    [Fact]
    public void Every_condition_of_the_site_has_its_flag()
    {
        foreach (var property in typeof(SiteConditions).GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Where(property => property.PropertyType == typeof(bool?)))
        {
            var conditions = new SiteConditions();
            property.SetValue(conditions, true);
            var key = string.Concat(property.Name.Select((letter, i) =>
                char.IsUpper(letter) ? (i > 0 ? "_" : string.Empty) + char.ToLowerInvariant(letter) : letter.ToString()));
            var plan = Small.Plan with { Site = new Site { Conditions = conditions } };
            Assert.Equal(new FlagValue(true), Ask.Answer(plan, $"site.{key}", "site").Value);
            Assert.Equal([$"site/conditions.{key}"], Ask.Missing(Ask.Answer(Small.Plan, $"site.{key}", "site")));
        }
    }

    [Fact]
    public void Every_quantity_answers_for_almost_nothing() => AnswersSoundly(Small.Plan);

    [Fact]
    public void Every_quantity_answers_for_a_whole_plan() => AnswersSoundly(ScenarioA.Plan);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Every_quantity_answers_for_random_plans(int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < 40; i++)
        {
            AnswersSoundly(RandomPlans.Next(random));
        }
    }

    private static void AnswersSoundly(Plan plan)
    {
        var context = Ask.Context(plan);
        foreach (var definition in Catalogue.All)
        {
            foreach (var element in context.Elements.Of(definition.Element))
            {
                var answer = context.Get(definition.Name, element);
                Assert.True((answer.Value is null) != (answer.Absence is null), definition.Name);
                Assert.True(answer.Absence is not { Reason: AbsenceReason.MissingInput } || answer.Absence.Missing.Count > 0, definition.Name);
                Assert.True(answer.Absence is null or { Reason: AbsenceReason.MissingInput } || answer.Absence.Note is not null, definition.Name);
                IsFinite(answer, definition);
                Assert.False(string.Equals(NoteIds.Circular, answer.Absence?.Note?.Id, StringComparison.Ordinal), definition.Name);
            }
        }
    }

    private static void IsFinite(Answer answer, QuantityDefinition definition)
    {
        double?[] numbers =
        [
            .. answer.Value is NumberValue number ? [number.Si, number.Low, number.High] : Array.Empty<double?>(),
            .. answer.Working.Inputs.Select(input => input.Number),
            .. answer.Working.Steps.Select(step => (double?)step.Number),
        ];
        Assert.All(numbers, value => Assert.True(value is null || double.IsFinite(value.Value), definition.Name));
        if (answer.Value is NumberValue { Low: { } low, High: { } high } band)
        {
            Assert.InRange(band.Si, low, high);
        }
    }
}

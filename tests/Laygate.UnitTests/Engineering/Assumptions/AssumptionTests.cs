using System.Reflection;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Assumptions;

public class AssumptionTests
{
    /// <summary>Units of properties that no plan states, and the empty unit of shares and ratios.</summary>
    private static readonly string[] OtherUnits = ["W/(m·K)", "J/(kg·K)", "J/(kg·K²)", "W/(m2·K)", string.Empty];

    public static TheoryData<string> Ids() => [.. LaygateAssumptions.All.Select(assumption => assumption.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Has_value_range_unit_source_and_evidence(string id)
    {
        var assumption = LaygateAssumptions.Set()[id];
        Assert.InRange(assumption.Number, assumption.Low, assumption.High);
        Assert.True(UnitTable.Find(assumption.Unit) is not null || OtherUnits.Contains(assumption.Unit, StringComparer.Ordinal), assumption.Unit);
        Assert.False(string.IsNullOrWhiteSpace(assumption.Meaning));
        Assert.EndsWith(".", assumption.Meaning, StringComparison.Ordinal);
        Assert.False(string.IsNullOrWhiteSpace(assumption.Source));
        Assert.True(Enum.IsDefined(assumption.Evidence));
        Assert.Matches("^[a-z0-9]+([_.][a-z0-9]+)*$", id);
    }

    [Fact]
    public void Ids_are_unique() =>
        Assert.Equal(LaygateAssumptions.All.Count, LaygateAssumptions.All.DistinctBy(assumption => assumption.Id, StringComparer.Ordinal).Count());

    [Fact]
    public void Nothing_without_a_published_source_is_a_default() =>
        Assert.DoesNotContain(LaygateAssumptions.All, assumption => assumption.Evidence is Evidence.CommonPractice or Evidence.Confirmed);

    [Fact]
    public void Every_id_that_the_program_asks_for_exists()
    {
        var set = LaygateAssumptions.Set();
        var constants = typeof(AssumptionIds).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => (string)field.GetRawConstantValue()!)
            .Where(id => id != AssumptionIds.MixDensity);
        Assert.All(constants, id => Assert.NotNull(set.Find(id)));
        Assert.All(Enum.GetValues<MixKind>(), kind => Assert.NotNull(set.Find(AssumptionIds.DensityOf(kind))));
        Assert.All(Enum.GetValues<EdgeKind>(), edge => Assert.NotNull(set.Find(AssumptionIds.ReachOver(edge))));
        Assert.NotNull(set.Find(AssumptionIds.DensityOf(null)));
        Assert.NotNull(set.Find(AssumptionIds.ReachOver(null)));
    }

    [Theory]
    [InlineData("PG 58-28", 11.010, -3.701)] // Source: A and VTS of the US mechanistic-empirical pavement design guide (NCHRP 1-37A, 2004), typical values of performance grades (recalled)
    [InlineData("PG 64-22", 10.980, -3.680)]
    [InlineData("PG 64-28", 10.312, -3.440)]
    [InlineData("PG 70-22", 10.299, -3.426)]
    [InlineData("PG 70-28", 9.715, -3.217)]
    [InlineData("PG 76-22", 9.715, -3.208)]
    [InlineData("PG 76-28", 9.200, -3.024)]
    [InlineData("PG 82-22", 9.209, -3.019)]
    public void Cessation_of_a_performance_grade_is_where_its_binder_has_50_pascal_seconds(string grade, double a, double vts)
    {
        // log log η(cP) = A + VTS · log T(°R), 50 Pa·s = 50 000 cP.
        var rankine = Math.Pow(10, (Math.Log10(Math.Log10(50_000)) - a) / vts);
        var expected = (rankine / 1.8) - 273.15;
        var plan = Small.Plan with { Mixes = [Small.Mix with { Binder = new Laygate.Model.Plans.Binder { Grade = grade } }] };
        Assert.Equal(expected, Ask.Number(plan, "mix.cessation", "mix:m"), 0.3);
    }

    [Fact]
    public void Replaced_assumptions_are_used()
    {
        var own = LaygateAssumptions.Set()["mix.density.unknown"] with { Number = 2500, Source = "own specification" };
        var context = new QuantityContext(Small.Plan, LaygateQuantities.Catalogue(), new AssumptionSet([.. LaygateAssumptions.All, own]), 1);
        Assert.Equal(2500, Ask.In(context.Get("mix.density", context.Elements.Find("mix:m")!), "kg/m3"));
    }
}

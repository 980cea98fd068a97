using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.UnitTests.Engineering;

namespace Laygate.UnitTests.Engineering.Quantities;

/// <summary>What a pair is made of, and what is agreed about its tests: what follows from what is stated, and what stays unknown.</summary>
public class PairBuildTests
{
    private const string Pair = "pair:binder+wearing";

    private static readonly Test Evenness = new() { Id = "e", Kind = TestKind.Evenness, Course = "wearing", Where = "each joint", When = "hot", By = "foreman", Criterion = "4 mm" };

    [Fact]
    public void Its_thickness_is_that_of_both_courses() => Assert.Equal(
        ScenarioA.Plan.Courses.Sum(course => course.Thickness.Si) * 1000, Ask.Number(ScenarioA.Plan, "pair.thickness", Pair, "mm"), 1e-9);

    [Theory]
    [InlineData(MixKind.Porous, MixKind.Porous, true)]
    [InlineData(MixKind.Porous, MixKind.StoneMastic, false)]
    [InlineData(null, MixKind.StoneMastic, false)]
    [InlineData(MixKind.Porous, null, null)]
    [InlineData(null, null, null)]
    public void It_is_porous_when_both_mixes_are_and_one_other_mix_decides(MixKind? first, MixKind? second, bool? expected)
    {
        var mixes = ScenarioA.Plan.Mixes;
        var plan = ScenarioA.Plan with { Mixes = [mixes[0] with { Kind = first }, mixes[1] with { Kind = second }] };
        Assert.Equal(expected is { } flag ? new FlagValue(flag) : null, Ask.Answer(plan, "pair.porous", Pair).Value);
    }

    [Theory]
    [InlineData(CarriedBy.LowerCourse, true)]
    [InlineData(CarriedBy.Base, false)]
    [InlineData(CarriedBy.Frame, false)]
    [InlineData(null, null)]
    public void What_carries_the_upper_paver_is_stated_or_not_known(CarriedBy? carrier, bool? expected)
    {
        var plan = ScenarioA.Plan with { Pavers = [.. ScenarioA.Plan.Pavers.Select(paver => paver with { CarriedBy = carrier })] };
        Assert.Equal(expected is { } flag ? new FlagValue(flag) : null, Ask.Answer(plan, "pair.upper_runs_on_lower", Pair).Value);
    }

    [Theory]
    [InlineData(EdgeKind.Free, null, true)]
    [InlineData(EdgeKind.Kerb, EdgeKind.Formed, false)]
    [InlineData(EdgeKind.Kerb, null, null)]
    public void An_edge_of_any_of_its_runs_may_be_free(EdgeKind? left, EdgeKind? right, bool? expected)
    {
        var plan = ScenarioA.Plan with { Runs = [.. ScenarioA.Plan.Runs.Select(run => run with { LeftEdge = left, RightEdge = right })] };
        Assert.Equal(expected is { } flag ? new FlagValue(flag) : null, Ask.Answer(plan, "pair.has_free_edge", Pair).Value);
        Assert.Null(Ask.Answer(plan with { Runs = [] }, "pair.has_free_edge", Pair).Value);
    }

    [Fact]
    public void A_test_of_its_evenness_needs_a_criterion()
    {
        Assert.Equal(PresenceLevel.Stated, Level("pair.evenness_test", Evenness));
        Assert.Equal(PresenceLevel.Stated, Level("pair.evenness_test", Evenness with { Course = null }));
        Assert.Equal(PresenceLevel.Thin, Level("pair.evenness_test", Evenness with { Criterion = " " }));
        Assert.Equal(PresenceLevel.Absent, Level("pair.evenness_test", Evenness with { Course = "binder" }));
    }

    [Fact]
    public void The_method_of_density_is_agreed_when_every_test_on_cores_says_it()
    {
        var agreed = new Test { Id = "d", Kind = TestKind.Density, Cores = new Cores { Count = 8, MatCold = true, CutAtInterface = true, DensityMethod = "by dimensions" } };
        var silent = agreed with { Id = "s", Cores = new Cores { Count = 8, MatCold = true, CutAtInterface = true } };
        Assert.Equal(PresenceLevel.Stated, Level("pair.density_method", agreed));
        Assert.Equal(PresenceLevel.Absent, Level("pair.density_method", silent));
        Assert.Equal(PresenceLevel.Thin, Level("pair.density_method", agreed, silent));
        Assert.Null(Ask.Answer(ScenarioA.Plan with { Tests = [] }, "pair.density_method", Pair).Value);
    }

    private static PresenceLevel Level(string quantity, params Test[] tests) =>
        ((PresenceValue)Ask.Answer(ScenarioA.Plan with { Tests = tests }, quantity, Pair).Value!).Level;
}

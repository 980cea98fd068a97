using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Quantities;

public class StationTests
{
    private static readonly Plan OneLane = Small.Plan with
    {
        Mixes = [Small.Mix with { Density = new MixDensity { Compacted = M<Density>(2.4, "t/m3") } }],
        Pavers = [new Paver { Id = "p", Speed = M<Speed>(5, "m/min") }],
    };

    [Fact]
    public void A_taper_counts_with_its_wide_end_for_demand_and_its_mean_for_tonnage()
    {
        // By hand: from 8.0 to 5.5 m the demand falls by 31 %.
        var plan = OneLane with { Runs = [Run(0, 100, Width(8, 0), Width(5.5, 100))] };
        Assert.Equal(5 * 60 * 8 * 0.04 * 2.4, Ask.Number(plan, "course.demand", "course:c", "t/h"), 1e-9);
        Assert.Equal(100 * 6.75 * 0.04 * 2.4, Ask.Number(plan, "course.tonnage_computed", "course:c", "t"), 1e-9);
        var narrow = OneLane with { Runs = [Run(0, 100, width: 5.5)] };
        Assert.Equal(0.69, Ask.Number(narrow, "course.demand", "course:c") / Ask.Number(plan, "course.demand", "course:c"), 0.005);
    }

    [Fact]
    public void Laying_against_the_stations_gives_the_same()
    {
        var forward = OneLane with { Runs = [Run(0, 100, Width(8, 0), Width(6, 40), Width(5, 100))] };
        var backward = OneLane with { Runs = [Run(100, 0, Width(8, 0), Width(6, 40), Width(5, 100))] };
        Assert.Equal(Ask.Number(forward, "course.tonnage_computed", "course:c"), Ask.Number(backward, "course.tonnage_computed", "course:c"), 1e-6);
        Assert.Equal(((40 * 7) + (60 * 5.5)) * 0.04 * 2.4, Ask.Number(forward, "course.tonnage_computed", "course:c", "t"), 1e-9);
    }

    [Fact]
    public void Two_widths_at_one_station_are_a_step()
    {
        var plan = OneLane with { Runs = [Run(0, 100, Width(8, 0), Width(8, 50), Width(4, 50), Width(4, 100))] };
        Assert.Equal(100 * 6 * 0.04 * 2.4, Ask.Number(plan, "course.tonnage_computed", "course:c", "t"), 1e-9);
    }

    [Fact]
    public void Thickness_along_the_run_counts_for_demand_tonnage_and_extremes()
    {
        var run = Run(0, 100, width: 4) with { Thickness = [new ThicknessAt { Course = "c", At = Metres(60), Nominal = Mm(50), Lowest = Mm(33) }] };
        var plan = OneLane with { Runs = [run], Courses = [Small.Course with { Tolerance = Mm(5) }] };
        Assert.Equal(5 * 60 * 4 * 0.05 * 2.4, Ask.Number(plan, "course.demand", "course:c", "t/h"), 1e-9);
        Assert.Equal(((60 * 0.04) + (40 * 0.05)) * 4 * 2.4, Ask.Number(plan, "course.tonnage_computed", "course:c", "t"), 1e-9);
        // By hand: the lowest is stated; 50 mm and 5 mm of tolerance are the highest.
        Assert.Equal(33, Ask.Number(plan, "course.thickness_lowest", "course:c", "mm"), 1e-9);
        Assert.Equal(55, Ask.Number(plan, "course.thickness_highest", "course:c", "mm"), 1e-9);
    }

    [Fact]
    public void A_place_laid_by_hand_counts_with_its_area_and_is_not_nothing_where_none_is_stated()
    {
        var run = Run(0, 100, width: 4);
        // By hand: 400 m2 and 25 m2, 40 mm thick; the only mix of the plan is meant where none is named.
        var plan = OneLane with { Runs = [run with { HandLaid = [new HandLaid { Id = "bay", Area = M<Area>(25, "m2") }] }] };
        Assert.Equal(425 * 0.04 * 2.4, Ask.Number(plan, "course.tonnage_computed", "course:c", "t"), 1e-9);
        var silent = OneLane with { Runs = [run with { HandLaid = [new HandLaid { Id = "bay" }] }] };
        Assert.Equal(["run:r/hand_laid.bay.area"], Ask.Missing(Ask.Answer(silent, "course.tonnage_computed", "course:c")).Select(at => at.Replace($"run:{run.Id}/", "run:r/", StringComparison.Ordinal)), StringComparer.Ordinal);
        var either = silent with { Mixes = [.. silent.Mixes, silent.Mixes[0] with { Id = "other" }] };
        Assert.EndsWith("/hand_laid.bay.mix", Assert.Single(Ask.Missing(Ask.Answer(either, "course.tonnage_computed", "course:c"))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, null, 2)] // 40 mm less 5 mm against 33 mm, by hand.
    [InlineData(37.0, null, -1)]
    [InlineData(null, 36.0, -1)]
    [InlineData(44.0, 36.0, 2)] // The station leaves 3 mm, the rest of the course still 2 mm.
    public void The_margin_of_a_tolerance_is_the_smallest_over_the_stations(double? nominal, double? lowest, double margin)
    {
        var run = Run(0, 100, width: 4) with { Thickness = [new ThicknessAt { Course = "c", At = Metres(60), Nominal = nominal is { } thick ? Mm(thick) : null, Lowest = lowest is { } thin ? Mm(thin) : null }] };
        var plan = OneLane with { Runs = [run], Courses = [Small.Course with { Tolerance = Mm(5), ThicknessLowest = Mm(33) }] };
        Assert.Equal(margin, Ask.Number(plan, "course.tolerance_margin", "course:c", "mm"), 1e-9);
    }

    [Fact]
    public void Equal_figures_in_inches_leave_a_margin_of_exactly_zero()
    {
        var course = Small.Course with { Thickness = M<Length>(1.5, "in"), Tolerance = M<Length>(0.25, "in"), ThicknessLowest = M<Length>(1.25, "in") };
        Assert.Equal(0.0, Ask.Number(OneLane with { Courses = [course] }, "course.tolerance_margin", "course:c"));
    }

    [Fact]
    public void Runs_side_by_side_count_as_strips_of_the_pair()
    {
        Run[] halves = [Run(0, 100, width: 4) with { Id = "left" }, Run(100, 0, width: 4) with { Id = "right" }];
        Assert.Equal(2, Ask.Number(ScenarioA.Plan with { Runs = halves }, "pair.strips", "pair:binder+wearing"));
        Run[] inLine = [Run(0, 100, width: 4) with { Id = "first" }, Run(100, 200, width: 4) with { Id = "second" }];
        Assert.Equal(1, Ask.Number(ScenarioA.Plan with { Runs = inLine }, "pair.strips", "pair:binder+wearing"));
        Run[] unknown = [halves[0], halves[1] with { From = null }];
        Assert.Equal(["run:right/from"], Ask.Missing(Ask.Answer(ScenarioA.Plan with { Runs = unknown }, "pair.strips", "pair:binder+wearing")));
    }

    private static Run Run(double from, double to, params WidthAt[] widths) =>
        new() { Id = "r", From = Metres(from), To = Metres(to), Widths = widths };

    private static Run Run(double from, double to, double width) =>
        new() { Id = "r", From = Metres(from), To = Metres(to), Width = Metres(width) };
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;
using PlanRolling = Laygate.Model.Plans.Rolling;
using PlanSupply = Laygate.Model.Plans.Supply;

namespace Laygate.UnitTests.Engineering.Quantities;

/// <summary>Quantities that show slips: silo, stops, zones, edges, stations, orders. Expected values are worked out by hand beside each.</summary>
public class SlipTests
{
    private static readonly Run Run = new() { Id = "r", From = Metres(0), To = Metres(300), Width = Metres(3.6) };

    [Fact]
    public void A_silo_is_counted_in_loads_of_the_largest_truck()
    {
        // 60 t over 20 t are three loads; trucks of another plant do not count.
        var supply = new PlanSupply
        {
            Plants = [new Plant { Id = "p", SiloCapacity = T(60) }, new Plant { Id = "q" }],
            Trucks = [new TruckGroup { Id = "a", Plant = "p", Payload = T(15) }, new TruckGroup { Id = "b", Plant = "p", Payload = T(20) }, new TruckGroup { Id = "c", Plant = "q", Payload = T(30) }],
        };
        Assert.Equal(3, Ask.Number(Small.Plan with { Supply = supply }, "plant.silo_loads", "plant:p"), 9);
    }

    [Fact]
    public void Stops_are_taken_in_the_order_of_their_times()
    {
        // 60 + 10 = 70 min; the next at 65 min begins five minutes before that.
        var paver = new Paver { Id = "p", Stops = [new PlannedStop { Id = "late", After = Min(65), Length = Min(30) }, new PlannedStop { Id = "early", After = Min(60), Length = Min(10) }] };
        var plan = Small.Plan with { Pavers = [paver] };
        Assert.Equal(-5, Ask.Number(plan, "paver.stops_apart", "paver:p", "min"), 9);
        Assert.Equal(30, Ask.Number(plan, "paver.stop_longest", "paver:p", "min"), 9);
        Assert.Contains("shift/end", Ask.Missing(Ask.Answer(plan, "paver.stop_beyond_shift", "paver:p")), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData(PhaseKind.Main, 31, -1)]
    [InlineData(PhaseKind.Finish, 31, -9)]
    public void A_zone_is_held_against_the_phases_of_earlier_kinds(PhaseKind kind, double from, double expected)
    {
        // The initial phase begins at 32 m, the main one at 40 m.
        var phases = new[] { Zone("one", PhaseKind.Initial, 32), Zone("two", PhaseKind.Main, 40), Zone("own", kind, from) };
        Assert.Equal(expected, Ask.Number(Small.Plan with { Rolling = new PlanRolling { Phases = phases } }, "phase.behind_earlier_phase", "phase:own", "m"), 9);
    }

    [Fact]
    public void Only_runs_over_the_same_stations_lie_beside_one()
    {
        var hot = Run with { LeftEdge = EdgeKind.Hot, RightEdge = EdgeKind.Hot };
        var plan = Small.Plan with { Runs = [hot, Run with { Id = "beside" }, Run with { Id = "beyond", From = Metres(300), To = Metres(600) }] };
        Assert.Equal(2, Ask.Number(plan, "run.hot_edges", "run:r"));
        Assert.Equal(1, Ask.Number(plan, "run.runs_beside", "run:r"));
    }

    [Fact]
    public void What_is_stated_by_stations_must_reach_both_ends()
    {
        // 10 m at the start and 50 m at the end of 300 m, against the direction of the stations, too.
        WidthAt[] widths = [Width(3.6, 10), Width(3.6, 250)];
        Assert.Equal(60, Ask.Number(Small.Plan with { Runs = [Run with { Width = null, Widths = widths }] }, "run.length_not_described", "run:r", "m"), 9);
        Assert.Equal(60, Ask.Number(Small.Plan with { Runs = [Run with { Width = null, Widths = widths, From = Metres(300), To = Metres(0) }] }, "run.length_not_described", "run:r", "m"), 9);
    }

    [Fact]
    public void An_order_has_a_density_of_its_own()
    {
        // 300 m × 3.6 m × (40 + 5) mm = 48.6 m³; 97.2 t in it are 2 t/m³.
        var plan = Small.Plan with { Runs = [Run], Courses = [Small.Course with { Tolerance = Mm(5), Tonnage = T(97.2) }] };
        Assert.Equal(2, Ask.Number(plan, "course.density_ordered", "course:c", "t/m3"), 9);
    }

    [Fact]
    public void Roll_down_follows_from_the_two_densities()
    {
        // 98 over 80 is 1.225.
        var plan = Small.Plan with
        {
            Mixes = [Small.Mix with { Density = new MixDensity { Reference = DensityReference.Laboratory, Degree = M<Ratio>(98, "%") } }],
            Courses = [Small.Course with { DensityBehindScreed = new DensityBehindScreed { Value = M<Ratio>(80, "%") } }],
        };
        Assert.Equal(22.5, Ask.Number(plan, "course.roll_down_share", "course:c", "%"), 9);
    }

    [Fact]
    public void Long_times_are_shown_in_hours()
    {
        var shift = new Shift { Date = new DateOnly(2027, 5, 14), Start = new TimeOnly(9, 0), End = new TimeOnly(17, 0) };
        var plan = Small.Plan with { Shift = shift, BondCoats = [new BondCoat { Id = "b", Below = "c", Sprayed = Moment(2027, 5, 12) }] };
        Assert.Equal("h", Ask.Answer(plan, "bond-coat.time_before_laying", "bond-coat:b").Unit?.Spelling);
        Assert.Null(Ask.Answer(plan with { BondCoats = [new BondCoat { Id = "b", Below = "c", Sprayed = Moment(2027, 5, 14) }] }, "bond-coat.time_before_laying", "bond-coat:b").Unit);
    }

    private static Moment Moment(int year, int month, int day) => new(new DateTime(year, month, day, 8, 0, 0), null);

    private static Phase Zone(string id, PhaseKind kind, double from) => new() { Id = id, Kind = kind, ZoneFrom = Metres(from), ZoneTo = Metres(from + 30) };
}

using Laygate.Engineering.SheetData;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.SheetData;

/// <summary>Expected values are worked out by hand beside each check.</summary>
public class SheetQuantitiesTests
{
    /// <summary>One course of 40 mm at 2.5 t/m³, 4 m wide: 400 kg/m; 300 m take 120 t; 2 m/min; loads of 25 t reach 62.5 m; journey 30 min, wait 5 min.</summary>
    private static readonly Plan Plan = Small.Plan with
    {
        Mixes = [Small.Mix with { Density = new MixDensity { Compacted = M<Density>(2.5, "t/m3"), Degree = M<Ratio>(98, "%") } }],
        Courses = [Small.Course with { DensityBehindScreed = new DensityBehindScreed { Value = M<Ratio>(90, "%") } }],
        Runs = [new Run { Id = "r", From = Metres(100), To = Metres(400), Width = Metres(4), Paver = "p" }],
        Shift = new Shift { Date = new DateOnly(2027, 5, 14), Start = new TimeOnly(22, 0), End = new TimeOnly(2, 0), Zone = TimeSpan.FromHours(2) },
        Pavers = [new Paver { Id = "p", Speed = M<Speed>(2, "m/min"), Stops = [new PlannedStop { Id = "meal", After = Min(60), Length = Min(20) }] }],
        Supply = new Laygate.Model.Plans.Supply
        {
            Trucks = [new TruckGroup { Id = "t", Mix = "m", Payload = T(25), HaulOut = Min(30), Wait = Min(5), Ticket = Min(3), Count = 9 }],
        },
    };

    [Fact]
    public void Loads_times_and_places_of_one_run()
    {
        var loads = new SheetQuantities(Ask.Context(Plan)).Loads();

        // 120 t = 4 · 25 t + 20 t. Load n is needed at (n − 1) · 62.5 m: 0, 62.5, 125, 187.5, 250 m, that is after 0, 31.25, 62.5, 93.75, 125 min,
        // and 20 min later where the stop after 60 min lies before.
        Assert.Equal([25.0, 25, 25, 25, 20], loads.Select(load => Math.Round(load.Load.Size / 1000, 6)));
        Assert.Equal([0, 31.25, 82.5, 113.75, 145], loads.Select(load => (load.TipsBy!.Value - Start).TotalMinutes));
        Assert.Equal([-35, -3.75, 47.5, 78.75, 110], loads.Select(load => (load.LeavesAt!.Value - Start).TotalMinutes));
        Assert.Equal([162.5, 225, 287.5, 350, 400], loads.Select(load => Math.Round(load.Ends!.Station, 6)));
    }

    [Fact]
    public void The_last_metre_by_hand()
    {
        // 300 m at 2 m/min are 150 min; the meal adds 20.
        var sheet = new SheetQuantities(Ask.Context(Plan));
        Assert.Equal(300, sheet.Length, 9);
        Assert.Equal(170, (sheet.LastMetre!.Value - Start).TotalMinutes, 6);
    }

    [Fact]
    public void Backwards_along_the_stations_too()
    {
        var plan = Plan with { Runs = [Plan.Runs[0] with { From = Metres(400), To = Metres(100) }] };
        Assert.Equal([337.5, 275, 212.5, 150, 100], new SheetQuantities(Ask.Context(plan)).Loads().Select(load => Math.Round(load.Ends!.Station, 6)));
    }

    [Fact]
    public void A_taper_is_filled_by_area()
    {
        // From 2 m to 6 m over 100 m: 100 kg/m² · (2 x + 0.02 x²) = 15 000 kg at x = 50 (100 · (100 + 50)); all of it are 40 t.
        var run = Plan.Runs[0] with { From = Metres(0), To = Metres(100), Width = null, Widths = [Width(2, 0), Width(6, 100)] };
        var trucks = Plan.Supply!.Trucks[0] with { Payload = T(15) };
        var plan = Plan with { Runs = [run], Supply = Plan.Supply with { Trucks = [trucks] } };
        var loads = new SheetQuantities(Ask.Context(plan)).Loads();
        Assert.Equal([15.0, 15, 10], loads.Select(load => Math.Round(load.Load.Size / 1000, 6)));
        Assert.Equal(50, loads[0].Ends!.Station, 6);
        Assert.Equal(100, loads[^1].Ends!.Station, 6);
    }

    [Fact]
    public void Thickness_behind_the_screed() =>
        Assert.Equal(40 * 98 / 90.0, new SheetQuantities(Ask.Context(Plan)).BehindScreed(Plan.Courses[0])!.Value * 1000, 9);

    [Fact]
    public void Mix_on_the_way()
    {
        // 2 m/min · 400 kg/m = 800 kg/min over 3 + 30 + 5 min.
        Assert.Equal(800 * 38, new SheetQuantities(Ask.Context(Plan)).OnTheWay(Plan.Supply!.Trucks[0])!.Value, 3);
    }

    [Fact]
    public void Strips_reach_over_the_edges_and_are_spread_evenly()
    {
        // 4 m with 0.1 m over each edge, drum 1.5 m, three strips: 4.2 − 1.5 = 2.7 m in two gaps of 1.35 m.
        var strips = StripLayout.Of(4, 0.1, 0.1, 1.5, 3);
        Assert.Equal([-0.1, 1.25, 2.6], strips.Select(strip => Math.Round(strip.From, 9)));
        Assert.Equal(4.1, strips[^1].To, 9);
        Assert.Empty(StripLayout.Of(double.NaN, 0, 0, 1.5, 3));
    }

    [Fact]
    public void Two_passes_of_one_paver_follow_each_other()
    {
        // Each pass 150 min; the meal after 60 min. Way back 300 m at 3 km/h = 6 min, set-up 20 min (both assumed): the second pass begins at 170 + 26 = 196 min.
        var plan = Plan with { Courses = [Plan.Courses[0], Plan.Courses[0] with { Id = "d" }] };
        var sheet = new SheetQuantities(Ask.Context(plan));
        Assert.Equal(196 + 150, (sheet.LastMetre!.Value - Start).TotalMinutes, 6);
        Assert.Equal(600, sheet.Length, 9);
        Assert.Equal([0, 31.25, 82.5, 113.75, 145, 196, 227.25, 258.5, 289.75, 321], sheet.Loads().Select(load => Math.Round((load.TipsBy!.Value - Start).TotalMinutes, 6)));
    }

    private static DateTimeOffset Start => new(2027, 5, 14, 22, 0, 0, TimeSpan.FromHours(2));
}

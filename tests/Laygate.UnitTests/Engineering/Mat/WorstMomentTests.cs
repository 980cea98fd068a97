using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Mat.MatPlans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>Each quantity of the mat at the moment of laying that is worst for it, against finite differences of the tests' own.</summary>
public class WorstMomentTests
{
    private const string Grit = "early-friction.grit_window";

    /// <summary>Sky at air temperature and constant specific heat, so that the finite differences need neither.</summary>
    private static readonly AssumptionSet Plainly = LaygateAssumptions.Set().With(
    [
        LaygateAssumptions.Set()[AssumptionIds.SkyBelowAir] with { Number = 0, Low = 0, High = 0 },
        LaygateAssumptions.Set()[AssumptionIds.HeatRise] with { Number = 0, Low = 0, High = 0 },
    ]);

    [Fact]
    public void A_windy_warm_noon_does_not_hide_a_calm_cold_morning()
    {
        // 40 mm at 160 °C, cessation 80 °C; base 2 °C, air 8 °C, 2 m/s at 06:00; base 40 °C, air 26 °C, 6 m/s at noon.
        var plan = Day(Forty, (6, 8, 2, 2), (12, 26, 40, 6));
        var window = Window(plan, "c");
        var own = Worst(6, 12, at => Own(At(plan, at), (0.040, 160)).Until(Ahead(plan, at), 0.95, _ => _.Mean(0, 0.040), 80));
        Assert.Equal(1, Minutes(window) / own.Minutes, 0.005);
        Assert.Equal("2027-06-23T06:00+00:00", Laid(window));
        var noon = Minutes(Window(plan with { Shift = plan.Shift! with { Start = new TimeOnly(11, 59) } }, "c"));
        Assert.True(noon > 1.2 * own.Minutes, $"{noon} {own}"); // What the whole shift was told while the grit chose its hour.
    }

    [Fact]
    public void Each_course_of_a_pair_has_its_own_worst_moment()
    {
        // 85 mm at 156 °C and 25 mm at 152 °C laid together, cessation 100 °C; 07:00 base 4 °C, 2 m/s; 13:00 base 45 °C, 6 m/s.
        var plan = Day(Pair, (7, 8, 4, 2), (13, 24, 45, 6));
        var lower = Window(plan, "low");
        var upper = Window(plan, "up");
        var ownLower = Worst(7, 13, at => Own(At(plan, at), (0.025, 152), (0.085, 156)).Until(Ahead(plan, at), 0.95, body => body.Mean(0.025, 0.110), 100));
        var ownUpper = Worst(7, 13, at => Own(At(plan, at), (0.025, 152), (0.085, 156)).Until(Ahead(plan, at), 0.95, body => body.Mean(0, 0.025), 100));
        Assert.Equal(1, Minutes(lower) / ownLower.Minutes, 0.005);
        Assert.Equal(1, Minutes(upper) / ownUpper.Minutes, 0.005);
        Assert.Equal("2027-06-23T07:00+00:00", Laid(lower));
        Assert.NotEqual(Laid(lower), Laid(upper), StringComparer.Ordinal);
    }

    [Fact]
    public void The_worst_moment_may_lie_shortly_before_a_gust()
    {
        var plan = Day(Forty, (8, 10, 10, 1), (9, 10, 10, 10), (10, 10, 10, 1));
        var own = Worst(8, 10, at => Own(At(plan, at), (0.040, 160)).Until(Ahead(plan, at), 0.95, body => body.Mean(0, 0.040), 80), 2);
        var window = Window(plan, "c");
        Assert.Equal(1, Minutes(window) / own.Minutes, 0.005);
        // By hand: laid within the length of the window, some 18 min, before the gust of 09:00 and not at it.
        Assert.InRange(DateTimeOffset.Parse(Laid(window), System.Globalization.CultureInfo.InvariantCulture).TimeOfDay.TotalHours, 8.7, 8.99);
    }

    [Fact]
    public void Skin_and_window_differ_in_their_worst_moments_and_say_which()
    {
        var plan = Day(Forty, (6, 8, 2, 2), (12, 26, 40, 6));
        Assert.Equal("2027-06-23T06:00+00:00", Laid(Window(plan, "c")));
        Assert.NotEqual("2027-06-23T06:00+00:00", Laid(Get(plan, Grit, "early-friction")), StringComparer.Ordinal);
        var (curves, _) = Laygate.Engineering.Mat.MatCurves.Of(Engineering.Ask.Context(plan), "c", 3600);
        Assert.All(curves!.Series, series => Assert.Equal(6, series.Laid!.Value.Hour));
    }

    [Fact]
    public void The_moment_that_ends_the_shift_is_judged()
    {
        Plan Until(int hour, int minute) => Day(Forty, (15, 14, 20, 3), (18, 12, 9, 3), (21, 10, 7, 3)) with
        {
            Shift = new Shift { Date = new DateOnly(2027, 6, 23), Start = new TimeOnly(15, 0), End = new TimeOnly(hour, minute), Zone = TimeSpan.Zero },
        };
        var (at, after) = (Minutes(Window(Until(18, 0), "c")), Minutes(Window(Until(18, 1), "c")));
        Assert.Equal(1, after / at, 0.005);
        // By hand: half way between the entries of 15:00 and 18:00, 20 and 9 °C, 14 and 12 °C.
        Assert.Equal(9, Expected(Until(18, 0), "weather.base_lowest", "weather"));
        Assert.Equal(14.5, Expected(Until(16, 30), "weather.base_lowest", "weather"), 1e-9);
        Assert.Equal(13, Expected(Until(16, 30), "weather.air_lowest", "weather"), 1e-9);
    }

    [Fact]
    public void A_metre_laid_on_a_hot_base_may_be_cold_later_than_the_last_one()
    {
        // 150 mm, half an hour of laying: at 14:00 on a base of 55 °C, at 14:30 on one of 5 °C.
        var thick = Forty with
        {
            Courses = [Forty.Courses[0] with { Thickness = Mm(150) }],
            Opening = new Opening { Below = new PlacedTemperature { Value = C(60), Place = Place.Core } },
        };
        Plan From(int minute) => Day(thick, (14, 20, 55, 2), (15, 20, 5, 2)) with
        {
            Shift = new Shift { Date = new DateOnly(2027, 6, 23), Start = new TimeOnly(14, minute), End = new TimeOnly(15, 0), Zone = TimeSpan.Zero },
        };
        var whole = Get(From(0), "opening.soft_until", "opening");
        Assert.NotEqual("2027-06-23T15:00+00:00", Laid(whole), StringComparer.Ordinal);
        Assert.True(Minutes(whole) > Minutes(Get(From(59), "opening.soft_until", "opening")) + 10);
    }

    private static Plan Pair { get; } = Forty with
    {
        Mixes = [Forty.Mixes[0] with { Cessation = new PlacedTemperature { Value = C(100), Place = Place.CourseMean } }],
        Courses =
        [
            Forty.Courses[0] with { Id = "low", Thickness = Mm(85), LayingTemperature = Band(156) },
            Forty.Courses[0] with { Id = "up", Thickness = Mm(25), LayingTemperature = Band(152), Laid = Laying.HotOnHot, On = "low", Delay = Min(0) },
        ],
    };

    /// <summary>A plan laid from the first to the last of some hours.</summary>
    private static Plan Day(Plan plan, params (int Hour, double Air, double Base, double Wind)[] hours) => plan with
    {
        Shift = new Shift { Date = new DateOnly(2027, 6, 23), Start = new TimeOnly(hours[0].Hour, 0), End = new TimeOnly(hours[^1].Hour, 0), Zone = TimeSpan.Zero },
        Weather = plan.Weather! with
        {
            Envelope = null,
            Hours = [.. hours.Select(hour => new WeatherHour
            {
                At = new Moment(new DateTime(2027, 6, 23, hour.Hour, 0, 0, DateTimeKind.Unspecified), null), Air = C(hour.Air), Base = C(hour.Base), Wind = M<Speed>(hour.Wind, "m/s"), Sun = M<Irradiance>(0, "W/m2"),
            })],
        },
    };

    private static Answer Get(Plan plan, string quantity, string address)
    {
        var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), Plainly, 1) { Samples = 2 };
        return context.Get(quantity, context.Elements.Find(address)!);
    }

    private static Answer Window(Plan plan, string course) => Get(plan, MatPlans.Window, $"course:{course}");

    private static double Minutes(Answer answer) => Engineering.Ask.In(answer, "min");

    private static string Laid(Answer answer) => answer.Working.Inputs.Single(input => string.Equals(input.Symbol, "laid", StringComparison.Ordinal)).Text!;

    /// <summary>Weather of a plan at a moment, h after midnight, read off by hand: straight lines, held after the last hour.</summary>
    private static (double Air, double Base, double Wind) At(Plan plan, double hour)
    {
        var rows = plan.Weather!.Hours.Select(row => (At: (double)row.At.Local.Hour, row)).ToList();
        var next = rows.FindIndex(row => row.At >= hour);
        if (next <= 0)
        {
            var row = rows[next < 0 ? ^1 : 0].row;
            return (row.Air!.Number, row.Base!.Number, row.Wind!.Number);
        }

        var (a, b) = (rows[next - 1], rows[next]);
        var share = (hour - a.At) / (b.At - a.At);
        double Line(double from, double to) => from + (share * (to - from));
        return (Line(a.row.Air!.Number, b.row.Air!.Number), Line(a.row.Base!.Number, b.row.Base!.Number), Line(a.row.Wind!.Number, b.row.Wind!.Number));
    }

    private static Func<double, (double Air, double Wind)> Ahead(Plan plan, double hour) => seconds => (At(plan, hour + (seconds / 3600)).Air, At(plan, hour + (seconds / 3600)).Wind);

    private static (double Hour, double Minutes) Worst(double from, double to, Func<double, double> minutes, int every = 20) =>
        Enumerable.Range(0, (int)Math.Round((to - from) * 60 / every) + 1).Select(i => from + (i * every / 60.0)).Select(hour => (hour, minutes(hour))).MinBy(pair => pair.Item2);

    private static Followed Own((double Air, double Base, double Wind) weather, params (double Metres, double Celsius)[] fromTheTop)
    {
        double Of(string id) => Plainly[id].Number;
        var below = Of(AssumptionIds.DensityOfMaterial(MaterialClass.ExistingAsphalt)) * Of(AssumptionIds.SpecificHeatOf(MaterialClass.ExistingAsphalt));
        var hot = 2300 * Of(AssumptionIds.SpecificHeatOf(MaterialClass.AsphaltConcrete));
        return new Followed(new OwnDifferences(
            weather.Base, Of(AssumptionIds.ConductivityOf(MaterialClass.ExistingAsphalt)), below, Of(AssumptionIds.ConductivityOf(MaterialClass.AsphaltConcrete)), hot, fromTheTop));
    }

    private sealed record Followed(OwnDifferences Body)
    {
        public double Until(Func<double, (double Air, double Wind)> weather, double emissivity, Func<OwnDifferences, double> value, double below) =>
            Body.Until(weather, emissivity, () => value(Body), below);
    }
}

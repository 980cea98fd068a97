using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Mat.MatPlans;
using static Laygate.UnitTests.Engineering.Stated;
using LayerMaterial = Laygate.Model.Plans.LayerMaterial;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>
/// Temperatures below the surface that is laid upon. The sign is that of the daily wave in a half-space (Carslaw and Jaeger, Conduction of Heat in Solids,
/// 2nd ed., chapter 2): what lies deeper swings less and later, so that it is colder than the surface on a sunny afternoon and warmer before sunrise.
/// The same is what Diefenderfer and others report from measured pavements (J. Transp. Eng. 132(2), 2006, abstract read): daily highest temperatures
/// fall and lowest ones rise with depth. Their coefficients were not read and are not used.
/// </summary>
public class BaseDepthTests(Xunit.Abstractions.ITestOutputHelper output)
{
    private static readonly Plan Fifty = Forty with { Courses = [Forty.Courses[0] with { Thickness = Mm(50), LayingTemperature = Band(150) }] };

    // The signs are those of the wave; judgement: the bounds only say that the effect is felt and not absurd. The exact shares are held in WorstMomentFigureTests.
    [Fact]
    public void A_sunny_afternoon_shortens_the_window_and_the_time_to_a_cold_core()
    {
        Plan Afternoon(params DepthTemperature[] deep) => With(Fifty, envelope => envelope with { AirLowest = C(28), BaseLowest = C(45), BaseAtDepth = deep, WindHighest = M<Speed>(3, "m/s") }) with
        {
            Opening = new Opening { Below = new PlacedTemperature { Value = C(60), Place = Place.Core } },
        };
        var (uniform, real) = (Afternoon(), Afternoon(Deep(150, 27)));
        var window = Expected(real, Window, "course:c") / Expected(uniform, Window, "course:c");
        var soft = Expected(real, "opening.soft_until", "opening") / Expected(uniform, "opening.soft_until", "opening");
        output.WriteLine(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"window {window:0.000}, soft until 60 °C {soft:0.000} of that on an even base"));
        Assert.InRange(window, 0.88, 0.97);
        Assert.InRange(soft, 0.74, 0.88);
    }

    // The sign is that of the wave; judgement: the bounds only say that the effect is felt and small.
    [Fact]
    public void A_cold_morning_on_a_base_warm_below_lengthens_the_window_a_little()
    {
        Plan Morning(params DepthTemperature[] deep) => With(Fifty, envelope => envelope with { AirLowest = C(4), BaseLowest = C(5), BaseAtDepth = deep });
        Assert.InRange(Expected(Morning(Deep(50, 7), Deep(150, 10)), Window, "course:c") / Expected(Morning(), Window, "course:c"), 1.005, 1.06);
    }

    [Fact]
    public void Depths_as_warm_as_the_surface_change_nothing()
    {
        var stated = With(Fifty, envelope => envelope with { BaseAtDepth = [Deep(100, 10), Deep(300, 10)] });
        Assert.Equal(Expected(Fifty, Window, "course:c"), Expected(stated, Window, "course:c"), 1e-9);
    }

    // The sign is that of the wave; judgement: 1 to 20 K only says that it is felt and not absurd.
    [Theory]
    [InlineData(5, 14, 10, 1)]
    [InlineData(15, 27, 45, -1)]
    [InlineData(23, 17, 20, 1)]
    public void The_day_before_leaves_the_base_colder_below_in_the_afternoon_and_warmer_at_night(int hour, double air, double surface, int sign)
    {
        var answer = Laygate.UnitTests.Engineering.Ask.Answer(Summer(hour, air, surface), Window, "course:c");
        var (at, deep) = (Input(answer, "Tb"), Input(answer, "Tb(100 mm)"));
        Assert.Equal(surface, at, 1e-9);
        Assert.InRange(sign * (deep - at), 1, 20);
        Assert.Contains(answer.Working.Assumptions, use => Is(use, AssumptionIds.BaseDepthShare));
    }

    // Judgement: within 4 K is nearly even.
    [Fact]
    public void A_surface_no_warmer_than_the_air_at_noon_saw_no_sun_and_is_nearly_even()
    {
        var answer = Laygate.UnitTests.Engineering.Ask.Answer(Summer(13, 18, 18), Window, "course:c");
        Assert.InRange(Input(answer, "Tb(100 mm)") - 18, -4, 4);
    }

    [Fact]
    public void Without_a_place_the_depth_is_assumed_as_at_the_surface_and_listed()
    {
        var plan = Summer(15, 27, 45) with { Location = null };
        var answer = Laygate.UnitTests.Engineering.Ask.Answer(plan, Window, "course:c");
        Assert.DoesNotContain(answer.Working.Inputs, input => input.Symbol.StartsWith("Tb(", StringComparison.Ordinal));
        Assert.Contains(answer.Working.Assumptions, use => Is(use, AssumptionIds.BaseDepthDifference));
        Assert.True(Laygate.UnitTests.Engineering.Ask.Number(plan, Window, "course:c") > Laygate.UnitTests.Engineering.Ask.Number(Summer(15, 27, 45), Window, "course:c") * 1.01);
    }

    [Fact]
    public void Stated_depths_go_before_the_day_before()
    {
        var plan = Summer(15, 27, 45);
        var stated = plan with { Weather = plan.Weather! with { Hours = [.. plan.Weather.Hours.Select(one => one with { BaseAtDepth = [Deep(200, 31)] })] } };
        // By hand: half way between 45 °C at the surface and 31 °C at 200 mm.
        Assert.Equal(38, Input(Laygate.UnitTests.Engineering.Ask.Answer(stated, Window, "course:c"), "Tb(100 mm)"), 1e-6);
    }

    [Theory]
    [InlineData(ExistingSurface.BridgeDeck)]
    [InlineData(ExistingSurface.OldAsphalt)]
    public void Decks_and_frozen_bases_are_still_answered(ExistingSurface surface)
    {
        var plan = Summer(9, 6, 4);
        var existing = surface == ExistingSurface.BridgeDeck
            ? new Existing { Surface = surface, Layers = [new ExistingLayer { Id = "a", Material = LayerMaterial.Asphalt, Thickness = Mm(40) }, new ExistingLayer { Id = "d", Material = LayerMaterial.Steel, Thickness = Mm(14) }] }
            : new Existing { Surface = surface, Condition = Moisture.Frozen, Layers = [new ExistingLayer { Id = "a", Material = LayerMaterial.Asphalt, Thickness = Mm(80) }, new ExistingLayer { Id = "g", Material = LayerMaterial.CrushedRockMoist }] };
        var value = MatPlans.Ask(Context(plan with { Existing = existing }, one => one), Window, "course:c");
        Assert.True(value.Low < value.Si && value.Si < value.High);
    }

    [Fact]
    public void A_colder_base_or_air_or_stronger_wind_never_lengthens_a_window_by_the_hour()
    {
        var random = new Random(13);
        for (var i = 0; i < 12; i++)
        {
            int hour = random.Next(0, 24);
            double air = random.Next(0, 28), surface = air + random.Next(-4, 16), wind = random.Next(0, 8);
            var window = Expected(Summer(hour, air, surface, wind), Window, "course:c");
            Assert.All(
                [Summer(hour, air - 3, surface, wind), Summer(hour, air, surface - 3, wind), Summer(hour, air, surface, wind + 2)],
                worse => Assert.True(Expected(worse, Window, "course:c") <= window * (1 + 2e-4), $"{hour} h, air {air}, base {surface}, wind {wind}"));
        }
    }

    [Fact]
    public void Base_and_air_are_sampled_by_three_and_two_kelvin()
    {
        // As dense behind the screed as in the end, so that nothing else varies.
        var plan = Fifty with { Courses = [Fifty.Courses[0] with { DensityBehindScreed = new DensityBehindScreed { Value = M<Ratio>(98, "%") } }] };
        NumberValue Only(string id) => MatPlans.Ask(Context(plan, one => MatPlans.Is(one, id) ? one : Exact(one), 300), Window, "course:c");
        var colder = Expected(With(Fifty, envelope => envelope with { BaseLowest = C(7) }), Window, "course:c");
        var cooler = Expected(With(Fifty, envelope => envelope with { AirLowest = C(8) }), Window, "course:c");
        Assert.InRange(Only(AssumptionIds.BaseSpread).Low!.Value / colder, 1, 1.01);
        Assert.InRange(Only(AssumptionIds.AirSpread).Low!.Value / cooler, 1, 1.01);
    }

    private static double Input(Answer answer, string symbol) => answer.Working.Inputs.Single(input => string.Equals(input.Symbol, symbol, StringComparison.Ordinal)).Number!.Value;

    private static bool Is(AssumptionUse use, string id) => string.Equals(use.Id, id, StringComparison.Ordinal);

    private static DepthTemperature Deep(double millimetres, double celsius) => new() { Depth = Mm(millimetres), Temperature = C(celsius) };

    /// <summary>One hour of laying in June at 50° north; nothing is said of sun and cloud.</summary>
    private static Plan Summer(int hour, double air, double surface, double wind = 3)
    {
        Laygate.Model.Plans.WeatherHour At(int add) => new()
        {
            At = new Moment(new DateTime(2027, 6, 21, 0, 0, 0, DateTimeKind.Unspecified).AddHours(hour + add), null),
            Air = C(air),
            Base = C(surface),
            Wind = M<Speed>(wind, "m/s"),
        };
        return Fifty with
        {
            Location = new Location { Latitude = M<Angle>(50, "°") },
            Shift = new Shift { Date = new DateOnly(2027, 6, 21), Start = new TimeOnly(hour, 0), End = new TimeOnly(hour, 30), Zone = TimeSpan.FromHours(1) },
            Weather = Fifty.Weather! with { Envelope = null, Hours = [At(0), At(1)] },
        };
    }
}

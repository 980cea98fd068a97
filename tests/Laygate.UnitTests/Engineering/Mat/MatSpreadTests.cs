using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Evaluation;
using static Laygate.UnitTests.Engineering.Mat.MatPlans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>Low and high of the answers, samples drawn together, and directions that must hold for any plan.</summary>
public class MatSpreadTests
{
    private static readonly Plan Rolled = Forty with
    {
        Courses = [Forty.Courses[0] with { DensityBehindScreed = new DensityBehindScreed { Value = M<Ratio>(98, "%") } }],
        Opening = new Opening { Below = new PlacedTemperature { Value = C(50), Place = Place.Core } },
    };

    [Theory]
    [InlineData(Window, "course:c")]
    [InlineData("opening.soft_until", "opening")]
    [InlineData("course.marking_to", "course:c")]
    public void Zero_ranges_give_zero_spread(string quantity, string address)
    {
        var value = Ask(Context(Rolled, Exact), quantity, address);
        Assert.Equal(value.Si, value.Low!.Value, 1e-6);
        Assert.Equal(value.Si, value.High!.Value, 1e-6);
    }

    [Fact]
    public void Doubling_a_range_widens_the_spread()
    {
        var id = AssumptionIds.ConductivityOf(MaterialClass.AsphaltConcrete);
        double Width(double about)
        {
            var value = Ask(Context(Rolled, one => Is(one, id) ? one with { Low = 1.2 - about, High = 1.2 + about } : Exact(one)), Window, "course:c");
            return value.High!.Value - value.Low!.Value;
        }

        // By hand: twice where all is linear; judgement: how far from linear it may be.
        Assert.InRange(Width(0.4) / Width(0.2), 1.7, 2.5);
    }

    [Theory]
    [InlineData(10, 30, true)] // Only more may be lost than expected: the window has a low end below it.
    [InlineData(-10, 10, false)] // Only less: a high end above it.
    public void The_range_of_the_loss_behind_the_screed_reaches_the_end_that_it_speaks_of(double least, double most, bool cold)
    {
        var delivered = Rolled with
        {
            Mixes = [Rolled.Mixes[0] with { Delivery = Band(170) }],
            Courses = [Rolled.Courses[0] with { LayingTemperature = null }],
        };
        var value = Ask(Context(delivered, one => Is(one, AssumptionIds.LayingLoss) ? one with { Low = least, High = most } : Exact(one)), Window, "course:c");
        Assert.Equal(Ask(Context(Rolled, Exact), Window, "course:c").Si, value.Si, 1e-6);
        Assert.Equal(cold, value.Low < value.Si - 1);
        Assert.Equal(!cold, value.High > value.Si + 1);
    }

    [Fact]
    public void A_looser_mat_behind_the_screed_widens_the_spread_to_the_slow_side_only()
    {
        NumberValue At(double degree) => Ask(
            Context(Rolled with { Courses = [Rolled.Courses[0] with { DensityBehindScreed = new DensityBehindScreed { Value = M<Ratio>(degree, "%") } }] }, Exact), Window, "course:c");
        Assert.Equal(At(98).Si, At(80).Si, 1e-9);
        Assert.True(At(80).Low >= At(80).Si - 1e-6);
        Assert.True(At(80).High > At(90).High && At(90).High > At(98).High);
    }

    [Fact]
    public void More_samples_on_request_move_the_ends_little()
    {
        var few = Ask(Context(Rolled, one => one), Window, "course:c");
        var many = Ask(Context(Rolled, one => one, 300), Window, "course:c");
        Assert.Equal(few.Si, many.Si);
        Assert.InRange(many.Low!.Value / few.Low!.Value, 0.93, 1.07);
        Assert.InRange(many.High!.Value / few.High!.Value, 0.93, 1.07);
    }

    [Fact]
    public void Two_values_of_one_mat_are_sampled_together()
    {
        var context = Context(Rolled, one => one);
        var pairs = new ContextSamples(context).Find("course.marking_from", Window, "course:c")!;
        Assert.Equal(64, pairs.Count);

        // What cools the skin fast cools the mean fast: the difference spreads less than independent ends would have it.
        var (from, window) = (Ask(context, "course.marking_from", "course:c"), Ask(context, Window, "course:c"));
        var differences = pairs.Select(pair => pair.Value - pair.Limit).Order().ToList();
        Assert.True(differences[^4] - differences[3] < 0.8 * (from.High - from.Low + window.High - window.Low));
        Assert.Null(context.JointSamples(Window, "mix.cessation", "course:c"));
    }

    [Fact]
    public void A_window_never_grows_with_colder_weather_or_mix_or_with_a_thinner_course()
    {
        var random = new Random(20261125);
        for (var i = 0; i < 25; i++)
        {
            double air = random.Next(-5, 25), below = random.Next(-2, 30), wind = random.Next(0, 9), laid = random.Next(135, 175), thickness = random.Next(25, 110);
            var isPair = i % 3 == 0;
            var plan = Made(air, below, wind, laid, thickness, isPair);
            var window = Expected(plan, Window, "course:c");
            Assert.All(
                [
                    Made(air - 5, below, wind, laid, thickness, isPair), Made(air, below - 5, wind, laid, thickness, isPair), Made(air, below, wind + 2, laid, thickness, isPair),
                    Made(air, below, wind, laid - 5, thickness, isPair), isPair ? plan : Made(air, below, wind, laid, thickness - 4, isPair),
                ],
                worse => Assert.True(Expected(worse, Window, "course:c") <= window * (1 + 2e-4), $"case {i}: {air} {below} {wind} {laid} {thickness}"));
        }
    }

    private static Plan Made(double air, double below, double wind, double laid, double thickness, bool isPair)
    {
        var course = Forty.Courses[0] with { Thickness = Mm(thickness), LayingTemperature = Band(laid) };
        return With(Forty, envelope => envelope with { AirLowest = C(air), BaseLowest = C(below), WindHighest = M<Speed>(wind, "m/s") }) with
        {
            Courses = isPair ? [course, course with { Id = "up", Thickness = Mm(25), Laid = Laying.HotOnHot, On = "c", Delay = Min(2) }] : [course],
        };
    }
}

using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Mat;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Mat.MatPlans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>Weather, water, decks and two courses as a plan states them.</summary>
public class MatServicesTests
{
    private const string Lower = "course.temperature_of_lower_at_laying";

    [Fact]
    public void Specific_heat_that_rises_lengthens_the_window_a_little()
    {
        // By hand and docs/performance.md: constant 920 J/(kg K) cools too fast by less than 3 % on the mild day. Here 160 to 80 °C, mean 120: about 960.
        var constant = Ask(Context(Forty, one => Is(one, AssumptionIds.HeatRise) ? one with { Number = 0, Low = 0, High = 0 } : one, 2), Window, "course:c").Si;
        Assert.InRange(Expected(Forty, Window, "course:c") / constant, 1.005, 1.07);
    }

    [Fact]
    public void Water_on_the_base_shortens_the_window_by_what_it_takes_to_boil_it()
    {
        // By hand: 0.2 mm · 2634 kJ/m2 per mm over 0.040 m · 2300 · 920 J/(m2 K) are 6 K, about 1.1 min of a 15 min window (steam table: 2257 + 4.19 · 90 kJ/kg).
        var dry = Expected(Forty, Window, "course:c");
        var damp = Expected(On(Forty, Moisture.Damp), Window, "course:c");
        Assert.InRange((dry - damp) / 60, 0.8, 1.5);
        Assert.True(Expected(On(Forty, Moisture.Wet), Window, "course:c") < damp);
        Assert.Equal(dry, Expected(On(Forty, Moisture.Dry), Window, "course:c"));
    }

    [Fact]
    public void Frozen_rock_below_takes_the_heat_of_thawing()
    {
        Plan Rock(LayerMaterial material, Moisture condition) => Forty with
        {
            Existing = new Existing { Surface = ExistingSurface.Granular, Condition = condition, Layers = [new ExistingLayer { Id = "r", Material = material }] },
            Weather = Forty.Weather! with { Envelope = Forty.Weather.Envelope! with { BaseLowest = C(-1) } },
        };
        var moist = Expected(Rock(LayerMaterial.CrushedRockMoist, Moisture.Dry), Window, "course:c");
        var frozen = Expected(Rock(LayerMaterial.CrushedRockFrozen, Moisture.Dry), Window, "course:c");
        var stated = Expected(Rock(LayerMaterial.CrushedRockMoist, Moisture.Frozen), Window, "course:c");
        Assert.True(frozen < moist && stated < frozen); // The frozen surface also carries a little ice.
    }

    [Fact]
    public void Underside_of_a_deck_gives_heat_to_the_air_at_its_own_rate()
    {
        var deck = Forty with
        {
            Existing = new Existing { Surface = ExistingSurface.BridgeDeck, Layers = [new ExistingLayer { Id = "d", Material = LayerMaterial.Steel, Thickness = Mm(12) }] },
        };
        double At(double coefficient) => Ask(Context(deck, one => Is(one, AssumptionIds.DeckUnderside) ? one with { Number = coefficient } : one, 2), Window, "course:c").Si;
        Assert.True(At(25) < At(10) && At(10) < At(1));
    }

    [Fact]
    public void Sun_follows_from_place_date_hour_and_cloud_where_it_is_not_stated()
    {
        Plan Noon(int? cloud, double? sun, bool isPlaced = true, int hour = 12) => Forty with
        {
            Location = isPlaced ? new Location { Latitude = M<Angle>(50, "°"), Longitude = M<Angle>(15, "°") } : null,
            Shift = new Shift { Date = new DateOnly(2027, 6, 21), Start = new TimeOnly(hour, 0), End = new TimeOnly(hour, 30), Zone = TimeSpan.FromHours(1) },
            Weather = Forty.Weather! with
            {
                Envelope = null,
                Hours =
                [
                    .. Enumerable.Range(0, 3).Select(i => new WeatherHour
                    {
                        At = new Moment(new DateTime(2027, 6, 21, hour, 0, 0, DateTimeKind.Unspecified).AddHours(i), null), Air = C(10), Base = C(10), Wind = M<Speed>(3, "m/s"),
                        BaseAtDepth = [new DepthTemperature { Depth = Mm(100), Temperature = C(10) }], CloudEighths = cloud, Sun = sun is { } stated ? M<Irradiance>(stated, "W/m2") : null,
                    }),
                ],
            },
        };
        var dark = Expected(Noon(8, 0), Window, "course:c");
        var clear = Expected(Noon(0, null), Window, "course:c");
        Assert.True(clear > Expected(Noon(7, null), Window, "course:c"));
        Assert.True(Expected(Noon(7, null), Window, "course:c") > dark);
        Assert.Equal(dark, Expected(Noon(0, null, hour: 0), Window, "course:c"), 1e-9); // night
        Assert.Equal(dark, Expected(Noon(0, null, isPlaced: false), Window, "course:c"), 1e-9);
        Assert.Equal(dark, Expected(Noon(null, null), Window, "course:c"), 1e-9); // fast cooling takes no sun that nobody stated
        var stated = Sun.Clear(6, Sun.Altitude(50, 172, 12));
        Assert.Equal(1, Expected(Noon(0, stated), Window, "course:c") / clear, 0.01);
    }

    [Fact]
    public void Two_pavers_minutes_apart_lay_on_a_lower_course_that_has_cooled()
    {
        var together = Two(Laying.HotOnHot, 1);
        var apart = Two(Laying.HotOnHot, 15);
        Assert.True(Expected(apart, Lower, "course:up") < Expected(together, Lower, "course:up") - 5);
        Assert.True(Expected(apart, Window, "course:up") < Expected(together, Window, "course:up"));
        Assert.True(Expected(together, Window, "course:low") > Expected(together, Window, "course:up"));
    }

    [Fact]
    public void The_lower_course_keeps_the_profile_that_it_has_alone_until_the_upper_arrives()
    {
        var alone = Forty with { Courses = [Two(Laying.HotOnWarm, 20).Courses[0]] };
        var (curves, _) = MatCurves.Of(Engineering.Ask.Context(alone), "low", 1800);
        var mean = Assert.Single(curves!.Series, series => series.Place == Place.CourseMean);
        Assert.Equal(mean.Celsius[40], Expected(Two(Laying.HotOnWarm, 20), Lower, "course:up"), 0.02);
        Assert.Equal(mean.Celsius[40], Expected(Two(Laying.HotOnHot, 20), Lower, "course:up"), 0.02);
    }

    [Fact]
    public void The_temperature_of_the_lower_course_is_given_where_the_plan_limits_it()
    {
        var plan = Two(Laying.HotOnWarm, 20);
        var skin = plan with { Courses = [plan.Courses[0], plan.Courses[1] with { LowerTemperatureLowest = new PlacedTemperature { Value = C(60), Place = Place.Skin } }] };
        var answer = Engineering.Ask.Answer(skin, Lower, "course:up");
        Assert.Equal(Place.Skin, answer.Place);
        Assert.True(Engineering.Ask.In(answer, string.Empty) < Expected(plan, Lower, "course:up"));
        Assert.Equal(NoteIds.LaidCold, Engineering.Ask.Answer(plan, Lower, "course:low").Absence!.Note!.Id);
    }

    [Fact]
    public void Two_hot_courses_are_opened_and_laid_upon_later_than_one()
    {
        var opening = new Opening { Below = new PlacedTemperature { Value = C(50), Place = Place.Core } };
        foreach (var quantity in new[] { ("opening.soft_until", "opening"), ("existing.cooled_for_overlay", "existing") })
        {
            var alone = Expected(Forty with { Opening = opening }, quantity.Item1, quantity.Item2);
            Assert.True(Expected(Two(Laying.HotOnHot, 1) with { Opening = opening }, quantity.Item1, quantity.Item2) > 1.5 * alone);
        }
    }

    [Fact]
    public void The_first_edge_is_as_warm_as_its_course_when_the_neighbour_arrives()
    {
        Plan Edge(double minutes) => Forty with { Joints = [new Joint { Id = "j", Kind = JointKind.Longitudinal, Course = "c", Form = JointForm.HotEchelon, Delay = Min(minutes) }] };
        var (curves, _) = MatCurves.Of(Engineering.Ask.Context(Forty), "c", 1800);
        var answer = Engineering.Ask.Answer(Edge(5), "joint.edge_temperature", "joint:j");
        Assert.Equal(Place.CourseMean, answer.Place);
        Assert.Equal(curves!.Series[2].Celsius[10], Engineering.Ask.In(answer, string.Empty), 0.02);
        Assert.True(Expected(Edge(12), "joint.edge_temperature", "joint:j") < Engineering.Ask.In(answer, string.Empty));
        Assert.Equal(["joint:j/delay"], Engineering.Ask.Missing(Engineering.Ask.Answer(Forty with { Joints = [new Joint { Id = "j", Course = "c" }] }, "joint.edge_temperature", "joint:j")));
    }

    [Fact]
    public void Marks_are_taken_out_between_two_temperatures_of_the_skin()
    {
        var (curves, _) = MatCurves.Of(Engineering.Ask.Context(Forty), "c", 3600);
        var (from, to) = (Expected(Forty, "course.marking_from", "course:c"), Expected(Forty, "course.marking_to", "course:c"));
        // Assumed limits: 185 and 160 °F, trade page on finish rolling (recalled).
        Assert.Equal(85, SkinAt(from), 0.4);
        Assert.Equal(71, SkinAt(to), 0.4);

        double SkinAt(double time)
        {
            var (i, share) = ((int)(time / 30), (time / 30) - Math.Floor(time / 30));
            return curves!.Series[0].Celsius[i] + (share * (curves.Series[0].Celsius[i + 1] - curves.Series[0].Celsius[i]));
        }
    }

    [Fact]
    public void Curves_show_skin_core_and_each_course_from_its_laying_on()
    {
        var (curves, absent) = MatCurves.Of(Engineering.Ask.Context(Two(Laying.HotOnHot, 10)), "up", 3600);
        Assert.Null(absent);
        // By hand: the upper course follows after 10 min; 3600 s in steps of 30 s.
        Assert.Equal(600, curves!.LastScreed);
        Assert.Equal(121, curves.Seconds.Count);
        Assert.Equal([",Skin", ",Core", "low,CourseMean", "up,CourseMean"], curves.Series.Select(series => $"{series.Course},{series.Place}"), StringComparer.Ordinal);
        Assert.True(double.IsNaN(curves.Series[3].Celsius[10]) && curves.Series[3].Celsius[25] > 80);
        Assert.NotNull(MatCurves.Of(Engineering.Ask.Context(Small.Plan), "c", 3600).Absent);
    }
}

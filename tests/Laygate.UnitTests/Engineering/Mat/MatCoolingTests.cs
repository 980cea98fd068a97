using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>From plan to conduction solver and back.</summary>
public class MatCoolingTests
{
    private const string Window = "course.densification_window";

    /// <summary>40 mm at 160 °C on old asphalt, air, base and sky 10 °C, 5 m/s, mean to 80 °C.</summary>
    private static readonly Plan Reference = Small.Plan with
    {
        Mixes = [Small.Mix with { Density = new MixDensity { Compacted = M<Density>(2300, "kg/m3") }, Cessation = new PlacedTemperature { Value = C(80), Place = Place.CourseMean } }],
        Courses = [Small.Course with { LayingTemperature = Band(160) }],
        Existing = new Existing { Surface = ExistingSurface.OldAsphalt, Layers = [new ExistingLayer { Id = "a", Material = LayerMaterial.Asphalt }] },
        Weather = new Weather
        {
            WindAtMat = M<Ratio>(100, "%"),
            Envelope = new WeatherEnvelope { AirLowest = C(10), BaseLowest = C(10), WindHighest = M<Speed>(5, "m/s") },
        },
    };

    [Fact]
    public void Reproduces_a_case_of_another_program()
    {
        // Source: derived with another program, tests/Tools/cooling.py on docs/verification/conduction-other-program/sensitivity.yaml: 15.82 min with the form
        // 4 + 4 v, sky at air temperature and constant specific heat.
        var set = LaygateAssumptions.Set();
        var context = new QuantityContext(Reference, LaygateQuantities.Catalogue(), set.With(
        [
            set[AssumptionIds.SkyBelowAir] with { Number = 0, Low = 0, High = 0 }, set[AssumptionIds.HeatRise] with { Number = 0, Low = 0, High = 0 },
        ]), 1);
        var answer = context.Get(Window, context.Elements.Find("course:c")!);
        Assert.Equal(15.82, Ask.In(answer, "min"), 0.02);
        Assert.False(answer.RestsOnWeakAssumption);
    }

    [Fact]
    public void Scenario_A_lies_in_the_bands_computed_there()
    {
        // Source: derived with another program, tests/Tools/cooling.py on tests/Tools/scenario-a.yaml, with 7.4 + 6.39 v^0.75, which cools faster: upper 27,
        // lower 49, skin to 100 °C 10 min, core 44 to 51 K above the skin. High ends (48, 67, 27 min): the same with 2 m/s at the mat, 4 + 4 v, 980 J/(kg K), 4 K hotter.
        Assert.InRange(Ask.Number(ScenarioA.Plan, Window, "course:wearing", "min"), 27, 48);
        Assert.InRange(Ask.Number(ScenarioA.Plan, Window, "course:binder", "min"), 49, 67);
        Assert.InRange(Ask.Number(ScenarioA.Plan, "early-friction.grit_window", "early-friction", "min"), 10, 27);
        Assert.InRange(Ask.Number(ScenarioA.Plan, "pair.core_skin_difference", "pair:binder+wearing", "K"), 42, 51);
    }

    [Fact]
    public void A_thin_course_on_a_hot_one_has_several_times_the_window_that_it_has_alone()
    {
        // Source: derived with another program, tests/Tools/cooling.py on docs/verification/conduction-other-program/hot-on-hot.yaml: gain 4.5 to 7.5 for 20 to 25 mm;
        // the direction stands in a conference abstract on compact asphalt in FGSV proceedings (read).
        var alone = ScenarioA.Plan with { Courses = [ScenarioA.Plan.Courses[1] with { Laid = Laying.Separately, On = null, Delay = null }] };
        var gain = Ask.Number(ScenarioA.Plan, Window, "course:wearing") / Ask.Number(alone, Window, "course:wearing");
        Assert.InRange(gain, 4.5, 9);
    }

    [Fact]
    public void Band_encloses_the_expected_value_and_follows_the_seed_alone()
    {
        var first = Spread(Reference, 1);
        Assert.Equal(first, Spread(Reference, 1));
        var other = Spread(Reference, 2);
        Assert.NotEqual(first, other);
        Assert.InRange(other.Low!.Value / first.Low!.Value, 0.9, 1.1);
        Assert.InRange(other.High!.Value / first.High!.Value, 0.9, 1.1);
        Assert.InRange(first.Si, first.Low.Value * 1.02, first.High.Value / 1.02);
    }

    [Fact]
    public void Cold_wind_and_thin_courses_shorten_the_window()
    {
        var usual = Ask.Number(Reference, Window, "course:c");
        Assert.True(Ask.Number(With(envelope => envelope with { AirLowest = C(0) }), Window, "course:c") < usual);
        Assert.True(Ask.Number(With(envelope => envelope with { BaseLowest = C(0) }), Window, "course:c") < usual);
        Assert.True(Ask.Number(With(envelope => envelope with { WindHighest = M<Speed>(10, "m/s") }), Window, "course:c") < usual);
        Assert.True(Ask.Number(Reference with { Courses = [Reference.Courses[0] with { Thickness = Mm(30) }] }, Window, "course:c") < usual);
    }

    [Fact]
    public void A_warm_course_below_lengthens_the_window_by_time_or_by_its_stated_temperature()
    {
        Plan Warm(Course upper) => Reference with
        {
            Mixes = [Reference.Mixes[0]],
            Courses =
            [
                Reference.Courses[0] with { Id = "low", Thickness = Mm(80) },
                upper with { Id = "up", Mix = "m", Thickness = Mm(30), LayingTemperature = Band(150), Laid = Laying.HotOnWarm, On = "low" },
            ],
        };
        var cold = Ask.Number(Warm(Small.Course) with { Courses = [Reference.Courses[0] with { Id = "up", Thickness = Mm(30), LayingTemperature = Band(150) }] }, Window, "course:up");
        var later = Ask.Number(Warm(Small.Course with { Delay = Min(60) }), Window, "course:up");
        var sooner = Ask.Number(Warm(Small.Course with { Delay = Min(20) }), Window, "course:up");
        var stated = Ask.Number(Warm(Small.Course with { LowerTemperatureLowest = new PlacedTemperature { Value = C(70), Place = Place.CourseMean } }), Window, "course:up");
        Assert.True(cold < later && later < sooner && cold < stated);
        Assert.Equal(["course:up/delay"], Ask.Missing(Ask.Answer(Warm(Small.Course), Window, "course:up")));
    }

    [Fact]
    public void Opening_takes_the_warm_end_of_an_envelope()
    {
        var plan = Reference with { Opening = new Opening { Below = new PlacedTemperature { Value = C(50), Place = Place.Core } } };
        var warm = plan with
        {
            Weather = plan.Weather! with { Envelope = plan.Weather.Envelope! with { AirHighest = C(30), BaseHighest = C(35) } },
        };
        Assert.True(Ask.Number(warm, "opening.soft_until", "opening") > 1.3 * Ask.Number(plan, "opening.soft_until", "opening"));
        Assert.Equal(Ask.Number(plan, Window, "course:c"), Ask.Number(warm, Window, "course:c"));
    }

    [Fact]
    public void An_opening_temperature_below_the_air_is_never_reached()
    {
        var plan = Reference with { Opening = new Opening { Below = new PlacedTemperature { Value = C(5), Place = Place.Core } } };
        Assert.Equal(NoteIds.NotReached, Ask.Answer(plan, "opening.soft_until", "opening").Absence!.Note!.Id);
    }

    [Fact]
    public void A_mat_below_its_cessation_temperature_has_no_window()
    {
        var plan = Reference with { Courses = [Reference.Courses[0] with { LayingTemperature = Band(79) }] };
        Assert.Equal(0, Ask.Number(plan, Window, "course:c"));
    }

    [Fact]
    public void A_cessation_temperature_of_the_skin_needs_a_person()
    {
        var plan = Reference with { Mixes = [Reference.Mixes[0] with { Cessation = new PlacedTemperature { Value = C(80), Place = Place.Skin } }] };
        var absence = Ask.Answer(plan, Window, "course:c").Absence!;
        Assert.Equal((AbsenceReason.NeedsPerson, NoteIds.OtherPlace), (absence.Reason, absence.Note!.Id));
    }

    [Fact]
    public void Assumed_build_up_cessation_and_laying_temperature_widen_the_band_and_are_listed()
    {
        var plan = Reference with
        {
            Mixes = [Reference.Mixes[0] with { Cessation = null, Delivery = Band(170, Place.InLoad), Binder = new Binder { Modified = true } }],
            Courses = [Small.Course],
            Existing = new Existing { Surface = ExistingSurface.Milled, Condition = Moisture.Damp },
        };
        var answer = Ask.Answer(plan, Window, "course:c");
        Assert.Contains(answer.Working.Assumptions, use => string.Equals(use.Id, AssumptionIds.FilmDamp, StringComparison.Ordinal));
        Assert.True(answer.RestsOnWeakAssumption);
        var standsFor = answer.Working.Assumptions.Select(use => use.StandsFor).OfType<InputReference>().Select(input => $"{input.Address}/{input.Key}");
        Assert.Equal("course:c/laying_temperature.expected existing/layers mix:m/cessation", string.Join(' ', standsFor.Order(StringComparer.Ordinal)));
        var stated = (NumberValue)Ask.Answer(
            plan with { Mixes = [plan.Mixes[0] with { Cessation = new PlacedTemperature { Value = C(95), Place = Place.CourseMean } }], Courses = Reference.Courses }, Window, "course:c").Value!;
        var assumed = (NumberValue)answer.Value!;
        Assert.True((assumed.High - assumed.Low) / assumed.Si > (stated.High - stated.Low) / stated.Si);
    }

    private static NumberValue Spread(Plan plan, ulong seed)
    {
        var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), seed);
        return (NumberValue)context.Get(Window, context.Elements.Find("course:c")!).Value!;
    }

    private static Plan With(Func<WeatherEnvelope, WeatherEnvelope> change) =>
        Reference with { Weather = Reference.Weather! with { Envelope = change(Reference.Weather.Envelope!) } };
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Quantities;

public class PairAndMachineTests
{
    private const string Pair = "pair:binder+wearing";
    private static readonly Plan Plan = ScenarioA.Plan;

    [Fact]
    public void No_bond_coat_between_the_courses_of_a_pair_unless_stated()
    {
        Assert.Equal(new FlagValue(false), Ask.Answer(Plan, "pair.bond_coat_between", Pair).Value);
        var coated = Plan with { BondCoats = [new BondCoat { Id = "x", Below = "wearing", Applied = true }] };
        Assert.Equal(new FlagValue(true), Ask.Answer(coated, "pair.bond_coat_between", Pair).Value);
        Assert.Equal(new FlagValue(true), Ask.Answer(coated, "bond-coat.is_between_pair", "bond-coat:x").Value);
        Assert.Equal(new CategoryValue("new-asphalt"), Ask.Answer(coated, "bond-coat.surface", "bond-coat:x").Value);
    }

    [Fact]
    public void The_lowest_joint_treatment_counts()
    {
        Joint Of(string id, JointHeight? height) => new() { Id = id, Kind = JointKind.Longitudinal, Course = "wearing", Height = height };
        var two = Plan with { Joints = [Of("a", JointHeight.Full), Of("b", JointHeight.TopCourse)] };
        Assert.Equal(new CategoryValue("top-course"), Ask.Answer(two, "pair.joint_height", Pair).Value);
        Assert.Equal(["joint:b/height"], Ask.Missing(Ask.Answer(Plan with { Joints = [Of("a", JointHeight.Full), Of("b", null)] }, "pair.joint_height", Pair)));
        Assert.Equal(NoteIds.OneStrip, Ask.Answer(Plan, "pair.joint_height", Pair).Absence!.Note!.Id);
        Assert.Equal(new FlagValue(true), Ask.Answer(two, "joint.in_pair", "joint:a").Value);
    }

    [Theory]
    [InlineData("phase:initial", "static")]
    [InlineData("phase:main", "mixed")]
    public void Modes_of_phases(string phase, string mode) => Assert.Equal(new CategoryValue(mode), Ask.Answer(Plan, "phase.mode", phase).Value);

    [Fact]
    public void The_first_phase_gives_the_mode_of_the_pair() =>
        Assert.Equal(new CategoryValue("static"), Ask.Answer(Plan, "pair.first_mode", Pair).Value);

    [Fact]
    public void Distance_over_speed_gives_the_delay()
    {
        var byDistance = Plan with { Courses = [Plan.Courses[0], Plan.Courses[1] with { Delay = null, Distance = Metres(2.6) }] };
        Assert.Equal(1, Ask.Number(byDistance, "pair.delay", Pair, "min"), 1e-9);
    }

    // By hand: two rollers, 30 m at 4.5 km/h in 24 s and 10 s to reverse: 2 · 24/34 · 75/(6 · 4) = 4.41 m/min.
    [Fact]
    public void The_weakest_phase_sets_the_speed_that_rollers_allow() =>
        Assert.Equal(4.41, Ask.Number(Plan, "paver.speed_rollers_allow", "paver:p1", "m/min"), 0.01);

    [Fact]
    public void The_shorter_buffer_sets_the_cover() =>
        // 50 − 8 t at 261 t/h and 28 − 5 t at 74.3 t/h.
        Assert.Equal(42 / 4.35, Ask.Number(Plan, "paver.buffer_cover", "paver:p1", "min"), 0.01);

    [Fact]
    public void Unloading_in_parts_counts_the_exchange_twice_in_the_worst_case_and_once_where_a_need_is_judged()
    {
        var plan = Plan with { Supply = Plan.Supply! with { Feeder = Plan.Supply.Feeder! with { UnloadingInParts = true } } };
        Assert.Equal(Ask.Number(Plan, "feeder.occupation", "feeder:f1"), Ask.Number(plan, "feeder.occupation", "feeder:f1"), 1e-9);

        // One exchange of 1 min more while the lower buffer is left alone: Cb grows by Rb · (2e − e) = 4.35 t.
        Assert.Equal(Ask.Number(Plan, "paver.lower_buffer_needed", "paver:p1", "t") + 4.35, Ask.Number(plan, "paver.lower_buffer_needed", "paver:p1", "t"), 0.01);
    }

    [Fact]
    public void Age_at_laying_counts_wait_and_buffer() =>
        // 4 + 27 + 8 + (1 + 25/15) + 50/4.35 min.
        Assert.Equal(39 + 1 + (25 / 15.0) + (50 / 4.35), Ask.Number(Plan, "trucks.age_at_laying", "trucks:big", "min"), 0.01);

    [Fact]
    public void Supply_counts_the_silo_over_the_shift() =>
        Assert.Equal(270 + (300 / (6 + (50 / 60.0))), Ask.Number(Plan, "course.supply", "course:binder", "t/h"), 0.001);

    [Fact]
    public void One_plant_for_both_mixes_is_shared_by_demand()
    {
        var both = Plan.Supply!.Plants[0] with { Mixes = ["ac16", "sma8"], SiloAtStart = null };
        var plan = Plan with { Supply = Plan.Supply with { Plants = [both] } };
        var lower = Ask.Number(plan, "course.demand", "course:binder");
        var upper = Ask.Number(plan, "course.demand", "course:wearing");
        Assert.Equal(270 * lower / (lower + upper), Ask.Number(plan, "course.supply", "course:binder", "t/h"), 1e-6);
        Assert.Equal(lower + upper, Ask.Number(plan, "plant.demand", "plant:a"), 1e-6);
    }

    [Fact]
    public void A_paver_of_single_courses_has_no_pair_buffers()
    {
        var plan = Small.Plan with { Pavers = [new Paver { Id = "p" }] };
        Assert.Equal(NoteIds.NoPair, Ask.Answer(plan, "paver.lower_buffer_needed", "paver:p").Absence!.Note!.Id);
    }

    [Theory]
    [InlineData(300.0, null, RateBasis.Sprayed, 60.0, 0.180)] // Source: derived: 300 g/m2 sprayed of 60 % are 180 residual; 0.5 L/m2 of 60 % at 1 kg/L are 0.300
    [InlineData(180.0, null, RateBasis.Residual, null, 0.180)]
    [InlineData(null, 0.5, RateBasis.Sprayed, 60.0, 0.300)]
    public void Residual_rate_of_a_bond_coat(double? grams, double? litres, RateBasis basis, double? residue, double kilograms)
    {
        var coat = new BondCoat
        {
            Id = "x",
            Below = "c",
            Applied = true,
            Rate = grams is { } mass ? (IMeasure)M<AreaDensity>(mass, "g/m2") : M<FilmThickness>(litres!.Value, "L/m2"),
            Basis = basis,
            Residue = residue is { } share ? M<Ratio>(share, "%") : null,
        };
        Assert.Equal(kilograms, Ask.Number(Small.Plan with { BondCoats = [coat] }, "bond-coat.residual_rate", "bond-coat:x", "kg/m2"), 1e-9);
    }

    [Fact]
    public void Thickness_behind_the_screed_follows_from_both_densities()
    {
        // By hand: 85 mm of 98 % laid at 93 % are 85 · 98/93 = 89.6 mm.
        var laid = Plan with
        {
            Courses = [Plan.Courses[0] with { DensityBehindScreed = new DensityBehindScreed { Value = M<Ratio>(93, "%"), Evidence = DensityEvidence.Trial } }, Plan.Courses[1]],
        };
        var answer = Ask.Answer(laid, "course.thickness_behind_screed", "course:binder");
        Assert.Equal(89.6, Ask.In(answer, "mm"), 0.05);
        Assert.True(answer.RestsOnWeakAssumption); // 98 % is assumed
        Assert.Equal(4.6, Ask.Number(laid, "course.roll_down", "course:binder", "mm"), 0.05);
        var assumed = Ask.Answer(laid, "course.thickness_behind_screed", "course:wearing"); // 25 mm at 86 % of the reference, assumed
        Assert.Equal(25 * 98 / 86.0, Ask.In(assumed, "mm"), 0.01);
        Assert.Contains(assumed.Working.Assumptions, use => use.StandsFor is { Key: "density_behind_screed.value" });
        Assert.Equal(4.57 + (25 * 12 / 86.0), Ask.Number(laid, "pair.roll_down", "pair:binder+wearing", "mm"), 0.02);
    }

    [Fact]
    public void Weak_assumptions_carry_the_ends_of_their_ranges()
    {
        // By hand: width 3.3 m and drum 1.75 m without edges and overlap, both assumed with ranges: 2 strips at the low end, 3 as expected and at the high end.
        var plan = Plan with
        {
            Runs = [Plan.Runs[0] with { Width = Metres(3.3), LeftEdge = null, RightEdge = null }],
            Rolling = Plan.Rolling! with { Rollers = [Plan.Rolling.Rollers[0] with { Overlap = null, DrumWidth = Metres(1.75) }] },
        };
        var number = (NumberValue)Ask.Answer(plan, "phase.strips", "phase:initial").Value!;
        Assert.Equal((2.0, 3.0, 3.0), (number.Low!.Value, number.Si, number.High!.Value));

        Assert.Null(((NumberValue)Ask.Answer(Plan, "phase.strips", "phase:initial").Value!).Low);
    }

    [Fact]
    public void Night_shifts_and_clock_changes_have_their_true_length()
    {
        var shift = new Shift
        {
            Date = new DateOnly(2027, 10, 30),
            Start = new TimeOnly(21, 0),
            End = new TimeOnly(5, 0),
            Zone = TimeSpan.FromHours(2),
            ZoneAtEnd = TimeSpan.FromHours(1),
        };
        // By hand: 21:00 to 05:00 and the hour of the clock change; from 05:00 to 17:00.
        Assert.Equal(9, Ask.Number(Plan with { Shift = shift }, "shift.duration", "shift", "h"), 1e-9);
        Assert.Equal(new CategoryValue("october"), Ask.Answer(Plan with { Shift = shift }, "shift.month", "shift").Value);
        var opening = Plan with { Shift = shift, Opening = new Opening { At = new Moment(new DateTime(2027, 10, 31, 17, 0, 0, DateTimeKind.Unspecified), null) } };
        Assert.Equal(12, Ask.Number(opening, "opening.time_after_laying", "opening", "h"), 1e-9);
    }
}

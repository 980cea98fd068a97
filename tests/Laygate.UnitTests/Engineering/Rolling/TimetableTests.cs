using Laygate.Engineering.Mat;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Rolling;

/// <summary>The passes at one point of scenario A: paver 2.6 m/min, zones 2-27, 27-57 and 65-105 m, 2, 4 and 2 passes.</summary>
public class TimetableTests
{
    private static readonly PassTimetable Timetable = PassTimetable.Of(Ask.Context(ScenarioA.Plan), "wearing").Timetable!;

    [Theory]
    // By hand: 2 m / 2.6 m/min = 0.769 min, 27 m / 2.6 = 10.385 min, 57 m / 2.6 = 21.923 min, 65 m / 2.6 = 25 min, 105 m / 2.6 = 40.385 min.
    // Two passes share the first 9.615 min: 4.808 min each; four share the next 11.538 min: 2.885 min each; two the last 15.385 min: 7.692 min each.
    [InlineData(0, "initial", 1, 0.769, 5.577)]
    [InlineData(1, "initial", 2, 5.577, 10.385)]
    [InlineData(2, "main", 1, 10.385, 13.269)]
    [InlineData(3, "main", 2, 13.269, 16.154)]
    [InlineData(5, "main", 4, 19.038, 21.923)]
    [InlineData(6, "finish", 1, 25.0, 32.692)]
    [InlineData(7, "finish", 2, 32.692, 40.385)]
    public void Times_as_worked_by_hand(int index, string phase, int number, double earliest, double latest)
    {
        var pass = Timetable.Passes[index];
        Assert.Equal((phase, number), (pass.Phase, pass.Number));
        Assert.Equal(earliest, pass.Earliest / 60, 0.001);
        Assert.Equal(latest, pass.Latest / 60, 0.001);
        Assert.Equal((earliest + latest) / 2, pass.Middle / 60, 0.001);
        // The lower course was laid 1.0 min before the upper one.
        Assert.Equal(pass.Middle + 60, pass.Courses[0].AfterItsScreed, 0.001);
        Assert.Equal(pass.Middle, pass.Courses[1].AfterItsScreed, 0.001);
    }

    [Fact]
    public void Temperatures_agree_with_the_table_of_the_scenario()
    {
        // Derived with another program, tests/Tools/cooling.py on tests/Tools/scenario-a.yaml (coldest hour, 7.4 + 6.39 v^0.75, which cools faster): at 10 min skin 99, upper mean 122,
        // lower mean 134, core 150; at 20 min 87, 108, 123, 138; at 40 min 71, 89, 106, 115. Interpolated by hand at 11.83 min (first main pass):
        // skin 96.8, upper 119.4, lower 132.0, core 147.8; at 36.54 min (last finish pass): skin 73.8, upper 91.8, lower 108.8, core 118.8.
        // Ours cools more slowly, so it must not be below these, and not above them by more than the two forms differ (12 K at the skin).
        var main = Timetable.Passes[2];
        Near(96.8, main.Skin);
        Near(119.4, main.Courses[1].Mean);
        Near(132.0, main.Courses[0].Mean);
        Near(147.8, main.Core);
        var finish = Timetable.Passes[7];
        Near(73.8, finish.Skin);
        Near(91.8, finish.Courses[1].Mean);
        Near(108.8, finish.Courses[0].Mean);
        Near(118.8, finish.Core);
    }

    [Fact]
    public void Each_place_lies_where_it_must_and_cools_from_pass_to_pass()
    {
        Assert.Equal(8, Timetable.Passes.Count);
        foreach (var (earlier, later) in Timetable.Passes.Zip(Timetable.Passes.Skip(1)))
        {
            Assert.True(later.Skin.Expected < earlier.Skin.Expected);
            Assert.True(later.Courses[0].Mean.Expected < earlier.Courses[0].Mean.Expected);
            Assert.True(later.Courses[1].Mean.Expected < earlier.Courses[1].Mean.Expected);
        }

        Assert.All(Timetable.Passes, pass =>
        {
            Assert.True(pass.Skin.Expected < pass.Courses[1].Mean.Expected && pass.Courses[1].Mean.Expected < pass.Core.Expected);
            Assert.Equal(pass.Core.Expected - pass.Skin.Expected, pass.CoreSkin.Expected, 1e-9);
            Assert.True(pass.Skin.Low < pass.Skin.Expected && pass.Skin.Expected < pass.Skin.High);
        });
    }

    [Fact]
    public void Passes_in_the_window_are_counted_per_course()
    {
        // Six densifying passes, the last one made everywhere by 21.9 min; the windows of another program (tests/Tools/cooling.py on tests/Tools/scenario-a.yaml) are 27 and 49 min.
        Assert.Equal(6, Ask.Number(ScenarioA.Plan, "course.passes_in_window", "course:wearing"));
        Assert.Equal(6, Ask.Number(ScenarioA.Plan, "course.passes_in_window", "course:binder"));
        Assert.Equal(6, Ask.Number(ScenarioA.Plan, "course.densifying_passes", "course:binder"));
        Assert.All(Timetable.Passes.Take(6), pass => Assert.True(pass.Courses[1].InWindow));
        // Laid alone on the cold base the 25 mm have 4 min (derived with tests/Tools/cooling.py: 3.8, hot-on-hot.yaml): no pass but the first could be in time, and that one ends at 5.6 min.
        var alone = ScenarioA.Plan with { Courses = [ScenarioA.Plan.Courses[1] with { Laid = Laying.Separately, On = null, Delay = null }] };
        Assert.Equal(0, Ask.Number(alone, "course.passes_in_window", "course:wearing"));
        Assert.False(PassTimetable.Of(Ask.Context(alone), "wearing").Timetable!.Passes[0].Courses[0].InWindow);
    }

    [Fact]
    public void Start_temperature_is_looked_for_at_its_own_place()
    {
        var mean = WithStart(145, Place.CourseMean);
        Assert.InRange(Ask.Number(mean, "course.bears_from", "course:wearing", "min"), 0.5, 4); // derived with tests/Tools/cooling.py on tests/Tools/scenario-a.yaml: mean of the upper course 143 °C at 2 min
        // That case is the coldest and windiest hour. Over the whole night the course bears the roller latest in its mildest one.
        var skin = WithStart(110, Place.Skin) with { Shift = ScenarioA.Plan.Shift! with { Date = new DateOnly(2027, 5, 15), Start = new TimeOnly(4, 0) } };
        Assert.True(Ask.Number(WithStart(110, Place.Skin), "course.bears_from", "course:wearing") > Ask.Number(skin, "course.bears_from", "course:wearing"));
        Assert.InRange(Ask.Number(skin, "course.bears_from", "course:wearing", "min"), 4, 9); // the same: skin 110 °C at 5 min
        Assert.Equal(Place.Skin, Ask.Answer(skin, "course.temperature_at_first_pass", "course:wearing").Place);
        Assert.Equal(0, Ask.Number(ScenarioA.Plan, "course.bears_from", "course:wearing"));
        Assert.NotNull(Ask.Answer(WithStart(150, Place.InLoad), "course.bears_from", "course:wearing").Absence);
    }

    [Fact]
    public void Without_the_zone_nothing_is_known()
    {
        var plan = ScenarioA.Plan with
        {
            Rolling = ScenarioA.Plan.Rolling! with { Phases = [new Phase { Id = "initial", Passes = 2, ZoneTo = Metres(27) }] },
        };
        Assert.Equal(["phase:initial/zone_from"], Ask.Missing(PassTimetable.Of(Ask.Context(plan), "wearing").Absent!));
        Assert.Equal(["course:none/"], Ask.Missing(PassTimetable.Of(Ask.Context(plan), "none").Absent!));
    }

    private static Plan WithStart(double celsius, Place place) => ScenarioA.Plan with
    {
        Mixes = [.. ScenarioA.Plan.Mixes.Select(mix => mix with { Start = new PlacedTemperature { Value = C(celsius), Place = place } })],
    };

    private static void Near(double faster, PassValue value) => Assert.InRange(value.Expected, faster - 1, faster + 12);
}

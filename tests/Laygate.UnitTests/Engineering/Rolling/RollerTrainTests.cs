using Laygate.Engineering.Rolling;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Rolling;

/// <summary>Rollers, phases and the train of scenario A, against arithmetic by hand.</summary>
public class RollerTrainTests
{
    [Theory]
    // By hand: 25 m at 4 km/h 22.5/32.5 s, 30 m at 4.5 km/h 24/34 s; six strips each; 0.69 · 66.67/(6 · 2), 0.71 · 75/(6 · 4), 0.74 · 83.3/(6 · 2) m/min.
    [InlineData("r1", 0.69, 6, 3.8)]
    [InlineData("r3", 0.71, 6, 2.21)]
    [InlineData("r5", 0.74, 6, 5.2)] // 40 m at 5 km/h are 28.8 s; 28.8 / 38.8 = 0.742, by hand
    public void Output_of_one_roller(string roller, double efficiency, int strips, double follows)
    {
        var address = $"roller:{roller}";
        Assert.Equal(efficiency, Ask.Number(ScenarioA.Plan, "roller.efficiency", address), 0.006);
        Assert.Equal(strips, Ask.Number(ScenarioA.Plan, "roller.strips", address));
        Assert.Equal(follows, Ask.Number(ScenarioA.Plan, "roller.speed_it_follows", address, "m/min"), 0.06);
    }

    [Fact]
    public void Effective_speed_counts_reversals()
    {
        // By hand: 25 m at 4 km/h are 22.5 s, with 10 s for the reversal 32.5 s: 25 m / 32.5 s = 0.769 m/s = 2.77 km/h.
        Assert.Equal(2.77, Ask.Number(ScenarioA.Plan, "roller.effective_speed", "roller:r1", "km/h"), 0.005);
        Assert.Null(PassTimes.EffectiveSpeed(1.2, 1));
        Assert.Null(PassTimes.EffectiveSpeed(0.7, 0));
    }

    [Theory]
    [InlineData(10, 1.68, 29.2)] // by hand: 5 t x 9.80665 / 1.68 m
    [InlineData(7, 1.50, 22.9)] // 3.5 t x 9.80665 / 1.50 m
    public void Linear_load_of_a_tandem_roller(double tonnes, double drum, double expected)
    {
        var roller = tonnes > 9 ? "roller:r3" : "roller:r1";
        Assert.Equal(drum, Ask.Number(ScenarioA.Plan, "roller.drum_width", roller));
        Assert.Equal(expected, Ask.Number(ScenarioA.Plan, "roller.linear_load", roller, "kN/m"), 0.05);
    }

    [Fact]
    public void Linear_load_of_another_roller_must_be_stated()
    {
        var pneumatic = With(roller => roller with { Kind = RollerKind.ThreeWheel });
        Assert.Equal(["roller:r1/linear_load"], Ask.Missing(Ask.Answer(pneumatic, "roller.linear_load", "roller:r1")));
        var stated = With(roller => roller with { Kind = RollerKind.ThreeWheel, LinearLoad = M<ForcePerLength>(250, "lb/in") });
        Assert.Equal(43.8, Ask.Number(stated, "roller.linear_load", "roller:r1", "kN/m"), 0.05); // derived: 250 lb · 9.80665 N/kg over 25.4 mm
    }

    [Fact]
    public void Vibrated_passes_and_the_temperature_below_them()
    {
        Assert.Equal(0, Ask.Number(ScenarioA.Plan, "roller.passes_vibrated", "roller:r3"));
        Assert.Equal(2, Ask.Number(ScenarioA.Plan, "roller.passes_vibrated", "roller:r4"));
        // R4 vibrates its first two passes, until minute 16.2. Derived with another program, tests/Tools/cooling.py on tests/Tools/scenario-a.yaml: mean of the
        // upper course 122 °C at 10 min and 108 °C at 20 min.
        var answer = Ask.Answer(ScenarioA.Plan, "roller.mid_depth_while_vibrating", "roller:r4");
        Assert.Equal(Place.MidDepth, answer.Place);
        Assert.InRange(Ask.In(answer, "°C"), 108, 130);
        Assert.NotNull(Ask.Answer(ScenarioA.Plan, "roller.mid_depth_while_vibrating", "roller:r3").Absence);
    }

    [Fact]
    public void Phases_against_the_window()
    {
        Assert.Equal(21.92, Ask.Number(ScenarioA.Plan, "phase.zone_passed", "phase:main", "min"), 0.005); // 57 / 2.6
        var window = Ask.Number(ScenarioA.Plan, "course.densification_window", "course:wearing", "min");
        Assert.Equal(2.6 * window, Ask.Number(ScenarioA.Plan, "phase.window_length", "phase:main", "m"), 0.01);
        // Derived with another program, tests/Tools/cooling.py on tests/Tools/scenario-a.yaml: skin 79 °C at 30 min and 71 °C at 40 min with a form that cools faster.
        Assert.InRange(Ask.Number(ScenarioA.Plan, "phase.skin_at_last_pass", "phase:finish", "°C"), 70, 82);
        Assert.True(Ask.Number(ScenarioA.Plan, "phase.skin_at_first_pass", "phase:finish") > Ask.Number(ScenarioA.Plan, "phase.skin_at_last_pass", "phase:finish"));
    }

    [Fact]
    public void The_train_and_the_run()
    {
        Assert.Equal(5, Ask.Number(ScenarioA.Plan, "plan.rollers_working", "plan"));
        Assert.Equal(0, Ask.Number(ScenarioA.Plan, "plan.rubber_tyred_rollers", "plan"));
        Assert.Equal(110, Ask.Number(ScenarioA.Plan, "run.hot_thickness", "run:1", "mm"), 1e-9);
        Assert.Equal(3.17, Ask.Number(ScenarioA.Plan, "course.first_pass", "course:wearing", "min"), 0.005); // middle of 0.769 and 5.577
        Assert.Equal(4.17, Ask.Number(ScenarioA.Plan, "course.first_pass", "course:binder", "min"), 0.005);
    }

    [Fact]
    public void Unusable_times_give_no_pass()
    {
        var minute = Si(1, "min");
        Assert.Equal(3, PassTimes.LatestOf(minute, 5 * minute, 4, 2)!.Value.In("min"), 1e-9); // by hand: 1 + 2 x 4 / 4
        Assert.Null(PassTimes.LatestOf(5 * minute, minute, 4, 2));
        Assert.Null(PassTimes.LatestOf(minute, 5 * minute, 0, 0));
        Assert.Null(PassTimes.LatestOf(minute, 5 * minute, 4, 5));
        Assert.Null(PassTimes.LatestOf(minute, 5 * minute, 1_000_000_000, 1));
    }

    private static Plan With(Func<Roller, Roller> change) => ScenarioA.Plan with
    {
        Rolling = ScenarioA.Plan.Rolling! with { Rollers = [.. ScenarioA.Plan.Rolling.Rollers.Select(change)] },
    };
}

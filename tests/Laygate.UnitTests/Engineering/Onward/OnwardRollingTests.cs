using System.Text;
using Laygate.Engineering.Onward;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Engineering.Onward;

/// <summary>
/// What is left of the rolling without a roller; by hand: zone 30 m, roller 80 m/min, reversal 10 s: 22.5 s under way of 32.5 s, E = 0.692308; strips
/// ⌈(3.5 + 0.2 − 0.15) / 1.85⌉ = 2; one roller follows 0.692308 · 80 / (2 · 4) = 6.923 m/min, two follow 13.846 m/min.
/// </summary>
public sealed class OnwardRollingTests
{
    private const double Planned = 10.0 / 60;

    private const string PlanText = """
        format: 1
        plan: { id: small, stage: concept }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m, density: { compacted: 2.40 t/m3 } }]
        courses: [{ id: c, mix: m, thickness: 40 mm, laid: separately }]
        runs: [{ id: r, courses: [c], paver: p, from: 0 m, to: 1000 m, width: 3.5 m, left_reach: 100 mm, right_reach: 100 mm }]
        pavers: [{ id: p, courses: [c], speed: 10 m/min }]
        rolling:
          reversal: 10 s
          phases: [{ id: main, kind: main, passes: 4, zone_from: 10 m, zone_to: 40 m }]
          rollers:
            - { id: a, kind: tandem, phase: main, speed: 80 m/min, drum_width: 2.0 m, overlap: 150 mm }
            - { id: b, kind: tandem, phase: main, speed: 80 m/min, drum_width: 2.0 m, overlap: 150 mm }
        """;

    // By hand: 4 · 6.923 / 10 = 2.77 passes at 10 m/min, two whole ones; all four up to 6.923 m/min.
    [Fact]
    public void A_roller_less_makes_fewer_passes_at_the_planned_speed()
    {
        var rolled = Rolled("a");
        Assert.Equal(6.923 / 60, rolled.Follows!.Value, 1e-5);
        Assert.Equal(new PhaseLeft("main", true, 4, 1, rolled.Follows, 2), Assert.Single(rolled.Phases));
        Assert.Empty(Rolled().Phases);
    }

    // By hand: at 6.923 m/min the zone lies 1.444 to 5.778 min behind the screed: in 4 min 4 · (4 − 1.444) / 4.333 = 2.36 passes, in 3 min 1.44, in 6 min all four.
    [Theory]
    [InlineData(4, 3, 2, 1)]
    [InlineData(6, 5.8, 4, 4)]
    [InlineData(1, 0.5, 0, 0)]
    public void Passes_within_the_window_are_counted_at_the_speed_that_is_left(double minutes, double low, int expected, int least)
    {
        var (context, rolled) = (Context(), Rolled("a"));
        var windows = new OnwardWindows(context, context.For(rolled.Followed(context.Plan, Planned), withSpread: false), rolled.Phases);
        Assert.Equal(5.778, windows.RolledWithin("c")!.Value / 60, 1e-3);
        Assert.Equal(new PassesInWindow("main", 4, expected, least), Assert.Single(windows.Passes("c", new WindowAt(DateTimeOffset.UnixEpoch, 60 * minutes, 60 * low, 60 * minutes))));
    }

    [Fact]
    public void A_phase_without_a_roller_makes_no_pass()
    {
        var (context, rolled) = (Context(), Rolled("a", "b"));
        Assert.Equal(new PhaseLeft("main", true, 4, 0, 0, 0), Assert.Single(rolled.Phases));
        Assert.Null(rolled.Follows);
        var windows = new OnwardWindows(context, context.For(rolled.Followed(context.Plan, Planned), withSpread: false), rolled.Phases);
        Assert.Equal(0, Assert.Single(windows.Passes("c", new WindowAt(DateTimeOffset.UnixEpoch, 3600, 3600, 3600))).Expected);
    }

    // No event changes nothing.
    [Fact]
    public void Without_a_lost_roller_nothing_is_counted_anew()
    {
        var context = Context();
        Assert.Same(context.Plan, Rolled().Followed(context.Plan, Planned));
        Assert.Empty(new OnwardWindows(context, context, []).Passes("c", new WindowAt(DateTimeOffset.UnixEpoch, 60, 60, 60)));
    }

    private static OnwardRolling Rolled(params string[] lost) => new(Context(), new OnwardEvents { RollersLost = lost }, Planned);

    private static QuantityContext Context() => Ask.Context(PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(PlanText)).Documents[0]).Plan!);
}

using System.Text;
using Laygate.Engineering.Acceptance;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Records;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Engineering.Records;

/// <summary>What a trial length proves.</summary>
public sealed class TrialGrowthTests
{
    private const string PlanText = """
        format: 1
        plan: { id: small, stage: release }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        weather: { hours: [{ at: 2027-05-14T21:00, air: 12 °C, base: 15 °C, wind: 2 m/s }, { at: 2027-05-15T05:00, air: 12 °C, base: 15 °C, wind: 2 m/s }] }
        mixes: [{ id: m, density: { compacted: 2.40 t/m3, reference: laboratory, degree: 97 % } }]
        courses: [{ id: c, mix: m, thickness: 40 mm, tolerance: 4 mm, laid: separately }]
        runs: [{ id: r, courses: [c], paver: p, from: 0 m, to: 1000 m, width: 7.5 m }]
        pavers: [{ id: p, courses: [c], speed: 4 m/min }]
        rolling: { phases: [{ id: initial, kind: initial, passes: 2 }, { id: main, kind: main, passes: 2 }], rollers: [{ id: r1, phase: initial }, { id: r2, phase: main }] }
        """;

    private static readonly DateTimeOffset Start = new(2027, 4, 29, 10, 0, 0, TimeSpan.FromHours(2));

    // Derived: gains 52, 36, 20, 8 and −5 kg/m³; the first below 16 is that of pass 5, so that four passes are proven; the greatest density is after pass 5, and a fall of 5 is within what a gauge does not repeat.
    [Fact]
    public void The_pattern_is_the_last_pass_that_was_worth_it()
    {
        var curve = GrowthCurve.Of([2210, 2262, 2298, 2318, 2326, 2321], 16, null, 8)!;
        Assert.Equal([52, 36, 20, 8, -5], curve.Gains);
        Assert.Equal((4, 5), (curve.Pattern, curve.Peak));
        Assert.Empty(curve.Losses);
    }

    // "Rhythm of the rollers", a trade magazine, page 5 (read): 89.20, 91.80, 93.50 and 89.30 % after passes 1 to 4 where 93 % is needed: three passes, and the fourth loses.
    [Fact]
    public void A_pass_after_the_peak_that_loses_density_is_named()
    {
        var curve = GrowthCurve.Of([89.20, 91.80, 93.50, 89.30], 1, 93, 0.5)!;
        Assert.Equal((3, 3), (curve.Pattern, curve.Peak));
        Assert.Equal([4], curve.Losses);
        Assert.Equal([2.6, 1.7, -4.2], curve.Gains.Select(gain => Math.Round(gain, 6)));
    }

    [Fact]
    public void Nothing_is_proven_without_a_pass_more_or_below_the_target()
    {
        Assert.Null(GrowthCurve.Of([2210, 2262, 2298], 16, null, 8)!.Pattern);
        Assert.Null(GrowthCurve.Of([2210, 2262, 2265], 16, 2400, 8)!.Pattern);
        Assert.Null(GrowthCurve.Of([], 16, null, 8));
    }

    // By hand: two places; means after passes 1 to 4 are 2205, 2305, 2335 and 2340 kg/m³ as the gauge shows them, and cores say 20 more. The target is 97 % of 2400 = 2328, reached by pass 2 less 3 (2325) not yet, by pass 3 (2355); pass 4 gains 5.
    [Fact]
    public void Densities_get_the_offset_of_the_gauge_before_they_are_held_against_the_target()
    {
        var found = Of(Record());
        Assert.Equal([2225, 2325, 2355, 2360], found.Passes.Select(pass => pass.Density));
        Assert.Equal((20, 2400, 2328), (found.Offset!.Offset, found.Reference, Math.Round(found.Target!.Value, 6)));
        Assert.Equal(3, found.Curve!.Pattern);
        Assert.Equal(["initial", "initial", "main", "main"], found.Passes.Select(pass => pass.Phase), StringComparer.Ordinal);
    }

    [Fact]
    public void A_warmer_trial_with_another_mix_does_not_speak_for_the_plan()
    {
        bool? Covers(ShiftRecord record, TrialLikeness kind) => Of(record).Covers.Single(cover => cover.Kind == kind).Covers;
        Assert.All(Of(Record()).Covers, cover => Assert.True(cover.Covers, cover.Kind.ToString()));
        Assert.False(Covers(Record() with { Weather = [Weather(16)] }, TrialLikeness.Air));
        Assert.False(Covers(Record() with { Loads = [Load("other")] }, TrialLikeness.Mix));
        Assert.Null(Covers(Record() with { Loads = [] }, TrialLikeness.Mix));
        Assert.False(Covers(Record() with { Cores = [.. Record().Cores.Select(core => core with { Thickness = [0.060] })] }, TrialLikeness.Thickness));
        Assert.False(Covers(Record() with { Passes = [.. Record().Passes.Select(pass => pass with { Roller = "r1" })] }, TrialLikeness.Rollers));
    }

    private static ShiftRecord Record() => new()
    {
        Passes = [.. Place(10, -5), .. Place(30, 5)],
        Cores = [new Core(Row, "1") { Bulk = 2360, Reference = 2400, Thickness = [0.040], Course = "c" }, new Core(Row, "2") { Bulk = 2361, Reference = 2400, Thickness = [0.041], Course = "c" }],
        Gauges = [new GaugeReading(Row, "1", 2340) { Core = "1", Course = "c" }, new GaugeReading(Row, "2", 2341) { Core = "2", Course = "c" }],
        Weather = [Weather(10)],
        Loads = [Load("m")],
        Uncertainty = new(null, null, null, null) { Thickness = 0.0005 },
    };

    private static RowPlace Row => new("rows.csv", 2);

    private static IEnumerable<PassReading> Place(double station, double more) => new[] { ("r1", 2205), ("r1", 2305), ("r2", 2335), ("r2", 2340) }
        .Select((pass, index) => new PassReading(Row, Start.AddMinutes(index + station), pass.Item1) { Station = station, Pass = index + 1, Density = pass.Item2 + more });

    private static WeatherReading Weather(double air) => new(Row, Start) { Air = air, Surface = 14, Wind = 3 };

    private static Load Load(string mix) => new(Row, "1", 25_000) { Mix = mix };

    private static TrialGrowth Of(ShiftRecord record)
    {
        var plan = PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(PlanText)).Documents[0]).Plan!;
        var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), seed: 1) { IsQuick = true };
        return TrialGrowth.Of(new HappenedShift(context, record), plan.Courses[0], 16, 8);
    }
}

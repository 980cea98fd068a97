using System.Text;
using Laygate.Checking;
using Laygate.Checking.Sizing;
using Laygate.Engineering.Assumptions;
using Laygate.Reading.Parts;
using Laygate.Reporting.Sizing;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Sizing;

/// <summary>First sizings: against published and derived examples, and against what a check finds in the same plan.</summary>
public sealed class SizingTests
{
    private static readonly PlanTools Tools = new();

    // AAPA, Work Tip 31, Asphalt paving speed, November 2001 (read): a strip of 3.7 m, 40 mm thick, 2.40 t/m3, takes 100 t/h at 4.7 m/min; at 4.692 m/min by
    // R = v · W · t · d · 60 / 1000. A roller 1.68 m wide at 4 km/h with 4 passes and an efficiency of 0.8 follows 0.8 · 66.7 / (3 · 4) = 4.44 m/min: two are needed
    // (derived; efficiency 0.8 from 10 s for a reversal and 44.4 m of zone, 40 s at 66.7 m/min).
    private const string Strip = """
        format: 1
        plan: { id: strip, stage: concept }
        mixes: [{ id: ac, kind: asphalt-concrete, density: { compacted: 2.40 t/m3 } }]
        courses: [{ id: surface, mix: ac, thickness: 40 mm, laid: separately }]
        runs: [{ id: lane, from: 0 m, to: 1000 m, width: 3.7 m }]
        pavers: [{ id: p, speed: 4.692 m/min, availability: 100 % }]
        rolling: { reversal: 10 s, phases: [{ id: main, kind: main, passes: 4, zone_from: 0 m, zone_to: 44.44 m }] }
        supply: { trucks: [{ id: t, mix: ac, count: 1, payload: 20 t, loading: 4 min, ticket: 4 min, haul_out: 20 min, haul_back: 18 min, wait: 0 min, cleaning: 0 min }] }
        """;

    [Fact]
    public void Tonnes_an_hour_trucks_and_rollers_are_those_of_worked_examples()
    {
        var lines = Size(Strip).Lines;
        Assert.Equal(100.0, Of(lines, "course.demand").Value.Number!.Value, 0.1);
        // By hand: 3.7 m · 1000 m · 40 mm · 2.40 t/m3 = 355.2 t.
        Assert.Equal(355.2, Of(lines, "course.tonnage_computed").Value.Number!.Value, 0.01);
        // By hand, NAPA handbook 6.2 (rounding rule read): the round is 4 + 4 + 20 + 18 + 1.5 min of exchange (judgement) and 20 t at 100 t/h = 12 min, together
        // 59.5 min; 100 · 59.5 / 60 / 20 = 4.96, rounded up 5.
        Assert.Equal(59.5, Of(lines, "trucks.cycle").Value.Number!.Value, 0.1);
        Assert.Equal(5, Of(lines, "trucks.minimum_count").Value.Number);
        Assert.Equal(2, lines.Single(line => line.Kind == SizedKind.Rollers).Value.Number);
        // By hand: 1000 m at 4.692 m/min take 213 min; six usual hours lay 4.692 · 360 = 1689 m.
        Assert.Equal(1689, lines.Single(line => line.Kind == SizedKind.LengthPerShift).Value.Number!.Value, 1.0);
    }

    [Theory]
    [InlineDataOfFullRun("examples/county-route-us.yaml", 5)]
    [InlineData("examples/quay-road-hot-on-hot.yaml", 8)]
    [InlineData("examples/concept-fifteen-lines.yaml", 0)]
    public void A_figure_that_a_check_shows_is_the_same_here(string path, int least)
    {
        var parts = new Repository.PartsOfRepository();
        var sized = Sizer().Size(path, Repository.Bytes(path), parts, []).Plans[0];
        var settings = new CheckSettings(null, new DateOnly(2026, 11, 29), "1") { Parts = parts };
        var findings = new PlanCheck(Repository.Bound(), settings).Run(path, Repository.Bytes(path)).Reports[0].Findings;
        // What rests on usual values stands in no check.
        var lines = sized.Lines.Where(line => line.Kind is SizedKind.Quantity or SizedKind.InWeather && !sized.Usual.Any(usual => usual.Id is not null && string.Equals(usual.Id, line.Driver, StringComparison.Ordinal))).ToList();
        var values = findings.Where(finding => finding.Value?.Number is not null).ToLookup(finding => (finding.Quantity, finding.Address), finding => finding.Value!.Number!.Value);
        // Limits that are quantities: the fewest trucks, the speed that rollers follow, the window.
        var limits = findings.Where(finding => finding.Limit is { Quantity: not null } limit && (limit.Low ?? limit.High)?.Number is not null)
            .ToLookup(finding => (finding.Limit!.Quantity!, finding.Address), finding => (finding.Limit!.Low ?? finding.Limit.High)!.Number!.Value / (finding.Limit.Factor ?? 1));
        var pairs = lines.SelectMany(line => values[(line.Quantity, line.Address)].Concat(limits[(line.Quantity, line.Address)]).Select(shown => (Shown: shown, Sized: line.Value.Number!.Value))).ToList();
        Assert.All(pairs, pair => Assert.Equal(pair.Shown, pair.Sized, 1e-6 * Math.Abs(pair.Shown)));
        Assert.InRange(pairs.Count, least, int.MaxValue);
    }

    [Fact]
    public void What_a_plan_states_is_never_replaced()
    {
        var sized = Sizer().Size("a.yaml", File.ReadAllBytes(Path.Combine(SourceTree.Root, "examples/county-route-us.yaml")), new NoPartFiles(), []).Plans[0];
        Assert.Empty(sized.Usual);
        Assert.DoesNotContain(sized.Lines, line => line.Kind is SizedKind.Rollers);
    }

    [Fact]
    public void Every_usual_value_is_listed_with_source_and_evidence_and_lies_within_its_range()
    {
        var sized = Size("format: 1\nplan: { id: a, stage: concept }\ncourses: [{ id: s, mix: m, thickness: 40 mm }]\nruns: [{ id: r, from: 0 m, to: 900 m, width: 3.6 m }]\n");
        Assert.Contains(sized.Usual, usual => usual.Id is SizingAssumptions.Haul);
        Assert.All(sized.Usual, usual => Assert.NotEmpty(usual.Source));
        Assert.All(sized.Usual.Where(usual => usual.Value.Number is not null), usual => Assert.InRange(usual.Value.Number!.Value, usual.Value.Low!.Value, usual.Value.High!.Value));
        Assert.All(sized.Lines, line => Assert.InRange(line.Value.Number!.Value, line.Value.Low!.Value, line.Value.High!.Value));
        Assert.Equal("haul_out", Of(sized.Lines, "trucks.minimum_count").State!.Split('.')[^1]);
        Assert.InRange(SizingLines.Lines("a.yaml", sized, 80, full: false).Count, 15, 40);
    }

    [Fact]
    public void A_colder_surface_never_gives_a_longer_window_and_a_thicker_course_never_a_shorter_one()
    {
        var thin = Windows(Strip);
        var thick = Windows(Strip.Replace("40 mm", "60 mm", StringComparison.Ordinal));
        Assert.Equal(3, thin.Count);
        Assert.Equal(thin.Order(), thin);
        Assert.All(thin.Zip(thick), pair => Assert.True(pair.Second > pair.First));
    }

    // A cold, a cool and a mild night of the laying season: judgement, as at the constants of the sizer.
    [Theory]
    [InlineData("40 mm", "5 °C, 10 °C, 20 °C")]
    [InlineData("1.5 in", "40 °F, 50 °F, 70 °F")]
    public void Without_weather_the_window_is_shown_for_three_nights_in_the_units_of_the_plan(string thickness, string nights)
    {
        var lines = Size(Strip.Replace("40 mm", thickness, StringComparison.Ordinal)).Lines.Where(line => line.Kind == SizedKind.InWeather);
        Assert.Equal(nights, string.Join(", ", lines.Select(line => $"{line.Air!.Number} {line.Air.Unit}")));
    }

    // Without a temperature of its own a course is laid as its mix is delivered; that of another mix says nothing of it.
    [Theory]
    [InlineData("delivery: { lowest: 140 °C, highest: 165 °C, place: in-load }", "", false)]
    [InlineData("", "delivery: { lowest: 140 °C, highest: 165 °C, place: in-load }", true)]
    public void A_usual_temperature_of_laying_stands_in_only_where_the_mix_of_the_course_states_no_delivery(string own, string other, bool usual)
    {
        var sized = Size($"format: 1\nplan: {{ id: a, stage: concept }}\nmixes: [{{ id: n, kind: asphalt-concrete, {other} }}, {{ id: m, kind: asphalt-concrete, {own} }}]\ncourses: [{{ id: s, mix: m, thickness: 40 mm }}]\nruns: [{{ id: r, from: 0 m, to: 900 m, width: 3.6 m }}]\n".Replace(",  }", " }", StringComparison.Ordinal));
        Assert.Equal(usual, sized.Usual.Any(one => one.Id is SizingAssumptions.LayingTemperature));
    }

    // The means are invented; November's is below, October's above what the rule asks of the surface below this course (WEA-001).
    [Fact]
    public void The_latest_month_is_the_last_before_a_limit_is_missed()
    {
        double[] means = [-2, 0, 4, 9, 14, 17, 19, 18, 14, 9, 4, 0];
        var latest = Sizer().Size("strip.yaml", Encoding.UTF8.GetBytes(Strip), new NoPartFiles(), [.. means.Select(mean => new SizingWeather(mean, "°C"))]).Plans[0].Months!;
        Assert.Equal((10, "WEA-001"), (latest.Month, latest.Rule));
        Assert.Null(Size(Strip).Months);
    }

    [Fact]
    public void Without_strips_it_says_what_to_state() =>
        Assert.Contains(Size("format: 1\nplan: { id: a, stage: concept }\ncourses: [{ id: s, mix: m, thickness: 40 mm }]\n").Missing, missing => missing.Key is "runs");

    private static PlanSizer Sizer() => new(Tools, Repository.Bound());

    private static PlanSizing Size(string text)
    {
        var result = Sizer().Size("a.yaml", Encoding.UTF8.GetBytes(text), new NoPartFiles(), []);
        Assert.Empty(result.Problems);
        return result.Plans[0];
    }

    private static List<double> Windows(string text) => [.. Size(text).Lines.Where(line => line.Kind == SizedKind.InWeather).Select(line => line.Value.Number!.Value)];

    private static SizedLine Of(IReadOnlyList<SizedLine> lines, string quantity) => lines.Single(line => string.Equals(line.Quantity, quantity, StringComparison.Ordinal));
}

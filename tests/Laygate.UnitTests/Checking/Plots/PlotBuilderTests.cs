using System.Text;
using Laygate.Checking.Plots;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Rules.Results;
using Laygate.UnitTests.Engineering;

namespace Laygate.UnitTests.Checking.Plots;

/// <summary>What plots are drawn from stands in the units of the plan and at its times. The plans are invented.</summary>
public sealed class PlotBuilderTests
{
    [Theory]
    [InlineData("40 mm", "0 m", "200 m", "3 m", "m", 200)]
    [InlineData("1.5 in", "0 ft", "600 ft", "12 ft", "ft", 600)]
    public void Runs_from_above_are_drawn_in_the_units_of_the_plan(string thickness, string from, string to, string width, string unit, double length)
    {
        var layout = Plots($"courses: [{{ id: c, mix: m, thickness: {thickness} }}]\nruns: [{{ id: r, from: {from}, to: {to}, width: {width} }}]\n").Layout!;
        Assert.Equal(unit, layout.Unit);
        Assert.Equal(length, Assert.Single(layout.Runs).To, 1e-6);
    }

    // The paver begins at 21:00; its break of 20 min comes an hour later.
    [Fact]
    public void A_planned_stop_stands_where_the_plan_has_it()
    {
        var buffers = Plots("""
            shift: { date: 2027-05-14, start: "21:00", end: "05:00", zone: +02:00 }
            mixes: [{ id: m, kind: asphalt-concrete, density: { compacted: 2.40 t/m3 } }]
            courses: [{ id: c, mix: m, thickness: 40 mm, laid: separately }]
            runs: [{ id: r, courses: [c], paver: p, from: 0 m, to: 600 m, width: 4 m }]
            pavers: [{ id: p, courses: [c], carried_by: base, speed: 4 m/min, buffers: [{ course: c, capacity: 15 t, lowest: 3 t }], stops: [{ id: meal, after: 60 min, length: 20 min }] }]
            supply:
              plants: [{ id: a, mixes: [m], nameplate: 200 t/h, planned: 160 t/h }]
              trucks: [{ id: t, plant: a, mix: m, count: 8, payload: 20 t, loading: 4 min, ticket: 2 min, haul_out: 20 min, haul_back: 18 min, wait: 2 min, cleaning: 1 min, loads_before_start: 2 }]
            """).Buffers;
        Assert.NotNull(buffers);
        var stop = Assert.Single(buffers.Stops);
        Assert.Equal(("planned stop", 60.0, 80.0), (stop.Name, Math.Round(stop.From, 6), Math.Round(stop.To, 6)));
        Assert.Equal("t", buffers.Unit);
        Assert.Equal(buffers.Minutes.Order(), buffers.Minutes);
    }

    private static PlanPlots Plots(string plan)
    {
        var read = new PlanReader().Read("p.yaml", Encoding.UTF8.GetBytes("format: 1\nplan: { id: p, stage: submission }\n" + plan), new NoPartFiles());
        Assert.True(read.Problems.Count == 0, string.Join('\n', read.Problems.Select(problem => $"{problem.Position?.Line} {problem.Message}")));
        var plots = PlotBuilder.Of(Ask.Context(read.Plans[0].Plan));
        return plots;
    }
}

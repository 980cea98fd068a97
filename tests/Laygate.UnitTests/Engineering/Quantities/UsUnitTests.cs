using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Quantities;

/// <summary>A lane in US units, invented. Source: derived by hand: 2 in · 147 lb/ft3 · 9/12 = 220.5 lb/yd2; 12 ft · 12,672 ft · 220.5/9/2000 = 1,863 short tons;
/// 26 ft/min · 60 · 12/9 · 220.5/2000 = 229 short tons an hour, 208 t/h; 3000/(88 · 3) = 11.4 impacts a foot.</summary>
public class UsUnitTests
{
    private static readonly Plan Plan = Small.Plan with
    {
        Mixes =
        [
            Small.Mix with
            {
                AggregateSize = new AggregateSize { Sieve = Sieve.Find("1/2 in")!, Basis = SizeBasis.NominalMaximum },
                Density = new MixDensity { Compacted = M<Density>(147, "lb/ft3") },
            },
        ],
        Courses = [Small.Course with { Thickness = M<Length>(2, "in") }],
        Runs = [new Run { Id = "1", From = M<Length>(0, "ft"), To = M<Length>(12672, "ft"), Width = M<Length>(12, "ft") }],
        Pavers = [new Paver { Id = "p", Speed = M<Speed>(26, "ft/min") }],
        Supply = new Laygate.Model.Plans.Supply
        {
            Trucks = [new TruckGroup { Id = "t", Mix = "m", Payload = M<Mass>(20, "short ton"), HaulOut = Min(28), HaulBack = Min(25) }],
        },
        Rolling = new Laygate.Model.Plans.Rolling
        {
            Rollers = [new Roller { Id = "r", Speed = M<Speed>(3, "mph"), Frequency = M<Frequency>(3000, "vpm") }],
        },
    };

    [Theory]
    [InlineData("course.thickness_to_size", "course:c", "", 4, 1e-12)]
    [InlineData("course.spread", "course:c", "lb/yd2", 220.5, 1e-6)]
    [InlineData("course.tonnage_computed", "course:c", "short ton", 1863, 0.5)]
    [InlineData("course.demand", "course:c", "short ton/h", 229, 0.5)]
    [InlineData("course.demand", "course:c", "t/h", 208, 0.5)]
    [InlineData("run.length", "run:1", "mi", 2.40, 1e-9)]
    [InlineData("roller.impact_spacing", "roller:r", "in", 12 / 11.4, 0.005)]
    public void Figures_of_the_scenario(string quantity, string address, string unit, double expected, double within) =>
        Assert.Equal(expected, Ask.Number(Plan, quantity, address, unit), within);

    [Fact]
    public void Computed_values_are_shown_in_units_of_the_plan()
    {
        var context = Ask.Context(Plan);
        Assert.Equal("short ton/h", context.UnitOf(context.Catalogue.Find("course.demand")!)!.Spelling);
        var working = context.Get("course.demand", context.Elements.Find("course:c")!).Working;
        Assert.Equal("short ton/h", working.Steps[^1].Unit);
        Assert.Equal("ft in lb/ft3 ft/min", string.Join(' ', working.Inputs.Select(input => input.Unit)));
    }

    [Fact]
    public void Without_a_feeder_discharge_follows_the_paver()
    {
        // 20 tons at 229 tons/h are 5.24 min; loading 5, ticket 4, wait 5, exchange 1.5, cleaning 3 min are assumed.
        var answer = Ask.Answer(Plan, "trucks.cycle", "trucks:t");
        Assert.Equal(28 + 25 + 5.24 + 5 + 4 + 5 + 1.5 + 3, Ask.In(answer, "min"), 0.01);
        Assert.True(answer.RestsOnWeakAssumption);
        var band = (NumberValue)answer.Value!;
        Assert.Equal(28 + 25 + 5.24 + 3 + 2 + 0 + 1.5 + 0, band.Low!.Value / 60, 0.02);
        Assert.Equal(28 + 25 + 5.24 + 10 + 8 + 20 + 1.5 + 6, band.High!.Value / 60, 0.02);
    }
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Quantities;

public class MissingInputTests
{
    [Theory]
    [InlineData("course.thickness_to_size", "course:c", "mix:m/aggregate_size")]
    [InlineData("course.thickness_lowest", "course:c", "course:c/thickness_lowest")]
    [InlineData("course.thickness_lowest_to_size", "course:c", "course:c/thickness_lowest mix:m/aggregate_size")]
    [InlineData("course.demand", "course:c", "plan/runs plan/pavers")]
    [InlineData("course.tolerance_margin", "course:c", "course:c/tolerance course:c/thickness_lowest")]
    [InlineData("course.densification_window", "course:c", "course:c/laying_temperature.expected existing/surface weather/envelope.air_lowest weather/envelope.base_lowest weather/envelope.wind_highest")]
    [InlineData("course.last_densifying_pass", "course:c", "plan/rolling.phases")]
    [InlineData("course.supply", "course:c", "supply/plants")]
    [InlineData("shift.duration", "shift", "shift/date shift/start shift/end")]
    [InlineData("shift.laying_start", "shift", "shift/date shift/start")]
    [InlineData("weather.air_lowest", "weather", "weather/envelope.air_lowest")]
    [InlineData("opening.soft_until", "opening", "opening/below.value course:c/laying_temperature.expected existing/surface weather/envelope.air_lowest weather/envelope.base_lowest weather/envelope.wind_highest")]
    [InlineData("early-friction.grit", "early-friction", "early-friction/grit")]
    public void All_missing_inputs_are_named_together(string quantity, string address, string missing) =>
        Assert.Equal(missing, string.Join(' ', Ask.Missing(Ask.Answer(Small.Plan, quantity, address))));

    [Fact]
    public void A_mix_that_is_named_but_not_listed_is_asked_for_by_its_address()
    {
        var context = Ask.Context(Small.Plan with { Mixes = [] });
        var answer = context.Get("mix.kind", context.Elements.Find("course:c")!);
        Assert.Equal(["mix:m/"], Ask.Missing(answer));
    }

    [Fact]
    public void Cycle_asks_for_both_journeys_the_payload_and_the_feeder_rate_at_once()
    {
        var plan = Small.Plan with
        {
            Supply = new Laygate.Model.Plans.Supply { Trucks = [new TruckGroup { Id = "t", Mix = "m" }], Feeder = new Feeder { Id = "f" } },
        };
        Assert.Equal(
            ["trucks:t/haul_out", "trucks:t/payload", "feeder:f/rate", "trucks:t/haul_back"], Ask.Missing(Ask.Answer(plan, "trucks.cycle", "trucks:t")));
    }

    [Fact]
    public void A_maximum_size_needs_a_person()
    {
        var plan = Small.Plan with { Mixes = [Small.Mix with { AggregateSize = new AggregateSize { Sieve = Sieve.Find("16 mm")!, Basis = SizeBasis.Maximum } }] };
        var absence = Ask.Answer(plan, "course.thickness_to_size", "course:c").Absence!;
        Assert.Equal((AbsenceReason.NeedsPerson, NoteIds.SizeBasisMaximum), (absence.Reason, absence.Note!.Id));
    }

    [Fact]
    public void Values_that_do_not_go_into_a_formula_are_said_so()
    {
        var plan = ScenarioA.Plan with { Pavers = [ScenarioA.Plan.Pavers[0] with { Speed = M<Speed>(0, "m/min") }] };
        var absence = Ask.Answer(plan, "course.demand", "course:binder").Absence!;
        Assert.Equal((AbsenceReason.OutsideRange, NoteIds.OutsideFormula), (absence.Reason, absence.Note!.Id));
    }

    [Fact]
    public void Density_by_kind_is_assumed_and_says_what_it_stands_for()
    {
        var answer = Ask.Answer(Small.Plan, "course.spread", "course:c");
        Assert.Equal(Origin.Assumed, answer.Origin);
        var use = Assert.Single(answer.Working.Assumptions);
        Assert.Equal(new InputReference("mix:m", "density.compacted"), use.StandsFor);
        Assert.False(answer.RestsOnWeakAssumption); // the manual was read
        // By hand: 146 lb/ft3 (NAVEDTRA 14080 p. 8-31, read) = 2339 kg/m³, times 0.040 m.
        Assert.Equal(93.56, Ask.In(answer, "kg/m2"), 0.01);
    }
}

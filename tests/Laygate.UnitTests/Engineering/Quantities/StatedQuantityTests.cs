using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;
using PlanOpening = Laygate.Model.Plans.Opening;
using PlanWeather = Laygate.Model.Plans.Weather;

namespace Laygate.UnitTests.Engineering.Quantities;

/// <summary>Quantities that specifications speak in: they repeat what the plan states, in the terms of the specification.</summary>
public class StatedQuantityTests
{
    private static readonly BondCoat Coat = new() { Id = "t", Below = "c", Applied = true, Basis = RateBasis.Sprayed, Residue = M<Ratio>(60, "%") };

    [Fact]
    public void Mix_names_its_designation_and_sieve()
    {
        var plan = With(Small.Mix with { Name = "SMA 8 S", AggregateSize = new AggregateSize { Sieve = Sieve.Find("1/2 in")!, Basis = SizeBasis.NominalMaximum } });
        Assert.Equal(new CategoryValue("SMA 8 S"), Ask.Answer(plan, "mix.name", "mix:m").Value);
        Assert.Equal(new CategoryValue("1/2 in"), Ask.Answer(plan, "mix.sieve", "mix:m").Value);
        Assert.Equal(["mix:m/name"], Ask.Missing(Ask.Answer(Small.Plan, "mix.name", "mix:m")));
    }

    [Fact]
    public void A_degree_without_its_reference_is_thin()
    {
        var plan = With(Small.Mix with { Density = new MixDensity { Degree = M<Ratio>(98, "%") } });
        Assert.Equal(PresenceLevel.Thin, ((PresenceValue)Ask.Answer(plan, "mix.degree_stated", "mix:m").Value!).Level);
        // By hand: 98 % are 0.98.
        Assert.Equal(0.98, Ask.Number(plan, "mix.degree", "mix:m"), 1e-12);
        Assert.Equal(["mix:m/density.reference"], Ask.Missing(Ask.Answer(plan, "mix.density_reference", "mix:m")));
    }

    [Fact]
    public void Mix_states_target_delivery_and_refusal()
    {
        var plan = With(Small.Mix with
        {
            Loading = new TemperatureBand { Expected = C(165), Place = Place.InLoad },
            Delivery = new TemperatureBand { Expected = C(160), Place = Place.InLoad },
            RefuseBelow = new PlacedTemperature { Value = C(150) },
        });
        Assert.Equal(165, Ask.Number(plan, "mix.loading_expected", "mix:m", "°C"));
        Assert.Equal(160, Ask.Number(plan, "mix.delivery_expected", "mix:m", "°C"));
        Assert.Equal(PresenceLevel.Thin, ((PresenceValue)Ask.Answer(plan, "mix.refusal_stated", "mix:m").Value!).Level);
    }

    [Theory]
    [InlineData("bond-coat.sprayed_rate", "kg/m2", 0.4)]
    [InlineData("bond-coat.sprayed_volume", "L/m2", 0.4)]
    [InlineData("bond-coat.residual_volume", "L/m2", 0.24)]
    public void A_sprayed_mass_is_read_in_the_terms_of_the_specification(string quantity, string unit, double expected)
    {
        // By hand, at 1.0 kg/L, the listed assumption: kg/m2 and L/m2 are the same number; 60 % of it stays.
        var plan = Small.Plan with { BondCoats = [Coat with { Rate = M<AreaDensity>(0.4, "kg/m2") }] };
        Assert.Equal(expected, Ask.Number(plan, quantity, "bond-coat:t", unit), 1e-9);
    }

    // By hand: 0.06 gal/yd2 left of 60 % are 0.10 sprayed.
    [Theory]
    [InlineData("bond-coat.sprayed_volume", "gal/yd2", 0.10)]
    [InlineData("bond-coat.residual_volume", "gal/yd2", 0.06)]
    public void A_residual_volume_is_turned_back_into_what_is_sprayed(string quantity, string unit, double expected)
    {
        var plan = Small.Plan with { BondCoats = [Coat with { Rate = M<FilmThickness>(0.06, "gal/yd2"), Basis = RateBasis.Residual }] };
        Assert.Equal(expected, Ask.Number(plan, quantity, "bond-coat:t", unit), 1e-9);
    }

    [Fact]
    public void A_rate_without_its_basis_is_no_rate()
    {
        var plan = Small.Plan with { BondCoats = [Coat with { Rate = M<AreaDensity>(0.4, "kg/m2"), Basis = null }] };
        Assert.Equal(["bond-coat:t/basis"], Ask.Missing(Ask.Answer(plan, "bond-coat.sprayed_rate", "bond-coat:t")));
    }

    [Fact]
    public void The_fastest_paver_and_the_longest_haul_count()
    {
        var plan = Small.Plan with
        {
            Pavers = [new Paver { Id = "a", Speed = M<Speed>(3, "m/min") }, new Paver { Id = "b", Speed = M<Speed>(5, "m/min") }],
            Runs = [new Run { Id = "1", Paver = "a" }, new Run { Id = "2", Paver = "b" }],
            Supply = new Laygate.Model.Plans.Supply { Trucks = [new TruckGroup { Id = "x", Mix = "m", HaulOut = Min(30) }, new TruckGroup { Id = "y", Mix = "m", HaulOut = Min(75) }] },
        };
        Assert.Equal(5, Ask.Number(plan, "course.paver_speed", "course:c", "m/min"), 1e-9);
        Assert.Equal(75, Ask.Number(plan, "course.haul_longest", "course:c", "min"), 1e-9);
    }

    [Fact]
    public void A_machine_that_says_nothing_is_not_passed_over()
    {
        var plan = Small.Plan with { Supply = new Laygate.Model.Plans.Supply { Trucks = [new TruckGroup { Id = "x", Mix = "m", HaulOut = Min(30) }, new TruckGroup { Id = "y", Mix = "m" }] } };
        Assert.Equal(["trucks:y/haul_out"], Ask.Missing(Ask.Answer(plan, "course.haul_longest", "course:c")));
        Assert.Equal(["plan/pavers"], Ask.Missing(Ask.Answer(plan, "course.paver_speed", "course:c")));
    }

    [Fact]
    public void Course_states_its_density_behind_the_screed()
    {
        var plan = Small.Plan with { Courses = [Small.Course with { DensityBehindScreed = new DensityBehindScreed { Value = M<Ratio>(91, "%"), Evidence = DensityEvidence.Trial } }] };
        // By hand: 91 % are 0.91.
        Assert.Equal(0.91, Ask.Number(plan, "course.density_behind_screed", "course:c"), 1e-12);
        Assert.Equal(new CategoryValue("trial"), Ask.Answer(plan, "course.density_behind_screed_evidence", "course:c").Value);
    }

    [Fact]
    public void Grit_opening_and_forecast_are_read()
    {
        var plan = Small.Plan with
        {
            EarlyFriction = new EarlyFriction { Grit = true, GritSize = "1/3 mm", Rate = M<AreaDensity>(0.8, "kg/m2") },
            Opening = new PlanOpening { ReleasedBy = "client's engineer" },
            Weather = new PlanWeather { Source = "state weather service" },
        };
        Assert.Equal(new CategoryValue("1/3 mm"), Ask.Answer(plan, "early-friction.grit_size", "early-friction").Value);
        Assert.Equal(0.8, Ask.Number(plan, "early-friction.rate", "early-friction", "kg/m2"), 1e-12);
        Assert.Equal(PresenceLevel.Stated, ((PresenceValue)Ask.Answer(plan, "opening.released_by", "opening").Value!).Level);
        Assert.Equal(PresenceLevel.Thin, ((PresenceValue)Ask.Answer(plan, "weather.forecast", "weather").Value!).Level);
        Assert.Equal(PresenceLevel.Absent, ((PresenceValue)Ask.Answer(plan, "weather.by_hour", "weather").Value!).Level);
        Assert.Equal(PresenceLevel.Stated, ((PresenceValue)Ask.Answer(ScenarioA.Plan, "weather.by_hour", "weather").Value!).Level);
    }

    private static Plan With(Mix mix) => Small.Plan with { Mixes = [mix] };
}

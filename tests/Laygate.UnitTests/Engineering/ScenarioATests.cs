namespace Laygate.UnitTests.Engineering;

/// <summary>What follows from the stated figures of scenario A. Source: derived by hand from the plan in <see cref="ScenarioA"/>: mass = area · thickness · density, demand = speed · width · spread, a round = the sum of its
/// parts, trucks = round/interval rounded up, feeder and buffers by the time balance of TwoMixFeedingTests, rollers by strips, reversals and zone/paver speed.</summary>
public class ScenarioATests
{
    [Theory]
    [InlineData("course.thickness_lowest_to_size", "course:binder", "", 78.0 / 16, 0.001)]
    [InlineData("course.thickness_to_size", "course:binder", "", 5.3, 0.02)]
    [InlineData("course.thickness_to_size", "course:wearing", "", 3.1, 0.03)]
    [InlineData("course.spread", "course:binder", "kg/m2", 209.1, 0.05)]
    [InlineData("course.spread", "course:wearing", "kg/m2", 59.5, 0.05)]
    [InlineData("course.demand", "course:binder", "t/h", 261, 0.5)]
    [InlineData("course.demand", "course:binder", "t/min", 4.35, 0.005)]
    [InlineData("course.demand", "course:wearing", "t/h", 74.3, 0.1)]
    [InlineData("feeder.demand", "feeder:f1", "t/h", 335, 0.5)]
    [InlineData("course.tonnage_computed", "course:binder", "t", 1756, 1)]
    [InlineData("course.tonnage_computed", "course:wearing", "t", 500, 1)]
    [InlineData("trucks.cycle", "trucks:big", "min", 75.7, 0.05)]
    [InlineData("trucks.cycle", "trucks:small", "min", 98.1, 0.05)]
    [InlineData("trucks.minimum_count", "trucks:big", "", 14, 0)]
    [InlineData("trucks.minimum_count", "trucks:small", "", 8, 0)]
    [InlineData("trucks.necessary_count", "trucks:big", "", 12, 0)] // 67.7 min without the wait / 5.75 min = 11.8
    [InlineData("trucks.necessary_count", "trucks:small", "", 7, 0)] // 88.1 min / 12.9 min = 6.8
    [InlineData("plant.loading_use", "plant:a", "", 5 / 5.75, 0.002)]
    [InlineData("plant.loading_use", "plant:b", "", 4 / 12.92, 0.002)]
    [InlineData("course.demand_average", "course:binder", "t/h", 261, 0.5)] // 1756 t in 1050 m / 2.6 m/min: no stop, constant width
    [InlineData("trucks.interval", "trucks:big", "min", 5.75, 0.01)]
    [InlineData("trucks.interval", "trucks:small", "min", 12.9, 0.05)]
    [InlineData("feeder.occupation", "feeder:f1", "", 0.74, 0.005)]
    [InlineData("paver.lower_buffer_needed", "paver:p1", "t", 41.3, 0.05)]
    [InlineData("paver.upper_call_lowest", "paver:p1", "t", 10.5, 0.05)]
    [InlineData("paver.upper_call_highest", "paver:p1", "t", 15.5, 0.05)]
    [InlineData("phase.strips", "phase:initial", "", 6, 0)]
    [InlineData("phase.strips", "phase:main", "", 6, 0)]
    [InlineData("phase.speed_it_follows", "phase:initial", "m/min", 2 * 3.8, 0.1)]
    [InlineData("phase.speed_it_follows", "phase:main", "m/min", 4.41, 0.01)]
    [InlineData("phase.speed_it_follows", "phase:finish", "m/min", 5.2, 0.05)]
    [InlineData("phase.done_by", "phase:main", "min", 22, 0.1)]
    [InlineData("roller.impact_spacing", "roller:r4", "mm", 25, 0.01)]
    [InlineData("shift.duration", "shift", "h", 6 + (50.0 / 60), 1e-9)]
    [InlineData("course.last_densifying_pass", "course:binder", "min", 22.9, 0.1)]
    public void The_figures_derived_there_come_out_here(string quantity, string address, string unit, double expected, double within) =>
        Assert.Equal(expected, Ask.Number(ScenarioA.Plan, quantity, address, unit), within);

    [Fact]
    public void Wind_over_open_country_falls_to_0_80_at_two_metres() =>
        Assert.Equal(4.0 * 0.80, Ask.Number(ScenarioA.Plan, "weather.wind_highest_at_mat", "weather", "m/s"), 0.01);
}

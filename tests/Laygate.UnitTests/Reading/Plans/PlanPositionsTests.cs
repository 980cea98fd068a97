using Laygate.Reading.Plans;

namespace Laygate.UnitTests.Reading.Plans;

public class PlanPositionsTests
{
    private static readonly PlanPositions Positions = PlanFiles.Map(PlanFiles.EveryKey).Positions;

    [Theory]
    [InlineData("course:middle", "delay", "40 min\n  - id: upper")]
    [InlineData("paver:paver-1", "buffers.upper.capacity", "16 t")]
    [InlineData("site", "conditions.night", "yes\n    enclosed")]
    [InlineData("mix:mix-a", "aggregate_size.basis", "upper-sieve }\n    binder")]
    [InlineData("weather", "hours", "hours:\n")]
    [InlineData("weather", "hours.2031-06-12T22:00+02:00.air", "56 F")]
    [InlineData("run:2", "widths.212.5 m.value", "4.1 m")]
    [InlineData("run:2", "width", "widths:")]
    [InlineData("run:run-1", "crossfalls", "2.5 %\n    low_side")]
    [InlineData("plan", "stage", "submission")]
    [InlineData("plan", "rolling.phases", "phases:")]
    [InlineData("plan", "rolling.phases.main.passes", "5\n      zone_from")]
    [InlineData("plan", "courses", "courses:\n  - id: lower")]
    [InlineData("plan", "people.shift-manager.call", "channel 3")]
    [InlineData("phase:main", "passes", "5\n      zone_from")]
    [InlineData("feeder:feeder-1", "rate", "520 t/h")]
    [InlineData("supply", "plants.plant-west.planned", "150 t/h")]
    [InlineData("bond-coat:coat-2", "rate", "0.07 gal/yd2")]
    [InlineData("overhead-line:line-north", "height", "7.5 m")]
    [InlineData("early-friction", "grit_by", "5 min\n  signs")]
    [InlineData("pair:middle+upper", "", "id: upper")]
    [InlineData("course:upper", "", "id: upper")]
    [InlineData("shift", "zone", "+02:00, zone_at_end")]
    public void A_value_is_found_by_address_and_key(string address, string key, string part) => Equal(part, Positions.Of(address, key));

    [Theory]
    [InlineData("mix:mix-b", "aggregate_size.nothing", "aggregate_size: { sieve: 22 mm")]
    [InlineData("mix:mix-b", "density.compacted", "id: mix-b")]
    [InlineData("paver:paver-1", "buffers.lower.capacity", "buffers:")]
    [InlineData("course:none", "thickness", "courses:\n  - id: lower")]
    [InlineData("trucks:none", "count", "trucks:\n")]
    [InlineData("nonsense", "key", "format: 1")]
    [InlineData("nonsense:x", "key", "format: 1")]
    [InlineData("plan", "nothing", "plan:")]
    public void What_is_missing_points_at_the_key_above_it(string address, string key, string part) => Equal(part, Positions.Of(address, key));

    [Fact]
    public void A_missing_block_points_at_the_start_of_the_plan()
    {
        var positions = PlanFiles.Map("# remark\nformat: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n").Positions;

        Assert.Equal((2, 1), (positions.Of("opening", "at").Line, positions.Of("opening", "at").Column));
        Assert.Equal((2, 1), (positions.Of("trucks:a", "count").Line, positions.Of("trucks:a", "count").Column));
    }

    [Theory]
    [InlineData("courses[1].on", "lower\n    delay")]
    [InlineData("courses[0].on", "id: lower")]
    [InlineData("courses[7].on", "courses:\n  - id: lower")]
    [InlineData("runs[1].widths[1].at", "212.5 m\n        value: 4.1 m")]
    public void A_value_is_found_by_its_path(string path, string part) => Equal(part, Positions.At(path));

    private static void Equal(string part, Laygate.Reading.Yaml.TextSpan position) =>
        Assert.Equal(PlanFiles.Place(PlanFiles.EveryKey, part), (position.Line, position.Column));
}

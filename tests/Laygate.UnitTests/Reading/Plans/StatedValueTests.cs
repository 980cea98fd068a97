using Laygate.Engineering.Quantities;
using Laygate.Engineering.Quantities.Values;

namespace Laygate.UnitTests.Reading.Plans;

/// <summary>Every number of a plan is held against what is usual, and is found where it stands.</summary>
public class StatedValueTests
{
    // Where something lies (stations, angles), what a rule of its own holds against what can be (density, slopes, oxygen, grit, class of clothing), and chances and shares of which every value is usual.
    private static readonly string[] Besides =
    [
        "format", "location/latitude", "location/longitude", "at", "from", "clothing_class", "oxygen", "rain_chance", "rain_chance_highest", "cloud_eighths", "compacted", "reclaimed",
        "crossfall", "gradient", "early_friction/rate", "sieve", "revision", "edition", "how_many", "id", "beside", "crossfalls/value",
        // What was learnt lies within ranges of the catalogue of assumptions, and where it comes from is judged by nobody.
        "conductivity/value", "conductivity/low", "conductivity/high", "conductivity/assumed_low", "conductivity/assumed_high", "laying/value", "laying/low", "laying/high", "laying/assumed_low",
        "laying/assumed_high", "learnt/shifts", "learnt/readings", "held_out/inside_before", "held_out/inside_after", "held_out/off_before", "held_out/off_after", "records/readings",
    ];

    [Fact]
    public void Every_number_of_the_plan_with_every_key_is_listed_where_it_stands()
    {
        var mapping = PlanFiles.Map(PlanFiles.EveryKey);
        var listed = new PlanElements(mapping.Plan!).Values.Select(value => mapping.Positions.Of(value.Owner, value.Key)).ToHashSet();
        var left = PlanFiles.Numbers()
            .Where(number => !Besides.Any(key => number.Path == key || number.Path.EndsWith("/" + key, StringComparison.Ordinal)))
            .Where(number => !listed.Contains(number.Span)).Select(number => number.Path);
        Assert.Empty(left);
    }

    [Fact]
    public void No_number_is_listed_twice()
    {
        var values = new PlanElements(PlanFiles.Plan(PlanFiles.EveryKey)).Values;
        Assert.Equal(values.Count, values.Select(value => value.Address).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_sort_is_used() => Assert.Empty(ValueSorts.All
        .Except(["mastic-mix", "warm-base"], StringComparer.Ordinal) // Of other mixes and surfaces than the plan has.
        .Except(new PlanElements(PlanFiles.Plan(PlanFiles.EveryKey)).Values.Select(value => value.Sort), StringComparer.Ordinal));
}

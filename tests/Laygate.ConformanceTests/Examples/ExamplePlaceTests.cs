using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.ConformanceTests.Examples;

/// <summary>One place, one law, one clock, one system of units: what the examples and the base plans say of where and when they are fits together.</summary>
public sealed class ExamplePlaceTests
{
    private static readonly Region Washington = new("US-WA", (45.5, 49.0), (-124.8, -116.9), -8, Summer.America, UnitSystem.UnitedStates);

    // No country is named: any place that keeps this clock.
    private static readonly Region MiddleOfEurope = new("none", (36, 55), (-1, 24), 1, Summer.Europe, UnitSystem.Metric);

    /// <summary>Each plan with the region that it lies in. Corners of the state by any atlas, clocks by law: both recalled.</summary>
    private static readonly Dictionary<string, Region> Places = new(StringComparer.Ordinal)
    {
        ["examples/county-route-us.yaml"] = Washington,
        ["examples/moor-road-thin-overlay.yaml"] = Washington,
        ["examples/quay-road-hot-on-hot.yaml"] = MiddleOfEurope,
        ["rules/bases/single.yaml"] = MiddleOfEurope,
        ["rules/bases/pair.yaml"] = MiddleOfEurope,
    };

    public static TheoryData<string> Plans => [.. Places.Keys];

    [Fact]
    public void Every_example_with_a_place_is_listed()
    {
        var plans = Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.yaml").Select(file => $"examples/{Path.GetFileName(file)}");
        Assert.Equal(plans.Where(plan => Read(plan).Location?.Latitude is not null).Order(StringComparer.Ordinal), Places.Keys.Where(plan => plan.StartsWith("examples/", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_place_lies_in_the_region_whose_law_and_clock_it_keeps(string name)
    {
        var (plan, region) = (Read(name), Places[name]);
        Assert.Equal(region.Jurisdiction, plan.Location!.Jurisdiction);
        Assert.InRange(Degrees(plan.Location.Latitude!), region.Latitude.South, region.Latitude.North);
        Assert.InRange(Degrees(plan.Location.Longitude!), region.Longitude.West, region.Longitude.East);
        var shift = plan.Shift!;
        Assert.Equal(TimeSpan.FromHours(region.Hours + (IsSummer(region.Clock, shift.Date!.Value) ? 1 : 0)), shift.Zone);
        Assert.True(shift.ZoneAtEnd is not null || IsSummer(region.Clock, shift.Date.Value) == IsSummer(region.Clock, shift.Date.Value.AddDays(1)));
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void It_speaks_in_the_units_of_its_place(string name)
    {
        var plan = Read(name);
        Assert.All(plan.Courses, course => Assert.Equal(Places[name].Units, course.Thickness.Unit.System));
        Assert.All(plan.Runs, run => Assert.Equal(Places[name].Units, run.WidthAlong[0].Value.Unit.System));
        Assert.All(plan.Pavers, paver => Assert.Equal(Places[name].Units, paver.Speed!.Unit.System));
    }

    /// <summary>
    /// Haurwitz 1945 (recalled): clear sun 1098 sin b exp(-0.057/sin b), a tenth more allowed. The course of the sun after Cooper 1969 and Duffie and Beckman,
    /// Solar Engineering of Thermal Processes (recalled): declination 23.45° sin(360° (284 + n)/365), equation of time 9.87 sin 2B - 7.53 cos B - 1.5 sin B min.
    /// </summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void The_sun_shines_by_day_and_no_stronger_than_in_a_clear_sky(string name)
    {
        var plan = Read(name);
        Assert.All(plan.Weather!.Hours.Where(hour => hour.Sun is not null), hour =>
        {
            var (sun, at) = (hour.Sun!.Si, new DateTimeOffset(hour.At.Local, hour.At.Offset ?? plan.Shift!.Zone!.Value).UtcDateTime);
            var height = Height(plan.Location!, at);
            Assert.InRange(sun, 0, 1.1 * Clear(height));
            Assert.True(sun > 0 || height < Math.Sin(3 * Math.PI / 180), $"{hour.At.Local}: no sun by day");
        });
    }

    private static double Degrees(Measure<Angle> angle) => angle.Number;

    private static double Clear(double sine) => sine <= 0 ? 0 : 1098 * sine * Math.Exp(-0.057 / sine);

    // The sine of the height of the sun.
    private static double Height(Location place, DateTime at)
    {
        var (latitude, longitude) = (Degrees(place.Latitude!) * Math.PI / 180, Degrees(place.Longitude!));
        var declination = 23.45 * Math.PI / 180 * Math.Sin(2 * Math.PI * (284 + at.DayOfYear) / 365);
        var day = 2 * Math.PI * (at.DayOfYear - 81) / 364;
        var early = (9.87 * Math.Sin(2 * day)) - (7.53 * Math.Cos(day)) - (1.5 * Math.Sin(day));
        var hour = (at.TimeOfDay.TotalHours + (longitude / 15) + (early / 60) - 12) * Math.PI / 12;
        return (Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Cos(hour));
    }

    // From the second Sunday of March to the first of November, or between the last ones of March and October.
    private static bool IsSummer(Summer clock, DateOnly date) => clock == Summer.America
        ? date >= Sunday(date.Year, 3, 8) && date < Sunday(date.Year, 11, 1)
        : date >= Sunday(date.Year, 3, 25) && date < Sunday(date.Year, 10, 25);

    // The first Sunday on or after a day.
    private static DateOnly Sunday(int year, int month, int day)
    {
        var from = new DateOnly(year, month, day);
        return from.AddDays((7 - (int)from.DayOfWeek) % 7);
    }

    private static Plan Read(string path) => Assert.Single(new PlanReader().Read(path, Repository.Bytes(path), new Repository.PartsOfRepository()).Plans).Plan;

    private enum Summer
    {
        America,
        Europe,
    }

    private sealed record Region(string Jurisdiction, (double South, double North) Latitude, (double West, double East) Longitude, int Hours, Summer Clock, UnitSystem Units);
}

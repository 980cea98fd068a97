using Laygate.Engineering.Measured;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Measured;

/// <summary>Measured temperatures against computed ones: place, minute and what is left out.</summary>
public sealed class MatComparisonTests
{
    private static readonly DateTimeOffset Start = new(2027, 5, 14, 21, 15, 0, TimeSpan.FromHours(2));

    private static readonly Plan Plan = ScenarioA.Plan with { Mixes = [.. ScenarioA.Plan.Mixes.Select(mix => mix with { Delivery = new() { Expected = C(165) } })] };

    // Derived: after a minute heat has come √(π · 5e-7 m²/s · 60 s) ≈ 10 mm far, so that 60 mm below the surface, 35 mm into a course of 85 mm, nothing has cooled.
    [Fact]
    public void A_minute_behind_the_screed_the_middle_is_as_hot_as_it_was_laid()
    {
        var comparison = Compare(Row(300, 3, 60, 156));
        var one = Assert.Single(comparison.Compared);
        Assert.Equal(156, one.Expected, 1.0);
        Assert.False(one.IsSkin);
        Assert.Equal(180, one.Age, 1.0); // By hand: 150 m at 2.5 m/min are laid in 60 min, and the row is read 3 min later.
    }

    // Derived: a load that came 10 K hotter than planned is laid 10 K hotter.
    [Fact]
    public void A_hotter_load_is_a_hotter_mat()
    {
        var load = new Load(default, "1", 25_000) { Mix = "ac16", Course = "binder", Loaded = Start, Arrived = Start.AddMinutes(50), Emptied = Start.AddMinutes(62), StationAtEnd = 305, SiteTemperature = 175 };
        var (plain, hot) = (Compare(Row(300, 3, 60, 156)), Compare([load], Row(300, 3, 60, 156)));
        Assert.Equal(plain.Compared[0].Expected + 10, hot.Compared[0].Expected, 0.5);
    }

    // Colder air, base and more wind cool faster: second law of thermodynamics.
    [Fact]
    public void Measured_weather_counts()
    {
        WeatherReading[] cold = [new(default, Start) { Air = -5, Surface = -2, Wind = 12 }, new(default, Start.AddHours(6)) { Air = -5, Surface = -2, Wind = 12 }];
        var (plain, colder) = (Compare(Row(300, 20, 0, 100)), MatComparisons.Of(Ask.Context(Plan), Record([], [Row(300, 20, 0, 100)]) with { Weather = cold }));
        Assert.True(colder.Compared[0].Expected < plain.Compared[0].Expected - 3, $"{colder.Compared[0].Expected} and {plain.Compared[0].Expected}");
        Assert.True(colder.WithMeasuredWeather);
    }

    // A plan that states only an envelope is compared in the weather that was measured; what was measured at the mat is not taken down to it once more: at 60 % of the forecast, 3 m/s at the mat is a forecast of 5 m/s.
    [Fact]
    public void An_envelope_gives_way_to_what_was_measured_and_wind_at_the_mat_is_that()
    {
        var weather = new Weather { WindAtMat = M<Ratio>(60, "%"), Envelope = new() { AirLowest = C(8), BaseLowest = C(8), WindHighest = M<Speed>(9, "m/s") } };
        WeatherReading[] measured = [new(default, Start) { Air = 12, Surface = 14, Wind = 3 }, new(default, Start.AddHours(6)) { Air = 12, Surface = 14, Wind = 3 }];
        WeatherHour Hour(DateTimeOffset at) => new() { At = new Moment(at.DateTime, at.Offset), Air = C(12), Base = C(14), Wind = M<Speed>(5, "m/s") };
        var rows = new[] { Row(300, 20, 0, 100) };
        var byRecord = MatComparisons.Of(Ask.Context(Plan with { Weather = weather }), Record([], rows) with { Weather = measured });
        var byHours = MatComparisons.Of(Ask.Context(Plan with { Weather = weather with { Envelope = null, Hours = [Hour(Start), Hour(Start.AddHours(6))] } }), Record([], rows));
        Assert.Equal(Assert.Single(byHours.Compared).Expected, Assert.Single(byRecord.Compared).Expected, 1e-9);
        Assert.True(byRecord.WithMeasuredWeather);
    }

    // By hand: readings that are the expected values have no bias and lie inside; 60 K more is 60 K of bias, and none lies inside.
    [Fact]
    public void Bias_and_coverage_are_those_by_hand()
    {
        MatTemperature[] rows = [Row(300, 5, 0, 0), Row(300, 15, 60, 0), Row(450, 5, 0, 0), Row(450, 30, 60, 0)];
        var expected = Compare(rows).Compared.Select(one => one.Expected).ToList();
        var exact = Compare([.. rows.Select((row, i) => row with { Value = expected[i] })]).Groups;
        var high = Compare([.. rows.Select((row, i) => row with { Value = expected[i] + 60 })]).Groups;
        Assert.All(exact, group => Assert.Equal((0, 1), (Math.Round(group.Bias, 6), group.Inside.Expected)));
        Assert.All(high, group => Assert.Equal((60, 0), (Math.Round(group.Bias, 6), group.Inside.Expected)));
        Assert.Equal([true, true, false, false, false], exact.Select(group => group.IsSkin));
        Assert.Equal([2, 2, 2, 1, 1], exact.Select(group => group.Readings));
        Assert.Equal([2, 2, 2, 1, 1], exact.Select(group => group.Places));
    }

    [Fact]
    public void What_cannot_be_compared_is_counted_with_its_reason()
    {
        var comparison = Compare(Row(300, 3, 60, 156) with { Depth = null }, Row(5000, 3, 60, 156), Row(1100, 3, 60, 156), Row(300, -10, 60, 156), Row(300, 5, 0, 100) with { Course = "none" });
        Assert.Empty(comparison.Compared);
        Assert.Equal(
            [(NotCompared.NoPlace, 2), (NotCompared.NoRun, 1), (NotCompared.NotLaid, 1), (NotCompared.BeforeScreed, 1)], comparison.Left);
    }

    private static MatComparison Compare(params MatTemperature[] rows) => Compare([], rows);

    private static MatComparison Compare(Load[] loads, params MatTemperature[] rows) => MatComparisons.Of(Ask.Context(Plan), Record(loads, rows));

    // Stations at an even 2.5 m/min from 150 m on; a row is read some minutes after its place was laid.
    private static MatTemperature Row(double station, double minutes, double depth, double celsius) =>
        new(default, Start.AddMinutes(((station - 150) / 2.5) + minutes), celsius) { Station = station, Depth = depth / 1000, Course = "binder" };

    private static ShiftRecord Record(Load[] loads, MatTemperature[] rows) => new()
    {
        Loads = loads,
        Stations = [.. Enumerable.Range(0, 5).Select(i => new StationReading(default, Start.AddMinutes(60 * i), 150 + (150 * i)) { Course = "binder" })],
        Temperatures = rows,
    };
}

using Laygate.Reading.Records;

namespace Laygate.UnitTests.Reading.Records;

/// <summary>Local times over midnight and over the change of clock.</summary>
public sealed class RowClockTests
{
    private const string Columns = "    columns:\n      - { column: t, quantity: at }\n      - { column: s, quantity: station, unit: m }\n";

    [Fact]
    public void A_fall_of_the_clock_over_midnight_begins_the_next_day()
    {
        var file = Read("+02:00", "2027-05-14", "23:50", "00:10");
        var stations = Shift.Of(file).Stations;
        Assert.Equal(TimeSpan.FromMinutes(20), stations[1].At - stations[0].At);
        Assert.Contains("2027-05-15", Assert.Single(file.Notes).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_time_that_runs_back_a_little_is_said_and_put_in_its_order()
    {
        var file = Read("+02:00", "2027-05-14", "21:30", "21:15");
        Assert.Equal([2, 1], Shift.Of(file).Stations.Select(reading => (int)reading.Station));
        Assert.Contains("run back on 1 row", Assert.Single(file.Notes).Message, StringComparison.Ordinal);
    }

    /// <summary>The clock of Berlin is put back on 25 October 2026 at 03:00: the night from 22:00 to 05:00 has 8 h (derived: 7 h by the dial and the hour that comes twice).</summary>
    [Fact]
    public void A_night_in_which_the_clock_is_put_back_is_an_hour_longer()
    {
        var stations = Shift.Of(Read("Europe/Berlin", "2026-10-24", "22:00", "05:00")).Stations;
        Assert.Equal(8.0, (stations[1].At - stations[0].At).TotalHours);
    }

    [Fact]
    public void A_time_that_comes_twice_is_placed_by_the_rows_around_it()
    {
        // The clock runs 02:40, 02:50, and again 02:10, 02:20: by the dial back, by the sun on.
        var stations = Shift.Of(Read("Europe/Berlin", "2026-10-24", "22:00", "02:40", "02:50", "02:10", "02:20", "03:10")).Stations;
        Assert.Equal([2, 2, 1, 1], stations.Skip(1).Take(4).Select(reading => reading.At.Offset.Hours));
        Assert.Equal(stations.Select(reading => reading.At).Order(), stations.Select(reading => reading.At));
    }

    [Fact]
    public void A_time_that_comes_twice_and_cannot_be_placed_is_asked_for()
    {
        var file = Read("Europe/Berlin", "2026-10-25", "01:50", "02:30", "03:30");
        Assert.Equal(2, Shift.Of(file).Stations.Count);
        Assert.Contains("happens twice", Assert.Single(file.Refused).Message, StringComparison.Ordinal);
        Assert.Equal(3, Shift.Of(Read("Europe/Berlin", "2026-10-25", "01:50", "02:30+02:00", "03:30")).Stations.Count);
    }

    [Fact]
    public void A_time_that_no_clock_showed_is_refused() =>
        Assert.Contains("never showed", Assert.Single(Read("Europe/Berlin", "2027-03-28", "02:30").Refused).Message, StringComparison.Ordinal);

    /// <summary>The same shift in local time and in UTC is the same shift.</summary>
    [Fact]
    public void The_zone_changes_nothing_but_the_dial()
    {
        var local = Shift.Of(Read("Europe/Berlin", "2026-10-24", "2026-10-24 23:00", "2026-10-25 01:30", "2026-10-25 04:00")).Stations.Select(reading => reading.At.UtcDateTime);
        var utc = Shift.Of(Read("UTC", "2026-10-24", "2026-10-24 21:00", "2026-10-24 23:30", "2026-10-25 03:00")).Stations.Select(reading => reading.At.UtcDateTime);
        Assert.Equal(utc, local);
    }

    private static RecordFile Read(string zone, string day, params string[] times) => Shift.Read(
        Shift.File("s.csv", "stations", Columns, $"encoding: utf-8, delimiter: comma, decimal_mark: point, zone: {zone}, day: {day}"),
        ("s.csv", "t,s\n" + string.Join('\n', times.Select((time, index) => $"{time},{index + 1}"))));
}

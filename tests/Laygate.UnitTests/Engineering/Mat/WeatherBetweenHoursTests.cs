using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>What stated hours say between their entries, and what they leave out.</summary>
public class WeatherBetweenHoursTests
{
    private static readonly string[] Overs = ["weather.air_lowest", "weather.base_lowest", "weather.wind_highest_at_mat", "weather.rain_chance_highest", "weather.dew_margin_lowest", "weather.heat_index"];

    [Fact]
    public void A_table_that_ends_early_says_so_and_judges_what_lies_inside()
    {
        var plan = Only(hour => hour.At.Local.Hour is 0 or >= 20);
        foreach (var quantity in Overs)
        {
            Left(Ask.Answer(plan, quantity, "weather"), NoteIds.HoursEndEarly, "2027-05-15 00:00", "2027-05-15 04:05");
        }

        Left(Ask.Answer(plan, MatPlans.Window, "course:binder"), NoteIds.HoursEndEarly, "2027-05-15 00:00", "2027-05-15 04:05");
        Left(Ask.Answer(plan, "weather.by_hour", "weather"), NoteIds.HoursEndEarly, "2027-05-15 00:00", "2027-05-15 04:05");
        Assert.Equal(12, Ask.Number(plan, "weather.air_lowest", "weather"), 1e-9); // by hand from the plan: the lowest of 20:00 to 00:00; the whole night has 9 °C
        Assert.Equal(9, Ask.Number(ScenarioA.Plan, "weather.air_lowest", "weather"), 1e-9);
    }

    [Fact]
    public void A_table_that_begins_late_says_so() => Left(
        Ask.Answer(Only(hour => hour.At.Local.Hour < 20), "weather.air_lowest", "weather"), NoteIds.HoursBeginLate, "2027-05-15 00:00", "2027-05-14 21:15");

    [Theory]
    [InlineData(3, null, null)]
    [InlineData(4, NoteIds.HoursBridged, null)]
    [InlineData(6, NoteIds.HoursBridged, null)]
    [InlineData(7, null, NoteIds.HoursGap)]
    public void A_gap_is_bridged_noted_or_left_out(int hours, string? noted, string? left)
    {
        var last = ScenarioA.Plan.Weather!.Hours[1] with { At = new Moment(new DateTime(2027, 5, 14, 21, 0, 0, DateTimeKind.Unspecified).AddHours(hours), null) };
        var plan = ScenarioA.Plan with
        {
            Shift = ScenarioA.Plan.Shift! with { End = TimeOnly.FromDateTime(last.At.Local) },
            Weather = ScenarioA.Plan.Weather with { Hours = [ScenarioA.Plan.Weather.Hours[1], last] },
        };
        foreach (var quantity in Overs.Take(2))
        {
            var answer = Ask.Answer(plan, quantity, "weather");
            Assert.Equal((noted, left), (answer.Note?.Id, answer.Partial?.Id));
        }

        Assert.Equal(left, Ask.Answer(plan, MatPlans.Window, "course:wearing").Partial?.Id);
    }

    [Fact]
    public void Entries_nine_hours_apart_are_not_weather_by_the_hour()
    {
        var plan = Only(hour => hour.At.Local.Hour is 20 or 5);
        Assert.Equal(PresenceLevel.Absent, ((PresenceValue)Ask.Answer(plan, "weather.by_hour", "weather").Value!).Level);
        Assert.Equal(PresenceLevel.Stated, ((PresenceValue)Ask.Answer(ScenarioA.Plan, "weather.by_hour", "weather").Value!).Level);
    }

    [Fact]
    public void An_envelope_speaks_for_what_the_hours_leave_out()
    {
        var early = Only(hour => hour.At.Local.Hour is 0 or >= 20);
        Plan With(double air, double below) => early with
        {
            Weather = early.Weather! with { Envelope = new WeatherEnvelope { AirLowest = C(air), BaseLowest = C(below), WindHighest = M<Speed>(4, "m/s") } },
        };
        // By hand: the envelope says 5 °C for what is left out, the hours 12 °C.
        var colder = Ask.Answer(With(5, 7), "weather.air_lowest", "weather");
        Assert.Equal((5.0, null), (Ask.In(colder, "°C"), colder.Partial?.Id));
        Assert.Equal(12, Ask.Number(With(13, 15), "weather.air_lowest", "weather"), 1e-9); // a miss inside the hours stays one
        var window = Ask.Answer(With(5, 7), MatPlans.Window, "course:wearing");
        Assert.Null(window.Partial);
        Assert.True(Ask.In(window, "min") < Ask.Number(early, MatPlans.Window, "course:wearing", "min"));
    }

    [Fact]
    public void Base_dew_point_rain_and_wind_are_read_on_the_line_between_the_hours()
    {
        // By hand: half way between 23:00 and 00:00, where laying ends; ScenarioA lists both hours.
        var plan = ScenarioA.Plan with { Shift = ScenarioA.Plan.Shift! with { Start = new TimeOnly(23, 10), End = new TimeOnly(23, 30) } };
        Assert.Equal(16.5, Ask.Number(plan, "weather.base_lowest", "weather"), 1e-9);
        Assert.Equal(12.5, Ask.Number(plan, "weather.air_lowest", "weather"), 1e-9);
        Assert.Equal(8.5, Ask.Number(plan, "weather.dew_margin_lowest", "weather"), 1e-9);
        Assert.Equal(0.075, Ask.Number(plan, "weather.rain_chance_highest", "weather"), 1e-9);
    }

    private static Plan Only(Func<WeatherHour, bool> keep) =>
        ScenarioA.Plan with { Weather = ScenarioA.Plan.Weather! with { Hours = [.. ScenarioA.Plan.Weather.Hours.Where(keep)] } };

    private static void Left(Answer answer, string id, string first, string laying)
    {
        Assert.NotNull(answer.Value);
        Assert.Equal(id, answer.Partial?.Id);
        Assert.Equal([first, laying], answer.Partial!.Arguments.Select(argument => argument.Text), StringComparer.Ordinal);
    }
}

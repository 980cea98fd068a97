using System.Text;
using Laygate.Checking.Importing;
using Laygate.Reading.Imports;

namespace Laygate.UnitTests.Reading.Imports;

/// <summary>
/// A made-up forecast in the shape of the point forecasts of the Norwegian Meteorological Institute ("General forecast JSON format", documentation of
/// the MET Weather API, api.met.no/doc/ForecastJSON, read as a stored copy).
/// </summary>
public sealed class ForecastImportTests
{
    private const string Forecast = """
        {
          "type": "Feature",
          "geometry": { "type": "Point", "coordinates": [11.5, 48.25, 310] },
          "properties": {
            "meta": {
              "updated_at": "2026-10-24T18:04:26Z",
              "units": { "air_temperature": "celsius", "cloud_area_fraction": "%", "dew_point_temperature": "celsius", "probability_of_precipitation": "%", "wind_speed": "m/s" }
            },
            "timeseries": [
              { "time": "2026-10-24T23:00:00Z", "data": { "instant": { "details": { "air_temperature": 8.4, "cloud_area_fraction": 58.0, "dew_point_temperature": 6.1, "wind_speed": 2.5 } }, "next_1_hours": { "summary": { "symbol_code": "cloudy" }, "details": { "precipitation_amount": 0.0, "probability_of_precipitation": 4.2 } } } },
              { "time": "2026-10-25T00:00:00Z", "data": { "instant": { "details": { "air_temperature": 8.0, "cloud_area_fraction": 100.0, "wind_speed": 2 } } } },
              { "time": "2026-10-25T01:00:00Z", "data": { "instant": { "details": { "air_temperature": -0.3 } }, "next_6_hours": { "details": { "probability_of_precipitation": 40.0 } } } }
            ]
          }
        }
        """;

    [Fact]
    public void Hours_are_written_in_the_wanted_zone_over_the_change_of_clock()
    {
        var text = ImportText.Write(Read(Forecast, "Europe/Berlin"));
        Assert.Equal(
            """
            # Imported by Laygate from forecast.json. The figures are those of that file; what it does not state is not here.
            weather:
              wind_height: 10 m
              imported: { file: forecast.json, sha256: HASH }
              # Each hour needs the temperature of the surface that is laid upon, too: add `base`.
              hours:
                - { at: 2026-10-25T01:00+02:00, air: 8.4 °C, wind: 2.5 m/s, cloud_eighths: 5, dew_point: 6.1 °C, rain_chance: 4.2 % }
                - { at: 2026-10-25T02:00+02:00, air: 8 °C, wind: 2 m/s, cloud_eighths: 8 }
                - { at: 2026-10-25T02:00+01:00, air: -0.3 °C }

            """.ReplaceLineEndings("\n"),
            System.Text.RegularExpressions.Regex.Replace(text, "\"?[0-9a-f]{64}\"?", "HASH", System.Text.RegularExpressions.RegexOptions.None, Patience.Longest),
            StringComparer.Ordinal);
        var hours = TableImportTests.Plan(text).Weather!.Hours;
        Assert.Equal([TimeSpan.FromHours(2), TimeSpan.FromHours(2), TimeSpan.FromHours(1)], hours.Select(hour => hour.At.Offset!.Value));
        Assert.Equal("2026-10-24T23:00+00:00", Read(Forecast).Entries[0]["at"]);
    }

    [Fact]
    public void Only_the_wanted_hours_are_taken()
    {
        Assert.Equal(["2026-10-25T00:00+00:00"], Read(Forecast, null, "2026-10-25T00:00+00:00", "2026-10-25T00:59+00:00").Entries.Select(entry => entry["at"]!), StringComparer.Ordinal);
        Assert.Equal("2026-10-25T01:00+02:00", Assert.Single(Read(Forecast, "Europe/Berlin", null, "2026-10-25T01:30").Entries)["at"]);
        Assert.Contains("No hour of the forecast lies", Refusal(Read(Forecast, null, "2027-10-25T00:00+00:00")), StringComparison.Ordinal);
        Assert.Contains("take a moment", Refusal(Read(Forecast, "Europe/Berlin", "2026-10-25T02:30")), StringComparison.Ordinal);
        Assert.Contains("There is no zone `Mars/Olympus`", Refusal(Read(Forecast, "Mars/Olympus")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"air_temperature\": \"celsius\"", "\"air_temperature\": \"fahrenheit\"", 7, "in `fahrenheit`")]
    [InlineData("\"air_temperature\": 8.0", "\"air_temperature\": \"8\"", 11, "is no number")]
    [InlineData("\"air_temperature\": 8.0", "\"air_temperature\": 80.5", 11, "never above 60")]
    [InlineData("\"air_temperature\": 8.0", "\"air_temperature\": 1e99", 11, "is no number")]
    [InlineData("2026-10-25T00:00:00Z", "yesterday", 11, "has no time")]
    [InlineData("2026-10-25T00:00:00Z", "2026-10-24T22:00:00Z", 11, "must start after the one above it")]
    [InlineData("\"timeseries\"", "\"series\"", 1, "no point forecast")]
    [InlineData("\"units\"", "\"unit\"", 1, "no point forecast")]
    [InlineData("\"geometry\":", "\"geometry\"", 3, "no JSON text")]
    public void What_is_wrong_is_said_at_its_place(string from, string to, int line, string why)
    {
        Assert.Contains(from, Forecast, StringComparison.Ordinal);
        var import = Read(Forecast.Replace(from, to, StringComparison.Ordinal));
        Assert.Empty(import.Entries);
        var problem = import.Problems.First(one => one.Message.Contains(why, StringComparison.Ordinal));
        Assert.Equal(("forecast.json", line), (problem.File, problem.Position!.Line));
    }

    [Fact]
    public void More_hours_than_a_plan_holds_are_refused()
    {
        var hours = string.Join(",\n", Enumerable.Range(0, 201).Select(hour => $"{{\"time\": \"{new DateTime(2026, 10, 1).AddHours(hour):yyyy-MM-dd'T'HH:mm:ss}Z\", \"data\": {{}}}}"));
        var start = Forecast.IndexOf("{ \"time\"", StringComparison.Ordinal);
        var many = Forecast[..start] + hours + Forecast[Forecast.IndexOf(']', start)..];
        Assert.Contains("200", Refusal(Read(many)), StringComparison.Ordinal);
        Assert.Equal(24, Read(many, null, "2026-10-02T00:00+00:00", "2026-10-02T23:00+00:00").Entries.Count);
    }

    private static string Refusal(Import import) => Assert.Single(import.Problems).Message;

    private static Import Read(string text, string? zone = null, string? from = null, string? until = null) =>
        ForecastImport.Read("forecast.json", Encoding.UTF8.GetBytes(text), zone, from, until, TableImportTests.Reader);
}

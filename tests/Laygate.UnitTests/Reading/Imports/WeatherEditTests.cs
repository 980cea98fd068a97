using System.Text;
using Laygate.Checking.Importing;
using Laygate.Reading.Imports;

namespace Laygate.UnitTests.Reading.Imports;

/// <summary>Imported hours take the place of those of a plan; every other line stays as it is.</summary>
public sealed class WeatherEditTests
{
    private const string Head = "# first line\nformat: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n";
    private const string New = "  imported: { file: w.csv, sha256: abc }\n  hours:\n    - { at: 2026-10-25T01:00+02:00, air: 8 °C, base: 9 °C }\n";

    [Theory]
    [InlineData(Head, Head + "# Imported by Laygate from w.csv. The figures are those of that file; what it does not state is not here.\nweather:\n" + New)]
    [InlineData(Head + "weather:\n  source: forecast # by phone\n  hours:\n    - { at: 2026-10-24T21:00, air: 9 °C }\n    - at: 2026-10-24T22:00\n      air: 8 °C # cold\n  # wind\n  exposure: town\nshift: { start: 21:00 }\n", Head + "weather:\n  source: forecast # by phone\n  # wind\n  exposure: town\n" + New + "shift: { start: 21:00 }\n")]
    [InlineData(Head + "weather:\n  hours: [{ at: 2026-10-24T21:00 }]\nshift: { start: 21:00 }\n", Head + "weather:\n" + New + "shift: { start: 21:00 }\n")]
    [InlineData(Head + "weather:\n    imported: { file: old.csv }\n    exposure: town", Head + "weather:\n    exposure: town\n    imported: { file: w.csv, sha256: abc }\n    hours:\n      - { at: 2026-10-25T01:00+02:00, air: 8 °C, base: 9 °C }")]
    public void Hours_take_the_place_of_hours(string plan, string changed)
    {
        Assert.Equal(changed, Text(WeatherEdit.Into(Encoding.UTF8.GetBytes(plan), Hours)), StringComparer.Ordinal);

        // The same again changes nothing, and neither mark nor line ends are lost.
        Assert.Equal(changed, Text(WeatherEdit.Into(Encoding.UTF8.GetBytes(changed), Hours)), StringComparer.Ordinal);
        Assert.Equal("\uFEFF" + changed.Replace("\n", "\r\n", StringComparison.Ordinal), Text(WeatherEdit.Into(Encoding.UTF8.GetBytes("\uFEFF" + plan.Replace("\n", "\r\n", StringComparison.Ordinal)), Hours)), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData(Head + "weather: { exposure: town }\n")]
    [InlineData("{ format: 1 }\n")]
    [InlineData(Head + "---\n" + Head)]
    [InlineData(Head + "weather: [\n")]
    [InlineData(Head + "weather:\n  hours: &h [{ at: 2026-10-24T21:00 }]\n  exposure: town\nshift: { other: *h }\n")]
    public void A_form_that_leaves_no_safe_place_is_not_changed(string plan) => Assert.Null(WeatherEdit.Into(Encoding.UTF8.GetBytes(plan), Hours));

    private static Import Hours => new("weather", "w.csv", "abc", [new ImportedEntry([new("at", "2026-10-25T01:00+02:00"), new("air", "8 °C"), new("base", "9 °C")])], [], []);

    private static string Text(byte[]? bytes) => Encoding.UTF8.GetString(bytes ?? []);
}

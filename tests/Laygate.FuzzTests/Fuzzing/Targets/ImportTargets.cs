using System.Text;
using Laygate.Checking.Importing;
using Laygate.Reading.Imports;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Rules.Results;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>Which file of an import is changed.</summary>
internal enum ImportFile
{
    /// <summary>The mapping.</summary>
    Mapping,

    /// <summary>The list.</summary>
    Table,

    /// <summary>The forecast.</summary>
    Forecast,
}

/// <summary>Lists and forecasts from outside. What is imported can be read as a plan.</summary>
/// <param name="changed">Which file is changed.</param>
internal sealed class ImportTarget(ImportFile changed) : Target
{
    private const string Head = "format: 1\nencoding: utf-8\ndelimiter: semicolon\ndecimal_mark: comma\ngrouping: none\nheader: 1\nunits_row: no\nday: 2026-10-24\n";

    private const string WeatherMapping = Head + """
        dates: day-month-year
        zone: Europe/Berlin
        no_data: ["-"]
        columns:
          - { column: Zeit, quantity: at }
          - { column: Luft, quantity: air, unit: °C }
          - { column: Wind, quantity: wind, unit: m/s }
          - { column: Regen, quantity: rain_chance, unit: "%" }
          - { column: Wolken, quantity: cloud_cover, unit: "%" }
        """;

    private const string TruckMapping = Head + """
        columns:
          - { column: Gruppe, quantity: id }
          - { column: Werk, quantity: plant }
          - { column: Anzahl, quantity: count }
          - { column: Nutzlast, quantity: payload, unit: t }
          - { column: Thermo, quantity: insulated, words: { ja: "yes", nein: "no" } }
          - { column: Hin, quantity: haul_out, unit: min }
          - { value: ac-11, quantity: mix }
        """;

    private const string Weather = "Zeit;Luft;Wind;Regen;Wolken\n24.10.2026 23:00;9,1;3;0;50\n25.10.2026 00:00;8,4;3,0;5;60\n25.10.2026 01:00;8,1;3,5;5;62,5\n25.10.2026 02:00;7,9;3;10;70\n25.10.2026 02:00;7,6;3;10;-\n25.10.2026 03:00;7,4;2,5;10;90\n";

    private const string Trucks = "Gruppe;Werk;Anzahl;Nutzlast;Thermo;Hin;Bemerkung\ntrucks-a;west;9;25,5;ja;31;\"zwei\nZeilen; mit \"\"Marken\"\"\"\ntrucks-b;west;4;18;nein;44;\n";

    private const string Forecast = """
        {"type": "Feature", "geometry": {"type": "Point", "coordinates": [11.5, 48.25, 310]},
        "properties": {"meta": {"updated_at": "2026-10-24T18:04:26Z", "units": {"air_temperature": "celsius", "cloud_area_fraction": "%", "wind_speed": "m/s", "probability_of_precipitation": "%"}},
        "timeseries": [
        {"time": "2026-10-24T23:00:00Z", "data": {"instant": {"details": {"air_temperature": 8.4, "cloud_area_fraction": 58.0, "wind_speed": 2.5}}, "next_1_hours": {"details": {"probability_of_precipitation": 4.2}}}},
        {"time": "2026-10-25T00:00:00Z", "data": {"instant": {"details": {"air_temperature": 8.0, "cloud_area_fraction": 100.0, "wind_speed": 2}}}},
        {"time": "2026-10-25T01:00:00Z", "data": {"instant": {"details": {"air_temperature": -0.3}}}}]}}
        """;

    private static readonly PlanReader Reader = new();

    /// <inheritdoc/>
    public override string Name => $"import {changed.ToString().ToLowerInvariant()}";

    /// <inheritdoc/>
    public override int Share => 25;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = new(changed switch
    {
        ImportFile.Mapping => [new Seed("weather mapping", WeatherMapping), new Seed("truck mapping", TruckMapping)],
        ImportFile.Table => [new Seed("weather list", Weather), new Seed("truck list", Trucks)],
        _ => [new Seed("forecast", Forecast)],
    });

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var isTrucks = Encoding.UTF8.GetString(bytes).Contains("Gruppe", StringComparison.Ordinal);
        var (list, mapping) = isTrucks ? (Trucks, TruckMapping) : (Weather, WeatherMapping);
        var import = changed switch
        {
            ImportFile.Mapping => TableImport.Read(isTrucks ? "trucks" : "weather", "list.csv", Encoding.UTF8.GetBytes(list), "map.yaml", bytes, Reader),
            ImportFile.Table => TableImport.Read(isTrucks ? "trucks" : "weather", "list.csv", bytes, "map.yaml", Encoding.UTF8.GetBytes(mapping), Reader),
            _ => ForecastImport.Read("forecast.json", bytes, Choice(bytes, 2) == 0 ? "Europe/Berlin" : null, null, null, Reader),
        };
        if (import.Problems.Count > 0)
        {
            Require(import.Entries.Count == 0, "half of a list is imported");
            Refusal.Check(import.Problems, Seen(bytes, import.Problems[0].File), _ => false);
            return Answer.Refused;
        }

        Require(import.Entries.Count > 0, "neither entries nor refusal");
        IsPlan(import);
        return Answer.Accepted;
    }

    // Lines of a list may end with a single carriage return, which a text editor does not count; and what is not UTF-8 has other columns.
    private byte[] Seen(byte[] bytes, string file) =>
        changed == ImportFile.Mapping && file is "list.csv" ? Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(new string(' ', 4000) + '\n', 50)))
        : changed == ImportFile.Table && bytes.Contains((byte)'\r') ? Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(bytes).ReplaceLineEndings("\n"))
        : bytes;

    private static void IsPlan(Import import)
    {
        var text = ImportText.Write(import);
        var isWeather = import.Kind is "weather";
        var plan = "format: 1\n" + (isWeather ? string.Empty : "uses: [parts.yaml]\n") + "plan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n"
            + (isWeather ? text : $"supply: {{ trucks: [{string.Join(", ", import.Entries.Select(entry => $"\"{entry["id"]}\""))}] }}\n");
        var read = Reader.Read("p.yaml", Encoding.UTF8.GetBytes(plan), new OneFile(text));
        Require(read.Problems.Count == 0, $"what was imported is no plan: {(read.Problems.Count > 0 ? read.Problems[0].Message : string.Empty)}\n{text}");
        Require(isWeather ? read.Plans[0].Plan.Weather!.Hours.Count == import.Entries.Count : read.Plans[0].Plan.Supply!.Trucks.Count == import.Entries.Count, "entries are lost");
    }

    private sealed class OneFile(string text) : IPartFiles
    {
        public PartText Read(string from, string name) => new(name, Encoding.UTF8.GetBytes(text));
    }
}

using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using Laygate.Reading.Plans;
using Laygate.Reading.Records;
using Laygate.Reading.Reports;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;
using NodaTime;

namespace Laygate.Reading.Imports;

/// <summary>
/// Imports the hours of a forecast in the JSON format for points of the Norwegian Meteorological Institute, which serves any place on earth: a GeoJSON feature
/// with units under <c>properties.meta.units</c> and hours under <c>properties.timeseries</c> ("General forecast JSON format", documentation of the MET Weather API,
/// https://api.met.no/doc/ForecastJSON, read 2026-11-29 as a stored copy). That its wind is stated for 10 m above ground is recalled from its data model.
/// </summary>
public static class ForecastImport
{
    private const int LargestFile = 4 << 20;

    // Key of a plan, name of the format, its unit there and here.
    private static readonly (string Key, string Name, string Theirs, string Ours)[] Instant =
    [
        ("air", "air_temperature", "celsius", "°C"),
        ("wind", "wind_speed", "m/s", "m/s"),
        ("cloud_eighths", "cloud_area_fraction", "%", string.Empty),
        ("dew_point", "dew_point_temperature", "celsius", "°C"),
    ];

    private const string Rain = "probability_of_precipitation";

    /// <summary>Imports a forecast.</summary>
    /// <param name="file">The forecast, as it is shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="zone">Zone in which the hours are written: a name of the IANA table or an offset from UTC; null: as in the file.</param>
    /// <param name="from">First moment that is wanted; null: from the start.</param>
    /// <param name="until">Last moment that is wanted; null: to the end.</param>
    /// <param name="reader">Reads plans.</param>
    public static Import Read(string file, byte[] bytes, string? zone, string? from, string? until, PlanReader reader)
    {
        Import Result(IReadOnlyList<ImportedEntry> entries, IReadOnlyList<ReadingProblem> problems) =>
            new("weather", file, Convert.ToHexStringLower(SHA256.HashData(bytes)), problems.Count > 0 ? [] : entries, ShownProblems.Of(file, problems), []) { Around = [new ImportedValue("wind_height", "10 m")] };
        if (bytes.Length > LargestFile)
        {
            return Result([], [new ReadingProblem("The file has more than 4 MiB; it is not read.", TextSpan.FileStart)]);
        }

        var (window, wrong) = ForecastWindow.Of(zone, from, until);
        if (window is null)
        {
            return Result([], [wrong!]);
        }

        // A mark at the beginning of the text is no part of it (RFC 8259, 8.1).
        var text = bytes.AsMemory(bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? 3 : 0);
        try
        {
            using var json = JsonDocument.Parse(text);
            var problems = new List<ReadingProblem>();
            var entries = Hours(json.RootElement, window, new Places(text), problems);
            problems.AddRange(problems.Count > 0 ? [] : ImportCheck.Of(entries, ["weather", "hours"], reader));
            return Result(entries, problems);
        }
        catch (JsonException error)
        {
            return Result([], [new ReadingProblem("This is no JSON text.", Span(JsonPositions.Of(text.Span, error)), "Save the answer of the service as it came.")]);
        }
    }

    private static IReadOnlyList<ImportedEntry> Hours(JsonElement root, ForecastWindow window, Places places, List<ReadingProblem> problems)
    {
        if (Find(root, "properties", "timeseries") is not { ValueKind: JsonValueKind.Array } series || Find(root, "properties", "meta", "units") is not { ValueKind: JsonValueKind.Object } units)
        {
            problems.Add(new ReadingProblem(
                "This is no point forecast in the JSON format of the Norwegian Meteorological Institute: `properties.timeseries` or `properties.meta.units` is missing.", TextSpan.FileStart, "Ask its service Locationforecast 2.0 for `complete`, or import a CSV with a mapping."));
            return [];
        }

        Units(units, places, problems);
        var entries = new List<ImportedEntry>();
        foreach (var (index, hour) in series.EnumerateArray().Index())
        {
            var at = $"properties.timeseries[{index.ToString(CultureInfo.InvariantCulture)}]";
            if (Find(hour, "time") is not { ValueKind: JsonValueKind.String } time || !DateTimeOffset.TryParseExact(time.GetString(), ["yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mmK"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var moment))
            {
                problems.Add(new ReadingProblem("An hour has no time such as `2031-06-12T21:00:00Z`.", places.Of(at)));
            }
            else if (window.Holds(moment))
            {
                entries.Add(Hour(hour, window.Shown(moment), at, places, problems));
            }
        }

        if (entries.Count == 0 && problems.Count == 0)
        {
            problems.Add(new ReadingProblem("No hour of the forecast lies between the moments that are wanted.", TextSpan.FileStart, "Change `--from` or `--until`."));
        }

        return entries;
    }

    private static void Units(JsonElement units, Places places, List<ReadingProblem> problems)
    {
        foreach (var (_, name, theirs, _) in Instant.Append((string.Empty, Rain, "%", string.Empty)))
        {
            if (Find(units, name) is { } unit && !(unit.ValueKind == JsonValueKind.String && string.Equals(unit.GetString(), theirs, StringComparison.Ordinal)))
            {
                problems.Add(new ReadingProblem($"The forecast states `{name}` in {TokenNames.Quote(unit.ToString())}; the format has `{theirs}`.", places.Of($"properties.meta.units.{name}"), "Import it as a CSV with a mapping."));
            }
        }
    }

    private static ImportedEntry Hour(JsonElement hour, DateTimeOffset moment, string at, Places places, List<ReadingProblem> problems)
    {
        List<ImportedValue> values = [new("at", ImportTexts.Moment(moment)) { Span = places.Of($"{at}.time") }];
        foreach (var (key, name, _, unit) in Instant)
        {
            if (Number(hour, at, places, problems, "data", "instant", "details", name) is var (number, span))
            {
                values.Add(new ImportedValue(key, key is "cloud_eighths" ? ImportTexts.Eighths((double)number) : $"{Written(number)} {unit}") { Span = span });
            }
        }

        if (Number(hour, at, places, problems, "data", "next_1_hours", "details", Rain) is var (chance, where))
        {
            values.Add(new ImportedValue("rain_chance", $"{Written(chance)} %") { Span = where });
        }

        return new ImportedEntry(values);
    }

    private static (decimal Number, TextSpan Span)? Number(JsonElement hour, string at, Places places, List<ReadingProblem> problems, params string[] path)
    {
        if (Find(hour, path) is not { } value)
        {
            return null;
        }

        var way = $"{at}.{string.Join('.', path)}";
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDecimal(out var number))
        {
            return (number, places.Of(way));
        }

        problems.Add(new ReadingProblem($"`{path[^1]}` is no number.", places.Of(way)));
        return null;
    }

    private static string Written(decimal number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    private static JsonElement? Find(JsonElement from, params string[] path)
    {
        foreach (var key in path)
        {
            if (from.ValueKind != JsonValueKind.Object || !from.TryGetProperty(key, out from))
            {
                return null;
            }
        }

        return from;
    }

    private static TextSpan Span(Position? position) => position is { } at ? new TextSpan(at.Line, at.Column, at.EndLine, at.EndColumn) : TextSpan.FileStart;

    /// <summary>Where values stand in the text; walked once.</summary>
    private sealed class Places(ReadOnlyMemory<byte> text)
    {
        private readonly Lazy<IReadOnlyDictionary<string, Position>> all = new(() => JsonPositions.All(text.Span));

        public TextSpan Of(string path) => all.Value.TryGetValue(path, out var position) ? Span(position) : TextSpan.FileStart;
    }
}

/// <summary>Which hours of a forecast are wanted, and in which zone they are written.</summary>
internal sealed class ForecastWindow
{
    private readonly DateTimeZone? zone;
    private readonly DateTimeOffset? from;
    private readonly DateTimeOffset? until;

    private ForecastWindow(DateTimeZone? zone, DateTimeOffset? from, DateTimeOffset? until) => (this.zone, this.from, this.until) = (zone, from, until);

    /// <summary>The window, or why there is none.</summary>
    public static (ForecastWindow? Window, ReadingProblem? Problem) Of(string? zone, string? from, string? until)
    {
        DateTimeZone? known = null;
        if (zone is not null)
        {
            List<ReadingProblem> problems = [];
            known = MappingReader.Zone(new ScalarToken(zone, ScalarStyle.Plain, TextSpan.FileStart), problems);
            if (known is null)
            {
                return (null, problems[0]);
            }
        }

        var (first, last) = (Moment(from, known), Moment(until, known));
        return (from is null || first is not null) && (until is null || last is not null)
            ? (new ForecastWindow(known, first, last), null)
            : (null, new ReadingProblem("`--from` and `--until` take a moment such as `2031-06-12T21:00+02:00`.", TextSpan.FileStart, "Without an offset, name the `--zone`; a time that happens twice needs the offset."));
    }

    /// <summary>Whether a moment is wanted.</summary>
    public bool Holds(DateTimeOffset moment) => !(moment < from) && !(moment > until);

    /// <summary>A moment in the zone in which it is written.</summary>
    public DateTimeOffset Shown(DateTimeOffset moment) => zone is null ? moment : Instant.FromDateTimeOffset(moment).InZone(zone).ToDateTimeOffset();

    private static DateTimeOffset? Moment(string? text, DateTimeZone? zone) => text is null || ScalarTexts.Moment(text) is not { } moment ? null
        : moment.Offset is { } offset ? new DateTimeOffset(moment.Local, offset)
        : zone?.MapLocal(LocalDateTime.FromDateTime(moment.Local)) is { Count: 1 } mapped ? mapped.Single().ToDateTimeOffset()
        : null;
}

using System.Globalization;
using System.Text.Json;
using Laygate.Model.Plans;

namespace Laygate.Reading.Reports;

/// <summary>A text that is JSON but not the report it should be.</summary>
/// <param name="path">Where.</param>
/// <param name="message">What is wrong.</param>
internal sealed class ReportShapeException(string path, string message) : Exception(message)
{
    /// <summary>Where, as <see cref="JsonPlace.Path"/>.</summary>
    public string Path { get; } = path;
}

/// <summary>A value of a JSON text and the way to it; every read says what should stand there.</summary>
/// <param name="element">The value.</param>
/// <param name="path">Keys and numbers from the top: <c>files[0].reports[0].stage</c>.</param>
internal readonly struct JsonPlace(JsonElement element, string path)
{
    /// <summary>The way to it.</summary>
    public string Path => path;

    /// <summary>Whether it is an object.</summary>
    public bool IsObject => element.ValueKind == JsonValueKind.Object;

    /// <summary>Whether it is a text.</summary>
    public bool IsText => element.ValueKind == JsonValueKind.String;

    /// <summary>What is wrong here.</summary>
    public ReportShapeException Wrong(string what) => new(path, path.Length == 0 ? $"The report {what}." : $"`{path}` {what}.");

    /// <summary>The value of a key; null when it is missing or null.</summary>
    public JsonPlace? Maybe(string key)
    {
        if (!IsObject)
        {
            throw Wrong("should be an object");
        }

        return element.TryGetProperty(key, out var value) && value.ValueKind != JsonValueKind.Null ? new JsonPlace(value, Join(key)) : null;
    }

    /// <summary>The value of a key that must be there.</summary>
    public JsonPlace Of(string key) => Maybe(key) ?? throw Wrong($"lacks `{key}`");

    /// <summary>Keys and values of the object.</summary>
    public IReadOnlyList<(string Key, JsonPlace Value)> Entries()
    {
        if (!IsObject)
        {
            throw Wrong("should be an object");
        }

        return [.. element.EnumerateObject().Select(At)];
    }

    /// <summary>Text.</summary>
    public string Text(string key) => Of(key).AsText();

    /// <summary>Text, or null.</summary>
    public string? MaybeText(string key) => Maybe(key)?.AsText();

    /// <summary>A number, or null.</summary>
    public double? MaybeNumber(string key) => Maybe(key)?.AsNumber();

    /// <summary>A whole number.</summary>
    public int Whole(string key) => Of(key).AsWhole();

    /// <summary>A whole number; 0 when it is missing.</summary>
    public int WholeOrZero(string key) => Maybe(key)?.AsWhole() ?? 0;

    /// <summary>Yes or no; no when it is missing.</summary>
    public bool Flag(string key) => Maybe(key)?.AsFlag() ?? false;

    /// <summary>A member of a closed list.</summary>
    public T Word<T>(string key)
        where T : struct, Enum => Of(key).AsWord<T>();

    /// <summary>A member of a closed list, or null.</summary>
    public T? MaybeWord<T>(string key)
        where T : struct, Enum => Maybe(key)?.AsWord<T>();

    /// <summary>A day.</summary>
    public DateOnly Day(string key) => Of(key).AsDay();

    /// <summary>A day, or null.</summary>
    public DateOnly? MaybeDay(string key) => Maybe(key)?.AsDay();

    /// <summary>A moment.</summary>
    public DateTimeOffset Moment(string key) => Of(key).AsMoment();

    /// <summary>A moment, or null.</summary>
    public DateTimeOffset? MaybeMoment(string key) => Maybe(key)?.AsMoment();

    /// <summary>The entries of a list; none when it is missing.</summary>
    public IReadOnlyList<T> List<T>(string key, Func<JsonPlace, T> read) => Maybe(key)?.AsList(read) ?? [];

    /// <summary>Itself as text.</summary>
    public string AsText()
    {
        if (!IsText)
        {
            throw Wrong("should be text");
        }

        return element.GetString()!;
    }

    private double AsNumber() => element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var number) && double.IsFinite(number)
        ? number
        : throw Wrong("should be a number");

    private int AsWhole() => element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out var number) ? number : throw Wrong("should be a whole number");

    private bool AsFlag() => element.ValueKind is JsonValueKind.True or JsonValueKind.False ? element.GetBoolean() : throw Wrong("should be true or false");

    private T AsWord<T>()
        where T : struct, Enum => Words.Find<T>(AsText()) ?? throw Wrong($"should be one of {string.Join(", ", Words.Of<T>())}");

    private DateOnly AsDay() => DateOnly.TryParseExact(AsText(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
        ? day
        : throw Wrong("should be a day such as 2031-05-14");

    private DateTimeOffset AsMoment() => DateTimeOffset.TryParseExact(AsText(), "yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment)
        ? moment
        : throw Wrong("should be a moment such as 2031-05-14T21:15:00+02:00");

    private List<T> AsList<T>(Func<JsonPlace, T> read)
    {
        if (element.ValueKind != JsonValueKind.Array)
        {
            throw Wrong("should be a list");
        }

        var list = new List<T>(element.GetArrayLength());
        foreach (var item in element.EnumerateArray())
        {
            list.Add(read(new JsonPlace(item, FormattableString.Invariant($"{path}[{list.Count}]"))));
        }

        return list;
    }

    private (string Key, JsonPlace Value) At(JsonProperty entry) => (entry.Name, new JsonPlace(entry.Value, Join(entry.Name)));

    private string Join(string key) => path.Length == 0 ? key : $"{path}.{key}";
}

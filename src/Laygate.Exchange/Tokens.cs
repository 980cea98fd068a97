using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Exchange;

/// <summary>How a value that is one token of JSON is written and read.</summary>
public interface IToken
{
    /// <summary>Whether it may be missing or null although its type has no null; then it is false, 0 or empty.</summary>
    bool MayLack { get; }

    /// <summary>The words that it may be; null for any value of its kind.</summary>
    IReadOnlyList<string>? Words { get; }

    /// <summary>What should stand here; null when it does.</summary>
    string? Wrong(JsonElement element);
}

/// <summary>A value that is written as text.</summary>
/// <param name="wanted">What is said of a text that is none.</param>
public abstract class TextToken<T>(string wanted) : JsonConverter<T>, IToken
    where T : struct
{
    /// <inheritdoc/>
    public bool MayLack => false;

    /// <inheritdoc/>
    public virtual IReadOnlyList<string>? Words => null;

    /// <inheritdoc/>
    public string? Wrong(JsonElement element) =>
        element.ValueKind != JsonValueKind.String ? "should be text" : Find(element.GetString()!) is null ? wanted : null;

    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Find(reader.GetString()!) ?? throw new JsonException(wanted);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(Text(value));

    /// <summary>What a text means; null for nothing.</summary>
    protected abstract T? Find(string text);

    /// <summary>How it is written.</summary>
    protected abstract string Text(T value);
}

/// <summary>A member of a closed list.</summary>
public class WordToken<T>() : TextToken<T>($"should be one of {string.Join(", ", Model.Plans.Words.Of<T>())}")
    where T : struct, Enum
{
    // A report has thousands of words: they are encoded once.
    private readonly T[] members = Enum.GetValues<T>();
    private readonly JsonEncodedText[] encoded = [.. Model.Plans.Words.Of<T>().Select(word => JsonEncodedText.Encode(word))];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Words => Model.Plans.Words.Of<T>();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(encoded[Array.IndexOf(members, value)]);

    /// <inheritdoc/>
    protected override T? Find(string text) => Model.Plans.Words.Find<T>(text);

    /// <inheritdoc/>
    protected override string Text(T value) => Model.Plans.Words.Of(value);
}

/// <summary>Whether to lay; a report of version 1 calls it go, caution or no-go.</summary>
public sealed class VerdictToken : WordToken<LayingVerdict>
{
    /// <inheritdoc/>
    protected override LayingVerdict? Find(string text) => text switch
    {
        "go" => LayingVerdict.Pass,
        "caution" => LayingVerdict.Warn,
        "no-go" => LayingVerdict.Fail,
        _ => base.Find(text),
    };
}

/// <summary>A severity by its letter.</summary>
public sealed class SeverityToken() : TextToken<Severity>("should be one of A, B, C")
{
    /// <inheritdoc/>
    public override IReadOnlyList<string> Words => Enum.GetNames<Severity>();

    /// <inheritdoc/>
    protected override Severity? Find(string text) => Array.IndexOf(Enum.GetNames<Severity>(), text) is var index and >= 0 ? Enum.GetValues<Severity>()[index] : null;

    /// <inheritdoc/>
    protected override string Text(Severity value) => value.ToString();
}

/// <summary>A day.</summary>
public sealed class DayToken() : TextToken<DateOnly>("should be a day such as 2031-05-14")
{
    private const string Form = "yyyy-MM-dd";

    /// <inheritdoc/>
    protected override DateOnly? Find(string text) => DateOnly.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <inheritdoc/>
    protected override string Text(DateOnly value) => value.ToString(Form, CultureInfo.InvariantCulture);
}

/// <summary>A moment with its offset.</summary>
public sealed class MomentToken() : TextToken<DateTimeOffset>("should be a moment such as 2031-05-14T21:15:00+02:00")
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:sszzz";

    /// <inheritdoc/>
    protected override DateTimeOffset? Find(string text) =>
        DateTimeOffset.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment) ? moment : null;

    /// <inheritdoc/>
    protected override string Text(DateTimeOffset value) => value.ToString(Form, CultureInfo.InvariantCulture);
}

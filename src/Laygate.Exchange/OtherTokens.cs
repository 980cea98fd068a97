using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Laygate.Exchange;

/// <summary>A value whose token is not text.</summary>
/// <param name="mayLack">Whether it may be missing.</param>
/// <param name="wrong">What should stand where the token is another.</param>
public abstract class OtherToken<T>(bool mayLack, Func<JsonElement, string?> wrong) : JsonConverter<T>, IToken
{
    /// <inheritdoc/>
    public bool MayLack => mayLack;

    /// <inheritdoc/>
    public IReadOnlyList<string>? Words => null;

    /// <inheritdoc/>
    public override bool HandleNull => mayLack;

    /// <inheritdoc/>
    public string? Wrong(JsonElement element) => wrong(element);
}

/// <summary>
/// A number with 12 significant digits: full precision without the noise of binary fractions; null where it is not finite.
/// </summary>
public sealed class NumberToken() : OtherToken<double>(mayLack: false, element =>
    element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var number) && double.IsFinite(number) ? null : "should be a number")
{
    /// <summary>The number as it is written and read back: with 12 significant digits.</summary>
    public static double Kept(double number)
    {
        // A whole number below keeps all its digits, and most numbers are whole.
        if (Math.Abs(number) < 1e11 && Math.Truncate(number) == number)
        {
            return number;
        }

        Span<char> digits = stackalloc char[32];
        return double.IsFinite(number) && number.TryFormat(digits, out var count, "G12", CultureInfo.InvariantCulture)
            ? double.Parse(digits[..count], CultureInfo.InvariantCulture)
            : number;
    }

    /// <inheritdoc/>
    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
    {
        if (double.IsFinite(value))
        {
            writer.WriteNumberValue(Kept(value));
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}

/// <summary>Yes or no; no when it is missing.</summary>
public sealed class YesNoToken() : OtherToken<bool>(mayLack: true, element => element.ValueKind is JsonValueKind.True or JsonValueKind.False ? null : "should be true or false")
{
    /// <inheritdoc/>
    public override bool Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType == JsonTokenType.True;

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, bool value, JsonSerializerOptions options) => writer.WriteBooleanValue(value);
}

/// <summary>A whole number.</summary>
/// <param name="mayLack">Whether it may be missing.</param>
/// <param name="least">Least number.</param>
public class WholeToken(bool mayLack, int least) : OtherToken<int>(mayLack, element =>
    element.ValueKind != JsonValueKind.Number || !element.TryGetInt32(out var number) ? "should be a whole number"
    : number < least ? FormattableString.Invariant($"should be {least} or more") : null)
{
    /// <summary>Any whole number.</summary>
    public WholeToken()
        : this(mayLack: false, int.MinValue)
    {
    }

    /// <inheritdoc/>
    public override int Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType == JsonTokenType.Null ? 0 : reader.GetInt32();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, int value, JsonSerializerOptions options) => writer.WriteNumberValue(value);
}

/// <summary>A whole number from 1.</summary>
public sealed class FromOneToken() : WholeToken(mayLack: false, 1);

/// <summary>A whole number; 0 when it is missing.</summary>
public sealed class WholeOrZeroToken() : WholeToken(mayLack: true, int.MinValue);

/// <summary>What whoever writes words anew, so that nobody reads it: whatever stands there is passed over.</summary>
public abstract class AnewToken<T>() : OtherToken<T?>(mayLack: true, _ => null)
    where T : class
{
    /// <inheritdoc/>
    public override T? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        reader.Skip();
        return null;
    }
}

/// <summary>A sentence that is worded anew.</summary>
public sealed class SentenceToken : AnewToken<string>
{
    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, string? value, JsonSerializerOptions options) => writer.WriteStringValue(value);
}

/// <summary>Sentences that are worded anew.</summary>
public sealed class SentencesToken : AnewToken<IReadOnlyList<string>>
{
    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, IReadOnlyList<string>? value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        foreach (var sentence in value ?? [])
        {
            writer.WriteStringValue(sentence);
        }

        writer.WriteEndArray();
    }
}

/// <summary>Text; empty when it is missing.</summary>
public sealed class TextOrEmptyToken() : OtherToken<string?>(mayLack: true, element => element.ValueKind == JsonValueKind.String ? null : "should be text")
{
    /// <inheritdoc/>
    public override string Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString() ?? string.Empty;

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, string? value, JsonSerializerOptions options) => writer.WriteStringValue(value);
}

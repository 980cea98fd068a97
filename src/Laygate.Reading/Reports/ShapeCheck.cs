using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Laygate.Exchange;

namespace Laygate.Reading.Reports;

/// <summary>What is wrong in a JSON text, and where.</summary>
/// <param name="Path">Keys and numbers from the top: <c>files[0].reports[0].stage</c>; empty for the text as a whole.</param>
/// <param name="What">What is wrong, as the end of a sentence.</param>
internal sealed record ShapeFault(string Path, string What)
{
    /// <summary>The sentence.</summary>
    public string Message => Path.Length == 0 ? $"The report {What}." : $"`{Path}` {What}.";

    /// <summary>The same fault seen from the place above.</summary>
    public ShapeFault Under(string step) => this with { Path = Path.Length == 0 || Path[0] == '[' ? step + Path : $"{step}.{Path}" };
}

/// <summary>
/// Finds the first value of a JSON text that is not as the records of its shape say. Null is missing; keys that the shape does not know are passed over;
/// lists, and what may lack, may be missing.
/// </summary>
internal sealed class ShapeCheck
{
    private readonly Dictionary<JsonTypeInfo, Key[]> keys = [];

    /// <summary>The first fault of a value; null when there is none.</summary>
    public ShapeFault? Of(JsonElement element, JsonTypeInfo shape) => Of(element, shape, Token(shape));

    // What has no token of ours is text.
    private ShapeFault? Of(JsonElement element, JsonTypeInfo shape, IToken? token) => (token is null ? shape.Kind : JsonTypeInfoKind.None, element.ValueKind) switch
    {
        (JsonTypeInfoKind.Object, JsonValueKind.Object) => InObject(element, shape),
        (JsonTypeInfoKind.Dictionary, JsonValueKind.Object) => InMap(element, Inside(shape)),
        (JsonTypeInfoKind.Enumerable, JsonValueKind.Array) => InList(element, Inside(shape)),
        (JsonTypeInfoKind.Object or JsonTypeInfoKind.Dictionary, _) => new ShapeFault(string.Empty, "should be an object"),
        (JsonTypeInfoKind.Enumerable, _) => new ShapeFault(string.Empty, "should be a list"),
        (_, var kind) => (token is not null ? token.Wrong(element) : kind == JsonValueKind.String ? null : "should be text") is { } what ? new ShapeFault(string.Empty, what) : null,
    };

    private ShapeFault? InObject(JsonElement element, JsonTypeInfo shape)
    {
        using var entries = element.EnumerateObject().GetEnumerator();
        var next = entries.MoveNext();
        foreach (var key in Keys(shape))
        {
            // The keys mostly stand in the order in which they are written: to look each up would go over all of them each time.
            JsonElement value;
            var found = true;
            if (next && entries.Current.NameEquals(key.Name))
            {
                value = entries.Current.Value;
                next = entries.MoveNext();
            }
            else
            {
                found = element.TryGetProperty(key.Name, out value);
            }

            if (!found || value.ValueKind == JsonValueKind.Null)
            {
                if (!key.MayLack)
                {
                    return new ShapeFault(string.Empty, $"lacks `{key.Name}`");
                }
            }
            else if (Of(value, key.Shape, key.Token) is { } fault)
            {
                return fault.Under(key.Name);
            }
        }

        return null;
    }

    private ShapeFault? InMap(JsonElement element, JsonTypeInfo inner)
    {
        foreach (var entry in element.EnumerateObject())
        {
            if (Of(entry.Value, inner) is { } fault)
            {
                return fault.Under(entry.Name);
            }
        }

        return null;
    }

    private ShapeFault? InList(JsonElement element, JsonTypeInfo inner)
    {
        foreach (var (index, item) in element.EnumerateArray().Index())
        {
            if (Of(item, inner) is { } fault)
            {
                return fault.Under(FormattableString.Invariant($"[{index}]"));
            }
        }

        return null;
    }

    private Key[] Keys(JsonTypeInfo shape) => keys.TryGetValue(shape, out var known) ? known : keys[shape] = [.. shape.Properties.Select(KeyOf)];

    private static Key KeyOf(JsonPropertyInfo property)
    {
        var inner = property.Options.GetTypeInfo(property.PropertyType);
        var token = property.CustomConverter as IToken ?? Token(inner);
        return new Key(property.Name, inner, token, property.IsGetNullable || inner.Kind == JsonTypeInfoKind.Enumerable || token?.MayLack == true);
    }

    private static JsonTypeInfo Inside(JsonTypeInfo shape) => shape.Options.GetTypeInfo(shape.ElementType!);

    private static IToken? Token(JsonTypeInfo shape) => (Nullable.GetUnderlyingType(shape.Type) is { } inner ? shape.Options.GetTypeInfo(inner) : shape).Converter as IToken;

    private sealed record Key(string Name, JsonTypeInfo Shape, IToken? Token, bool MayLack);
}

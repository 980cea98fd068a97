using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Laygate.Exchange;

namespace Laygate.Validation.Reports;

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
internal static class ShapeCheck
{
    /// <summary>The first fault of a value; null when there is none.</summary>
    public static ShapeFault? Of(JsonElement element, JsonTypeInfo shape) => (shape.Kind, element.ValueKind) switch
    {
        (JsonTypeInfoKind.Object, JsonValueKind.Object) => InObject(element, shape),
        (JsonTypeInfoKind.Dictionary, JsonValueKind.Object) => InMap(element, Inside(shape)),
        (JsonTypeInfoKind.Enumerable, JsonValueKind.Array) => InList(element, Inside(shape)),
        (JsonTypeInfoKind.Object or JsonTypeInfoKind.Dictionary, _) => new ShapeFault(string.Empty, "should be an object"),
        (JsonTypeInfoKind.Enumerable, _) => new ShapeFault(string.Empty, "should be a list"),
        _ => Wrong(element, Token(shape)),
    };

    private static ShapeFault? InObject(JsonElement element, JsonTypeInfo shape)
    {
        foreach (var property in shape.Properties)
        {
            var inner = shape.Options.GetTypeInfo(property.PropertyType);
            var token = property.CustomConverter as IToken ?? Token(inner);
            if (!element.TryGetProperty(property.Name, out var value) || value.ValueKind == JsonValueKind.Null)
            {
                if (!property.IsGetNullable && inner.Kind != JsonTypeInfoKind.Enumerable && token?.MayLack != true)
                {
                    return new ShapeFault(string.Empty, $"lacks `{property.Name}`");
                }
            }
            else if ((property.CustomConverter is null ? Of(value, inner) : Wrong(value, token)) is { } fault)
            {
                return fault.Under(property.Name);
            }
        }

        return null;
    }

    private static ShapeFault? InMap(JsonElement element, JsonTypeInfo inner)
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

    private static ShapeFault? InList(JsonElement element, JsonTypeInfo inner)
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

    private static JsonTypeInfo Inside(JsonTypeInfo shape) => shape.Options.GetTypeInfo(shape.ElementType!);

    private static IToken? Token(JsonTypeInfo shape) => (Nullable.GetUnderlyingType(shape.Type) is { } inner ? shape.Options.GetTypeInfo(inner) : shape).Converter as IToken;

    // What has no token of ours is text.
    private static ShapeFault? Wrong(JsonElement element, IToken? token) =>
        (token is null ? (element.ValueKind == JsonValueKind.String ? null : "should be text") : token.Wrong(element)) is { } what ? new ShapeFault(string.Empty, what) : null;
}

using System.Globalization;
using System.Text;
using System.Text.Json;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Finds lines and columns in a JSON text, for problems only.</summary>
internal static class JsonPositions
{
    /// <summary>Where the parser stopped.</summary>
    public static Position? Of(ReadOnlySpan<byte> text, JsonException error)
    {
        if (error is not { LineNumber: { } line, BytePositionInLine: { } column })
        {
            return null;
        }

        var start = 0;
        for (var number = 0; number < line; number++)
        {
            var end = text[start..].IndexOf((byte)'\n');
            start += end < 0 ? 0 : end + 1;
        }

        return At(text, (int)Math.Min(start + column, text.Length));
    }

    /// <summary>Where the value stands to which a path leads; the beginning when there is none.</summary>
    public static Position Of(ReadOnlySpan<byte> text, string path)
    {
        var found = -1;
        Walk(text, (way, start) =>
        {
            found = string.Equals(way, path, StringComparison.Ordinal) ? start : found;
            return found < 0;
        });
        return found < 0 ? new Position(1, 1, 1, 1) : At(text, found);
    }

    /// <summary>Where each value stands, by the path that leads to it.</summary>
    public static IReadOnlyDictionary<string, Position> All(ReadOnlySpan<byte> text)
    {
        var starts = new List<(string Path, int Start)>();
        Walk(text, (way, start) =>
        {
            starts.Add((way, start));
            return true;
        });

        // Counted on from value to value: a text of one line is as long as any other.
        var all = new Dictionary<string, Position>(StringComparer.Ordinal);
        var (line, column, at) = (1, 1, 0);
        foreach (var (path, start) in starts)
        {
            var between = text[at..start];
            var last = between.LastIndexOf((byte)'\n');
            line += between.Count((byte)'\n');
            column = Encoding.UTF8.GetCharCount(between[(last + 1)..]) + (last < 0 ? column : 1);
            at = start;
            all[path] = new Position(line, column, line, column);
        }

        return all;
    }

    // Goes through all values until told to stop.
    private static void Walk(ReadOnlySpan<byte> text, Func<string, int, bool> visit)
    {
        var reader = new Utf8JsonReader(text);
        var way = new List<Step>();
        while (reader.Read())
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.PropertyName:
                    way[^1] = new Step(null, Encoding.UTF8.GetString(reader.ValueSpan));
                    continue;
                case JsonTokenType.EndObject or JsonTokenType.EndArray:
                    way.RemoveAt(way.Count - 1);
                    continue;
                default:
                    break;
            }

            if (way.Count > 0 && way[^1].Index is { } index)
            {
                way[^1] = new Step(index + 1, string.Empty);
            }

            if (!visit(Path(way), (int)reader.TokenStartIndex))
            {
                return;
            }

            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
            {
                way.Add(new Step(reader.TokenType is JsonTokenType.StartArray ? -1 : null, string.Empty));
            }
        }
    }

    private static string Path(List<Step> way)
    {
        var path = new StringBuilder();
        foreach (var step in way)
        {
            if (step.Index is { } index)
            {
                path.Append(CultureInfo.InvariantCulture, $"[{index}]");
            }
            else
            {
                path.Append(path.Length > 0 ? "." : string.Empty).Append(step.Name);
            }
        }

        return path.ToString();
    }

    // Columns count UTF-16 units, as everywhere in reports.
    private static Position At(ReadOnlySpan<byte> text, int offset)
    {
        var before = text[..Math.Clamp(offset, 0, text.Length)];
        var line = before.Count((byte)'\n') + 1;
        var column = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
        return new Position(line, column, line, column);
    }

    // A number in a list, or else a key of an object.
    private readonly record struct Step(int? Index, string Name);
}

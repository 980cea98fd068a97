using System.Text;
using Laygate.Reading.Yaml;

namespace Laygate.ConformanceTests.Faults;

/// <summary>A plan as text, changed at paths such as <c>supply/trucks/binder-trucks/count</c>: an entry of a list is named by its id, course or time.</summary>
internal static class PlanText
{
    private static readonly string[] Names = ["id", "at", "course"];

    public static MapToken Read(string text) => (MapToken)Assert.Single(Sound(text).Documents).Root;

    public static MapToken Set(MapToken plan, string path, YamlToken? value) => (MapToken)Edit(plan, path.Split('/'), 0, value, path)!;

    /// <summary>The same entries, the last first.</summary>
    public static MapToken Reversed(MapToken plan, string path) => path == "."
        ? new MapToken([.. plan.Entries.Reverse()], plan.Span)
        : Set(plan, path, Find(plan, path) switch
        {
            ListToken list => new ListToken([.. list.Items.Reverse()], list.Span),
            MapToken map => new MapToken([.. map.Entries.Reverse()], map.Span),
            _ => throw new InvalidOperationException($"Nothing to turn round at {path}."),
        });

    /// <summary>The plan as a file.</summary>
    public static string Write(MapToken plan)
    {
        var text = new StringBuilder();
        Block(plan, 0, text);
        return text.ToString();
    }

    private static ReadingResult Sound(string text)
    {
        var read = YamlReader.Read(Encoding.UTF8.GetBytes(text));
        Assert.Empty(read.Problems);
        return read;
    }

    private static YamlToken? Find(YamlToken? token, string path) => path.Split('/').Aggregate(token, (at, step) => at switch
    {
        MapToken map => map[step],
        ListToken list => list.Items.FirstOrDefault(item => IsNamed(item, step)),
        _ => null,
    });

    private static bool IsNamed(YamlToken item, string name) =>
        item is MapToken map && Names.Select(key => (map[key] as ScalarToken)?.Text).FirstOrDefault(text => text is not null) == name;

    private static YamlToken? Edit(YamlToken? token, string[] steps, int depth, YamlToken? value, string path)
    {
        if (depth == steps.Length)
        {
            return value;
        }

        var step = steps[depth];
        // A group that is new needs no more than a name: a list where the value says so, else keys.
        token ??= value is MapToken { } made && depth == steps.Length - 1 && made["id"] is not null ? new ListToken([], value.Span) : new MapToken([], value?.Span ?? TextSpan.FileStart);
        if (token is ListToken list)
        {
            var found = list.Items.FirstOrDefault(item => IsNamed(item, step));
            Assert.True(found is not null || (value is not null && depth == steps.Length - 1), $"There is no {step} in {path}.");
            var item = Edit(found, steps, depth + 1, value, path);
            return new ListToken(found is null ? [.. list.Items, item!] : [.. list.Items.Select(old => ReferenceEquals(old, found) ? item : old).OfType<YamlToken>()], list.Span);
        }

        var map = Assert.IsType<MapToken>(token);
        var entry = map.Find(step);
        Assert.True(entry is not null || value is not null, $"There is nothing at {path}.");
        var changed = Edit(entry?.Value, steps, depth + 1, value, path);
        return entry is null
            ? new MapToken([.. map.Entries, new MapEntry(new ScalarToken(step, ScalarStyle.Plain, map.Span), changed!)], map.Span)
            : new MapToken([.. map.Entries.Select(old => ReferenceEquals(old, entry) ? changed is null ? null : old with { Value = changed } : old).OfType<MapEntry>()], map.Span);
    }

    private static void Block(YamlToken token, int indent, StringBuilder text)
    {
        switch (token)
        {
            case MapToken { Entries.Count: > 0 } map:
                foreach (var entry in map.Entries)
                {
                    text.Append(' ', indent).Append(Scalar(entry.Key)).Append(':');
                    Below(entry.Value, indent + 2, text);
                }

                break;
            case ListToken { Items.Count: > 0 } list:
                foreach (var item in list.Items)
                {
                    text.Append(' ', indent).Append('-');
                    Below(item, indent + 2, text);
                }

                break;
            default:
                throw new InvalidOperationException("An empty group cannot be written.");
        }
    }

    private static void Below(YamlToken token, int indent, StringBuilder text)
    {
        if (token is ScalarToken scalar)
        {
            text.Append(' ').Append(Scalar(scalar)).Append('\n');
            return;
        }

        text.Append('\n');
        Block(token, indent, text);
    }

    private static string Scalar(ScalarToken scalar) => scalar.Style == ScalarStyle.Plain
        ? scalar.Text
        : $"\"{scalar.Text.Replace("\\", @"\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal)}\"";
}

using System.Text;
using Laygate.Reading.Imports;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Importing;

/// <summary>Puts imported hours into a plan in place of those that it has; every other line, comments included, stays as it is.</summary>
public static class WeatherEdit
{
    private const string Key = "weather";

    /// <summary>Puts the hours into a plan.</summary>
    /// <param name="plan">Bytes of the plan.</param>
    /// <param name="import">The hours.</param>
    /// <returns>The changed plan; null where its form leaves no place that is safe, or it cannot be read.</returns>
    public static byte[]? Into(byte[] plan, Import import)
    {
        var hasMark = plan is [0xEF, 0xBB, 0xBF, ..];
        var text = Encoding.UTF8.GetString(hasMark ? plan.AsSpan(3) : plan);
        if (YamlReader.Read(plan) is not { IsSound: true, Documents: [{ Root: MapToken root }] } || IsFlow(text, root.Span))
        {
            return null;
        }

        var end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        List<string> lines = [.. text.Split('\n').Select(line => line.TrimEnd('\r'))];
        IReadOnlyList<string> own = [.. import.Around.Select(value => value.Key), "imported", "hours"];
        if (!Change(lines, text, root, import, own))
        {
            return null;
        }

        var changed = string.Join(end, lines);
        var read = YamlReader.Read(Encoding.UTF8.GetBytes(changed));

        // An anchor may have stood in what went, or the hours may belong to something else than they seem to.
        return read is { IsSound: true, Documents: [{ Root: MapToken now }] } && Same(Rest(root, own), Rest(now, own)) && (now[Key] as MapToken)?["hours"] is ListToken hours && hours.Items.Count == import.Entries.Count
            ? [.. hasMark ? Encoding.UTF8.Preamble : [], .. Encoding.UTF8.GetBytes(changed)]
            : null;
    }

    private static bool Change(List<string> lines, string text, MapToken root, Import import, IReadOnlyList<string> own)
    {
        var section = ImportText.Write(import).TrimEnd('\n').Split('\n');
        var body = section.SkipWhile(line => line is not (Key + ":")).Skip(1).Select(line => line[2..]).ToList();
        switch (root.Find(Key))
        {
            case null:
                while (lines.Count > 0 && lines[^1].Length == 0)
                {
                    lines.RemoveAt(lines.Count - 1);
                }

                lines.AddRange([.. section, string.Empty]);
                return true;
            case { Value: MapToken weather } entry when weather.Span.Line > entry.Key.Span.Line && !IsFlow(text, weather.Span):
                var kept = weather.Entries.Where(one => !own.Contains(one.Key.Text, StringComparer.Ordinal)).ToList();
                var at = kept.Count > 0 ? kept.Max(one => one.Value.Span.EndLine) : entry.Key.Span.Line;
                var indent = new string(' ', weather.Span.Column - 1);
                lines.InsertRange(at, body.Select(line => indent + line));
                foreach (var gone in weather.Entries.Except(kept).OrderByDescending(one => one.Key.Span.Line))
                {
                    var first = gone.Key.Span.Line - 1;
                    lines.RemoveRange(first + (first >= at ? body.Count : 0), gone.Value.Span.EndLine - first);
                }

                return true;
            default:
                return false;
        }
    }

    private static bool IsFlow(string text, TextSpan span) => text.Split('\n')[span.Line - 1].ElementAtOrDefault(span.Column - 1) is '{' or '[';

    // The plan but for what is imported.
    private static MapToken Rest(MapToken root, IReadOnlyList<string> own) => new(
        [.. root.Entries.Select(entry => entry.Key.Text is Key && entry.Value is MapToken weather ? new MapEntry(entry.Key, Without(weather, own)) : entry).Where(entry => entry.Key.Text is not Key || entry.Value is not MapToken { Entries.Count: 0 })],
        root.Span);

    private static MapToken Without(MapToken map, IReadOnlyList<string> keys) => new([.. map.Entries.Where(entry => !keys.Contains(entry.Key.Text, StringComparer.Ordinal))], map.Span);

    private static bool Same(YamlToken one, YamlToken other) => (one, other) switch
    {
        (ScalarToken first, ScalarToken second) => first.Style == second.Style && string.Equals(first.Text, second.Text, StringComparison.Ordinal),
        (ListToken first, ListToken second) => first.Items.Count == second.Items.Count && first.Items.Zip(second.Items).All(pair => Same(pair.First, pair.Second)),
        (MapToken first, MapToken second) => first.Entries.Count == second.Entries.Count && first.Entries.Zip(second.Entries).All(pair => Same(pair.First.Key, pair.Second.Key) && Same(pair.First.Value, pair.Second.Value)),
        _ => false,
    };
}

using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Cases;

/// <summary>Changes a plan on its token tree, so that a case sees exactly what a reader of the changed text would see.</summary>
internal static class PlanEdit
{
    /// <summary>Sets the value of a path, making groups on the way where there are none.</summary>
    /// <exception cref="CaseException">The path leads nowhere.</exception>
    public static MapToken Set(MapToken plan, string path, YamlToken value) => (MapToken)Edit(plan, Steps(plan, path), 0, value, path)!;

    /// <summary>Removes the value of a path.</summary>
    /// <exception cref="CaseException">There is nothing to remove.</exception>
    public static MapToken Remove(MapToken plan, string path) => (MapToken)Edit(plan, Steps(plan, path), 0, null, path)!;

    // `course:wearing/thickness`, `site/conditions.night`, or a key of the top level.
    private static string[] Steps(MapToken plan, string path)
    {
        var slash = path.IndexOf('/', StringComparison.Ordinal);
        var key = slash < 0 ? path : path[(slash + 1)..];
        string[] inside = key.Length == 0 ? [] : key.Split('.');
        if (slash < 0)
        {
            return path.Contains(':', StringComparison.Ordinal) ? Element(plan, path) : inside;
        }

        return string.Equals(path[..slash], "plan", StringComparison.Ordinal) && IsTopLevel(plan, inside[0])
            ? inside
            : [.. Element(plan, path[..slash]), .. inside];
    }

    private static bool IsTopLevel(MapToken plan, string key) => (plan["plan"] as MapToken)?.Find(key) is null && plan.Find(key) is not null;

    private static string[] Element(MapToken plan, string address)
    {
        var colon = address.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0)
        {
            return [address.Replace('-', '_')];
        }

        var kind = address[..colon];
        if (PlanAddresses.Find(plan, address) is null || string.Equals(kind, "pair", StringComparison.Ordinal))
        {
            throw new CaseException($"The base plan has no element `{address}` that could be changed.");
        }

        var list = PlanAddresses.ListOf(kind);
        return string.Equals(kind, "feeder", StringComparison.Ordinal) ? list : [.. list, address[(colon + 1)..]];
    }

    private static YamlToken? Edit(YamlToken? token, string[] steps, int depth, YamlToken? value, string path)
    {
        if (depth == steps.Length)
        {
            return value;
        }

        return token switch
        {
            ListToken list => EditList(list, steps, depth, value, path),
            MapToken map => EditMap(map, steps, depth, value, path),
            null when value is not null => EditMap(new MapToken([], value.Span), steps, depth, value, path),
            _ => throw new CaseException($"The path `{path}` leads through a value that is no group of keys."),
        };
    }

    private static ListToken EditList(ListToken list, string[] steps, int depth, YamlToken? value, string path)
    {
        var index = list.Items.ToList().FindIndex(item => string.Equals(PositionedToken.Name(item), steps[depth], StringComparison.Ordinal));
        if (index < 0)
        {
            throw new CaseException($"The path `{path}` names `{steps[depth]}`, which the base plan does not have.");
        }

        var changed = Edit(list.Items[index], steps, depth + 1, value, path);
        return new ListToken(
            [.. list.Items.Take(index), .. changed is null ? Array.Empty<YamlToken>() : [changed], .. list.Items.Skip(index + 1)], list.Span);
    }

    private static MapToken EditMap(MapToken map, string[] steps, int depth, YamlToken? value, string path)
    {
        var found = map.Find(steps[depth]);
        if (found is null && value is null)
        {
            throw new CaseException($"There is nothing at `{path}` that could be removed.");
        }

        var changed = Edit(found?.Value, steps, depth + 1, value, path);
        if (found is null)
        {
            return new MapToken([.. map.Entries, new MapEntry(new ScalarToken(steps[depth], ScalarStyle.Plain, changed!.Span), changed)], map.Span);
        }

        return new MapToken(
            [.. map.Entries.Select(entry => ReferenceEquals(entry, found) ? (changed is null ? null : entry with { Value = changed }) : entry).OfType<MapEntry>()], map.Span);
    }
}

/// <summary>A case that cannot be run as it is written.</summary>
internal sealed class CaseException(string message) : Exception(message);

using Laygate.Engineering.Quantities;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;

namespace Laygate.Checking.Starting;

/// <summary>Makes the place that a finding asks for: groups and lists on the way as the schema has them, and a blank at its end.</summary>
/// <param name="schema">The schema of plans.</param>
internal sealed class DraftPlaces(LoadedSchema schema)
{
    private const string OfPlan = "plan";

    /// <summary>Makes a place.</summary>
    /// <param name="plan">The plan so far.</param>
    /// <param name="at">Element and key, as findings name them.</param>
    /// <returns>Whether anything was added; not where it stands already, or where the element is none that a plan states.</returns>
    public bool Ensure(DraftMap plan, InputReference at) => Way(at) is { Length: > 0 } way && IntoMap(plan, schema.Root, way, 0);

    /// <summary>The keys from the top of the plan to a place; names of list entries among them; empty where it is no place of a plan.</summary>
    public string[] Way(InputReference at)
    {
        string[] inside = at.Key.Length == 0 ? [] : at.Key.Split('.');
        var colon = at.Address.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0)
        {
            return string.Equals(at.Address, OfPlan, StringComparison.Ordinal)
                ? inside is [var first, ..] && Find(schema.Root, first) is null ? [OfPlan, .. inside] : inside
                : [at.Address.Replace('-', '_'), .. inside];
        }

        var (kind, id) = (at.Address[..colon], at.Address[(colon + 1)..]);
        return kind switch
        {
            "condition" => ["site", "conditions", id],
            "pair" => ["courses", id[(id.IndexOf('+', StringComparison.Ordinal) + 1)..], .. inside],
            "feeder" => ["supply", "feeder", .. inside],
            _ when PlanAddresses.ListOf(kind) is { Length: > 0 } list && inside.Length > 0 => [.. list, id, .. inside],
            _ => [],
        };
    }

    /// <summary>Whether yes or no stands at a place.</summary>
    /// <param name="way">Its keys, names of list entries among them.</param>
    public bool IsFlag(IReadOnlyList<string> way)
    {
        SchemaNode? node = schema.Root;
        foreach (var step in way)
        {
            node = node is null ? null : SchemaKeys.Item(node) ?? Find(node, step);
        }

        return node is not null && Needs.Words(node) is ["yes", "no"];
    }

    /// <summary>What stands behind a key of a group; null where the schema has no such key.</summary>
    public static SchemaNode? Find(SchemaNode group, string key) =>
        SchemaKeys.Properties(group).FirstOrDefault(property => string.Equals(property.Key, key, StringComparison.Ordinal)).Value;

    private static bool IntoMap(DraftMap map, SchemaNode node, string[] way, int depth)
    {
        var key = Form(map, way[depth]);
        if (Find(node, key) is not { } inner)
        {
            return false;
        }

        var there = map[key];
        if (depth == way.Length - 1)
        {
            if (there is not null)
            {
                return there is DraftMap group && IsBare(group) && Complete(group, inner);
            }

            map.Set(key, Blank(inner));
            return true;
        }

        if (there is null)
        {
            map.Set(key, there = SchemaKeys.Item(inner) is null ? new DraftMap() : new DraftList());
        }

        return Into(map, key, there, inner, way, depth + 1);
    }

    private static bool Into(DraftMap owner, string key, DraftNode there, SchemaNode node, string[] way, int depth)
    {
        switch (there)
        {
            case DraftMap inner:
                return IntoMap(inner, node, way, depth);
            case DraftList list:
                return IntoList(list, SchemaKeys.Item(node)!, way, depth);
            case DraftText { Text: { } reference }:
                // A group that is a reference to a part, and states something of its own from now on.
                var own = DraftMap.Of(("part", reference));
                owner.Set(key, own);
                return IntoMap(own, node, way, depth);
            default:
                return false;
        }
    }

    private static bool IntoList(DraftList list, SchemaNode item, string[] way, int depth)
    {
        var index = list.IndexOf(way[depth]);
        if (index < 0 && Find(item, way[depth]) is not null)
        {
            // A key of the entries, not an entry: each of them wants it.
            return list.Items.OfType<DraftMap>().Aggregate(seed: false, (added, entry) => IntoMap(entry, item, way, depth) || added);
        }

        if (index < 0)
        {
            var name = DraftMap.Names.FirstOrDefault(key => Find(item, key) is not null);
            if (name is null)
            {
                return false;
            }

            list.Items.Add(DraftMap.Of((name, way[depth])));
            index = list.Items.Count - 1;
        }

        if (depth == way.Length - 1)
        {
            return false;
        }

        if (list.Items[index] is DraftText { Text: { } reference })
        {
            list.Items[index] = DraftMap.Of(("part", reference));
        }

        return list.Items[index] is DraftMap map && IntoMap(map, item, way, depth + 1);
    }

    /// <summary>What is left for a person behind a key: a blank, a group with blanks, or a list with one entry.</summary>
    public static DraftNode Blank(SchemaNode node)
    {
        if (SchemaKeys.Item(node) is { } item)
        {
            var list = new DraftList();
            list.Items.Add(Blank(item));
            return list;
        }

        if (!SchemaKeys.Properties(node).Any())
        {
            return DraftText.Blank;
        }

        var map = new DraftMap();
        Complete(map, node);
        return map;
    }

    // What a group must have; where that is nothing or only a name, its single values: a group that says nothing is none.
    private static bool Complete(DraftMap map, SchemaNode node)
    {
        var needed = SchemaKeys.Properties(node).Where(key => SchemaKeys.IsRequired(node, key.Key)).ToList();
        var keys = needed.Exists(key => key.Key is not "id") ? needed : SchemaKeys.Properties(node).Where(key => SchemaKeys.Item(key.Value) is null && !SchemaKeys.Properties(key.Value).Any()).ToList();
        var added = keys.Where(key => map[key.Key] is null).ToList();
        added.ForEach(key => map.Set(key.Key, key.Key is "id" && Needs.Examples(key.Value) is [var id, ..] ? new DraftText(id) : Blank(key.Value)));
        return added.Count > 0;
    }

    private static bool IsBare(DraftMap map) => map.Entries.Count == 0;

    // A width or crossfall is one value or a list of stations; a reference names either.
    private static string Form(DraftMap map, string key)
    {
        var other = key switch
        {
            "width" => "widths",
            "widths" => "width",
            "crossfall" => "crossfalls",
            "crossfalls" => "crossfall",
            _ => null,
        };
        return other is not null && map[key] is null && map[other] is not null ? other : key;
    }
}

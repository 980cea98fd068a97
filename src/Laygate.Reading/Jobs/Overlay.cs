using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Jobs;

/// <summary>Lays what a shift states over what the job states.</summary>
internal static class Overlay
{
    /// <summary>The keys of one group with those of another over them: groups within are put together key by key, lists whose entries have ids entry by entry, any other list is taken whole.</summary>
    public static MapToken Over(MapToken below, MapToken above) => new(
        [
            .. below.Entries.Select(entry => above.Find(entry.Key.Text) is { } own && Over(entry.Value, own.Value) is var value && !ReferenceEquals(value, entry.Value) ? new MapEntry(own.Key, value) : entry),
            .. above.Entries.Where(entry => below.Find(entry.Key.Text) is null),
        ],
        below.Span);

    /// <summary>A group with one value set; null takes it out.</summary>
    public static MapToken With(MapToken map, string key, YamlToken? value)
    {
        var found = map.Find(key);
        return value is null
            ? found is null ? map : new MapToken([.. map.Entries.Where(entry => !ReferenceEquals(entry, found))], map.Span)
            : new MapToken(found is null ? [.. map.Entries, new MapEntry(Key(key, value.Span), value)] : [.. map.Entries.Select(entry => ReferenceEquals(entry, found) ? entry with { Value = value } : entry)], map.Span);
    }

    /// <summary>A key that stands where its value stands.</summary>
    public static ScalarToken Key(string key, TextSpan span) => new(key, ScalarStyle.Plain, span);

    /// <summary>A plan without what addresses name, such as <c>roller:r3</c>.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="without">The addresses.</param>
    /// <param name="problems">Takes those that name nothing.</param>
    public static MapToken Without(MapToken plan, IEnumerable<ScalarToken> without, List<ReadingProblem> problems)
    {
        foreach (var address in without)
        {
            var (kind, id) = address.Text.Split(':', 2) is [var first, var second] ? (first, second) : (address.Text, string.Empty);
            var path = kind is "pair" or "condition" ? [] : PlanAddresses.ListOf(kind);
            if (path.Length > 0 && Removed(plan, path, 0, id) is { } changed)
            {
                plan = changed;
                continue;
            }

            var near = NearestNames.Of(id, path.Length > 0 ? NamesAt(plan, path) : []);
            problems.Add(new ReadingProblem(
                $"The job has nothing that is called {TokenNames.Quote(address.Text)}.",
                address.Span,
                near.Count > 0 ? NearestNames.Asked([.. near.Select(name => $"{kind}:{name}")]) : "Write kind and id, for example `roller:r3` or `measure:glare`."));
        }

        return plan;
    }

    private static YamlToken Over(YamlToken below, YamlToken above) => (below, above) switch
    {
        (MapToken inner, MapToken outer) => Over(inner, outer),
        // What a shift only names again, such as an id, stands where the job states it.
        (ScalarToken inner, ScalarToken outer) when string.Equals(inner.Text, outer.Text, StringComparison.Ordinal) && inner.Style == outer.Style => inner,
        (ListToken inner, ListToken outer) when inner.Items.All(item => IdOf(item) is not null) && outer.Items.All(item => IdOf(item) is not null) => Over(inner, outer),
        _ => above,
    };

    private static ListToken Over(ListToken below, ListToken above)
    {
        var own = above.Items.ToLookup(IdOf, StringComparer.Ordinal);
        var known = below.Items.Select(IdOf).ToHashSet(StringComparer.Ordinal);
        return new ListToken(
            [.. below.Items.Select(item => own[IdOf(item)].Aggregate(item, Over)), .. above.Items.Where(item => !known.Contains(IdOf(item)))],
            below.Span);
    }

    // The word for the measures that apply counts as an entry of that name.
    private static string? IdOf(YamlToken item) => item is ScalarToken { Text: PartKinds.ThatApply } word ? word.Text : ((item as MapToken)?["id"] as ScalarToken)?.Text;

    private static MapToken? Removed(MapToken map, string[] path, int depth, string id)
    {
        if (map.Find(path[depth]) is not { } entry)
        {
            return null;
        }

        if (depth + 1 < path.Length)
        {
            return entry.Value is MapToken inner && Removed(inner, path, depth + 1, id) is { } changed ? With(map, path[depth], changed) : null;
        }

        return entry.Value switch
        {
            MapToken only when string.Equals(IdOf(only), id, StringComparison.Ordinal) => With(map, path[depth], null),
            ListToken list when list.Items.Any(item => string.Equals(PositionedToken.Name(item), id, StringComparison.Ordinal)) =>
                list.Items.Count == 1 ? With(map, path[depth], null)
                : With(map, path[depth], new ListToken([.. list.Items.Where(item => !string.Equals(PositionedToken.Name(item), id, StringComparison.Ordinal))], list.Span)),
            _ => null,
        };
    }

    private static IEnumerable<string> NamesAt(MapToken map, string[] path)
    {
        YamlToken? at = map;
        foreach (var key in path)
        {
            at = (at as MapToken)?[key];
        }

        return at switch
        {
            ListToken list => list.Items.Select(PositionedToken.Name).OfType<string>(),
            MapToken only when IdOf(only) is { } id => [id],
            _ => [],
        };
    }
}

using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Parts;

/// <summary>
/// Makes one plan of a plan and the files that it uses. An entry that names a part has the keys of the part, but for those that it states itself:
/// a group within is put together key by key, a list is taken whole. Behind this, nothing knows that there were several files but places and hashes.
/// </summary>
internal sealed class PlanComposer
{
    private readonly PartStore store;
    private readonly List<ReadingProblem> problems = [];
    private readonly SortedDictionary<string, SortedSet<string>> used = new(StringComparer.Ordinal);

    private PlanComposer(IPartFiles files, LoadedSchema schema) => store = new PartStore(files, schema, problems);

    /// <summary>Puts a plan together.</summary>
    /// <param name="plan">The plan as it was written.</param>
    /// <param name="file">Its file, as it is shown.</param>
    /// <param name="files">The host's files.</param>
    /// <param name="schema">The schema of files of parts; asked for only when there are any.</param>
    /// <returns>The plan without <c>uses</c> and references, the files with what was taken from each, and all problems.</returns>
    public static (MapToken Plan, IReadOnlyList<UsedFile> Used, IReadOnlyList<ReadingProblem> Problems) Compose(MapToken plan, string file, IPartFiles files, Lazy<LoadedSchema> schema)
    {
        var (plans, used, problems) = Compose([plan], file, files, schema);
        return (plans[0], used, problems);
    }

    /// <summary>Puts a plan, and what is to be laid over it, together from the files that the plan names.</summary>
    /// <param name="plans">The plan as it was written, then parts of plans.</param>
    /// <param name="file">Their file, as it is shown.</param>
    /// <param name="files">The host's files.</param>
    /// <param name="schema">The schema of files of parts; asked for only when there are any.</param>
    /// <returns>The same without <c>uses</c> and references, the files with what was taken from each, and all problems.</returns>
    public static (IReadOnlyList<MapToken> Plans, IReadOnlyList<UsedFile> Used, IReadOnlyList<ReadingProblem> Problems) Compose(IReadOnlyList<MapToken> plans, string file, IPartFiles files, Lazy<LoadedSchema> schema)
    {
        if (plans[0].Find(PartKinds.Uses) is not { } uses)
        {
            return (plans, [], plans.SelectMany(plan => PartKinds.All.SelectMany(kind => Entries(plan, kind))).OfType<MapToken>().Select(entry => entry.Find(PartKinds.Reference)).FirstOrDefault(entry => entry is not null) is { } lost
                ? [new ReadingProblem("`part` names a part of another file, but the plan uses none.", lost.Key.Span, "Name the file at the top of the plan: `uses: [firm/machines.yaml]`.")]
                : []);
        }

        if (uses.Value is not ListToken { Items: { Count: > 0 } items } || items.Any(item => item is not ScalarToken { IsNull: false }))
        {
            return (plans, [], [new ReadingProblem("`uses` needs a list of names of files.", uses.Key.Span, "Write for example `uses: [firm/machines.yaml]`.")]);
        }

        var composer = new PlanComposer(files, schema.Value);
        foreach (var name in PartStore.Names(plans[0]))
        {
            composer.store.Add(file, name);
        }

        List<MapToken> whole = [Without(plans[0], PartKinds.Uses), .. plans.Skip(1)];
        if (composer.problems.Count == 0)
        {
            whole = whole.ConvertAll(plan => PartKinds.All.Aggregate(plan, (tree, kind) => composer.Replace(tree, kind, depth: 0)));
        }

        if (whole.Exists(plan => plan.NodeCount > ReadingLimits.Nodes))
        {
            composer.problems.Add(ReadingProblems.TooManyNodes(uses.Key.Span));
        }

        return (whole, [.. composer.store.Files.Select(one => new UsedFile(one.File, one.Hash, [.. composer.used.GetValueOrDefault(one.File) ?? []]))], composer.problems);
    }

    private static IReadOnlyList<YamlToken> Entries(MapToken plan, PartKind kind)
    {
        YamlToken? at = plan;
        foreach (var key in kind.Path)
        {
            at = (at as MapToken)?[key];
        }

        return at switch
        {
            null => [],
            ListToken list when kind.IsList => list.Items,
            _ => [at],
        };
    }

    private MapToken Replace(MapToken map, PartKind kind, int depth)
    {
        if (map.Find(kind.Path[depth]) is not { } entry)
        {
            return map;
        }

        var value = depth + 1 < kind.Path.Count
            ? entry.Value is MapToken inner ? Replace(inner, kind, depth + 1) : entry.Value
            : !kind.IsList ? Whole(entry.Value, kind)
            : entry.Value is ListToken list ? new ListToken([.. list.Items.Select(item => Whole(item, kind))], list.Span) : entry.Value;
        return ReferenceEquals(value, entry.Value) ? map : new MapToken([.. map.Entries.Select(one => ReferenceEquals(one, entry) ? new MapEntry(entry.Key, value) : one)], map.Span);
    }

    private YamlToken Whole(YamlToken item, PartKind kind) => item switch
    {
        ScalarToken { IsNull: false } name => Named(name, kind, []) ?? item,
        MapToken map when map[PartKinds.Reference] is ScalarToken name => Named(name, kind, []) is { } part ? Over(part, Without(map, PartKinds.Reference)) : item,
        _ => item,
    };

    // A part may itself be made of another one: a fleet number of its model.
    private MapToken? Named(ScalarToken name, PartKind kind, HashSet<string> open)
    {
        if (store.Find(kind, name.Text) is not { } part)
        {
            var near = NearestNames.Of(name.Text, store.IdsOf(kind));
            problems.Add(new ReadingProblem(
                $"There is no part {TokenNames.Quote(name.Text)} among {kind.List} of the files that are used.",
                name.Span,
                near.Count > 0 ? NearestNames.Asked(near) : $"Write it into a list `{kind.List}` of one of these files."));
            return null;
        }

        if (!open.Add(part.Id))
        {
            problems.Add(new ReadingProblem($"The part {TokenNames.Quote(name.Text)} is made of itself.", name.Span, "Write its keys out in one of the parts."));
            return null;
        }

        (used.TryGetValue(part.File, out var ids) ? ids : used[part.File] = new SortedSet<string>(StringComparer.Ordinal)).Add($"{kind.List}/{part.Id}");
        var own = Without(part.Entry, PartKinds.Reference);
        return part.Entry[PartKinds.Reference] is ScalarToken further ? Named(further, kind, open) is { } below ? Over(below, own) : null : own;
    }

    private static MapToken Without(MapToken map, string key) =>
        map.Find(key) is null ? map : new MapToken([.. map.Entries.Where(entry => !string.Equals(entry.Key.Text, key, StringComparison.Ordinal))], map.Span);

    /// <summary>The keys of one group with those of another over them.</summary>
    internal static MapToken Over(MapToken below, MapToken above) => new(
        [
            .. below.Entries.Select(entry => above.Find(entry.Key.Text) is not { } own ? entry
                : entry.Value is MapToken inner && own.Value is MapToken outer ? new MapEntry(own.Key, Over(inner, outer)) : own),
            .. above.Entries.Where(entry => below.Find(entry.Key.Text) is null),
        ],
        above.Entries.Count > 0 ? above.Span : below.Span);
}

using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Parts;

/// <summary>What the composing of plans needs; costly to make, one serves any number of plans.</summary>
internal sealed class PartTools
{
    /// <summary>The schema of files of parts.</summary>
    public Lazy<LoadedSchema> Schema { get; } = new(PartSchemas.Load);

    /// <summary>Tells which conditions hold for a plan.</summary>
    public PlanConditions Conditions { get; } = new();
}

/// <summary>
/// Makes one plan of a plan and the files that it uses. An entry that names a part has the keys of the part, but for those that it states itself:
/// a group within is put together key by key, a list is taken whole. Behind this, nothing knows that there were several files but places and hashes.
/// </summary>
internal sealed class PlanComposer
{
    private readonly PartTools tools;
    private readonly PartStore store;
    private readonly List<ReadingProblem> problems = [];
    private readonly SortedDictionary<string, SortedSet<string>> used = new(StringComparer.Ordinal);
    private readonly HashSet<string> named = new(StringComparer.Ordinal);

    private PlanComposer(IPartFiles files, PartTools tools) => (this.tools, store) = (tools, new PartStore(files, tools.Schema, problems));

    /// <summary>The plans without <c>uses</c> and references, each in its place; measures that apply are not yet taken.</summary>
    public IReadOnlyList<MapToken> Plans { get; private set; } = [];

    /// <summary>All problems.</summary>
    public IReadOnlyList<ReadingProblem> Problems => problems;

    /// <summary>The files with what was taken from each. One that only the settings name, and of which nothing was taken, has no part in the plans.</summary>
    public IReadOnlyList<UsedFile> Used =>
        [.. store.Files.Where(one => named.Contains(one.File) || used.ContainsKey(one.File)).Select(one => new UsedFile(one.File, one.Hash, [.. used.GetValueOrDefault(one.File) ?? []]))];

    /// <summary>Puts a plan together.</summary>
    /// <param name="plan">The plan as it was written.</param>
    /// <param name="file">Its file, as it is shown.</param>
    /// <param name="files">The host's files.</param>
    /// <param name="tools">What is needed where there are any.</param>
    /// <returns>The plan without <c>uses</c> and references, the files with what was taken from each, and all problems.</returns>
    public static (MapToken Plan, IReadOnlyList<UsedFile> Used, IReadOnlyList<ReadingProblem> Problems) Compose(MapToken plan, string file, IPartFiles files, PartTools tools)
    {
        var composer = Of([plan], file, files, tools);
        var whole = composer.problems.Count > 0 ? plan : composer.WithMeasures(composer.Plans[0]);
        return (whole, composer.Used, composer.problems);
    }

    /// <summary>Puts a plan, and what is to be laid over it, together from the files that the plan names. Measures that apply are taken by <see cref="WithMeasures"/> once the plan is whole.</summary>
    /// <param name="plans">The plan as it was written, then parts of plans.</param>
    /// <param name="file">Their file, as it is shown.</param>
    /// <param name="files">The host's files.</param>
    /// <param name="tools">What is needed where there are any.</param>
    public static PlanComposer Of(IReadOnlyList<MapToken> plans, string file, IPartFiles files, PartTools tools)
    {
        var composer = new PlanComposer(files, tools) { Plans = plans };
        var uses = plans[0].Find(PartKinds.Uses);
        if (uses is not null && (uses.Value is not ListToken { Items: { Count: > 0 } items } || items.Any(item => item is not ScalarToken { IsNull: false })))
        {
            composer.problems.Add(new ReadingProblem("`uses` needs a list of names of files.", uses.Key.Span, "Write for example `uses: [firm/machines.yaml]`."));
            return composer;
        }

        var entries = plans.SelectMany(plan => PartKinds.All.SelectMany(kind => Entries(plan, kind)));
        var common = uses is not null || entries.Any(NamesPart) ? files.Common(file) : [];
        if (uses is not null || common.Count > 0)
        {
            composer.Take(plans, file, uses, common);
        }
        else if (entries.OfType<MapToken>().Select(entry => entry.Find(PartKinds.Reference)).FirstOrDefault(entry => entry is not null) is { } lost)
        {
            composer.problems.Add(new ReadingProblem("`part` names a part of another file, but the plan uses none.", lost.Key.Span, "Name the file at the top of the plan: `uses: [firm/machines.yaml]`."));
        }

        return composer;
    }

    private void Take(IReadOnlyList<MapToken> plans, string file, MapEntry? uses, IReadOnlyList<NamedFile> common)
    {
        foreach (var name in PartStore.Names(plans[0]))
        {
            store.Add(file, name);
        }

        named.UnionWith(store.Files.Select(one => one.File));
        foreach (var name in common)
        {
            store.Add(name.At.File!, name);
        }

        Plans = [uses is null ? plans[0] : Without(plans[0], PartKinds.Uses), .. plans.Skip(1)];
        if (problems.Count == 0)
        {
            Plans = [.. Plans.Select(plan => PartKinds.All.Aggregate(plan, (tree, kind) => Replace(tree, kind, depth: 0)))];
        }

        if (Plans.Any(plan => plan.NodeCount > ReadingLimits.Nodes))
        {
            problems.Add(ReadingProblems.TooManyNodes((uses?.Key ?? plans[0].Entries[0].Key).Span));
        }
    }

    private static bool NamesPart(YamlToken entry) => entry is ScalarToken { IsNull: false } || (entry as MapToken)?.Find(PartKinds.Reference) is not null;

    private static bool IsThatApply(YamlToken entry) => entry is ScalarToken { Text: PartKinds.ThatApply };

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
        return ReferenceEquals(value, entry.Value) ? map : With(map, entry, value);
    }

    private YamlToken Whole(YamlToken item, PartKind kind) => item switch
    {
        ScalarToken when IsThatApply(item) && kind.List is PartKinds.Measures => item,
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
        var own = Without(Without(part.Entry, PartKinds.Reference), PartKinds.AppliesWhen);
        return part.Entry[PartKinds.Reference] is ScalarToken further ? Named(further, kind, open) is { } below ? Over(below, own) : null : own;
    }

    /// <summary>A whole plan with every measure of its files that applies to it, where it asks for them.</summary>
    /// <remarks>Conditions are asked of the plan without these measures: no condition follows from a measure.</remarks>
    public MapToken WithMeasures(MapToken plan)
    {
        if (plan.Find(PartKinds.Measures) is not { Value: ListToken list } entry || list.Items.FirstOrDefault(IsThatApply) is not ScalarToken word)
        {
            return plan;
        }

        IReadOnlyList<YamlToken> own = [.. list.Items.Where(item => !IsThatApply(item))];
        var bare = With(plan, entry, new ListToken(own, list.Span));
        var kind = PartKinds.All.Single(one => one.List is PartKinds.Measures);
        var stated = own.OfType<MapToken>().Select(item => (item["id"] as ScalarToken)?.Text).ToHashSet(StringComparer.Ordinal);
        var known = new Lazy<IReadOnlyDictionary<string, bool>>(() => tools.Conditions.Of(own.Count > 0 ? bare : Without(plan, PartKinds.Measures)));
        var applying = store.All(kind).Where(part => !stated.Contains(part.Id) && When(part, kind).All(when => known.Value.TryGetValue(when.Key.Text, out var holds) && holds == (when.Value is ScalarToken { Text: "yes" })))
            .Select(part => Named(word with { Text = part.Id }, kind, [])).OfType<YamlToken>().ToList();
        IReadOnlyList<YamlToken> all = [.. list.Items.SelectMany(item => ReferenceEquals(item, word) ? applying : IsThatApply(item) ? [] : [item])];
        return all.Count > 0 ? With(plan, entry, new ListToken(all, list.Span)) : Without(plan, PartKinds.Measures);
    }

    // A part that says nothing of its own applies when the one that it is made of does.
    private IReadOnlyList<MapEntry> When(Part part, PartKind kind)
    {
        for (var (at, hops) = (part, 0); at is not null && hops < PartKinds.LongestChain; hops++)
        {
            if (at.Entry[PartKinds.AppliesWhen] is MapToken when)
            {
                return when.Entries;
            }

            at = at.Entry[PartKinds.Reference] is ScalarToken further ? store.Find(kind, further.Text) : null;
        }

        return [];
    }

    private static MapToken With(MapToken map, MapEntry entry, YamlToken value) =>
        new([.. map.Entries.Select(one => ReferenceEquals(one, entry) ? new MapEntry(entry.Key, value) : one)], map.Span);

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

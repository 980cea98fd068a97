using Laygate.Reading;
using Laygate.Reading.Jobs;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Keys;

/// <summary>The keys of plans with what the schema says of them and which rules ask for them.</summary>
public static class PlanKeys
{
    /// <summary>All keys, in the order of the schema.</summary>
    /// <param name="tools">The tools of checks.</param>
    /// <param name="book">The rules.</param>
    public static IReadOnlyList<PlanKey> Of(PlanTools tools, RuleBook book)
    {
        var uses = new KeyUses(tools, book);
        return [.. SchemaKeys.Of(tools.Reader.Schema).Select(key => Key(key, uses))];
    }

    /// <summary>The keys that only a job of several shifts or a file of parts has; no rule asks for them.</summary>
    /// <param name="plan">The keys of plans.</param>
    public static IReadOnlyList<PlanKey> OfOtherFiles(IReadOnlyList<PlanKey> plan)
    {
        var known = plan.Select(key => key.Path).ToHashSet(StringComparer.Ordinal);
        LoadedSchema[] schemas = [JobSchemas.Load(), .. new[] { "plan-with-parts", "parts" }.Select(name => SchemaLoader.Load(EmbeddedSchemas.Find(name)!))];
        return [.. schemas.SelectMany(SchemaKeys.Of).Where(key => !known.Contains(key.Path)).Select(key => Key(key, null) with { Address = string.Empty }).DistinctBy(key => key.Path, StringComparer.Ordinal)];
    }

    /// <summary>The keys that a person means by a path, its last key or its last keys, with or without marks of lists.</summary>
    /// <param name="keys">All keys.</param>
    /// <param name="name">What was written: <c>courses.thickness</c>, <c>courses[].thickness</c> or <c>thickness</c>.</param>
    /// <returns>The keys; none where no path ends so.</returns>
    public static IReadOnlyList<PlanKey> Find(IReadOnlyList<PlanKey> keys, string name)
    {
        var path = name.Replace("[]", string.Empty, StringComparison.Ordinal);
        var whole = keys.Where(key => string.Equals(key.Path, path, StringComparison.Ordinal)).ToList();
        return whole.Count > 0 ? whole : [.. keys.Where(key => key.Path.EndsWith($".{path}", StringComparison.Ordinal))];
    }

    private static PlanKey Key(SchemaKey key, KeyUses? uses) => new(key.Path, Meaning(key.Node), Value(key.Node), key.IsRequired, Example(key.Node))
    {
        Words = Words(SchemaKeys.Item(key.Node) ?? key.Node),
        Address = key.Address,
        Within = key.Within,
        Sort = SchemaKeys.Sort(key.Node),
        Rules = uses is null ? [] : [.. uses.Of(key).Select(rule => new KeyReader(rule.Id, rule.Title, rule.FromStage))],
    };

    private static string Meaning(SchemaNode node) => node.Conjuncts.Select(part => part.Description).FirstOrDefault(text => text is not null) ?? string.Empty;

    private static string Value(SchemaNode node) => SchemaKeys.Item(node) is { } item ? $"list: {Value(item)}"
        : SchemaKeys.Properties(node).Any() ? "group"
        : node.Conjuncts.Select(part => part.Title).FirstOrDefault(title => title is not null) ?? Needs.Kind(Needs.KindsOf(node)).Replace("a ", string.Empty, StringComparison.Ordinal);

    private static string? Example(SchemaNode node) => SchemaKeys.Properties(node).Any() || Needs.Examples(SchemaKeys.Item(node) ?? node) is not [var example, ..] ? null : example;

    private static IReadOnlyList<KeyWord> Words(SchemaNode node) =>
        node.Conjuncts.FirstOrDefault(part => part.Words.Count > 0) is { } list && list.Words is not ["yes", "no"] ? [.. list.Words.Zip(list.WordMeanings, (word, meaning) => new KeyWord(word, meaning))] : [];
}

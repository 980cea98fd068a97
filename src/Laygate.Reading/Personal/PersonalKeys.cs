using System.Text;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Personal;

/// <summary>
/// Finds what plans, files of parts, jobs and departures say about persons. Which keys do is declared in their schemas, in the <c>$comment</c> of the key: <c>holds name</c>,
/// <c>holds who</c> (a name or a role), <c>holds call</c>, <c>holds role</c>, <c>holds hash</c>.
/// </summary>
public static class PersonalKeys
{
    private const string Mark = "holds ";

    private static readonly Lazy<IReadOnlyList<SchemaNode>> Roots = new(() =>
        [.. new[] { "plan-with-parts", "job", "parts", "departures" }.Select(name => SchemaLoader.Load(EmbeddedSchemas.Find(name)!).Root)]);

    /// <summary>Names of the keys that hold something about persons, such as <c>released_by</c>.</summary>
    public static IReadOnlySet<string> Names { get; } = new HashSet<string>(Roots.Value.SelectMany(Marked).Distinct(StringComparer.Ordinal), StringComparer.Ordinal);

    /// <summary>The values about persons in a text of any of these forms.</summary>
    /// <param name="bytes">The text.</param>
    /// <returns>Null where it cannot be read, so that nobody knows what stands in it.</returns>
    public static PersonalText? Find(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        var read = YamlReader.Read(bytes);
        if (!read.IsSound || SourceText.Decode(bytes, []) is not { } source)
        {
            return null;
        }

        var places = new SortedDictionary<int, PersonalPlace>();
        foreach (var document in read.Documents)
        {
            Add(document.Root, Roots.Value, source, places);
        }

        var hasMark = bytes is [0xEF, 0xBB, 0xBF, ..];
        return new PersonalText(source.Text, [.. places.Values], new UTF8Encoding(hasMark));
    }

    private static void Add(YamlToken token, IReadOnlyList<SchemaNode> nodes, SourceText source, SortedDictionary<int, PersonalPlace> places)
    {
        switch (token)
        {
            case MapToken map:
                foreach (var entry in map.Entries)
                {
                    Add(entry.Value, [.. nodes.SelectMany(All).Select(node => node.Properties.GetValueOrDefault(entry.Key.Text) ?? node.KeyPatternValue).OfType<SchemaNode>().Distinct()], source, places);
                }

                break;
            case ListToken list:
                var inside = nodes.SelectMany(All).Select(node => node.Item).OfType<SchemaNode>().Distinct().ToList();
                foreach (var item in list.Items)
                {
                    Add(item, inside, source, places);
                }

                break;
            case ScalarToken { IsNull: false, Text.Length: > 0 } scalar when nodes.SelectMany(All).Select(Sort).FirstOrDefault(sort => sort is not null) is { } sort:
                var start = source.OffsetOf(scalar.Span.Line, scalar.Span.Column);
                places.TryAdd(start, new PersonalPlace(start, source.OffsetOf(scalar.Span.EndLine, scalar.Span.EndColumn), sort, scalar.Text));
                break;
        }
    }

    // A schema with all that may stand in its place.
    private static IEnumerable<SchemaNode> All(SchemaNode node) => node.Conjuncts.Concat(node.Conjuncts.SelectMany(part => part.Alternatives).SelectMany(All)).Prepend(node);

    private static PersonalSort? Sort(SchemaNode node) => node.Comment switch
    {
        Mark + "name" => PersonalSort.Name,
        Mark + "who" => PersonalSort.Who,
        Mark + "call" => PersonalSort.Call,
        Mark + "role" => PersonalSort.Role,
        Mark + "hash" => PersonalSort.Hash,
        _ => null,
    };

    private static IEnumerable<string> Marked(SchemaNode root)
    {
        var (open, seen) = (new Stack<SchemaNode>([root]), new HashSet<SchemaNode>());
        while (open.TryPop(out var node))
        {
            foreach (var next in SchemaTree.Parts(node).SelectMany(part => new[] { part, part.Target }).OfType<SchemaNode>().Where(seen.Add))
            {
                open.Push(next);
                foreach (var (key, _) in next.Properties.Where(pair => Sort(pair.Value) is not null and not PersonalSort.Role))
                {
                    yield return key;
                }
            }
        }
    }
}

using System.Globalization;
using Laygate.Reading.Yaml;
using Newtonsoft.Json;
using Newtonsoft.Json.Linq;

namespace Laygate.Reading.Schema;

/// <summary>Words problems with the number of entries of a list.</summary>
internal static class ListWording
{
    public static IEnumerable<ReadingProblem> Check(ListToken list, SchemaNode node, NamedPlace place)
    {
        var count = list.Items.Count;
        if (count == 0 && node.MinItems > 0)
        {
            yield return new ReadingProblem($"{place.Capital} is an empty list.", place.Anchor, "Add an entry, or remove the key if it is not required.");
        }
        else if (count < node.MinItems)
        {
            yield return new ReadingProblem($"{place.Capital} has {Entries(count)}; at least {Number(node.MinItems.Value)} are needed.", place.Anchor);
        }

        if (count > node.MaxItems)
        {
            yield return new ReadingProblem($"{place.Capital} has {Entries(count)}; at most {Number(node.MaxItems.Value)} {(node.MaxItems == 1 ? "is" : "are")} allowed.", place.Anchor);
        }

        if (!node.UniqueItems)
        {
            yield break;
        }

        foreach (var problem in Repeated(list, place))
        {
            yield return problem;
        }
    }

    private static IEnumerable<ReadingProblem> Repeated(ListToken list, NamedPlace place)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var at = 0; at < list.Items.Count; at++)
        {
            var item = list.Items[at];
            if (!seen.TryAdd(Content(item), at))
            {
                yield return new ReadingProblem($"{place.Entry(item, at).Capital} repeats entry {Number(seen[Content(item)] + 1)}.", TokenNames.Head(item).Span, "Remove one of the two.");
            }
        }
    }

    private static string Content(YamlToken item)
    {
        using var reader = new TokenJsonReader(item);
        return JToken.Load(reader).ToString(Formatting.None);
    }

    private static string Entries(int count) => count == 1 ? "1 entry" : $"{Number(count)} entries";

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}

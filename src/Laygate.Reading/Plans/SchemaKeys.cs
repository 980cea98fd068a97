using Laygate.Reading.Schema;

namespace Laygate.Reading.Plans;

/// <summary>A key of the plan schema.</summary>
/// <param name="Path">Keys from the top with dots; lists on the way are not marked.</param>
/// <param name="Node">What stands behind it.</param>
/// <param name="Address">Address of the element to which it belongs.</param>
/// <param name="Within">The key within that element.</param>
/// <param name="IsRequired">Whether it must be there.</param>
internal sealed record SchemaKey(string Path, SchemaNode Node, string Address, string Within, bool IsRequired);

/// <summary>Walks over the keys of the plan schema.</summary>
internal static class SchemaKeys
{
    private const string AddressMark = "address ";
    private const string PlanAddress = "plan";

    /// <summary>Every key, in the order of the schema.</summary>
    public static IEnumerable<SchemaKey> Of(LoadedSchema schema) => Inside(schema.Root, string.Empty, PlanAddress, string.Empty);

    /// <summary>The keys of a group with what stands behind them; none for anything else.</summary>
    public static IEnumerable<KeyValuePair<string, SchemaNode>> Properties(SchemaNode node) => node.Conjuncts.SelectMany(part => part.Properties);

    /// <summary>Whether a key must be there.</summary>
    public static bool IsRequired(SchemaNode group, string key) => group.Conjuncts.Any(part => part.Required.Contains(key));

    /// <summary>The entries of a list; null for anything else.</summary>
    public static SchemaNode? Item(SchemaNode node) => node.Conjuncts.Select(part => part.Item).FirstOrDefault(item => item is not null);

    /// <summary>How findings name a group: <c>plant:ID</c>; null where they do so within the group around it.</summary>
    public static string? Address(SchemaNode node) => node.Conjuncts.Select(part => part.Comment)
        .FirstOrDefault(comment => comment?.StartsWith(AddressMark, StringComparison.Ordinal) == true)?[AddressMark.Length..];

    /// <summary>What a number measures: the part of the definition's name behind the point.</summary>
    public static string Sort(SchemaNode node) => node.Conjuncts.SelectMany(part => part.AllOf).Select(part => part.Reference?.Split('.'))
        .FirstOrDefault(parts => parts?.Length == 2)?[1].Replace('_', '-') ?? string.Empty;

    private static IEnumerable<SchemaKey> Inside(SchemaNode group, string path, string address, string within)
    {
        foreach (var (key, node) in Properties(group))
        {
            var here = new SchemaKey(Join(path, key), node, address, Join(within, key), IsRequired(group, key));
            yield return here;
            var target = Item(node) ?? node;
            var own = Address(target);
            foreach (var inner in Inside(target, here.Path, own ?? address, own is null ? here.Within : string.Empty))
            {
                yield return inner;
            }
        }
    }

    private static string Join(string path, string key) => path.Length == 0 ? key : $"{path}.{key}";
}

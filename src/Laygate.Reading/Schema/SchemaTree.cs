namespace Laygate.Reading.Schema;

/// <summary>Walks over the parts of a schema.</summary>
internal static class SchemaTree
{
    /// <summary>A schema and all schemas written inside it; references are not followed.</summary>
    public static IEnumerable<SchemaNode> Parts(SchemaNode node)
    {
        yield return node;
        foreach (var child in Children(node))
        {
            foreach (var part in Parts(child))
            {
                yield return part;
            }
        }
    }

    private static IEnumerable<SchemaNode> Children(SchemaNode node) =>
        node.Properties.Values.Concat(node.AnyOf).Concat(node.OneOf).Concat(node.AllOf)
            .Concat(new[] { node.Item, node.Not, node.KeyPatternValue }.OfType<SchemaNode>());
}

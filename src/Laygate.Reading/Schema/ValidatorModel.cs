using NJsonSchema;

namespace Laygate.Reading.Schema;

/// <summary>Fills the validator's object model from a schema. Definitions are made when first met, so that recursion ends.</summary>
internal sealed class ValidatorModel(IReadOnlyDictionary<string, SchemaNode> definitions)
{
    private readonly Dictionary<string, JsonSchema> _made = new(StringComparer.Ordinal);

    public JsonSchema Build(SchemaNode node) => Fill(new JsonSchema(), node);

    private JsonSchema Definition(string name)
    {
        if (_made.TryGetValue(name, out var made))
        {
            return made;
        }

        var schema = new JsonSchema();
        _made.Add(name, schema);
        Fill(schema, definitions[name]);
        return schema;
    }

    private T Fill<T>(T schema, SchemaNode node)
        where T : JsonSchema
    {
        if (node.Reference is { } name)
        {
            schema.Reference = Definition(name);
            return schema;
        }

        schema.Type = TypeOf(node.Kinds);
        FillMap(schema, node);
        FillList(schema, node);
        FillScalar(schema, node);
        foreach (var branch in node.AnyOf)
        {
            schema.AnyOf.Add(Build(branch));
        }

        foreach (var branch in node.OneOf)
        {
            schema.OneOf.Add(Build(branch));
        }

        foreach (var branch in node.AllOf)
        {
            schema.AllOf.Add(Build(branch));
        }

        if (node.Not is not null)
        {
            schema.Not = Build(node.Not);
        }

        return schema;
    }

    private void FillMap(JsonSchema schema, SchemaNode node)
    {
        foreach (var (key, value) in node.Properties)
        {
            schema.Properties[key] = Fill(new JsonSchemaProperty(), value);
        }

        foreach (var key in node.Required)
        {
            schema.RequiredProperties.Add(key);
        }

        if (node.KeyPattern is not null)
        {
            schema.PatternProperties[node.KeyPattern.DotNet] = Fill(new JsonSchemaProperty(), node.KeyPatternValue!);
        }

        schema.AllowAdditionalProperties = node.AllowsOtherKeys;
    }

    private void FillList(JsonSchema schema, SchemaNode node)
    {
        if (node.Item is not null)
        {
            schema.Item = Build(node.Item);
        }

        schema.MinItems = node.MinItems ?? 0;
        schema.MaxItems = node.MaxItems ?? 0;
        schema.UniqueItems = node.UniqueItems;
    }

    private static void FillScalar(JsonSchema schema, SchemaNode node)
    {
        foreach (var word in node.Words)
        {
            schema.Enumeration.Add(word);
        }

        schema.Pattern = node.Pattern?.DotNet;
        schema.MinLength = node.MinLength;
        schema.MaxLength = node.MaxLength;
        schema.Minimum = node.Minimum;
        schema.Maximum = node.Maximum;
        schema.ExclusiveMinimum = node.ExclusiveMinimum;
        schema.ExclusiveMaximum = node.ExclusiveMaximum;
    }

    private static JsonObjectType TypeOf(ValueKinds kinds)
    {
        var type = JsonObjectType.None;
        if (kinds.HasFlag(ValueKinds.Map))
        {
            type |= JsonObjectType.Object;
        }

        if (kinds.HasFlag(ValueKinds.List))
        {
            type |= JsonObjectType.Array;
        }

        if (kinds.HasFlag(ValueKinds.Text))
        {
            type |= JsonObjectType.String;
        }

        if (kinds.HasFlag(ValueKinds.Number))
        {
            type |= JsonObjectType.Number;
        }
        else if (kinds.HasFlag(ValueKinds.WholeNumber))
        {
            type |= JsonObjectType.Integer;
        }

        if (kinds.HasFlag(ValueKinds.Null))
        {
            type |= JsonObjectType.Null;
        }

        return type;
    }
}

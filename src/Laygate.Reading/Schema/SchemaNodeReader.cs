using System.Text.Json;

namespace Laygate.Reading.Schema;

/// <summary>Reads one schema object and refuses every keyword that would not be enforced.</summary>
internal static class SchemaNodeReader
{
    private const string DefinitionPrefix = "#/definitions/";

    public static SchemaNode Read(JsonElement element, string path, bool isRoot)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            throw new SchemaException($"{path}: a schema must be an object; true and false are not supported.");
        }

        var node = new SchemaNode();
        foreach (var member in element.EnumerateObject())
        {
            var here = $"{path}/{member.Name}";
            var known = isRoot && member.Name is "$schema" or "$id" or "definitions"
                || ReadAnnotation(node, member.Name, member.Value)
                || ReadMapKeyword(node, member.Name, member.Value, here)
                || ReadListKeyword(node, member.Name, member.Value, here)
                || ReadScalarKeyword(node, member.Name, member.Value, here)
                || ReadCombination(node, member.Name, member.Value, here);
            if (!known)
            {
                throw new SchemaException($"{here}: this keyword is not supported, because it would not be enforced.");
            }
        }

        if (node.Reference is not null && element.EnumerateObject().Count() > 1)
        {
            throw new SchemaException($"{path}: nothing may stand beside $ref, because it would be ignored; use allOf.");
        }

        if (node.Required.Find(key => !node.Properties.ContainsKey(key)) is { } undescribed && !node.AllowsOtherKeys)
        {
            throw new SchemaException($"{path}: the required key `{undescribed}` is not among the properties.");
        }
        // Words are texts; without its type the validator would compare 1 with "1".
        if (node.Words.Count > 0 && node.Kinds == ValueKinds.None)
        {
            node.Kinds = ValueKinds.Text;
        }

        return node;
    }

    private static bool ReadAnnotation(SchemaNode node, string name, JsonElement value)
    {
        switch (name)
        {
            case "title": node.Title = value.GetString(); break;
            case "description": node.Description = value.GetString(); break;
            case "examples": node.Examples.AddRange(value.EnumerateArray().Select(Written).OfType<string>()); break;
            case "$comment": node.Comment = value.GetString(); break;
            case "enumDescriptions": node.WordMeanings.AddRange(value.EnumerateArray().Select(meaning => meaning.GetString()!)); break;
            case "default" or "markdownDescription": break;
            default: return false;
        }

        return true;
    }

    private static string? Written(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString(),
        JsonValueKind.Number => value.GetRawText(),
        _ => null,
    };

    private static bool ReadMapKeyword(SchemaNode node, string name, JsonElement value, string path)
    {
        switch (name)
        {
            case "properties":
                foreach (var member in value.EnumerateObject())
                {
                    node.Properties.Add(member.Name, Read(member.Value, $"{path}/{member.Name}", isRoot: false));
                }

                break;
            case "required": node.Required.AddRange(Texts(value, path)); break;
            case "additionalProperties" when value.ValueKind == JsonValueKind.False: node.AllowsOtherKeys = false; break;
            case "patternProperties" when value.EnumerateObject().Count() == 1:
                var pattern = value.EnumerateObject().First();
                node.KeyPattern = new SchemaPattern(pattern.Name);
                node.KeyPatternValue = Read(pattern.Value, $"{path}/{pattern.Name}", isRoot: false);
                break;
            default: return false;
        }

        return true;
    }

    private static bool ReadListKeyword(SchemaNode node, string name, JsonElement value, string path)
    {
        switch (name)
        {
            case "items" when value.ValueKind == JsonValueKind.Object: node.Item = Read(value, path, isRoot: false); break;
            case "minItems": node.MinItems = Count(value, path, 0); break;
            // The validator does not enforce an upper limit of zero.
            case "maxItems": node.MaxItems = Count(value, path, 1); break;
            case "uniqueItems": node.UniqueItems = value.GetBoolean(); break;
            default: return false;
        }

        return true;
    }

    private static bool ReadScalarKeyword(SchemaNode node, string name, JsonElement value, string path)
    {
        switch (name)
        {
            case "type": node.Kinds = value.ValueKind == JsonValueKind.Array ? Texts(value, path).Aggregate(ValueKinds.None, (kinds, type) => kinds | Kind(type, path)) : Kind(value.GetString(), path); break;
            case "enum": node.Words.AddRange(Texts(value, path)); break;
            case "pattern": node.Pattern = new SchemaPattern(value.GetString()!); break;
            case "minLength": node.MinLength = Count(value, path, 0); break;
            case "maxLength": node.MaxLength = Count(value, path, 1); break;
            case "minimum": node.Minimum = value.GetDecimal(); break;
            case "maximum": node.Maximum = value.GetDecimal(); break;
            case "exclusiveMinimum": node.ExclusiveMinimum = value.GetDecimal(); break;
            case "exclusiveMaximum": node.ExclusiveMaximum = value.GetDecimal(); break;
            default: return false;
        }

        return true;
    }

    private static bool ReadCombination(SchemaNode node, string name, JsonElement value, string path)
    {
        switch (name)
        {
            case "$ref": node.Reference = DefinitionName(value.GetString()!, path); break;
            case "not": node.Not = Read(value, path, isRoot: false); break;
            case "anyOf": node.AnyOf.AddRange(Branches(value, path)); break;
            case "oneOf": node.OneOf.AddRange(Branches(value, path)); break;
            case "allOf": node.AllOf.AddRange(Branches(value, path)); break;
            default: return false;
        }

        return true;
    }

    private static IEnumerable<SchemaNode> Branches(JsonElement value, string path) =>
        value.EnumerateArray().Select((branch, at) => Read(branch, $"{path}/{at}", isRoot: false)).ToList();

    private static string DefinitionName(string reference, string path) =>
        reference.StartsWith(DefinitionPrefix, StringComparison.Ordinal) && !reference[DefinitionPrefix.Length..].Contains('/', StringComparison.Ordinal)
            ? reference[DefinitionPrefix.Length..]
            : throw new SchemaException($"{path}: only references such as #/definitions/name are supported.");

    private static ValueKinds Kind(string? type, string path) => type switch
    {
        "object" => ValueKinds.Map,
        "array" => ValueKinds.List,
        "string" => ValueKinds.Text,
        "integer" => ValueKinds.WholeNumber,
        "number" => ValueKinds.Number | ValueKinds.WholeNumber,
        "null" => ValueKinds.Null,
        _ => throw new SchemaException($"{path}: the type `{type}` is not supported; no value that is read has it."),
    };

    private static List<string> Texts(JsonElement value, string path) => value.EnumerateArray()
        .Select(item => item.ValueKind == JsonValueKind.String ? item.GetString()! : throw new SchemaException($"{path}: only texts are supported here."))
        .ToList();

    private static int Count(JsonElement value, string path, int least) =>
        value.TryGetInt32(out var count) && count >= least ? count : throw new SchemaException($"{path}: a whole number of at least {least} is needed here.");
}

using System.Text.Json.Nodes;
using Laygate.Reading.Schema;

namespace Laygate.Reading.Imports;

/// <summary>The schema of mappings for imports: one file of the mapping of a record, without its name and kind. No key is stated twice.</summary>
internal static class ImportSchema
{
    /// <summary>The schema.</summary>
    /// <param name="record">Text of the schema of mappings of records.</param>
    public static string Mapping(string record)
    {
        var source = JsonNode.Parse(record)!.AsObject();
        var definitions = source["definitions"]!.DeepClone().AsObject();
        var file = definitions["file"]!.AsObject();
        definitions.Remove("file");
        var properties = file["properties"]!.AsObject();
        foreach (var key in (string[])["file", "holds", "division", "on_conflict"])
        {
            properties.Remove(key);
        }

        properties.Insert(0, "format", source["properties"]!["format"]!.DeepClone());
        return SchemaText.Of(new JsonObject
        {
            ["$schema"] = source["$schema"]!.DeepClone(),
            ["title"] = "mapping",
            ["description"] = "How a list from a spreadsheet is written that `laygate import` reads. Everything is declared, nothing is guessed.",
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["required"] = new JsonArray("format", "encoding", "delimiter", "decimal_mark", "columns"),
            ["properties"] = properties.DeepClone(),
            ["definitions"] = definitions,
        });
    }
}

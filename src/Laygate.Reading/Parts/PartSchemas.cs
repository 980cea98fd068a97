using System.Text.Json.Nodes;
using Laygate.Reading.Schema;

namespace Laygate.Reading.Parts;

/// <summary>The schemas of files of parts, and of plans that use them, both made from the schema of plans: no key is stated twice.</summary>
public static class PartSchemas
{
    /// <summary>Most parts of a kind in one file: judgement, four times the longest list of a plan (500 measures).</summary>
    private const int MostParts = 2000;

    /// <summary>The schema of files of parts.</summary>
    /// <param name="plan">Text of the schema of plans.</param>
    public static string Parts(string plan)
    {
        var source = Root(plan);
        var properties = new JsonObject
        {
            ["parts"] = new JsonObject { ["description"] = "Version of the form of files of parts; this is version 1.", ["type"] = "integer", ["minimum"] = 1, ["maximum"] = 1, ["examples"] = new JsonArray(1) },
            [PartKinds.Uses] = Files(),
        };
        foreach (var kind in PartKinds.All)
        {
            properties[kind.List] = new JsonObject
            {
                ["description"] = $"Parts that plans use as {kind.List}.",
                ["type"] = "array",
                ["minItems"] = 1,
                ["maxItems"] = MostParts,
                ["items"] = Entry(source, kind, needsId: true),
            };
        }

        return SchemaText.Of(new JsonObject
        {
            ["$schema"] = source["$schema"]!.DeepClone(),
            ["title"] = "file of parts",
            ["description"] = "What a firm uses again in many plans: machines, people, mixes, plants, tests, hold points, measures. A plan names the file under `uses` and each part by its id.",
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["required"] = new JsonArray("parts"),
            ["properties"] = properties,
            ["definitions"] = source["definitions"]!.DeepClone(),
        });
    }

    /// <summary>The schema for editors of plans that use parts: entries may name a part, and then state what they like of the rest.</summary>
    /// <param name="plan">Text of the schema of plans.</param>
    public static string PlanWithParts(string plan)
    {
        var (root, source) = (Root(plan), Root(plan));
        foreach (var kind in PartKinds.All)
        {
            var place = Place(root, kind);
            var whole = (kind.IsList ? place["items"]! : place).DeepClone();
            JsonObject either = new() { ["anyOf"] = new JsonArray(Reference("id"), whole, Entry(source, kind, needsId: false)) };
            if (kind.List is PartKinds.Measures)
            {
                either["anyOf"]!.AsArray().Insert(0, new JsonObject { ["description"] = "Every measure of the files that applies to this plan.", ["type"] = "string", ["enum"] = new JsonArray(PartKinds.ThatApply) });
            }

            if (kind.IsList)
            {
                place["items"] = either;
            }
            else
            {
                place.Parent!.AsObject()[kind.Path[^1]] = either;
            }
        }

        var properties = root["properties"]!.AsObject();
        properties.Insert(1, PartKinds.Uses, Files());
        root["title"] = "plan with parts";
        return SchemaText.Of(root);
    }

    /// <summary>
    /// The same schema with the meaning of a key also as the first of what it must be: the YAML language server shows the first description that it meets on its way
    /// up from what a key refers to, and would say what a mass is in place of which mass is meant.
    /// </summary>
    /// <param name="schema">Text of a schema.</param>
    public static string ForEditors(string schema)
    {
        var root = Root(schema);
        Describe(root);
        return SchemaText.Of(root);
    }

    /// <summary>The schema of files of parts, ready to check documents.</summary>
    internal static LoadedSchema Load() => SchemaLoader.Load(Parts(EmbeddedSchemas.Text("plan.schema.json")));

    private static void Describe(JsonNode? node)
    {
        foreach (var child in node is JsonObject map ? map.Select(entry => entry.Value) : node as JsonArray ?? [])
        {
            Describe(child);
        }

        if (node is JsonObject key && key["description"] is JsonValue meaning && key["allOf"] is JsonArray { Count: 1 } all && all[0] is JsonObject reference && reference.ContainsKey("$ref"))
        {
            all.Insert(0, new JsonObject { ["description"] = meaning.DeepClone() });
        }
    }

    private static JsonObject Root(string plan) => JsonNode.Parse(plan)!.AsObject();

    private static JsonObject Files() => new()
    {
        ["description"] = "Files whose parts are used, by their paths from the folder of this file.",
        ["type"] = "array",
        ["minItems"] = 1,
        ["maxItems"] = PartStore.MostFiles,
        ["items"] = new JsonObject { ["description"] = "Path of one of them.", ["allOf"] = new JsonArray(Reference("text")), ["examples"] = new JsonArray("firm/machines.yaml") },
        ["examples"] = new JsonArray(new JsonArray("firm/machines.yaml")),
    };

    private static JsonObject Reference(string definition) => new() { ["$ref"] = $"#/definitions/{definition}" };

    // Where parts of a kind stand in the schema of plans.
    private static JsonObject Place(JsonObject root, PartKind kind)
    {
        JsonNode at = root;
        foreach (var key in kind.Path)
        {
            at = Resolved(root, at)["properties"]![key]!;
        }

        return at.AsObject();
    }

    private static JsonNode Resolved(JsonObject root, JsonNode node)
    {
        var at = node["allOf"] is JsonArray all ? all[0]! : node;
        return at["$ref"] is { } reference ? Resolved(root, root["definitions"]![reference.GetValue<string>().Split('/')[^1]]!) : at;
    }

    private static JsonObject Entry(JsonObject root, PartKind kind, bool needsId)
    {
        var place = Place(root, kind);
        var entry = Resolved(root, kind.IsList ? place["items"]! : place).DeepClone().AsObject();
        entry.Remove("$comment");
        entry.Remove("examples");
        var properties = entry["properties"]!.AsObject();
        properties[PartKinds.Reference] = new JsonObject
        {
            ["description"] = needsId ? "Another part of the same kind that this one is made of; keys that stand here go before its keys." : "Id of the part that is used; keys that stand here go before its keys.",
            ["allOf"] = new JsonArray(Reference("id")),
        };
        entry["required"] = new JsonArray(needsId ? "id" : PartKinds.Reference);
        if (needsId && kind.List is PartKinds.Measures)
        {
            var conditions = Resolved(root, root["properties"]!["site"]!)["properties"]!["conditions"]!.DeepClone().AsObject();
            properties[PartKinds.AppliesWhen] = new JsonObject
            {
                ["description"] = $"When it applies: conditions of the site as they must be, `yes` or `no`. A plan whose measures name `{PartKinds.ThatApply}` takes it where they all hold. Left out: always.",
                ["allOf"] = new JsonArray(conditions),
            };
        }

        return entry;
    }
}

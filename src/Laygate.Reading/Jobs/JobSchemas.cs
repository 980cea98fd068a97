using System.Text.Json.Nodes;
using Laygate.Reading.Parts;
using Laygate.Reading.Schema;

namespace Laygate.Reading.Jobs;

/// <summary>The schemas of jobs of several shifts, made from the schema of plans: no key is stated twice.</summary>
public static class JobSchemas
{
    /// <summary>The schema for editors: a plan that may use parts, without the keys of one shift and with a list of shifts, each with what differs.</summary>
    /// <param name="plan">Text of the schema of plans.</param>
    public static string Job(string plan)
    {
        var root = JsonNode.Parse(PartSchemas.PlanWithParts(plan))!.AsObject();
        var properties = root["properties"]!.AsObject();
        properties.Remove("format");
        var entry = Entry(root);
        foreach (var (key, _) in properties.ToList())
        {
            if (!JobKeys.OfTheJob.Contains(key, StringComparer.Ordinal) && key is not JobKeys.Runs)
            {
                entry["properties"]![key] = Differing(root, key);
            }
        }

        entry["additionalProperties"] = false;
        properties.Insert(0, JobKeys.Job, Version());
        properties[JobKeys.Shifts] = Shifts(entry);
        properties[JobKeys.Lots] = JobLots.Schema();
        root["title"] = "job of several shifts";
        root["description"] = "A job of several shifts: what all shifts have in common as in a plan, and each shift with what differs.";
        root["required"] = new JsonArray(JobKeys.Job, "plan", "courses", JobKeys.Runs, JobKeys.Shifts);
        return SchemaText.Of(root);
    }

    /// <summary>What only a job has, ready to check documents: the rest is checked as plans, once put together.</summary>
    internal static LoadedSchema Load()
    {
        var root = JsonNode.Parse(EmbeddedSchemas.Text("plan.schema.json"))!.AsObject();
        var entry = Entry(root);
        root["properties"] = new JsonObject { [JobKeys.Job] = Version(), [JobKeys.Shifts] = Shifts(entry), [JobKeys.Lots] = JobLots.Schema() };
        root["required"] = new JsonArray(JobKeys.Job, "plan", "courses", JobKeys.Runs, JobKeys.Shifts);
        root.Remove("additionalProperties");
        return SchemaLoader.Load(root.ToJsonString());
    }

    private static JsonObject Version() => new()
    {
        ["description"] = "Version of the form of jobs; this is version 1.",
        ["type"] = "integer",
        ["minimum"] = 1,
        ["maximum"] = 1,
        ["examples"] = new JsonArray(1),
    };

    private static JsonObject Shifts(JsonObject entry) => new()
    {
        ["description"] = "The shifts, in the order in which they are laid.",
        ["type"] = "array",
        ["minItems"] = 1,
        ["maxItems"] = JobKeys.MostShifts,
        ["items"] = entry,
        ["examples"] = new JsonArray(new JsonArray(new JsonObject { ["id"] = "night-1", ["date"] = "2031-06-12", ["start"] = "20:45", ["end"] = "04:30", ["runs"] = new JsonArray("lower-left") })),
    };

    private static JsonObject Entry(JsonObject plan)
    {
        var properties = new JsonObject
        {
            ["id"] = Named("id", "Id of the shift.", "night-1"),
            [JobKeys.Runs] = new JsonObject
            {
                ["description"] = "Ids of the runs that the shift lays, in the order of laying.",
                ["type"] = "array",
                ["minItems"] = 1,
                ["maxItems"] = 200,
                ["uniqueItems"] = true,
                ["items"] = Named("id", "Id of one of them.", "lower-left"),
                ["examples"] = new JsonArray(new JsonArray("lower-left")),
            },
            [JobKeys.Without] = new JsonObject
            {
                ["description"] = "Addresses of what the job has and this shift has not.",
                ["type"] = "array",
                ["minItems"] = 1,
                ["maxItems"] = 500,
                ["uniqueItems"] = true,
                ["items"] = Named("text", "Address of one of them.", "roller:r3"),
                ["examples"] = new JsonArray(new JsonArray("roller:r3")),
            },
        };
        foreach (var (key, value) in plan["definitions"]!["shift"]!["properties"]!.AsObject())
        {
            properties[key] = value!.DeepClone();
        }

        return new JsonObject
        {
            ["description"] = "A shift of the job: when it is, which runs it lays, and what differs from the job. Entries of lists that have an id are put together by it, any other list is taken whole.",
            ["type"] = "object",
            ["required"] = new JsonArray("id", JobKeys.Runs),
            ["properties"] = properties,
        };
    }

    private static JsonObject Named(string definition, string description, string example) => new()
    {
        ["description"] = description,
        ["allOf"] = new JsonArray(new JsonObject { ["$ref"] = $"#/definitions/{definition}" }),
        ["examples"] = new JsonArray(example),
    };

    // What differs need not state what the job states already.
    private static JsonNode Differing(JsonObject root, string key)
    {
        var node = root["properties"]![key]!.DeepClone().AsObject();
        switch (key)
        {
            case "plan":
                var identity = Definition(root, "identity");
                identity["properties"]!.AsObject().Remove("id");
                identity.Remove("required");
                return identity;
            case "courses" or "bond_coats":
                var item = Definition(root, key is "courses" ? "course" : "bond_coat");
                item["required"] = new JsonArray("id");
                node["items"] = item;
                return node;
            default:
                return node;
        }
    }

    private static JsonObject Definition(JsonObject root, string name)
    {
        var definition = root["definitions"]![name]!.DeepClone().AsObject();
        definition.Remove("$comment");
        definition.Remove("examples");
        return definition;
    }
}

using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Laygate.HostTests;

/// <summary>What <c>rules</c> and <c>explain</c> write for programs, held against <c>schemas/rules.schema.json</c> by a validator that is not ours.</summary>
public sealed class RulesJsonTests
{
    [Theory]
    [InlineData("rules")]
    [InlineData("rules --rules de --family layers")]
    [InlineData("rules --family safety --in-force")]
    [InlineData("explain LAY-001")]
    [InlineData("explain WEA-001 --rules us-wa")]
    [InlineData("explain LAY-008")]
    public void What_is_written_keeps_its_schema_and_has_no_key_beside_it(string arguments)
    {
        var folder = Directory.CreateTempSubdirectory("laygate-json-").FullName;
        try
        {
            var run = BuiltProgram.Run(null, folder, [.. arguments.Split(' '), "--format", "json"]);
            Assert.Equal(0, run.Code);
            Assert.Empty(Errors(Schema(open: true), run.Out));
            Assert.Empty(Errors(Schema(open: false), run.Out));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("{\"book_hash\": \"x\"}")]
    [InlineData("{\"book_hash\": \"x\", \"rules\": [{\"id\": \"LAY-001\"}]}")]
    [InlineData("[]")]
    public void Something_else_is_refused(string json) => Assert.NotEmpty(Errors(Schema(open: true), json));

    private static List<string> Errors(JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        var verdict = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return verdict.IsValid ? [] : ["invalid", .. (verdict.Details ?? []).SelectMany(detail => detail.Errors?.Values.Select(error => $"{detail.InstanceLocation}: {error}") ?? [])];
    }

    // The schema lets later versions add keys; closed, it shows a key that it does not describe.
    private static JsonSchema Schema(bool open)
    {
        var node = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "rules.schema.json")))!;
        foreach (var definition in open ? [] : node["definitions"]!.AsObject().Select(one => one.Value!))
        {
            definition["additionalProperties"] = false;
        }

        return JsonSchema.FromText(node.ToJsonString());
    }
}

using Laygate.Reading;

namespace Laygate.ConformanceTests.Schema;

/// <summary>The schemas of parts are made from the schema of plans, that of imports from that of records; the files in <c>schemas</c> are for editors. <c>LAYGATE_APPROVE=1</c> writes them.</summary>
public sealed class PartSchemaTests
{
    [Theory]
    [InlineData("parts")]
    [InlineData("plan-with-parts")]
    [InlineData("import")]
    [InlineData("job")]
    public void The_file_for_editors_is_what_the_program_reads_by(string name)
    {
        var path = Path.Combine(Repository.Root, "schemas", $"{name}.schema.json");
        var text = EmbeddedSchemas.Find(name)!;
        if (Environment.GetEnvironmentVariable("LAYGATE_APPROVE") is { Length: > 0 })
        {
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path), text, StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("parts", "{\"parts\":1,\"rollers\":[{\"id\":\"r7\",\"part\":\"tandem\",\"mass\":\"10 t\"}],\"measures\":[{\"id\":\"m\"}]}", true)]
    [InlineData("parts", "{\"parts\":1,\"rollers\":[{\"mass\":\"10 t\"}]}", false)]
    [InlineData("parts", "{\"parts\":1,\"rollers\":[{\"id\":\"r7\",\"weight\":\"10 t\"}]}", false)]
    [InlineData("plan-with-parts", "{\"format\":1,\"uses\":[\"firm.yaml\"],\"plan\":{\"id\":\"p\",\"stage\":\"concept\"},\"courses\":[{\"id\":\"c\",\"mix\":\"m\",\"thickness\":\"45 mm\"}],\"measures\":[\"a\",{\"part\":\"b\",\"who\":\"all\"},{\"id\":\"c\"}],\"supply\":{\"feeder\":\"f\"}}", true)]
    [InlineData("plan-with-parts", "{\"format\":1,\"uses\":[\"firm.yaml\"],\"plan\":{\"id\":\"p\",\"stage\":\"concept\"},\"courses\":[{\"id\":\"c\",\"mix\":\"m\",\"thickness\":\"45 mm\"}],\"measures\":[{\"who\":\"all\"}]}", false)]
    [InlineData("job", "{\"job\":1,\"plan\":{\"id\":\"p\",\"stage\":\"concept\"},\"courses\":[{\"id\":\"c\",\"mix\":\"m\",\"thickness\":\"45 mm\"}],\"runs\":[{\"id\":\"a\"}],\"shifts\":[{\"id\":\"n\",\"date\":\"2031-06-09\",\"runs\":[\"a\"],\"courses\":[{\"id\":\"c\",\"tonnage\":\"90 t\"}],\"measures\":[\"glare\"],\"without\":[\"roller:r1\"]}]}", true)]
    [InlineData("job", "{\"job\":1,\"plan\":{\"id\":\"p\",\"stage\":\"concept\"},\"courses\":[{\"id\":\"c\",\"mix\":\"m\",\"thickness\":\"45 mm\"}],\"runs\":[{\"id\":\"a\"}],\"shifts\":[{\"id\":\"n\",\"runs\":[\"a\"],\"shift\":{\"date\":\"2031-06-09\"}}]}", false)]
    [InlineData("job", "{\"job\":1,\"plan\":{\"id\":\"p\",\"stage\":\"concept\"},\"courses\":[{\"id\":\"c\",\"mix\":\"m\",\"thickness\":\"45 mm\"}],\"runs\":[{\"id\":\"a\"}],\"shifts\":[{\"id\":\"n\",\"runs\":[\"a\"],\"plan\":{\"id\":\"q\"}}]}", false)]
    public void An_independent_validator_accepts_what_is_meant_and_nothing_else(string name, string document, bool isValid)
    {
        var schema = Json.Schema.JsonSchema.FromText(EmbeddedSchemas.Find(name)!);
        using var json = System.Text.Json.JsonDocument.Parse(document);
        Assert.Equal(isValid, schema.Evaluate(json.RootElement).IsValid);
    }
}

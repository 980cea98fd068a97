using Laygate.Reading.Schema;
using Laygate.UnitTests.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Schema;

public class SchemaLoaderTests
{
    /// <summary>Each supported keyword does refuse something: a keyword that the validator ignores would pass the second document too.</summary>
    [Theory]
    [InlineData("""{"type":"object"}""", "{}", "[]")]
    [InlineData("""{"type":["array","string"]}""", "[]", "{}")]
    [InlineData("""{"type":"number"}""", "1.5", "x")]
    [InlineData("""{"type":"integer"}""", "1", "1.5")]
    [InlineData("""{"properties":{"a":{"type":"string"}}}""", "a: x", "a: 1")]
    [InlineData("""{"required":["a"]}""", "a: x", "b: x")]
    [InlineData("""{"properties":{"a":{}},"additionalProperties":false}""", "a: 1", "b: 1")]
    [InlineData("""{"patternProperties":{"^a":{"type":"string"}}}""", "ab: x", "ab: 1")]
    [InlineData("""{"patternProperties":{"^a$":{}},"additionalProperties":false}""", "a: 1", "ab: 1")]
    [InlineData("""{"patternProperties":{"^a$":{}},"additionalProperties":false}""", "a: 1", "\"a\\n\": 1")]
    [InlineData("""{"items":{"type":"string"}}""", "[x]", "[1]")]
    [InlineData("""{"minItems":2}""", "[1, 2]", "[1]")]
    [InlineData("""{"maxItems":1}""", "[1]", "[1, 2]")]
    [InlineData("""{"uniqueItems":true}""", "[1, 2]", "[1, 1]")]
    [InlineData("""{"enum":["a","no"]}""", "no", "b")]
    [InlineData("""{"pattern":"^a$"}""", "a", "ab")]
    [InlineData("""{"pattern":"^a$"}""", "a", "\"a\\n\"")]
    [InlineData("""{"pattern":"^[$]\\$$"}""", "$$", "$")]
    [InlineData("""{"minLength":2}""", "ab", "a")]
    [InlineData("""{"maxLength":1}""", "a", "ab")]
    [InlineData("""{"minimum":2}""", "2", "1.9")]
    [InlineData("""{"maximum":2}""", "2", "2.1")]
    [InlineData("""{"exclusiveMinimum":2}""", "2.1", "2")]
    [InlineData("""{"exclusiveMaximum":2}""", "1.9", "2")]
    [InlineData("""{"anyOf":[{"type":"string"},{"type":"array"}]}""", "[]", "1")]
    [InlineData("""{"oneOf":[{"type":"number"},{"type":"integer"}]}""", "1.5", "1")]
    [InlineData("""{"allOf":[{"minimum":1},{"maximum":2}]}""", "1", "3")]
    [InlineData("""{"not":{"type":"string"}}""", "1", "x")]
    [InlineData("""{"$ref":"#/definitions/a","definitions":{"a":{"type":"string"}}}""", "x", "1", true)]
    [InlineData("""{"properties":{"a":{"$ref":"#/definitions/a"}},"definitions":{"a":{"type":"string"}}}""", "a: x", "a: 1")]
    [InlineData("""{"properties":{"a":{"allOf":[{"$ref":"#/definitions/a"}],"description":"d"}},"definitions":{"a":{"type":"string"}}}""", "a: x", "a: 1")]
    public void A_supported_keyword_is_enforced(string schema, string right, string wrong, bool isRefused = false)
    {
        if (isRefused)
        {
            Assert.Throws<SchemaException>(() => SchemaLoader.Load(schema));
            return;
        }

        var loaded = SchemaLoader.Load(schema);
        Assert.Empty(SchemaChecker.Check(ReadingTestHelper.Document(right), loaded));
        Assert.True(SchemaChecker.IsValid(ReadingTestHelper.Document(right), loaded));
        Assert.NotEmpty(SchemaChecker.Check(ReadingTestHelper.Document(wrong), loaded));
        Assert.False(SchemaChecker.IsValid(ReadingTestHelper.Document(wrong), loaded));
    }

    [Theory]
    [InlineData("const", "1")]
    [InlineData("if", "{}")]
    [InlineData("then", "{}")]
    [InlineData("else", "{}")]
    [InlineData("contains", "{}")]
    [InlineData("propertyNames", "{}")]
    [InlineData("dependencies", "{}")]
    [InlineData("dependentRequired", "{}")]
    [InlineData("unevaluatedProperties", "false")]
    [InlineData("prefixItems", "[]")]
    [InlineData("minProperties", "1")]
    [InlineData("maxProperties", "0")]
    [InlineData("multipleOf", "2")]
    [InlineData("format", "\"date\"")]
    [InlineData("items", "[{}]")]
    [InlineData("items", "true")]
    [InlineData("additionalProperties", "true")]
    [InlineData("additionalProperties", "{}")]
    [InlineData("patternProperties", "{\"^a\":{},\"^b\":{}}")]
    [InlineData("maxItems", "0")]
    [InlineData("maxLength", "0")]
    [InlineData("minItems", "-1")]
    [InlineData("enum", "[1]")]
    [InlineData("type", "\"boolean\"")]
    [InlineData("$ref", "\"#anchor\"")]
    [InlineData("$ref", "\"#/definitions/a/b\"")]
    [InlineData("$ref", "\"#/definitions/missing\"")]
    [InlineData("definitions", "{}")]
    [InlineData("$id", "\"x\"")]
    [InlineData("tittle", "\"x\"")]
    [InlineData("pattern", "\"^\\\\d$\"")]
    [InlineData("pattern", "\"^(a)\\\\1$\"")]
    [InlineData("pattern", "\"^(?=a)\"")]
    public void What_would_not_be_enforced_is_refused_at_load(string keyword, string value) =>
        Assert.Throws<SchemaException>(() => SchemaLoader.Load($"{{\"properties\":{{\"a\":{{\"{keyword}\":{value}}}}}}}"));

    [Theory]
    [InlineData("not json")]
    [InlineData("true")]
    [InlineData("[]")]
    [InlineData("""{"properties":{"a":{"$ref":"#/definitions/a","description":"x"}},"definitions":{"a":{}}}""")]
    [InlineData("""{"definitions":{"a":{"$ref":"#/definitions/b"},"b":{"$ref":"#/definitions/a"}}}""")]
    [InlineData("""{"definitions":{"a":{"anyOf":[{"type":"string"},{"$ref":"#/definitions/a"}]}}}""")]
    [InlineData("""{"additionalProperties":false,"required":["a"]}""")]
    public void A_broken_schema_is_refused_at_load(string json) => Assert.Throws<SchemaException>(() => SchemaLoader.Load(json));

    [Fact]
    public void Annotations_are_read_and_enforce_nothing() =>
        Assert.Empty(SchemaChecker.Check(
            ReadingTestHelper.Document("x"),
            SchemaLoader.Load("""{"$schema":"http://json-schema.org/draft-07/schema#","$id":"a","$comment":"c","title":"t","description":"d","examples":["e",1,{}],"default":"x","markdownDescription":"m","enumDescriptions":["n"]}""")));

    [Fact]
    public void A_schema_may_refer_to_itself_through_keys_and_lists() =>
        Assert.Single(SchemaSample.Check("id: p\ncourses: [{id: c, thickness: 1 m}]\npart: {parts: [{parts: [{nam: x}]}]}\n"));
}

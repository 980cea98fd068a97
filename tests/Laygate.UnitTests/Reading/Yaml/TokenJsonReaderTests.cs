using Laygate.Reading.Yaml;
using Newtonsoft.Json;
using Newtonsoft.Json.Linq;
using static Laygate.UnitTests.Reading.Yaml.ReadingTestHelper;

namespace Laygate.UnitTests.Reading.Yaml;

public class TokenJsonReaderTests
{
    [Fact]
    public void Values_become_JSON_by_the_strict_forms_only()
    {
        var json = Load("a: 1\nb: 1.50\nc: no\nd: 017\ne: \"2\"\nf:\ng: [x, {y: -3}]\nh: {}\ni: []\n");
        Assert.Equal("""{"a":1,"b":1.50,"c":"no","d":"017","e":"2","f":null,"g":["x",{"y":-3}],"h":{},"i":[]}""", json.ToString(Formatting.None));
    }

    [Fact]
    public void Tokens_carry_line_and_column_of_the_YAML_text()
    {
        IJsonLineInfo place = Load("a: 1\nb:\n  - c: 2\n")["b"]![0]!["c"]!;
        Assert.Equal((3, 8), (place.LineNumber, place.LinePosition));
    }

    [Fact]
    public void The_deepest_document_can_be_read() =>
        Assert.IsType<JArray>(Load(new string('[', 64) + new string(']', 64)));

    private static JToken Load(string text)
    {
        using var reader = new TokenJsonReader(Document(text).Root);
        return JToken.Load(reader);
    }
}

using System.Text;
using Laygate.Reading.Yaml;
using Newtonsoft.Json.Linq;
using static Laygate.UnitTests.Reading.Yaml.ReadingTestHelper;

namespace Laygate.UnitTests.Reading.Yaml;

public class YamlReaderFuzzTests
{
    [Fact]
    public void No_damage_to_a_file_crashes_the_reader_and_every_position_lies_in_the_file()
    {
        var random = new Random(20261125);
        var sample = Encoding.UTF8.GetBytes(Sample);
        for (var run = 0; run < 2000; run++)
        {
            var bytes = ByteDamage.Damaged(sample, random);
            var lines = ByteDamage.LinesOf(bytes);
            var result = YamlReader.Read(bytes);
            Assert.All(result.Problems, problem => Assert.True(IsInside(lines, problem.Position), problem.ToString()));
            if (result.IsSound)
            {
                Assert.All(result.Documents, AssertReadable);
            }
        }
    }

    private static bool IsInside(string[] lines, TextSpan span) => ByteDamage.IsInside(lines, span.Line, span.Column, span.EndLine, span.EndColumn);

    private static void AssertReadable(YamlDocument document)
    {
        using var reader = new TokenJsonReader(document.Root);
        Assert.NotNull(JToken.Load(reader));
    }
}

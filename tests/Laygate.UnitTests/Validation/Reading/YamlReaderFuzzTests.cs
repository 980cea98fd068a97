using System.Text;
using Laygate.Validation.Reading;
using Newtonsoft.Json.Linq;
using static Laygate.UnitTests.Validation.Reading.ReadingTestHelper;

namespace Laygate.UnitTests.Validation.Reading;

public class YamlReaderFuzzTests
{
    private static readonly byte[][] Pieces =
        [.. new[] { "[", "]", "{", "}", ": ", ":", "- ", "? ", "&a ", "*a", "!x ", "|", ">", "'", "\"", "\t", "\n", "\r", "\r\n", "#", "%", "@", "---\n", "...\n", "<<: ", "\\", ",", "\0", "é", "\u2028", "\U0001F600", "\"\\UFFFFFFFF\"", "\"\\ud83d\"" }.Select(Encoding.UTF8.GetBytes)];

    [Fact]
    public void No_damage_to_a_file_crashes_the_reader_and_every_position_lies_in_the_file()
    {
        var random = new Random(20261125);
        var sample = Encoding.UTF8.GetBytes(Sample);
        for (var run = 0; run < 2000; run++)
        {
            var bytes = Damaged(sample, random);
            var result = YamlReader.Read(bytes);
            Assert.All(result.Problems, problem => AssertInside(problem.Position, bytes));
            if (result.IsSound) Assert.All(result.Documents, AssertReadable);
        }
    }

    private static byte[] Damaged(byte[] sample, Random random)
    {
        var bytes = sample.ToList();
        for (var change = random.Next(1, 4); change > 0; change--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(4))
            {
                case 0: bytes[at] = (byte)random.Next(256); break;
                case 1: bytes.RemoveRange(at, Math.Min(random.Next(1, 8), bytes.Count - at)); break;
                case 2: bytes.InsertRange(at, Pieces[random.Next(Pieces.Length)]); break;
                default: bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 30), bytes.Count - at))); break;
            }
        }

        return [.. bytes];
    }

    private static void AssertInside(TextSpan span, byte[] bytes)
    {
        var lines = Encoding.UTF8.GetString(bytes).Split('\n');
        Assert.InRange(span.Line, 1, lines.Length);
        Assert.InRange(span.Column, 1, lines[span.Line - 1].Length + 1);
        Assert.True((span.EndLine, span.EndColumn).CompareTo((span.Line, span.Column)) >= 0, span.ToString());
        Assert.InRange(span.EndLine, span.Line, lines.Length);
    }

    private static void AssertReadable(YamlDocument document)
    {
        using var reader = new TokenJsonReader(document.Root);
        Assert.NotNull(JToken.Load(reader));
    }
}

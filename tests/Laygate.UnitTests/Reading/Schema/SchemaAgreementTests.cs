using System.Text;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Schema;

/// <summary>The validator decides and our walk words: on damaged documents both must agree, and no wording may fall back.</summary>
public class SchemaAgreementTests
{
    private static readonly string[] Values =
        ["x", "1", "1.5", "40 mm", "40mm", "no", "017", "22:30", "[]", "{}", "[a, a]", "[1 m, 2 m]", "\"\"", "separately", "{kind: silo}", "{kind: plant, output: x}", "none", "100", "-1", "\"a\\n\""];

    private static readonly string[] Keys = ["id", "mix", "width", "zz", "thickness", "name", "parts", "kind", "low"];

    [Fact]
    public void Validator_and_wording_agree_on_1000_damaged_documents()
    {
        var random = new Random(11);
        var lines = SchemaSample.Valid.Split('\n');
        var (valid, invalid) = (0, 0);
        for (var run = 0; run < 1000; run++)
        {
            var read = YamlReader.Read(Encoding.UTF8.GetBytes(Damaged(lines, random)));
            if (!read.IsSound)
            {
                continue;
            }

            var document = read.Documents[0];
            var problems = SchemaChecker.Check(document, SchemaSample.Schema);
            var isValid = SchemaChecker.IsValid(document, SchemaSample.Schema);
            Assert.Equal(isValid, problems.Count == 0);
            Assert.DoesNotContain(problems, problem => problem.Message.StartsWith("This does not have the shape", StringComparison.Ordinal));
            if (isValid)
            {
                valid++;
            }
            else
            {
                invalid++;
            }
        }

        Assert.True(valid >= 50 && invalid >= 300, $"{valid} valid and {invalid} invalid documents");
    }

    private static string Damaged(string[] lines, Random random)
    {
        var copy = lines.ToList();
        var at = random.Next(copy.Count);
        var colon = copy[at].LastIndexOf(": ", StringComparison.Ordinal);
        switch (random.Next(4))
        {
            case 0:
                copy.RemoveAt(at);
                break;
            case 1 when colon > 0 && !copy[at].Contains('{', StringComparison.Ordinal):
                copy[at] = copy[at][..(colon + 2)] + Values[random.Next(Values.Length)];
                break;
            case 2:
                copy[at] = copy[at].Replace(copy[at].TrimStart(' ', '-').Split(':')[0], Keys[random.Next(Keys.Length)], StringComparison.Ordinal);
                break;
            default:
                // These keys stand on the last lines, each on one line of its own.
                var line = copy.FindIndex(copy.Count - 5, text => text.Contains(": ", StringComparison.Ordinal));
                copy[line + random.Next(copy.Count - line)] = $"{new[] { "slope", "supply", "limits", "part" }[random.Next(4)]}: {Values[random.Next(Values.Length)]}";
                break;
        }

        return string.Join('\n', copy);
    }
}

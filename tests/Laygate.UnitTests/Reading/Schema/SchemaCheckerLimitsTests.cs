using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.UnitTests.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Schema;

/// <summary>Documents that pass the reader may still be made to cost work: it grows with their length, and no faster. What is counted is memory asked for, the same on any machine.</summary>
public class SchemaCheckerLimitsTests
{
    // Bytes for each character of the document; up to 1,500 were measured.
    private const long MostBytes = 6_000;

    public static TheoryData<string> Documents => new()
    {
        string.Concat(Enumerable.Range(0, 24_000).Select(at => $"key_{at}: x\n")),
        "courses:\n" + string.Concat(Enumerable.Repeat("- {id: x}\n", 12_000)),
        "courses:\n" + string.Concat(Enumerable.Repeat("- x\n", 49_000)),
        "codes:\n" + string.Concat(Enumerable.Repeat("- x\n", 49_000)),
        "id: " + new string('a', 1_000_000) + "!\n",
        "limits:\n" + string.Concat(Enumerable.Range(0, 24_000).Select(at => $"  key_{at}: x\n")),
        "part: " + string.Concat(Enumerable.Repeat("{parts: [", 31)) + string.Concat(Enumerable.Repeat("]}", 31)),
    };

    [Theory]
    [MemberData(nameof(Documents))]
    public void Large_wrong_documents_are_told_so_with_bounded_work(string text)
    {
        var document = ReadingTestHelper.Document(text);
        SchemaChecker.Check(ReadingTestHelper.Document("id: p\n"), SchemaSample.Schema);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var problems = SchemaChecker.Check(document, SchemaSample.Schema);
        Assert.InRange((GC.GetAllocatedBytesForCurrentThread() - before) / text.Length, 0, MostBytes);
        Assert.InRange(problems.Count, 1, ReadingLimits.Problems + 1);
    }

    [Fact]
    public void What_is_not_listed_is_counted() =>
        Assert.Equal("23,901 more problems are not listed.", SchemaSample.Check("id: p\n" + string.Concat(Enumerable.Range(0, 24_000).Select(at => $"key_{at}: x\n")))[^1].Message);
}

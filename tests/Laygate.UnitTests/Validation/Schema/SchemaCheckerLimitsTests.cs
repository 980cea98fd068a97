using System.Diagnostics;
using Laygate.UnitTests.Validation.Reading;
using Laygate.Validation.Reading;
using Laygate.Validation.Schema;

namespace Laygate.UnitTests.Validation.Schema;

/// <summary>Documents that pass the reader may still be made to cost time; a minute was measured before look-ups were indexed.</summary>
public class SchemaCheckerLimitsTests
{
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
    public void Large_wrong_documents_are_told_so_in_time(string text)
    {
        var document = ReadingTestHelper.Document(text);
        var start = Stopwatch.GetTimestamp();
        var problems = SchemaChecker.Check(document, SchemaSample.Schema);
        Assert.True(Stopwatch.GetElapsedTime(start) < TimeSpan.FromSeconds(5), $"took {Stopwatch.GetElapsedTime(start)}");
        Assert.InRange(problems.Count, 1, ReadingLimits.Problems + 1);
    }

    [Fact]
    public void What_is_not_listed_is_counted() =>
        Assert.Equal("23,901 more problems are not listed.", SchemaSample.Check("id: p\n" + string.Concat(Enumerable.Range(0, 24_000).Select(at => $"key_{at}: x\n")))[^1].Message);
}

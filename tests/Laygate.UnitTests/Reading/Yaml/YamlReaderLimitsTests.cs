using System.Text;
using Laygate.Reading.Yaml;
using static Laygate.UnitTests.Reading.Yaml.ReadingTestHelper;

namespace Laygate.UnitTests.Reading.Yaml;

/// <summary>Hostile files are refused with bounded work. What is counted is memory asked for, the same on any machine.</summary>
public class YamlReaderLimitsTests
{
    // Bytes for a file of the largest size; up to 59 MB were measured.
    private const long MostBytes = 240_000_000;

    [Theory]
    [InlineData("[", "1:65-1:66")]
    [InlineData("- ", "1:129-1:130")]
    [InlineData("{a: ", "1:257-1:258")]
    public void Nesting_300000_deep_is_refused_at_level_65(string opener, string place)
    {
        var problem = Assert.Single(ReadBounded(Encoding.UTF8.GetBytes(Repeat(opener, 300_000)[..Math.Min(opener.Length * 300_000, ReadingLimits.Bytes)])).Problems);
        Assert.Equal("Lists and groups are nested more than 64 levels deep here.", problem.Message);
        Assert.Equal(place, Place(problem.Position));
    }

    [Theory]
    [InlineData(64, true)]
    [InlineData(65, false)]
    public void The_deepest_nesting_is_64(int depth, bool isSound) =>
        Assert.Equal(isSound, Read(new string('[', depth) + new string(']', depth)).IsSound);

    [Theory]
    [InlineData(32, true)]
    [InlineData(33, false)]
    public void Depth_counts_through_aliases(int depth, bool isSound)
    {
        var lists = new string('[', depth) + "x" + new string(']', depth);
        var result = Read($"a: &m {lists}\nb: {lists.Replace("x", "*m", StringComparison.Ordinal)}\n".Replace("a: &m [", "a: &m ", StringComparison.Ordinal).Replace("]\nb", "\nb", StringComparison.Ordinal));
        Assert.Equal(isSound, result.IsSound);
    }

    [Fact]
    public void An_alias_bomb_is_refused_at_the_alias_that_passes_the_limit()
    {
        var text = "a: &a [x,x,x,x,x,x,x,x,x,x]\n"
            + string.Concat("bcdefghi".Select(name => $"{name}: &{name} [{string.Join(',', Enumerable.Repeat($"*{(char)(name - 1)}", 10))}]\n"));
        var problem = Assert.Single(ReadBounded(Encoding.UTF8.GetBytes(text)).Problems);
        Assert.StartsWith("The file holds more than 50,000 keys and values", problem.Message, StringComparison.Ordinal);
        Assert.Equal("5:17-5:19", Place(problem.Position));
    }

    [Theory]
    [InlineData(100, true)]
    [InlineData(101, false)]
    public void At_most_100_aliases(int count, bool isSound) =>
        Assert.Equal(isSound, Read($"a: &m x\nb: [{string.Join(", ", Enumerable.Repeat("*m", count))}]\n").IsSound);

    // The file is 1 map with 3 keys; the group of 12,498 keys and values is 24,997, written once and meant twice; the list of c is one more than its entries.
    [Theory]
    [InlineData("x", true)]
    [InlineData("x, x", false)]
    public void Keys_and_values_count_through_aliases(string last, bool isSound) =>
        Assert.Equal(isSound, Read($"a: &m {{{string.Join(", ", Enumerable.Range(0, 12_498).Select(number => $"k{number}: x"))}}}\nb: *m\nc: [{last}]\n").IsSound);

    [Theory]
    [InlineData(49_997, true)]
    [InlineData(49_998, false)]
    public void At_most_50000_nodes(int entries, bool isSound) =>
        Assert.Equal(isSound, Read($"a: [{string.Join(',', Enumerable.Repeat("x", entries))}]").IsSound);

    [Theory]
    [InlineData(1024 * 1024, true)]
    [InlineData(1024 * 1024 + 1, false)]
    public void At_most_1_MiB(int bytes, bool isSound) =>
        Assert.Equal(isSound, ReadBounded(Encoding.UTF8.GetBytes($"a: {new string('x', bytes - 3)}")).IsSound);

    [Theory]
    [InlineData("? ")]
    [InlineData(":")]
    [InlineData("a: ")]
    [InlineData("&a ")]
    [InlineData("*a ")]
    [InlineData("!a ")]
    [InlineData("---\n")]
    [InlineData("- &a x\n")]
    [InlineData("\"a\" ")]
    [InlineData("%a\n")]
    [InlineData("&\n")]
    [InlineData("\u0001\u0002")]
    [InlineData("[{")]
    [InlineData("\n\t")]
    [InlineData("# c\r\n")]
    [InlineData("{? ")]
    public void A_full_file_of_one_construct_is_read_with_bounded_work_with_problems(string piece)
    {
        var result = ReadBounded(Encoding.UTF8.GetBytes(Repeat(piece, ReadingLimits.Bytes / piece.Length)));
        Assert.InRange(result.Problems.Count, 1, ReadingLimits.Problems + 1);
    }

    [Fact]
    public void One_MiB_of_bytes_that_are_no_text_is_read_with_bounded_work()
    {
        Assert.NotEmpty(ReadBounded(new byte[ReadingLimits.Bytes]).Problems);
        Assert.NotEmpty(ReadBounded([.. Enumerable.Repeat((byte)0x80, ReadingLimits.Bytes)]).Problems);
    }

    private static string Repeat(string piece, int count) => string.Concat(Enumerable.Repeat(piece, count));

    private static ReadingResult ReadBounded(byte[] bytes)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = YamlReader.Read(bytes);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, MostBytes);
        return result;
    }
}

namespace Laygate.HostTests;

/// <summary><c>laygate check --quick</c> as a process.</summary>
public sealed class QuickCommandTests
{
    [Theory]
    [InlineData("console", "This was a quick check.", "Mend: ")]
    [InlineData("json", "\"quick\": true", "\"remedies\": {")]
    public void It_says_what_it_left_out(string format, string says, string mended)
    {
        var result = BuiltProgram.Run(null, SourceTree.Root, "check", "examples/quay-road-hot-on-hot.yaml", "--quick", "--format", format);
        Assert.Equal(0, result.Code);
        Assert.Contains(says, result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(mended, result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void It_makes_no_outlook()
    {
        var result = BuiltProgram.Run(null, SourceTree.Root, "check", "examples/quay-road-hot-on-hot.yaml", "--quick", "--outlook");
        Assert.Equal(2, result.Code);
        Assert.Contains("A quick check makes no outlook.", result.Error, StringComparison.Ordinal);
    }
}

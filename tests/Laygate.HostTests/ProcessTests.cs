namespace Laygate.HostTests;

/// <summary>The built program as a process: streams, exit codes and options that need no rule book.</summary>
public sealed class ProcessTests
{
    [Fact]
    public void Version_goes_to_standard_output()
    {
        var result = BuiltProgram.RunProcess(null, Path.GetTempPath(), "--version");
        Assert.Equal(0, result.Code);
        Assert.Matches(@"^laygate [0-9]+\.[0-9]+\.[0-9]+\nGeneral practice [0-9.]+: [0-9]+ rules, rule files [0-9a-f]{12}\n", result.Out);
        Assert.Matches(@"\nus-wa +Standard Specifications", result.Out);
        Assert.Empty(result.Error);
    }

    [Fact]
    public void Help_goes_to_standard_output()
    {
        var result = BuiltProgram.RunProcess(null, Path.GetTempPath(), "check", "--help");
        Assert.Equal(0, result.Code);
        Assert.StartsWith("Checks job plans", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check", "--fial-on", "warn", "plan.yaml")]
    [InlineData("check")]
    [InlineData("check", "plan.yaml", "--stage")]
    [InlineData("chek", "plan.yaml")]
    [InlineData]
    public void Bad_arguments_give_2_and_one_line_on_standard_error(params string[] arguments)
    {
        var result = BuiltProgram.RunProcess(null, Path.GetTempPath(), arguments);
        Assert.Equal(2, result.Code);
        Assert.Empty(result.Out);
        Assert.StartsWith("laygate: ", result.Error, StringComparison.Ordinal);
        Assert.Single(result.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }
}

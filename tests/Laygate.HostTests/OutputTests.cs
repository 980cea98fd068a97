namespace Laygate.HostTests;

/// <summary>Several forms of one result from one run.</summary>
public sealed class OutputTests
{
    [Fact]
    public void One_run_writes_several_forms()
    {
        using var app = new AppHarness();
        var plan = app.Plan("plan.yaml", "fail");
        var (sarif, junit) = (Path.Combine(app.Folder, "a.sarif"), Path.Combine(app.Folder, "a.xml"));
        Assert.Equal(1, app.Run("check", plan, "--output", $"sarif={sarif}", "--output", $"junit={junit}"));
        Assert.Contains("\"version\": \"2.1.0\"", File.ReadAllText(sarif), StringComparison.Ordinal);
        Assert.StartsWith("<?xml", File.ReadAllText(junit), StringComparison.Ordinal);
        Assert.Contains("In doubt stop and ask.", app.Out, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(app.Folder, "*.part"));
    }

    [Theory]
    [InlineData("sarif", "{")]
    [InlineData("junit", "<?xml")]
    [InlineData("code-quality", "[")]
    [InlineData("annotations", "::notice ")]
    [InlineData("markdown", "# Plan check")]
    public void Each_form_goes_to_standard_output_alone(string format, string start)
    {
        using var app = new AppHarness();
        Assert.Equal(1, app.Run("check", app.Plan("plan.yaml", "fail"), "--format", format));
        Assert.StartsWith(start, app.Out, StringComparison.Ordinal);
        Assert.Empty(app.Error);
    }

    [Theory]
    [InlineData("--output", "sarif=a", "--output", "json=a", "twice")]
    [InlineData("--output", "a", "--output", "b", "two files for one form")]
    [InlineData("--output", "sariff=a", "--format", "json", "Did you mean sarif?")]
    [InlineData("--output", "sarif=", "--format", "json", "needs a file")]
    [InlineData("--include", "fail", "--format", "sarif", "--include takes")]
    public void Outputs_that_do_not_fit_together_are_refused(string one, string first, string two, string second, string message)
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run("check", app.Plan("plan.yaml", "pass"), one, first, two, second));
        Assert.Contains(message, app.Error, StringComparison.Ordinal);
        Assert.Empty(app.Out);
    }

    [Fact]
    public void A_name_with_an_equals_sign_is_a_file_when_it_has_a_folder()
    {
        using var app = new AppHarness();
        var path = Path.Combine(app.Folder, "a=b.json");
        Assert.Equal(0, app.Run("check", app.Plan("plan.yaml", "pass"), "--format", "json", "--output", path));
        Assert.True(File.Exists(path));
        Assert.Empty(app.Out);
    }

    [Fact]
    public void A_file_that_cannot_be_written_is_said_and_nothing_is_left()
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run("check", app.Plan("plan.yaml", "pass"), "--output", $"sarif={app.Folder}/none/a.sarif"));
        Assert.Contains("cannot be written", app.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Warnings_are_failures_in_junit_exactly_when_they_fail_the_gate()
    {
        using var app = new AppHarness();
        var plan = app.Plan("plan.yaml", "warn");
        app.Run("check", plan, "--format", "junit");
        var usual = app.Out;
        app.Run("check", plan, "--format", "junit", "--fail-on", "warn");
        Assert.True(app.Out.Split("<failure").Length > usual.Split("<failure").Length);
    }
}

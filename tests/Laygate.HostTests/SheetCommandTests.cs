namespace Laygate.HostTests;

/// <summary><c>laygate sheet</c> as a process on the examples, and its arguments.</summary>
public sealed class SheetCommandTests
{
    [Fact]
    public void A_sound_plan_gets_its_sheet()
    {
        var result = BuiltProgram.Run(null, Root(), "sheet", "examples/quay-road-hot-on-hot.yaml", "--rules", "examples/particular/port-of-tamarel.yaml");
        Assert.Equal(0, result.Code);
        Assert.Empty(result.Error);
        Assert.StartsWith("# Site sheet: Quay Road East", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("DRAFT", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_that_fails_is_refused_with_reasons_and_1()
    {
        var result = BuiltProgram.Run(null, Root(), "sheet", "examples/moor-road-thin-overlay.yaml", "--rules", "us-wa");
        Assert.Equal(1, result.Code);
        Assert.Empty(result.Out);
        Assert.StartsWith("examples/moor-road-thin-overlay.yaml: no site sheet for plan skarrow-moor-road: it fails.\n", result.Error, StringComparison.Ordinal);
        Assert.Contains("Too few trucks for the planned speed", result.Error, StringComparison.Ordinal);
        Assert.Contains("--draft", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_draft_of_it_is_written_to_a_file()
    {
        var folder = Directory.CreateTempSubdirectory("laygate-test-");
        try
        {
            var path = Path.Combine(folder.FullName, "sheet.md");
            var result = BuiltProgram.Run(null, Root(), "sheet", "examples/moor-road-thin-overlay.yaml", "--rules", "us-wa", "--draft", "--output", path);
            Assert.Equal(0, result.Code);
            Assert.Empty(result.Out);
            Assert.Contains("(DRAFT, not for work)", File.ReadAllText(path), StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void The_settings_of_the_folder_choose_the_rules_of_a_sheet()
    {
        var folder = Directory.CreateTempSubdirectory("laygate-test-");
        try
        {
            File.Copy(WholePlans.PathOf("quay-road-hot-on-hot.yaml"), Path.Combine(folder.FullName, "plan.yaml"));
            File.Copy(Path.Combine(Root(), "examples", "particular", "port-of-tamarel.yaml"), Path.Combine(folder.FullName, "port.yaml"));
            var plain = BuiltProgram.Run(null, folder.FullName, "sheet", "plan.yaml");
            var asked = BuiltProgram.Run(null, folder.FullName, "sheet", "plan.yaml", "--rules", "port.yaml");
            File.WriteAllText(Path.Combine(folder.FullName, "laygate.yaml"), "rules: [port.yaml]\n");
            var governed = BuiltProgram.Run(null, folder.FullName, "sheet", "plan.yaml");
            Assert.Equal((0, 0, 0), (plain.Code, asked.Code, governed.Code));
            Assert.Equal(asked.Out, governed.Out, StringComparer.Ordinal);
            Assert.NotEqual(plain.Out, governed.Out, StringComparer.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData("laygate: No plan is named. Write for example: laygate sheet plan.yaml", "sheet")]
    [InlineData("laygate: A site sheet is made of one file at a time.", "sheet", "a.yaml", "b.yaml")]
    [InlineData("laygate: There is no option `--drat`. Did you mean `--draft`?", "sheet", "a.yaml", "--drat")]
    [InlineData("laygate: --output needs a value.", "sheet", "a.yaml", "--output")]
    [InlineData("laygate: There is no command `shet`. Did you mean `sheet`?", "shet", "a.yaml")]
    public void Arguments_that_cannot_be_used_give_2(string message, params string[] arguments)
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run(arguments));
        Assert.StartsWith(message, app.Error, StringComparison.Ordinal);
        Assert.Empty(app.Out);
    }

    [Fact]
    public void What_is_no_plan_gives_2_and_its_place()
    {
        var result = BuiltProgram.Run("format: 1\n"u8.ToArray(), Root(), "sheet", "-");
        Assert.Equal(2, result.Code);
        Assert.Empty(result.Out);
        Assert.StartsWith("standard input:1:", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_is_a_result_with_an_example()
    {
        using var app = new AppHarness();
        Assert.Equal(0, app.Run("sheet", "--help"));
        Assert.Contains("Example\n  laygate sheet ", app.Out, StringComparison.Ordinal);
        Assert.All(app.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void Remedies_and_outlook_reach_the_pipeline_only_when_they_are_shown()
    {
        using var app = new AppHarness();
        app.Run("check", app.Plan("a.yaml", "pass"));
        Assert.Equal((true, false), (app.Pipeline.Asked!.Remedies, app.Pipeline.Asked.Outlook));
        app.Run("check", app.Plan("a.yaml", "pass"), "--outlook");
        Assert.True(app.Pipeline.Asked.Outlook);
        app.Run("sheet", app.Plan("a.yaml", "pass"));
        Assert.Equal((false, false), (app.Pipeline.Asked.Remedies, app.Pipeline.Asked.Outlook));
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Laygate.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run inside the repository.");
    }
}

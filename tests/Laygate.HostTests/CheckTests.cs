using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.HostTests;

public sealed class CheckTests
{
    [Theory]
    [InlineData("pass", "warn", 0)]
    [InlineData("fail", "fail", 1)]
    [InlineData("fail", "warn", 1)]
    [InlineData("fail", "none", 0)]
    [InlineData("warn", "fail", 0)]
    [InlineData("warn", "warn", 1)]
    [InlineData("not assessed", "fail", 0)]
    [InlineData("not assessed", "warn", 1)]
    [InlineData("needs a person", "warn", 0)]
    [InlineData("open", "warn", 0)]
    [InlineData("rubbish", "none", 2)]
    [InlineData("bug", "none", 3)]
    public void The_exit_code_says_what_was_found(string text, string failOn, int code)
    {
        using var app = new AppHarness();
        Assert.Equal(code, app.Run("check", app.Plan("a.yaml", text), "--fail-on", failOn));
    }

    [Fact]
    public void Of_several_files_the_highest_code_holds_and_all_are_checked()
    {
        using var app = new AppHarness();
        var code = app.Run("check", app.Plan("a.yaml", "rubbish"), app.Plan("missing/../b.yaml", "fail"), app.Plan("c.yaml", "pass"));
        Assert.Equal(2, code);
        Assert.Contains("b.yaml: plan", app.Out, StringComparison.Ordinal);
        Assert.True(app.Out.IndexOf("b.yaml: plan", StringComparison.Ordinal) < app.Out.IndexOf("c.yaml: plan", StringComparison.Ordinal));
        Assert.Contains("a.yaml:1:1: Not a plan.\n  Begin with `format: 1`.\n", app.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Not a plan.", app.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Patterns_are_expanded_and_a_file_is_checked_once()
    {
        using var app = new AppHarness();
        app.Plan("jobs/b.yaml", "pass");
        app.Plan("jobs/deep/a.yaml", "pass");
        var first = app.Plan("jobs/c.yaml", "pass");
        Assert.Equal(0, app.Run("check", first, $"{app.Folder}/jobs/*.yaml", $"{app.Folder}/jobs/**/*.yaml", "--format", "json"));
        using var json = JsonDocument.Parse(app.Out);
        Assert.Equal(
            ["c.yaml", "b.yaml", "a.yaml"],
            json.RootElement.GetProperty("files").EnumerateArray().Select(file => Path.GetFileName(file.GetProperty("file").GetString()!)),
            StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("nothing.yaml", "There is no such file.")]
    [InlineData("*.json", "No file matches.")]
    [InlineData("nowhere/*.yaml", "No file matches.")]
    [InlineData("", "This is a folder, not a plan.\n  Write `")]
    public void What_is_not_there_is_said_and_gives_2(string name, string message)
    {
        using var app = new AppHarness();
        app.Plan("a.yaml", "pass");
        Assert.Equal(2, app.Run("check", Path.Combine(app.Folder, name)));
        Assert.Contains(message, app.Error, StringComparison.Ordinal);
        Assert.Empty(app.Out);
    }

    [Fact]
    public void A_file_without_end_is_not_read_to_its_end()
    {
        using var app = new AppHarness { Input = new string('x', 5 << 20) };
        Assert.Equal(2, app.Run("check", "-"));
        Assert.StartsWith("standard input: The file has more than 4 MiB", app.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("LAY-001")]
    [InlineData("LAY-001@course:patch")]
    public void One_finding_is_explained_also_of_standard_input_and_of_several_plans(string choice)
    {
        using var app = new AppHarness { Input = "fail" };
        Assert.Equal(1, app.Run("check", "-", app.Plan("a.yaml", "pass"), "--explain", choice));
        Assert.Equal(2, app.Out.Split("Harbour road, thin overlay at night").Length - 1);
        Assert.Contains("  where   course:patch, standard input:48:16\n", app.Out, StringComparison.Ordinal);
        Assert.Contains("  why     Large stones drag", app.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("ROL-002", app.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("laygate: No plan has a finding of a rule `LAY-0001`. Did you mean LAY-001?", "--explain", "LAY-0001")]
    [InlineData("laygate: LAY-001 has no finding at `course:none`. It was judged at course:wearing, course:patch", "--explain", "LAY-001@course:none")]
    [InlineData("laygate: --explain shows on the console only", "--explain", "LAY-001", "--format", "json")]
    [InlineData("laygate: --explain shows one finding, --full and --all show all of them: choose one.", "--explain", "LAY-001", "--full")]
    public void A_finding_that_cannot_be_explained_is_said_and_gives_2(string message, params string[] options)
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run(["check", app.Plan("a.yaml", "pass"), .. options]));
        Assert.StartsWith(message, app.Error, StringComparison.Ordinal);
        Assert.Empty(app.Out);
    }

    [Fact]
    public void The_full_form_shows_what_the_short_one_does_not()
    {
        using var app = new AppHarness();
        var plan = app.Plan("a.yaml", "pass");
        app.Run("check", plan);
        Assert.DoesNotContain("  why ", app.Out, StringComparison.Ordinal);
        app.Run("check", plan, "--full");
        Assert.Contains("  why ", app.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("SAF-002", app.Out, StringComparison.Ordinal);
        app.Run("check", plan, "--all");
        Assert.Contains("SAF-002", app.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Standard_input_has_a_name()
    {
        using var app = new AppHarness { Input = "fail" };
        Assert.Equal(1, app.Run("check", "-", "--stdin-name", "from-editor.yaml"));
        Assert.Contains("from-editor.yaml: plan", app.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_begins_with_a_dash_follows_two_dashes()
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run("check", "--", "-a.yaml"));
        Assert.Contains("-a.yaml: There is no such file.", app.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Options_reach_the_pipeline()
    {
        using var app = new AppHarness();
        app.Run("check", app.Plan("a.yaml", "pass"), "--rules", "one", "--rules=dir/two.yaml", "--stage", "release", "--date", "2031-02-28");
        Assert.Equal(["one", "dir/two.yaml"], app.Pipeline.Asked!.Rules, StringComparer.Ordinal);
        Assert.Equal(Stage.Release, app.Pipeline.Asked.AtLeastStage);
        Assert.Equal(new DateOnly(2031, 2, 28), app.Pipeline.Asked.Date);
    }

    [Fact]
    public void Without_a_date_the_clock_of_the_machine_counts()
    {
        using var app = new AppHarness();
        app.Run("check", app.Plan("a.yaml", "pass"));
        Assert.Equal(new DateOnly(2031, 5, 4), app.Pipeline.Asked!.Date);
        Assert.Null(app.Pipeline.Asked.AtLeastStage);
    }

    [Theory]
    [InlineData("laygate: There is no option `--fial-on`. Did you mean `--fail-on`? A file whose name begins with `-` must follow `--`.", "check", "a.yaml", "--fial-on", "warn")]
    [InlineData("laygate: There is no option `-x`.", "check", "-x")]
    [InlineData("laygate: --stage takes concept, submission or release, not `relese`. Did you mean release?", "check", "a.yaml", "--stage", "relese")]
    [InlineData("laygate: --format takes console, json, sarif, junit, code-quality, annotations, markdown or html, not `Json`.", "check", "a.yaml", "--format", "Json")]
    [InlineData("laygate: --date takes a day such as 2027-05-14, not `2031-02-30`.", "check", "a.yaml", "--date", "2031-02-30")]
    [InlineData("laygate: --stage needs a value.", "check", "a.yaml", "--stage")]
    [InlineData("laygate: --stage may be given only once, with one value.", "check", "a.yaml", "--stage", "concept", "--stage", "release")]
    [InlineData("laygate: --rules needs a name.", "check", "a.yaml", "--rules", " ")]
    [InlineData("laygate: --output needs a name.", "check", "a.yaml", "--output", "")]
    [InlineData("laygate: There is no command `chek`. Did you mean `check`?", "chek")]
    [InlineData("laygate: No file is named.", "check")]
    [InlineData("laygate: No command is given.")]
    public void Arguments_that_cannot_be_used_are_explained(string message, params string[] arguments)
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run(arguments));
        Assert.StartsWith(message, app.Error, StringComparison.Ordinal);
        Assert.Equal(1, app.Error.Count(letter => letter == '\n'));
        Assert.Empty(app.Out);
    }

    [Fact]
    public void Response_files_are_off()
    {
        using var app = new AppHarness();
        var answer = app.Plan("answer", "--all");
        Assert.Equal(2, app.Run("check", "@" + answer));
        Assert.Contains("@" + answer + ": There is no such file.", app.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_result_can_go_to_a_file_whole_or_not_at_all()
    {
        using var app = new AppHarness { Colour = true };
        var target = app.Plan("report.txt", "old");
        Assert.Equal(0, app.Run("check", app.Plan("a.yaml", "pass"), "--output", target));
        Assert.Empty(app.Out);
        Assert.StartsWith("Harbour road", File.ReadAllText(target), StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', File.ReadAllText(target));
        Assert.Equal(2, Directory.GetFiles(app.Folder).Length);
    }

    [Fact]
    public void A_result_that_cannot_be_written_gives_2()
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run("check", app.Plan("a.yaml", "pass"), "--output", Path.Combine(app.Folder, "no", "report.txt")));
        Assert.Contains("The result cannot be written to", app.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Rules_that_cannot_be_read_stop_the_run()
    {
        using var app = new AppHarness { Pipeline = new FakePipeline { RuleProblems = [new Problem("own.yaml", "No such rule.", null, new Position(3, 7, 3, 9))] } };
        Assert.Equal(2, app.Run("check", app.Plan("a.yaml", "pass"), "--format", "json"));
        Assert.Equal("own.yaml:3:7: No such rule.\n", app.Error);
        using var json = JsonDocument.Parse(app.Out);
        Assert.Equal("own.yaml", json.RootElement.GetProperty("problems")[0].GetProperty("file").GetString());
    }

    [Fact]
    public void An_error_of_our_own_is_one_line_unless_traced()
    {
        using var app = new AppHarness();
        Assert.Equal(3, app.Run("check", app.Plan("a.yaml", "bug")));
        Assert.Equal("laygate: an error of the program itself (InvalidOperationException). Please report it; LAYGATE_TRACE=1 shows where it happened.\n", app.Error);
        using var traced = new AppHarness { Trace = true };
        Assert.Equal(3, traced.Run("check", traced.Plan("a.yaml", "bug")));
        Assert.Contains("FakePipeline.Check", traced.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Colour_changes_nothing_but_colour()
    {
        using var plain = new AppHarness();
        using var coloured = new AppHarness { Colour = true };
        var plan = plain.Plan("a.yaml", "pass");
        plain.Run("check", plan);
        coloured.Run("check", plan);
        Assert.DoesNotContain('\u001b', plain.Out);
        Assert.Contains("\u001b[1;91mFAIL", coloured.Out, StringComparison.Ordinal);
        Assert.Equal(plain.Out, System.Text.RegularExpressions.Regex.Replace(coloured.Out, "\u001b\\[[0-9;]*m", string.Empty, System.Text.RegularExpressions.RegexOptions.NonBacktracking));
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes()
    {
        using var app = new AppHarness();
        var plan = app.Plan("a.yaml", "fail");
        app.Run("check", plan, "--format", "json");
        var first = app.Out;
        app.Run("check", plan, "--format", "json");
        Assert.Equal(first, app.Out);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("check", "--help")]
    [InlineData("check", "x.yaml", "-h")]
    public void Help_is_a_result_with_an_example(params string[] arguments)
    {
        using var app = new AppHarness();
        Assert.Equal(0, app.Run(arguments));
        Assert.Contains("Example\n  laygate check ", app.Out, StringComparison.Ordinal);
        Assert.Empty(app.Error);
        Assert.All(app.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }
}

using System.Diagnostics;

namespace Laygate.HostTests;

/// <summary>A result never takes the place of what it is made from, or of something that is no file; a place that cannot be written to is said, not crashed over.</summary>
public sealed class OutputSafetyTests
{
    private const string Plan = "format: 1\nplan: { id: job, stage: concept }\nmixes: [ { id: m } ]\ncourses: [ { id: c, mix: m, thickness: 40 mm } ]\n";

    [Theory]
    [InlineData("check", "plan.yaml", "--output", "plan.yaml")]
    [InlineData("check", "plan.yaml", "--output", "html=./sub/../plan.yaml")]
    [InlineData("check", "*.yaml", "--output", "link.yaml")]
    [InlineData("sheet", "plan.yaml", "--draft", "--output", "plan.yaml")]
    [InlineData("compare", "plan.yaml", "plan.yaml", "--output", "plan.yaml")]
    [InlineData("baseline", "plan.yaml", "--output", "plan.yaml")]
    public void A_plan_is_not_written_over(params string[] arguments)
    {
        var folder = Folder();
        File.CreateSymbolicLink(Path.Combine(folder, "link.yaml"), "plan.yaml");
        var result = BuiltProgram.Run(null, folder, arguments);
        Assert.Equal(2, result.Code);
        Assert.Contains("would write over", result.Error, StringComparison.Ordinal);
        Assert.Equal(Plan, File.ReadAllText(Path.Combine(folder, "plan.yaml")));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_link_stays_a_link_and_its_target_is_written()
    {
        var folder = Folder();
        File.WriteAllText(Path.Combine(folder, "result.txt"), "old");
        File.CreateSymbolicLink(Path.Combine(folder, "link.txt"), "result.txt");
        Assert.Equal(0, BuiltProgram.Run(null, folder, "check", "plan.yaml", "--output", "link.txt").Code);
        Assert.Equal("result.txt", new FileInfo(Path.Combine(folder, "link.txt")).LinkTarget);
        Assert.True(new FileInfo(Path.Combine(folder, "result.txt")).Length > 100);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_link_that_waits_beside_the_result_is_not_followed()
    {
        using var app = new AppHarness();
        var (result, victim) = (Path.Combine(app.Folder, "result.json"), Path.Combine(app.Folder, "victim"));
        File.WriteAllText(victim, "kept");
        File.CreateSymbolicLink(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{result}.{Environment.ProcessId}.part"), victim);
        File.CreateSymbolicLink(result + ".part", victim);
        Assert.Equal(0, app.Run("check", app.Plan("plan.yaml", "pass"), "--format", "json", "--output", result));
        Assert.Equal("kept", File.ReadAllText(victim));
        Assert.Contains("report_version", File.ReadAllText(result), StringComparison.Ordinal);
        Assert.DoesNotContain(Directory.GetFiles(app.Folder), path => Path.GetFileName(path).StartsWith('.'));
    }

    [Fact]
    public void A_result_that_others_could_not_read_stays_so()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var app = new AppHarness();
        var result = Path.Combine(app.Folder, "result.json");
        File.WriteAllText(result, "old");
        File.SetUnixFileMode(result, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Assert.Equal(0, app.Run("check", app.Plan("plan.yaml", "pass"), "--format", "json", "--output", result));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(result));
    }

    [Fact]
    public void An_empty_name_is_refused()
    {
        var result = BuiltProgram.Run(null, Path.GetTempPath(), "check", "");
        Assert.Equal((2, "laygate: The name of a file is empty.\n"), (result.Code, result.Error));
    }

    [SkippableTheory]
    [InlineData("check plan.yaml")]
    [InlineDataOfFullRun("sheet plan.yaml --draft")]
    [InlineDataOfFullRun("compare plan.yaml plan.yaml")]
    [InlineData("rules")]
    [InlineData("--help")]
    public void A_full_disk_is_said(string command)
    {
        var folder = Folder();
        var (code, error) = Shell(folder, $"{command} > /dev/full");
        Assert.Equal((2, "laygate: The result cannot be written to standard output: check that it is open and that there is room where it goes.\n"), (code, error));
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Every command, on every output that can be closed, full or left by its reader: an exit code of the documented ones, never the end of the process by a signal (134 and the like).</summary>
    [SkippableTheory]
    [InlineData("--version", true)]
    [InlineDataOfFullRun("--help", true)]
    [InlineDataOfFullRun("check plan.yaml", true)]
    [InlineDataOfFullRun("check plan.yaml --quick --format json", true)]
    [InlineDataOfFullRun("check plan.yaml missing.yaml", true)]
    [InlineDataOfFullRun("check - < /dev/null", false)]
    [InlineData("check - <&-", false)]
    [InlineDataOfFullRun("sheet plan.yaml --draft", true)]
    [InlineDataOfFullRun("verify --format json", true)]
    [InlineDataOfFullRun("rules", true)]
    [InlineDataOfFullRun("explain LAY-001", true)]
    [InlineDataOfFullRun("completion bash", true)]
    [InlineDataOfFullRun("compare plan.yaml plan.yaml", true)]
    [InlineDataOfFullRun("baseline plan.yaml --output known.json", false)]
    [InlineDataOfFullRun("new specification harbour-road", false)]
    [InlineDataOfFullRun("confirm LAY-001", false)]
    [InlineData("nonsense", false)]
    public void A_closed_or_full_output_is_no_crash(string command, bool writesResult)
    {
        var folder = Folder();
        foreach (var redirection in (string[])["<&- >&-", "<&- >&- 2>&-", ">&-", "> /dev/full", ">&- 2>&-", "> /dev/full 2> /dev/full", "2>&-", "2> /dev/full"])
        {
            var (code, error) = Shell(folder, $"{command} {redirection}");
            Assert.True(code is >= 0 and <= 2, $"{command} {redirection}: {code} {error}");
            Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
            Assert.True(!writesResult || redirection[0] == '2' || code == 2, $"{command} {redirection}: {code}");
        }

        var (pipe, trace) = Shell(folder, $"{command} > pipe; echo $? > code", left: true);
        Assert.True(pipe == 0 && int.Parse(File.ReadAllText(Path.Combine(folder, "code")), System.Globalization.CultureInfo.InvariantCulture) <= 2, trace);
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>The last line of defence used to fall over its own message.</summary>
    [SkippableTheory]
    [InlineData("2>&-")]
    [InlineData("2> /dev/full")]
    public void A_message_that_nobody_can_read_leaves_its_exit_code(string redirection)
    {
        var folder = Folder();
        Assert.Equal(2, Shell(folder, $"check missing.yaml {redirection}").Code);
        Directory.Delete(folder, recursive: true);
    }

    [SkippableFact]
    public void A_device_stays_a_device()
    {
        var folder = Folder();
        Assert.Equal(2, Shell(folder, "check plan.yaml --output /dev/full").Code);
        File.CreateSymbolicLink(Path.Combine(folder, "nothing"), "/dev/null");
        Assert.Equal(0, Shell(folder, "check plan.yaml --output nothing").Code);
        Assert.Equal("/dev/null", new FileInfo(Path.Combine(folder, "nothing")).LinkTarget);
        Assert.Empty(File.ReadAllBytes("/dev/null"));
        Directory.Delete(folder, recursive: true);
    }

    // With a reader that leaves at once, standard output is a pipe that breaks.
    private static (int Code, string Error) Shell(string folder, string command, bool left = false)
    {
        Skip.IfNot(File.Exists("/dev/full"), "needs /dev/full");
        var program = Path.Combine(folder, "laygate.sh");
        File.WriteAllText(program, BuiltProgram.Wrapper());
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", left ? $"mkfifo pipe; : < pipe & sh ./laygate.sh {command}" : $"sh ./laygate.sh {command}"]) { WorkingDirectory = folder, RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false })!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience.Longest))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"laygate {command} does not end");
        }

        _ = output.GetAwaiter().GetResult();
        return (process.ExitCode, error.GetAwaiter().GetResult());
    }

    private static string Folder()
    {
        var folder = Directory.CreateTempSubdirectory("laygate-test-").FullName;
        File.WriteAllText(Path.Combine(folder, "plan.yaml"), Plan);
        return folder;
    }
}

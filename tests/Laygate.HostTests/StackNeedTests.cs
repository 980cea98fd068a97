using System.Diagnostics;
using System.Text;

namespace Laygate.HostTests;

/// <summary>
/// Runs the built program with a stack of 512 KiB for each of its threads, a sixteenth of what a thread usually has. Measured
/// on a Debug build: every command and input that was tried ended with 256 KiB, most of them with 144 KiB, below which the
/// .NET runtime itself no longer runs a check. A stack that overflows kills the process, so any recursion whose depth an input
/// decides shows here long before a user meets it.
/// </summary>
public sealed class StackNeedTests
{
    private const int StackKiB = 512;
    private const string Head = "format: 1\nplan: { id: job, stage: concept }\n";
    private const string Course = "mixes: [ { id: m } ]\ncourses: [ { id: c, mix: m, thickness: 40 mm } ]\n";

    private static readonly Dictionary<string, string> Inputs = new(StringComparer.Ordinal)
    {
        ["64 lists in each other"] = Head + "x: " + new string('[', 63) + new string(']', 63),
        ["64 groups in each other"] = Head + "site: " + Repeat("{ site: ", 62) + "1" + Repeat(" }", 62),
        ["60 indented groups"] = Head + string.Concat(Enumerable.Range(0, 60).Select(level => new string(' ', 2 * level) + "site:\n")) + new string(' ', 120) + "a: 1\n",
        ["60 dashes"] = Head + "courses:\n  " + Repeat("- ", 60) + "a\n",
        ["60 anchors in each other"] = Head + "a0: &a0 [x]\n" + string.Concat(Enumerable.Range(1, 60).Select(at => $"a{at}: &a{at} [*a{at - 1}]\n")),
        ["49,990 entries"] = "a: [" + Repeat("x,", 49_990) + "x]\n",
        ["49,900 courses that are none"] = Head + "mixes: [ { id: m } ]\ncourses: [" + Repeat("x,", 49_900) + "x]\n",
        ["a text of 1,000,000 letters"] = Head + Course.Replace("id: m }", $"id: m, name: {new string('x', 1_000_000)} }}", StringComparison.Ordinal),
        ["a measure of 1,000,000 digits"] = Head + Course.Replace("40", new string('1', 1_000_000), StringComparison.Ordinal),
        ["a measure of 18 digits without a unit"] = Head + Course.Replace("40 mm", new string('1', 18), StringComparison.Ordinal),
        ["300,000 brackets"] = new string('[', 300_000),
        ["300,000 question marks"] = Repeat("? ", 300_000),
        ["300,000 colons"] = Repeat(": ", 300_000),
        ["250,000 documents"] = Repeat("---\n", 250_000),
        ["250,000 comments"] = Repeat("# c\n", 250_000) + Head + Course,
        ["60 courses hot-on-hot in 60 runs"] = Wide(60, 60),
        ["2,000 trucks that wait for each other"] = Crowded(2000),
    };

    public static TheoryData<string> Names => [.. Inputs.Keys.Usual(4)];

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public void No_input_needs_a_deep_stack(string name)
    {
        var folder = Directory.CreateTempSubdirectory("laygate-test-").FullName;
        File.WriteAllText(Path.Combine(folder, "plan.yaml"), Inputs[name]);
        Holds(folder, "check plan.yaml --outlook --output html=page.html --output sarif=findings.sarif --format json");
        Directory.Delete(folder, recursive: true);
    }

    [SkippableTheory]
    [InlineData("compare plan.yaml plan.yaml", "64 lists in each other")]
    [InlineDataOfFullRun("compare plan.yaml plan.yaml", "64 groups in each other")]
    [InlineDataOfFullRun("compare plan.yaml plan.yaml", "60 anchors in each other")]
    [InlineData("rules --merged --rules plan.yaml", "64 lists in each other")]
    [InlineDataOfFullRun("rules --merged --rules plan.yaml", "64 groups in each other")]
    [InlineDataOfFullRun("rules --merged --rules plan.yaml", "60 anchors in each other")]
    public void No_other_reader_of_a_document_needs_a_deep_stack(string command, string name)
    {
        var folder = Directory.CreateTempSubdirectory("laygate-test-").FullName;
        File.WriteAllText(Path.Combine(folder, "plan.yaml"), Inputs[name]);
        Holds(folder, command);
        Directory.Delete(folder, recursive: true);
    }

    [SkippableTheory]
    [InlineDataOfFullRun("check quay-road-hot-on-hot.yaml --rules particular/port-of-tamarel.yaml --outlook --format html")]
    [InlineDataOfFullRun("check quay-road-hot-on-hot.yaml --outlook --output json=a --output sarif=b --output junit=c --output code-quality=d --output annotations=e --output markdown=f")]
    [InlineDataOfFullRun("sheet quay-road-hot-on-hot.yaml --draft --format html --language de")]
    [InlineDataOfFullRun("compare county-route-us.yaml quay-road-hot-on-hot.yaml")]
    [InlineDataOfFullRun("rules --format json")]
    [InlineData("rules --merged --rules us-wa")]
    [InlineDataOfFullRun("verify")]
    public void No_command_needs_a_deep_stack(string command)
    {
        var folder = Directory.CreateTempSubdirectory("laygate-test-").FullName;
        var examples = Path.Combine(SourceTree.Root, "examples");
        foreach (var file in Directory.EnumerateFiles(examples, "*.yaml", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder, Path.GetRelativePath(examples, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        Holds(folder, command);
        Directory.Delete(folder, recursive: true);
    }

    private static void Holds(string folder, string command)
    {
        Skip.If(OperatingSystem.IsWindows(), "needs a shell that limits stacks");
        File.WriteAllText(Path.Combine(folder, "laygate.sh"), BuiltProgram.Wrapper());
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", $"ulimit -s {StackKiB}; sh ./laygate.sh {command}"])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardErrorEncoding = Encoding.UTF8,
            UseShellExecute = false,
        })!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        _ = output.GetAwaiter().GetResult();
        Assert.True(process.ExitCode is 0 or 1 or 2, $"exit code {process.ExitCode}\n{error[..Math.Min(error.Length, 4000)]}");
        Assert.DoesNotContain("overflow", error, StringComparison.OrdinalIgnoreCase);
    }

    private static string Wide(int courses, int runs) =>
        "format: 1\nplan: { id: job, stage: release }\nmixes: [ { id: m } ]\ncourses:\n"
        + string.Concat(Enumerable.Range(0, courses).Select(at => $"  - {{ id: c{at}, mix: m, thickness: 40 mm{(at > 0 ? $", laid: hot-on-hot, on: c{at - 1}" : string.Empty)} }}\n"))
        + "runs:\n"
        + string.Concat(Enumerable.Range(0, runs).Select(at => $"  - {{ id: r{at}, from: {at * 100} m, to: {(at * 100) + 100} m, width: 4 m, courses: [{string.Join(", ", Enumerable.Range(0, courses).Select(course => $"c{course}"))}] }}\n"));

    private static string Crowded(int trucks)
    {
        var text = File.ReadAllText(Path.Combine(SourceTree.Root, "examples", "county-route-us.yaml"));
        var crowded = text.Replace("count: 18,", $"count: {trucks},", StringComparison.Ordinal).Replace("waiting_places: 6", $"waiting_places: {trucks}", StringComparison.Ordinal);
        Assert.Equal(2, crowded.Split($"{trucks}").Length - text.Split($"{trucks}").Length);
        return crowded;
    }

    private static string Repeat(string piece, int count) => string.Concat(Enumerable.Repeat(piece, count));
}

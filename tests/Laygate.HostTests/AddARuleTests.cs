using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Laygate.HostTests;

/// <summary>The section of rules/README.md that adds a rule and a specification, run as it stands.</summary>
public sealed partial class AddARuleTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-add-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public void The_section_adds_a_rule_and_a_specification_in_at_most_five_commands()
    {
        Skip.If(OperatingSystem.IsWindows(), "The section is written for a Unix shell.");

        var script = Section().Match(File.ReadAllText(Readme())).Groups["script"].Value;
        Assert.InRange(HereText().Replace(script, string.Empty).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length, 3, 5);
        var output = Shell(script);
        Assert.EndsWith("3 cases of 1 rule: all hold.\n", output, StringComparison.Ordinal);

        var merged = BuiltProgram.Run(null, folder, "rules", "--merged", "--rules", "harbour-road");
        Assert.Equal(0, merged.Code);
        Assert.Contains("rule PAV-901 paving/shift-longer-than-the-works-permit harbour-road: in force", merged.Out, StringComparison.Ordinal);
        Assert.Contains("set by particular-specification harbour-road", merged.Out, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void A_case_that_does_not_hold_is_shown_with_its_place_and_gives_1()
    {
        Skip.If(OperatingSystem.IsWindows(), "The section is written for a Unix shell.");

        Shell(Section().Match(File.ReadAllText(Readme())).Groups["script"].Value);
        var cases = Path.Combine(folder, "harbour-road/rules/paving/shift-longer-than-the-works-permit/cases.yaml");
        File.WriteAllText(cases, File.ReadAllText(cases).Replace("status: fail, value: 6 h", "status: warn, value: 6 h", StringComparison.Ordinal));
        var result = BuiltProgram.Run(null, folder, "rules", "--test", "harbour-road");
        Assert.Equal(1, result.Code);
        Assert.StartsWith("harbour-road/rules/paving/shift-longer-than-the-works-permit/cases.yaml:5:5: PAV-901, Six hours do not\n", result.Out, StringComparison.Ordinal);
        Assert.EndsWith("3 cases of 1 rule: 1 wrong.\n", result.Out, StringComparison.Ordinal);
    }

    private string Shell(string script)
    {
        var wrapper = Path.Combine(folder, "bin", "laygate");
        Directory.CreateDirectory(Path.GetDirectoryName(wrapper)!);
        File.WriteAllText(wrapper, BuiltProgram.Wrapper());
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(wrapper, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        var start = new ProcessStartInfo("sh", ["-eu"]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true };
        start.Environment["PATH"] = $"{Path.GetDirectoryName(wrapper)}:{Environment.GetEnvironmentVariable("PATH")}";
        using var process = Process.Start(start)!;
        process.StandardInput.Write(script);
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output);
        return output;
    }

    private static string Readme()
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(here!.FullName, "Laygate.slnx")))
        {
            here = here.Parent;
        }

        return Path.Combine(here.FullName, "rules", "README.md");
    }

    [GeneratedRegex("## Add a rule in at most five commands\n.*?```sh\n(?<script>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Section();

    [GeneratedRegex("(?<=<<'END')\n.*?\nEND(?=\n)", RegexOptions.Singleline | RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex HereText();
}

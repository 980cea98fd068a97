using System.Diagnostics;

namespace Laygate.HostTests;

/// <summary>The completion scripts, run by the shells that they are for where those are there.</summary>
public sealed class CompletionTests
{
    [Theory]
    [InlineData("laygate ", "check compare completion")]
    [InlineData("laygate check --st", "--stage --stdin-name")]
    [InlineData("laygate check --stage ", "concept release submission")]
    [InlineData("laygate check --fail-on w", "warn")]
    public void Bash_offers_what_fits(string line, string expected)
    {
        const string Ask = """
            COMP_WORDS=($LINE); case "$LINE" in *' ') COMP_WORDS+=("");; esac
            COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _laygate; printf '%s\n' "${COMPREPLY[@]}"
            """;
        var offered = Shell("bash", Script("bash") + "\nLINE='" + line + "'\n" + Ask).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(expected.Split(' '), word => Assert.Contains(word, offered.AsEnumerable(), StringComparer.Ordinal));
        Assert.DoesNotContain("--nonsense", offered.AsEnumerable(), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("zsh")]
    [InlineData("fish")]
    public void Every_option_stands_in_the_script(string shell)
    {
        var script = Script(shell);
        foreach (var word in (string[])["check", "compare", "stage", "fail-on", "changed-since", "concept"])
        {
            Assert.Contains(word, script, StringComparison.Ordinal);
        }
    }

    private static string Script(string shell)
    {
        var result = BuiltProgram.Run(null, Path.GetTempPath(), "completion", shell);
        Assert.Equal(0, result.Code);
        return result.Out;
    }

    private static string Shell(string shell, string script)
    {
        var start = new ProcessStartInfo(shell) { RedirectStandardInput = true, RedirectStandardOutput = true, UseShellExecute = false, WorkingDirectory = Path.GetTempPath() };
        using var process = Process.Start(start)!;
        process.StandardInput.Write(script);
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return output;
    }
}

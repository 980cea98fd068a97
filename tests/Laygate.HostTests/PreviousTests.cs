using System.Diagnostics;

namespace Laygate.HostTests;

/// <summary>What has changed since an earlier revision, in the forms for people.</summary>
public sealed class PreviousTests : IDisposable
{
    private static readonly string Example = Path.Combine(SourceTree.Root, "examples", "concept-fifteen-lines.yaml");

    private readonly string folder = Directory.CreateTempSubdirectory("laygate-previous-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void An_earlier_file_shows_what_moved()
    {
        var text = File.ReadAllText(Example);
        var (earlier, now) = (Path.Combine(folder, "a.yaml"), Path.Combine(folder, "b.yaml"));
        File.WriteAllText(earlier, text);
        File.WriteAllText(now, text.Replace("thickness: 45 mm", "thickness: 77 mm", StringComparison.Ordinal));
        var result = Run("b.yaml", "--previous", "a.yaml", "--format", "markdown", "--output", "html=b.html");
        Assert.True(result.Code is 0, result.Error);
        foreach (var page in (string[])[result.Out, File.ReadAllText(Path.Combine(folder, "b.html"))])
        {
            Assert.Contains("Changes since the last revision", page, StringComparison.Ordinal);
            Assert.Contains("77 mm", page, StringComparison.Ordinal);
            Assert.DoesNotContain("No earlier revision was compared", page, StringComparison.Ordinal);
        }

        Assert.Contains("No finding, quantity or text differs", Run("b.yaml", "--previous", "b.yaml", "--format", "markdown").Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Changes since", Run("b.yaml", "--format", "markdown").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_revision_serves_for_several_plans()
    {
        File.Copy(Example, Path.Combine(folder, "a.yaml"));
        Git("init", "-q");
        Git("add", "-A");
        Git("-c", "user.name=Tester", "-c", "user.email=tester@example.org", "commit", "-q", "-m", "Plans");
        File.Copy(Example, Path.Combine(folder, "b.yaml"));
        var result = Run("a.yaml", "b.yaml", "--previous", "HEAD", "--format", "markdown");
        Assert.True(result.Code is 0, result.Error);
        Assert.Contains("No finding, quantity or text differs", result.Out, StringComparison.Ordinal);
        Assert.Contains("The plan is new", result.Out, StringComparison.Ordinal);
        var none = Run("a.yaml", "--previous", "nowhere", "--format", "markdown");
        Assert.Equal(2, none.Code);
        Assert.Contains("There is no revision `nowhere`", none.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_compared_is_said()
    {
        File.Copy(Example, Path.Combine(folder, "a.yaml"));
        File.Copy(Example, Path.Combine(folder, "b.yaml"));
        File.WriteAllText(Path.Combine(folder, "broken.yaml"), "[");
        Assert.Contains("There is no file `nowhere`", Says(2, "a.yaml", "--previous", "nowhere", "--format", "html"), StringComparison.Ordinal);
        Assert.Contains("names one file", Says(2, "a.yaml", "b.yaml", "--previous", "broken.yaml", "--format", "html"), StringComparison.Ordinal);
        Assert.Contains("html and markdown only", Says(2, "a.yaml", "--previous", "b.yaml"), StringComparison.Ordinal);
        var broken = Run("a.yaml", "--previous", "broken.yaml", "--format", "html");
        Assert.Equal(2, broken.Code);
        Assert.Contains("broken.yaml:1:", broken.Error, StringComparison.Ordinal);
        Assert.Contains("could not be read, so nothing was compared", broken.Out, StringComparison.Ordinal);
    }

    private string Says(int code, params string[] arguments)
    {
        var result = Run(arguments);
        Assert.Equal(code, result.Code);
        return result.Error;
    }

    private BuiltProgram.Result Run(params string[] arguments) =>
        BuiltProgram.Run(null, folder, ["check", .. arguments, "--date", "2026-11-25", "--fail-on", "none"]);

    private void Git(params string[] arguments)
    {
        using var git = Process.Start(new ProcessStartInfo("git", arguments) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true })!;
        git.WaitForExit();
        Assert.Equal(0, git.ExitCode);
    }
}

using System.Diagnostics;

namespace Laygate.HostTests;

/// <summary>What is banned in <c>src</c> and what in <c>tests</c> is told by the place in the repository, not by a folder of that name above it.</summary>
public sealed class CloneBelowSrcTests
{
    [Theory]
    [InlineData("src/Laygate.Model", "src", "tests")]
    [InlineData("tests/Laygate.UnitTests", "tests", "src")]
    public void Each_list_of_banned_symbols_reaches_its_own_projects_and_no_others(string project, string own, string other)
    {
        var top = Directory.CreateTempSubdirectory("laygate-test-").FullName;
        var clone = Path.Combine(top, "src", "clone");
        var folder = Path.Combine(clone, project);
        Directory.CreateDirectory(folder);
        foreach (var file in (string[])["Directory.Build.props", "Directory.Packages.props", "global.json"])
        {
            File.Copy(Path.Combine(SourceTree.Root, file), Path.Combine(clone, file));
        }

        File.WriteAllText(Path.Combine(folder, "Any.csproj"), "<Project Sdk=\"Microsoft.NET.Sdk\" />");
        var items = Evaluate(Path.Combine(folder, "Any.csproj"));
        Assert.Contains("\"Items\"", items, StringComparison.Ordinal);
        Assert.Contains($"/clone/{own}/BannedSymbols.txt\"", items, StringComparison.Ordinal);
        Assert.DoesNotContain($"/clone/{other}/BannedSymbols.txt", items, StringComparison.Ordinal);
        Directory.Delete(top, recursive: true);
    }

    private static string Evaluate(string project)
    {
        var host = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } path ? path : "dotnet";
        using var process = Process.Start(new ProcessStartInfo(host, ["msbuild", project, "-getItem:AdditionalFiles", "-getItem:PackageReference", "-nologo", "-nodeReuse:false"])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
            WorkingDirectory = Path.GetDirectoryName(project)!,
        })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output);
        return output;
    }
}

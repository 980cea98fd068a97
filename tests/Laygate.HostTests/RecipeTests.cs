using System.Diagnostics;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Laygate.HostTests;

/// <summary>The recipes of <c>docs/recipes</c>: their scripts as they stand, in a clone with a changed plan, with the built program in place of the installed one.</summary>
public sealed partial class RecipeTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-recipe-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [FactOfFullRun]
    public void The_workflow_annotates_what_changed_and_leaves_its_files()
    {
        var clone = Begin();
        var steps = Blocks().Matches(Recipe("github-workflow.yml")).Where(step => !step.Value.Contains("dotnet tool install", StringComparison.Ordinal)).ToList();
        Assert.Contains(steps, step => step.Value.Contains("--changed-since", StringComparison.Ordinal));
        var (code, output) = Steps(clone, steps);
        Assert.Equal(1, code);
        Assert.Contains("::error file=jobs/b.yaml,line=", output, StringComparison.Ordinal);
        Assert.DoesNotContain("file=jobs/a.yaml", output, StringComparison.Ordinal);
        Assert.NotEmpty(JsonNode.Parse(File.ReadAllText(Path.Combine(clone, "plans.sarif")))!["runs"]![0]!["results"]!.AsArray());
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(Path.Combine(clone, "plans.html")), StringComparison.OrdinalIgnoreCase);
        Assert.NotEmpty(File.ReadAllText(Path.Combine(clone, "summary.md")));
    }

    [FactOfFullRun]
    public void The_merge_request_gets_its_test_and_quality_reports()
    {
        var clone = Begin();
        var script = string.Join('\n', ScriptLines().Matches(Recipe("gitlab-ci.yml")).Select(match => match.Groups["text"].Value).Where(text => !text.StartsWith("dotnet tool install", StringComparison.Ordinal)));
        var (code, _) = Shell(clone, script);
        Assert.Equal(1, code);
        Assert.NotEmpty(XDocument.Load(Path.Combine(clone, "plans.xml")).Descendants("failure"));
        Assert.NotEmpty(JsonNode.Parse(File.ReadAllText(Path.Combine(clone, "plans.json")))!.AsArray());
        Assert.True(File.Exists(Path.Combine(clone, "plans.html")));
    }

    [Fact]
    public void The_hook_checks_the_files_it_is_given()
    {
        var clone = Begin();
        var hook = File.ReadAllText(Path.Combine(SourceTree.Root, ".pre-commit-hooks.yaml"));
        var entry = Entry().Match(hook).Groups["text"].Value;
        Assert.Contains("id: laygate-check", hook, StringComparison.Ordinal);
        Assert.Contains("laygate-check", Recipe("pre-commit-config.yaml"), StringComparison.Ordinal);
        Assert.Equal(0, Shell(clone, entry + " jobs/a.yaml").Code);
        Assert.Equal(1, Shell(clone, entry + " jobs/a.yaml jobs/b.yaml").Code);
    }

    // A repository with two sound plans, and a clone in which one of them lays faster than its plants deliver.
    private string Begin()
    {
        var origin = Path.Combine(folder, "origin");
        Directory.CreateDirectory(Path.Combine(origin, "jobs"));
        foreach (var name in (string[])["a", "b"])
        {
            File.Copy(WholePlans.PathOf("quay-road-hot-on-hot.yaml"), Path.Combine(origin, "jobs", name + ".yaml"));
        }

        File.WriteAllText(Path.Combine(origin, "laygate.yaml"), "plans: ['jobs/**/*.yaml']\n");
        Directory.CreateDirectory(Path.Combine(folder, "bin"));
        var wrapper = Path.Combine(folder, "bin", "laygate");
        File.WriteAllText(wrapper, BuiltProgram.Wrapper());
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(wrapper, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        var (code, output) = Shell(origin, "git init -q -b main . && git add -A && git -c user.name=Tester -c user.email=tester@example.org commit -q -m Plans && git clone -q . ../clone");
        Assert.True(code == 0, output);
        var clone = Path.Combine(folder, "clone");
        var plan = Path.Combine(clone, "jobs", "b.yaml");
        File.WriteAllText(plan, File.ReadAllText(plan).Replace("    speed: 2.6 m/min", "    speed: 3.4 m/min", StringComparison.Ordinal));
        return clone;
    }

    private static string Recipe(string name) => File.ReadAllText(Path.Combine(SourceTree.Root, "docs", "recipes", name));

    // As the host does it: a shell for each step; after one that failed only those with `always()` run, and the first code counts.
    private (int Code, string Output) Steps(string where, IEnumerable<Match> steps)
    {
        var (code, output) = (0, string.Empty);
        foreach (var step in steps)
        {
            if (code != 0 && !step.Groups["always"].Success)
            {
                continue;
            }

            var done = Shell(where, step.Groups["text"].Value);
            (code, output) = (code == 0 ? done.Code : code, output + done.Output);
        }

        return (code, output);
    }

    private (int Code, string Output) Shell(string where, string script)
    {
        var start = new ProcessStartInfo("bash") { WorkingDirectory = where, RedirectStandardInput = true, RedirectStandardOutput = true, UseShellExecute = false };
        start.Environment["PATH"] = Path.Combine(folder, "bin") + ":" + start.Environment["PATH"];
        start.Environment["GITHUB_BASE_REF"] = "main";
        start.Environment["CI_MERGE_REQUEST_TARGET_BRANCH_NAME"] = "main";
        start.Environment["GITHUB_STEP_SUMMARY"] = Path.Combine(where, "summary.md");
        using var shell = Process.Start(start)!;
        shell.StandardInput.Write("set -e\n" + script + "\n");
        shell.StandardInput.Close();
        var output = shell.StandardOutput.ReadToEnd();
        shell.WaitForExit();
        return (shell.ExitCode, output);
    }

    [GeneratedRegex(@"(?<always>if: always\(\)\s+)?run: (?:\|\n(?<text>(?: {10}.*\n)+)|(?<text>.+))", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Blocks();

    [GeneratedRegex(@"^    - (?<text>[^i].*)$", RegexOptions.ExplicitCapture | RegexOptions.Multiline, Patience.Milliseconds)]
    private static partial Regex ScriptLines();

    [GeneratedRegex(@"entry: (?<text>.+)", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Entry();
}

using System.Text.RegularExpressions;

namespace Laygate.ConformanceTests.Docs;

/// <summary>A file that a comment or a page names is there: nobody is sent to a document that is not in the repository.</summary>
public sealed partial class FileReferenceTests
{
    private static readonly string[] Top = ["src", "tests", "docs", "rules", "schemas", "examples", ".ci", ".config"];

    /// <summary>Files that users and tools write, or that a build makes; named here with the reason why they are not in the repository.</summary>
    private static readonly Dictionary<string, string> Elsewhere = new(StringComparer.Ordinal)
    {
        ["laygate.yaml"] = "settings in a folder of the user",
        ["artifacts/faults/table.txt"] = "written by a test run",
        ["artifacts/faults/said.txt"] = "written by a test run",
        ["doc/ci/testing/code_quality.md"] = "documentation of GitLab, named with it",
        ["license.txt"] = "in the package of another project",
    };

    private static readonly string[] Files = [.. Directory
        .EnumerateFiles(Repository.Root, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint })
        .Select(path => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/'))
        .Where(path => !path.Split('/').Any(part => part is ".git" or "artifacts" or "bin" or "obj" or "node_modules"))];

    private static readonly HashSet<string> Paths = [.. Files, .. Files.SelectMany(Folders)];
    private static readonly HashSet<string> Names = [.. Files.Select(path => path.Split('/')[^1])];

    /// <summary>Source and tests: their comments; pages: their links and the paths that stand as code; cases: all of their text.</summary>
    public static TheoryData<string> Texts => [.. Files
        .Where(path => path.EndsWith(".cs", StringComparison.Ordinal) || (path.EndsWith(".md", StringComparison.Ordinal) && !path.StartsWith("docs/rules/", StringComparison.Ordinal))
            || (path.EndsWith(".yaml", StringComparison.Ordinal) && path.StartsWith("docs/verification/", StringComparison.Ordinal)))
        .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Texts))]
    public void What_is_named_is_there(string file)
    {
        var missing = Missing(file, File.ReadAllText(Path.Combine(Repository.Root, file)));
        Assert.True(missing.Count == 0, string.Join('\n', missing));
    }

    /// <summary>The reading itself finds a document that is not there, and leaves what is written elsewhere.</summary>
    [Theory]
    [InlineData("src/a.cs", "// As heat-of-mats.md says.", false)]
    [InlineData("src/a.cs", "var name = \"heat-of-mats.md\";", true)]
    [InlineData("src/a.cs", "/// See docs/performance.md.", true)]
    [InlineData("src/a.cs", "/// See docs/performances.md.", false)]
    [InlineData("src/a.cs", "// Named in <c>laygate.yaml</c>.", true)]
    [InlineData("docs/a.md", "See [it](heat-of-mats.md).", false)]
    [InlineData("docs/a.md", "See [it](performance.md#speed) and [that](https://example.org/x.md).", true)]
    [InlineData("docs/a.md", "It stands in `src/Laygate.Nowhere/Heat.cs`.", false)]
    [InlineData("docs/a.md", "It stands in `src/Laygate.Model` and `rules/<family>/<name>/rule.yaml`.", true)]
    [InlineData("docs/verification/a.yaml", "place: tests/Tools/nothing.py", false)]
    public void A_file_that_is_not_there_is_found(string file, string text, bool holds) => Assert.Equal(holds, Missing(file, text).Count == 0);

    private static List<string> Missing(string file, string text) => Path.GetExtension(file) switch
    {
        ".cs" => [.. FileName().Matches(CSharpText.Of(text).Comments).Select(match => match.Value).Where(name => !IsThere(name, file)).Select(name => $"{file}: {name}")],
        ".md" => [.. Link().Matches(text).Concat(InCode().Matches(text)).Select(match => match.Groups["path"].Value).Where(path => !IsPlace(path, file)).Select(path => $"{file}: {path}")],
        _ => [.. FileName().Matches(text).Select(match => match.Value).Where(name => Top.Contains(name.Split('/')[0], StringComparer.Ordinal) && !IsThere(name, file)).Select(name => $"{file}: {name}")],
    };

    private static bool IsThere(string name, string file) =>
        Elsewhere.ContainsKey(name) || IsPlace(name, file) || (!name.Contains('/', StringComparison.Ordinal) && Names.Contains(name));

    // From the top of the repository or from the folder of the text; an example with a placeholder is not looked for.
    private static bool IsPlace(string path, string file)
    {
        if (path.Contains("ID", StringComparison.Ordinal) || path.Contains("NNNN", StringComparison.Ordinal) || path.IndexOfAny(['<', '*', '{', ' ']) >= 0)
        {
            return true;
        }

        var trimmed = path.TrimEnd('/', '.');
        var here = Path.GetRelativePath(Repository.Root, Path.Combine(Repository.Root, Path.GetDirectoryName(file)!, trimmed)).Replace('\\', '/');
        return trimmed.Length == 0 || Paths.Contains(trimmed) || Paths.Contains(here) || here is ".";
    }

    private static IEnumerable<string> Folders(string path)
    {
        for (var at = path.IndexOf('/', StringComparison.Ordinal); at > 0; at = path.IndexOf('/', at + 1))
        {
            yield return path[..at];
        }
    }

    [GeneratedRegex(@"(?<![\w./:-])[\w.-]+(/[\w.-]+)*\.(md|ya?ml|json|txt|csv|cs|py|mjs)\b(?!\w)", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex FileName();

    [GeneratedRegex(@"\]\((?<path>[^)#:\s]+)(#[^)]*)?\)", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Link();

    [GeneratedRegex(@"`(?<path>(src|tests|docs|rules|schemas|examples|\.ci|\.config)/[^`\s]*)`", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex InCode();
}

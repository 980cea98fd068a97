using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Laygate.HostTests;

/// <summary>What an editor with the public YAML language server underlines and offers: the same schema, the same places as the program.</summary>
public sealed class EditorTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-editor-").FullName;

    public EditorTests()
    {
        Directory.CreateDirectory(Path.Combine(folder, "schemas"));
        Directory.CreateDirectory(Path.Combine(folder, "examples"));
        foreach (var schema in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "schemas")))
        {
            File.Copy(schema, Path.Combine(folder, "schemas", Path.GetFileName(schema)));
        }
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public void Every_example_names_its_schema_and_nothing_in_it_is_underlined()
    {
        var examples = Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "examples"), "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
        Assert.All(examples, example => Assert.StartsWith("# yaml-language-server: $schema=../", File.ReadLines(example).First(), StringComparison.Ordinal));
        Assert.All(Diagnose([.. examples]), file => Assert.Empty(file["diagnostics"]!.AsArray()));
    }

    [SkippableTheory]
    [InlineData("thickness: 1.0 in", "thickness: 1.0")]
    [InlineData("\nmixes:", "\nmixs:")]
    [InlineData("stage: release", "stage: relase")]
    [InlineData("thickness: 1.0 in", "thickness: 1.0 in\n    thicknes_lowest: 0.1 in")]
    public void What_is_wrong_is_underlined_on_the_line_that_the_program_names(string from, string to)
    {
        var text = File.ReadAllText(Path.Combine(SourceTree.Root, "examples", "moor-road-thin-overlay.yaml"));
        Assert.Contains(from, text, StringComparison.Ordinal);
        var plan = Path.Combine(folder, "examples", "plan.yaml");
        File.WriteAllText(plan, text.Replace(from, to, StringComparison.Ordinal));
        var underlined = Assert.Single(Diagnose(plan))["diagnostics"]!.AsArray().Select(diagnostic => diagnostic!["line"]!.GetValue<int>()).ToHashSet();
        var named = BuiltProgram.Run(null, folder, "check", "examples/plan.yaml").Error.Split('\n')
            .Where(line => line.StartsWith("examples/plan.yaml:", StringComparison.Ordinal)).Select(line => int.Parse(line.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.NotEmpty(underlined);
        Assert.Contains(named, underlined.Contains);
    }

    [SkippableFact]
    public void Keys_are_offered_where_they_belong()
    {
        var plan = Path.Combine(folder, "examples", "plan.yaml");
        File.WriteAllText(plan, "# yaml-language-server: $schema=../schemas/plan.schema.json\nformat: 1\nplan:\n  id: a\n  stage: concept\n  \n");
        var offered = Assert.Single(Run(["--complete", plan, "6", "3"]))["completions"]!.AsArray().Select(label => label!.GetValue<string>()).ToList();
        Assert.Contains("title", offered, StringComparer.Ordinal);
        Assert.DoesNotContain("stage", offered, StringComparer.Ordinal);
    }

    private static IReadOnlyList<JsonNode> Diagnose(params string[] files) => Run(files);

    private static IReadOnlyList<JsonNode> Run(string[] arguments)
    {
        Needs.Tool("yaml-language-server/bin/yaml-language-server");
        var start = new ProcessStartInfo("node") { RedirectStandardOutput = true, UseShellExecute = false };
        foreach (var argument in (string[])[Path.Combine(SourceTree.Root, "tests", "Tools", "diagnose.mjs"), .. arguments])
        {
            start.ArgumentList.Add(argument);
        }

        using var node = Process.Start(start)!;
        var output = node.StandardOutput.ReadToEnd();
        node.WaitForExit();
        Assert.Equal(0, node.ExitCode);
        return [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonNode.Parse(line)!)];
    }
}

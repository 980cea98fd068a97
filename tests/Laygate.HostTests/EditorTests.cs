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
    [InlineDataOfFullRun("\nmixes:", "\nmixs:")]
    [InlineData("stage: release", "stage: relase")]
    [InlineDataOfFullRun("thickness: 1.0 in", "thickness: 1.0 in\n    thicknes_lowest: 0.1 in")]
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

    // Line and column, from 1, of the end of the last line but one: where somebody writes on.
    [SkippableTheory]
    [InlineData("parts", "parts: 1\nrollers:\n  - id: r7\n    \n", 5, 5, new[] { "kind", "mass", "mode", "part" }, "id")]
    [InlineDataOfFullRun("parts", "parts: 1\n\n", 3, 1, new[] { "uses", "measures", "trucks" }, "parts")]
    [InlineDataOfFullRun("parts", "parts: 1\nmeasures:\n  - id: spotter\n    kind: \n", 5, 11, new[] { "reversing-spotter", "reversing-camera" }, "id")]
    [InlineData("plan-with-parts", "format: 1\nuses: [firm.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\nrolling:\n  rollers:\n    - part: r7\n      \n", 9, 7, new[] { "mass", "speed", "mode" }, "part")]
    [InlineDataOfFullRun("plan-with-parts", "format: 1\nuses: [firm.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\nsupply:\n  feeder:\n    part: f1\n    \n", 9, 5, new[] { "rate", "storage" }, "part")]
    public void Keys_are_offered_in_parts_and_where_a_plan_uses_them(string schema, string text, int line, int column, string[] offered, string not)
    {
        var file = Written(schema, text);
        var labels = Assert.Single(Run(["--complete", file, $"{line}", $"{column}"]))["completions"]!.AsArray().Select(label => label!.GetValue<string>()).ToList();
        Assert.All(offered, key => Assert.Contains(key, labels, StringComparer.Ordinal));
        Assert.DoesNotContain(not, labels, StringComparer.Ordinal);
    }

    [SkippableTheory]
    [InlineDataOfFullRun("parts", "parts: 1\nrollers:\n  - id: r7\n    mass: 9 t\n", 3, 2, "Parts that plans use as rollers.")]
    [InlineData("parts", "parts: 1\nrollers:\n  - id: r7\n    mass: 9 t\n", 5, 6, "Working mass.")]
    [InlineDataOfFullRun("parts", "parts: 1\nrollers:\n  - id: r7\n    part: tandem\n", 5, 6, "Another part of the same kind that this one is made of")]
    [InlineDataOfFullRun("plan", "format: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n", 3, 10, "Id of the plan, the same through all revisions.")]
    [InlineDataOfFullRun("job", "job: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n", 3, 10, "Id of the plan, the same through all revisions.")]
    [InlineData("plan-with-parts", "format: 1\nuses: [firm.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n", 3, 2, "Files whose parts are used")]
    [InlineDataOfFullRun("plan-with-parts", "format: 1\nuses: [firm.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\nrolling: { rollers: [{ part: r7 }] }\n", 6, 24, "Id of the part that is used")]
    public void A_key_says_what_it_means_not_what_its_kind_is(string schema, string text, int line, int column, string meaning)
    {
        if (schema is "plan")
        {
            AsNewWritesIt();
        }

        var shown = Assert.Single(Run(["--hover", Written(schema, text), $"{line}", $"{column}"]))["hover"];
        Assert.Contains(meaning, shown?.ToJsonString() ?? "nothing", StringComparison.Ordinal);
    }

    [SkippableFact]
    public void What_is_wrong_in_parts_is_underlined_and_what_is_right_is_not()
    {
        const string plan = "format: 1\nuses: [firm.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\nmeasures: [spotter, { part: lights, where: here }]\nrolling: { rollers: [r7, { id: r8, kind: tandem }] }\n";
        const string parts = "parts: 1\nrollers:\n  - { id: r7, kind: tandem, mass: 9 t }\n";
        const string import = "format: 1\nencoding: utf-8\ndelimiter: semicolon\ndecimal_mark: comma\ncolumns: [{ column: Zeit, quantity: at }]\n";
        Assert.All(
            Diagnose(Written("plan-with-parts", plan, "a"), Written("parts", parts, "b"), Written("import", import, "c")),
            file => Assert.Empty(file["diagnostics"]!.AsArray()));
        Assert.All(
            Diagnose(Written("plan-with-parts", plan.Replace("where: here", "wher: here", StringComparison.Ordinal), "a"), Written("parts", parts.Replace("mass: 9 t", "mass: 9", StringComparison.Ordinal), "b"), Written("import", import.Replace("decimal_mark: comma\n", string.Empty, StringComparison.Ordinal), "c")),
            file => Assert.NotEmpty(file["diagnostics"]!.AsArray()));
    }

    // Code is written from the schema of plans in the repository, which says each meaning once; `new` writes the one for editors.
    private void AsNewWritesIt()
    {
        using var app = new AppHarness();
        Assert.Equal(0, app.Run("new", "plan", "hill", "--stage", "concept", "--into", app.Folder));
        File.Copy(Path.Combine(app.Folder, "plan.schema.json"), Path.Combine(folder, "schemas", "plan.schema.json"), overwrite: true);
    }

    // The first line names the schema; lines of the tests count it.
    private string Written(string schema, string text, string name = "file")
    {
        var file = Path.Combine(folder, "examples", $"{name}.yaml");
        File.WriteAllText(file, $"# yaml-language-server: $schema=../schemas/{schema}.schema.json\n{text}");
        return file;
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

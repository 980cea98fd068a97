using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Laygate.HostTests;

/// <summary>Plans that use files of parts on the disk, by the built program.</summary>
public sealed class PartFileTests : IDisposable
{
    private const string Plan = "format: 1\nuses: [../firm/parts.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: upper, mix: mix-a, thickness: 45 mm }]\nrolling: { rollers: [r7] }\n";
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-parts-").FullName;

    public PartFileTests()
    {
        Write("laygate.yaml", "plans: [jobs/*.yaml]\n");
        Write("firm/parts.yaml", "parts: 1\nrollers:\n  - { id: r7, kind: tandem, mode: vibration, speed: 20 km/h }\n");
        Write("jobs/a.yaml", Plan);
        Write("jobs/b.yaml", Plan.Replace("id: p,", "id: q,", StringComparison.Ordinal));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_finding_points_into_the_file_of_its_part_in_every_form()
    {
        Assert.Contains("firm/parts.yaml:3", Laygate("check", "jobs/a.yaml").Out, StringComparison.Ordinal);
        Assert.Contains("Uses firm/parts.yaml (1 part", Laygate("check", "jobs/a.yaml").Out, StringComparison.Ordinal);
        var report = JsonNode.Parse(Laygate("check", "jobs/a.yaml", "--format", "json").Out)!["files"]![0]!["reports"]![0]!;
        Assert.Equal("firm/parts.yaml", report["uses"]![0]!["file"]!.GetValue<string>());
        var finding = report["findings"]!.AsArray().First(one => one!["rule"]!.GetValue<string>() is "ROL-026")!;
        Assert.Equal(("firm/parts.yaml", 3), (finding["position"]!["file"]!.GetValue<string>(), finding["position"]!["line"]!.GetValue<int>()));
        foreach (var form in (string[])["sarif", "annotations", "code-quality", "junit", "markdown", "html"])
        {
            Assert.Contains("firm/parts.yaml", Laygate("check", "jobs/a.yaml", "--format", form).Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Whatever_names_a_line_names_the_file_of_its_part()
    {
        Write("firm/parts.yaml", "parts: 1\nfeeders:\n  - { id: f1, rate: 500 t/h }\n");
        Write("jobs/a.yaml", "format: 1\nuses: [../firm/parts.yaml]\nplan: { id: p, stage: submission }\nlocation: { jurisdiction: DE }\nsite: { conditions: { feeder: no } }\ncourses: [{ id: upper, mix: mix-a, thickness: 45 mm }]\nsupply: { feeder: f1 }\n");
        var notes = JsonNode.Parse(Laygate("check", "jobs/a.yaml", "--format", "json").Out)!["files"]![0]!["reports"]![0]!["findings"]!.AsArray()
            .SelectMany(finding => finding!["notes"]!.AsArray()).Select(note => note!["text"]!.GetValue<string>()).ToList();
        Assert.Contains(notes, note => note.Contains("feeder:f1/id (firm/parts.yaml line 3)", StringComparison.Ordinal));
        Assert.Contains("<td>firm/parts.yaml:3</td>", Laygate("check", "jobs/a.yaml", "--format", "html").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Settings_name_files_for_every_plan_from_their_own_folder()
    {
        Write("laygate.yaml", "uses: [firm/parts.yaml]\n");
        Write("jobs/a.yaml", Plan.Replace("uses: [../firm/parts.yaml]\n", string.Empty, StringComparison.Ordinal));
        Assert.Contains("Uses firm/parts.yaml (1 part", Laygate("check", "jobs/a.yaml").Out, StringComparison.Ordinal);
        Assert.Contains("mode: vibration", Laygate("expand", "jobs/a.yaml").Out, StringComparison.Ordinal);
        Write("laygate.yaml", "uses: [firm/lost.yaml]\n");
        Assert.Contains("laygate.yaml:1", Laygate("check", "jobs/a.yaml").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_written_out_checks_to_the_same_findings()
    {
        Assert.Equal(0, Laygate("expand", "jobs/a.yaml", "--output", "whole.yaml").Code);
        Assert.Equal(Findings("jobs/a.yaml"), Findings("whole.yaml"), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("../../elsewhere.yaml", "outside the folder that the plan belongs to")]
    [InlineData("/etc/hosts", "one machine only")]
    [InlineData("../firm/nowhere.yaml", "There is no such file.")]
    [InlineData("../link/parts.yaml", "through a link")]
    [InlineData("http://example.org/parts.yaml", "There is no such file.")]
    public void What_lies_elsewhere_is_not_read(string name, string message)
    {
        Directory.CreateSymbolicLink(Path.Combine(folder, "link"), Path.Combine(folder, "firm"));
        Write("jobs/a.yaml", Plan.Replace("../firm/parts.yaml", name, StringComparison.Ordinal));
        var refused = Laygate("check", "jobs/a.yaml");
        Assert.Equal(2, refused.Code);
        Assert.StartsWith("jobs/a.yaml:2:8: ", refused.Error, StringComparison.Ordinal);
        Assert.Contains(message, refused.Error.Replace("\n  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_has_changed_when_its_parts_have_and_is_compared_with_those_of_the_revision()
    {
        Git("init", "--quiet");
        Git("add", ".");
        Git("-c", "user.name=T", "-c", "user.email=t@example.org", "commit", "--quiet", "-m", "Begin");
        Write("jobs/b.yaml", Plan.Replace("uses: [../firm/parts.yaml]\n", string.Empty, StringComparison.Ordinal).Replace("[r7]", "[{ id: r7 }]", StringComparison.Ordinal));
        Git("-c", "user.name=T", "-c", "user.email=t@example.org", "commit", "--quiet", "-a", "-m", "One without parts");
        Write("firm/parts.yaml", "parts: 1\nrollers:\n  - { id: r7, kind: tandem, mode: vibration, speed: 4 km/h }\n");

        Assert.Contains("1 of 2 plans changed since HEAD", Laygate("check", "--changed-since", "HEAD").Error, StringComparison.Ordinal);
        var changes = Laygate("compare", "--since", "HEAD", "jobs/a.yaml");
        Assert.Contains("`20 km/h` became `4 km/h` (firm/parts.yaml line 3)", string.Join(' ', changes.Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_parts_is_never_written_over()
    {
        var before = File.ReadAllText(Path.Combine(folder, "firm/parts.yaml"));
        Assert.Equal(2, Laygate("check", "jobs/a.yaml", "--output", "firm/parts.yaml").Code);
        Assert.Equal(2, Laygate("expand", "jobs/a.yaml", "--output", "firm/parts.yaml").Code);
        Assert.Equal(before, File.ReadAllText(Path.Combine(folder, "firm/parts.yaml")), StringComparer.Ordinal);
    }

    private string Findings(string plan) => string.Join('\n', JsonNode.Parse(Laygate("check", plan, "--format", "json").Out)!["files"]![0]!["reports"]![0]!["findings"]!.AsArray().Select(finding =>
    {
        finding!.AsObject().Remove("position");
        return finding.ToJsonString();
    }));

    private void Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private void Git(params string[] arguments)
    {
        using var git = Process.Start(new ProcessStartInfo("git", arguments) { WorkingDirectory = folder, UseShellExecute = false })!;
        git.WaitForExit();
        Assert.Equal(0, git.ExitCode);
    }

    private BuiltProgram.Result Laygate(params string[] arguments) => BuiltProgram.Run(null, folder, arguments);
}

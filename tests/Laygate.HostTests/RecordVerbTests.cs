namespace Laygate.HostTests;

/// <summary>Exit codes of the commands about the record of a shift, run as a process on the invented record of the first example and on small ones.</summary>
[Long]
public sealed class RecordVerbTests : IDisposable
{
    private const string Plan = "examples/quay-road-hot-on-hot.yaml";
    private const string Record = "examples/quay-road-record";

    // Invented: a course of which one core is recorded, far above the degree that the plan asks for.
    private const string Small = """
        format: 1
        plan: { id: small, stage: concept }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m, density: { reference: maximum, degree: 92 % } }]
        courses: [{ id: c, mix: m, thickness: 40 mm, laid: separately }]

        """;

    private const string Mapping = """
        format: 1
        record: { plan: small, uncertainty: { density: 0.2 % } }
        files:
          - file: cores.csv
            holds: cores
            encoding: utf-8
            delimiter: comma
            decimal_mark: point
            columns:
              - { column: core, quantity: core }
              - { column: bulk, quantity: bulk, unit: kg/m3 }
              - { column: maximum, quantity: maximum, unit: kg/m3 }

        """;

    // What the small record does not show is out of force, so that one limit of the plan and one of general practice remain.
    private static readonly string Only = $$"""
        name: small-works
        title: Small works
        issuer: Invented
        edition: "1"
        status: in force
        layer: particular
        jurisdiction: none
        coverage: Density only.
        sources: []
        bring_in: []
        take_out:
        {{string.Join('\n', new[] { "WEA-001", "WEA-004", "WEA-006", "MIX-001", "MIX-002", "MIX-003", "MIX-020", "PAV-023", "ROL-001", "ROL-012", "FRI-002", "FRI-031" }.Select(rule => $"  - {{ rule: {rule}, reason: not asked for }}"))}}
        set: []
        move: []
        confirm: []
        assume: []

        """;

    private readonly string folder = Directory.CreateTempSubdirectory("laygate-records-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_record_of_the_example_is_read_by_each_command()
    {
        Assert.Equal(0, Run(SourceTree.Root, "ledger", Plan, Record).Code);
        Assert.Equal(0, Run(SourceTree.Root, "lots", Plan, "--scheme", "ufgs-02749").Code);
        Assert.Equal(1, Run(SourceTree.Root, "held", Plan, Record).Code);
        Assert.Equal(0, Run(SourceTree.Root, "held", "--folder", "examples").Code);
        Assert.Equal(2, Run(SourceTree.Root, "trial", Plan, Record, "--growth", "16 kg/m3").Code);
        Assert.Equal(1, Run(SourceTree.Root, "trial", Plan, Record, "--course", "upper", "--growth", "16 kg/m3").Code);
        Assert.Equal(0, Run(SourceTree.Root, "trial", Plan, "examples/quay-road-trial", "--course", "upper", "--growth", "16 kg/m3").Code);
        Assert.Equal(0, Run(folder, "record", Path.Combine(SourceTree.Root, Plan), "--into", "laid-out").Code);
    }

    /// <summary>The script that invented the records writes the same bytes again.</summary>
    [SkippableFact]
    public void The_invented_records_are_those_of_their_script()
    {
        Needs.Python();
        using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo("python3", [Path.Combine(SourceTree.Root, "tests", "Tools", "invent-records.py"), folder]))!;
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        var written = Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file)).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(18, written.Count);
        Assert.All(written, file => Assert.Equal(File.ReadAllText(Path.Combine(SourceTree.Root, "examples", file)), File.ReadAllText(Path.Combine(folder, file)), StringComparer.Ordinal));
    }

    [Fact]
    public void All_records_below_a_folder_teach_and_a_shift_twice_teaches_nothing()
    {
        const string Job = "examples/cressing-lane/job.yaml", Monday = "examples/cressing-lane/records/monday";
        var learnt = Path.Combine(folder, "night-works.yaml");
        var twice = Run(SourceTree.Root, "measured", Job, Monday, Job, Monday, "--learn", learnt);
        Assert.Equal(2, twice.Code);
        Assert.Contains("stands in the list more than once", twice.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(learnt));
        Assert.Equal(0, Run(SourceTree.Root, "measured", "--folder", "examples/cressing-lane", "--learn", learnt).Code);
        Assert.Contains("- id: night-works", File.ReadAllText(learnt), StringComparison.Ordinal);
        Assert.Equal(2, Run(SourceTree.Root, "measured", "--folder", "schemas").Code);
        Assert.Equal(2, Run(SourceTree.Root, "measured", "--folder", "examples", Job, Monday).Code);
    }

    // WCAG 2.2, and at 320 CSS pixels nothing scrolls in two directions (1.4.10).
    [SkippableTheory]
    [InlineData("held", 1, Plan, Record)]
    [InlineDataOfFullRun("ledger", 0, Plan, Record)]
    [InlineDataOfFullRun("onward", 0, Plan, Record, "--at", "01:20")]
    [InlineDataOfFullRun("lots", 1, Plan, Record, "--scheme", "ufgs-02749")]
    [InlineDataOfFullRun("trial", 0, Plan, "examples/quay-road-trial", "--course", "upper", "--growth", "16 kg/m3")]
    [InlineDataOfFullRun("measured", 0, "examples/cressing-lane/job.yaml", "examples/cressing-lane/records/monday")]
    [InlineDataOfFullRun("held", 0, "--folder", "examples/cressing-lane")]
    public void Pages_of_a_record_are_accessible_and_fit_a_telephone(string verb, int code, params string[] more)
    {
        Needs.Chromium();
        var page = Run(SourceTree.Root, [verb, .. more, "--format", "html"]);
        Assert.True(code == page.Code, page.Error);
        var look = BrowserLook.At(page.Out, "accessibility");
        Assert.Empty(BrowserLook.Texts(look["violations"]));
        Assert.All(look["overflow"]!.AsObject(), width => Assert.Equal(0, width.Value!.GetValue<int>()));
    }

    [Theory]
    [InlineData("95", 0)]
    [InlineData("94.1", 1)]
    [InlineData("91", 1)]
    public void Held_ends_with_0_only_where_all_is_held(string percent, int code)
    {
        Write("plan.yaml", Small);
        Write("rec/record.yaml", Mapping);
        Write("rec/cores.csv", $"core,bulk,maximum\n1,{percent},100\n");
        Write("only.yaml", Only);
        var result = Run(folder, "held", "plan.yaml", "rec", "--rules", "only.yaml");
        Assert.True(code == result.Code, result.Out + result.Error);
        Assert.Equal(percent is "91" ? 1 : 0, Run(folder, "held", "plan.yaml", "rec", "--rules", "only.yaml", "--fail-on", "fail").Code);

        // Without it twelve limits are not recorded, and silence is never held.
        Assert.Equal(1, Run(folder, "held", "plan.yaml", "rec").Code);
    }

    [Fact]
    public void Settings_of_the_repository_hold_for_held_as_for_a_check()
    {
        Write("plan.yaml", Small);
        Write("rec/record.yaml", Mapping);
        Write("rec/cores.csv", "core,bulk,maximum\n1,94.1,100\n");
        Write("only.yaml", Only);
        Assert.Equal(0, Run(folder, "held", "plan.yaml", "rec", "--rules", "only.yaml", "--fail-on", "fail").Code);
        Write("laygate.yaml", "rules: [only.yaml]\n");
        var result = Run(folder, "held", "plan.yaml", "rec", "--fail-on", "fail");
        Assert.True(result.Code == 0, result.Out + result.Error);
        Write("laygate.yaml", "rules: [only.yaml]\nfail_on: warn\n");
        Assert.Equal(1, Run(folder, "held", "plan.yaml", "rec", "--fail-on", "fail").Code);
        Write("laygate.yaml", "rules: [not-there.yaml]\n");
        Assert.Equal(2, Run(folder, "held", "plan.yaml", "rec").Code);
        Assert.Contains("not-there.yaml", Run(folder, "onward", "plan.yaml", "rec").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_read_ends_with_2_and_says_what_to_write()
    {
        Write("plan.yaml", Small);
        Assert.Contains("laygate held plan.yaml plan-record", Run(folder, "held", "plan.yaml").Error, StringComparison.Ordinal);
        Assert.Equal(2, Run(folder, "held", "plan.yaml").Code);
        Assert.Equal(2, Run(folder, "held", "plan.yaml", "nothing-here").Code);
        Assert.Equal(2, Run(folder, "held", "plan.yaml", "rec", "--fail-on", "often").Code);
        Assert.Equal(2, Run(folder, "trial", "plan.yaml", "rec").Code);
    }

    private static BuiltProgram.Result Run(string at, params string[] arguments) => BuiltProgram.Run(null, at, arguments);

    private void Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }
}

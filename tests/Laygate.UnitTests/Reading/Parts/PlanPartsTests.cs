using System.Text;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reading.Parts;

/// <summary>A plan and the files that it uses are read as one plan, each value with the file in which it stands.</summary>
public sealed class PlanPartsTests
{
    private const string Machines = """
        parts: 1
        rollers:
          - id: tandem
            kind: tandem
            mass: 10 t
            drum_width: 1.68 m
          - id: r7
            part: tandem
            mass: 9.5 t
            mode: static
        feeders:
          - { id: f1, rate: 500 t/h, storage: 12 t }
        pavers:
          - id: p1
            speed: 3 m/min
            screeds: [{ course: upper, kind: tamper, heating: gas }]
        mixes:
          - { id: mix-a, kind: asphalt-concrete, delivery: { lowest: 140 °C, highest: 170 °C, place: in-load } }
        measures:
          - { id: spotter, kind: reversing-spotter, what: one spotter }
        """;

    private const string Head = "format: 1\nuses: [firm.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: upper, mix: mix-a, thickness: 45 mm }]\n";

    private static readonly PlanReader Reader = new();

    [Fact]
    public void An_entry_has_the_keys_of_its_part_but_for_its_own()
    {
        var plan = Plan(Head + """
            mixes: [{ part: mix-a, delivery: { highest: 165 °C } }]
            pavers: [{ part: p1, id: paver-3, courses: [upper], screeds: [{ course: upper, kind: high-compaction }] }]
            supply: { feeder: f1 }
            rolling: { rollers: [r7, { id: other, mass: 7 t }] }
            measures: [spotter]
            """);

        var mix = Assert.Single(plan.Mixes);
        Assert.Equal((140, 165), (mix.Delivery!.Lowest!.Number, mix.Delivery.Highest!.Number)); // A group is put together key by key.
        var paver = Assert.Single(plan.Pavers);
        Assert.Equal("paver-3", paver.Id);
        Assert.Equal(3, paver.Speed!.Number);
        Assert.Null(Assert.Single(paver.Screeds).Heating); // A list is taken whole.
        Assert.Equal(500, plan.Supply!.Feeder!.Rate!.Number);
        Assert.Equal(["r7", "other"], plan.Rolling!.Rollers.Select(roller => roller.Id), StringComparer.Ordinal);
        Assert.Equal((9.5, 1.68), (plan.Rolling.Rollers[0].Mass!.Number, plan.Rolling.Rollers[0].DrumWidth!.Number)); // A part that is made of another.
        Assert.Equal("one spotter", Assert.Single(plan.Measures).What);
    }

    [Fact]
    public void Each_value_stands_in_its_own_file()
    {
        var read = Read(Head + "rolling: { rollers: [{ part: r7, speed: 4 km/h }] }\n");
        var positions = Assert.Single(read.Plans).Positions;

        Assert.Equal((null, 5), Place(positions.Of("roller:r7", "speed")));
        Assert.Equal(("firm.yaml", 9), Place(positions.Of("roller:r7", "mass")));
        Assert.Equal(("firm.yaml", 6), Place(positions.Of("roller:r7", "drum_width")));
    }

    [Fact]
    public void What_is_used_is_listed_with_the_hash_of_its_file()
    {
        var used = Assert.Single(Assert.Single(Read(Head + "measures: [spotter]\nrolling: { rollers: [r7] }\n").Plans).Uses);

        Assert.Equal("firm.yaml", used.File);
        Assert.Equal(["measures/spotter", "rollers/r7", "rollers/tandem"], used.Parts);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(Machines))), used.Hash);
    }

    [Fact]
    public void A_plan_without_other_files_is_read_as_before()
    {
        var read = Read("format: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: upper, mix: mix-a, thickness: 45 mm }]\n");
        Assert.Empty(Assert.Single(read.Plans).Uses);
        var problem = Assert.Single(Read("format: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: upper, mix: mix-a, thickness: 45 mm }]\nmeasures: [{ id: a, part: spotter }]\n").Problems);
        Assert.Equal((4, "`part` names a part of another file, but the plan uses none."), (problem.Position!.Line, problem.Message));
    }

    [Theory]
    [InlineData("measures: [spoter]", "plan.yaml", 5, "no part `spoter` among measures", "Did you mean `spotter`?")]
    [InlineData("measures: [{ part: r7 }]", "plan.yaml", 5, "no part `r7` among measures", "list `measures`")]
    [InlineData("rolling: { rollers: [{ part: r7, mas: 3 t }] }", "plan.yaml", 5, "`mas`", "")]
    [InlineData("rolling: { rollers: [{ part: r7, mass: 3 m }] }", "plan.yaml", 5, "mass", "")]
    public void A_mistake_is_told_where_it_stands(string line, string file, int at, string message, string hint)
    {
        var problem = Assert.Single(Read(Head + line + "\n").Problems);
        Assert.Equal((file, at), (problem.File, problem.Position!.Line));
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(hint, problem.Hint ?? string.Empty, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("parts: 1\nrollers:\n  - { id: r7, mass: 10 kg/m2 }\n", 3, "`mass`")]
    [InlineData("parts: 1\nrollers:\n  - { id: r7 }\n  - { id: r7 }\n", 4, "another part `r7`")]
    [InlineData("parts: 1\nrollers:\n  - { id: a, part: r7 }\n  - { id: r7, part: a }\n", 3, "made of itself")]
    [InlineData("parts: 1\nrollers:\n  - { id: r7, wait: 3 min }\n", 3, "`wait`")]
    [InlineData("rollers: []\n", 1, "`parts`")]
    [InlineData("parts: 1\nrollers:\n\t- x\n", 3, "tab")]
    [InlineData("", 1, "empty")]
    public void A_mistake_in_a_file_of_parts_is_told_there(string parts, int line, string message)
    {
        var problems = Read(Head + "rolling: { rollers: [r7] }\n", parts).Problems;
        Assert.All(problems, problem => Assert.Equal("firm.yaml", problem.File));
        Assert.Contains(problems, problem => problem.Position!.Line == line && problem.Message.Contains(message, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Files_may_use_each_other_in_a_ring_and_each_is_read_once()
    {
        var files = new Files(("firm.yaml", "parts: 1\nuses: [more.yaml]\nmeasures: [{ id: a }]\n"), ("more.yaml", "parts: 1\nuses: [firm.yaml]\nmeasures: [{ id: b }]\n"));
        var read = Reader.Read("plan.yaml", Encoding.UTF8.GetBytes(Head + "measures: [a, b]\n"), files);

        Assert.Equal(["a", "b"], Assert.Single(read.Plans).Plan.Measures.Select(measure => measure.Id), StringComparer.Ordinal);
        Assert.Equal(2, read.Plans[0].Uses.Count);
    }

    [Theory]
    [InlineData("uses: firm.yaml", "needs a list")]
    [InlineData("uses: []", "needs a list")]
    [InlineData("uses: [{ file: firm.yaml }]", "needs a list")]
    [InlineData("uses: [nowhere.yaml]", "There is no such file.")]
    public void Files_that_cannot_be_had_are_told(string uses, string message)
    {
        var problem = Assert.Single(Read(Head.Replace("uses: [firm.yaml]", uses, StringComparison.Ordinal)).Problems);
        Assert.Equal(("plan.yaml", 2), (problem.File, problem.Position!.Line));
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_host_without_files_refuses_a_plan_that_uses_any()
    {
        var problem = Assert.Single(Reader.Read("plan.yaml", Encoding.UTF8.GetBytes(Head), new NoPartFiles()).Problems);
        Assert.Equal((2, 8), (problem.Position!.Line, problem.Position.Column));
        Assert.Contains("Other files cannot be used here.", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_that_is_used_again_and_again_cannot_grow_a_plan_beyond_its_bounds()
    {
        var parts = $"parts: 1\npavers: [{{ id: p1, stops: [{string.Join(", ", Enumerable.Range(0, 100).Select(number => $"{{ id: s{number}, length: 1 min }}"))}] }}]\n";
        var many = string.Join(", ", Enumerable.Range(0, 400).Select(number => $"{{ part: p1, id: q{number} }}"));
        var problem = Assert.Single(Read(Head + $"pavers: [{many}]\n", parts).Problems);
        Assert.Contains("more than 50,000 keys", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("supply: { feeder: { id: f } }", "always feeder")] // It follows from the feeder, and nothing says whether there is a railway.
    [InlineData("supply: { feeder: { id: f } }\nsite: { conditions: { railway: no, spraying: yes } }", "always feeder spray of-spray")]
    [InlineData("site: { conditions: { railway: yes, feeder: no } }", "always rail")]
    [InlineData("site: { conditions: { spraying: no } }", "always")]
    public void Measures_that_apply_are_taken_by_what_the_plan_states_and_by_what_follows_from_it(string site, string taken)
    {
        const string firm = """
            parts: 1
            measures:
              - { id: always, kind: supervisor }
              - { id: rail, kind: induction, applies_when: { railway: yes } }
              - { id: feeder, kind: feeder-zones, applies_when: { feeder: yes } }
              - { id: spray, kind: spill-control, applies_when: { spraying: yes } }
              - { id: of-spray, part: spray, what: as for spraying }
            """;
        var read = Read($"{Head}{site}\nmeasures: [that-apply]\n", firm);
        Assert.Empty(read.Problems);
        Assert.Equal(taken.Split(' '), Assert.Single(read.Plans).Plan.Measures.Select(measure => measure.Id), StringComparer.Ordinal);
        Assert.Equal(taken.Split(' ').Select(id => $"measures/{id}").Order(StringComparer.Ordinal), read.Plans[0].Uses[0].Parts, StringComparer.Ordinal);
    }

    [Fact]
    public void A_measure_of_the_plan_goes_before_the_one_that_applies_and_keeps_its_order()
    {
        const string firm = "parts: 1\nmeasures: [{ id: a, what: of the firm }, { id: b, what: of the firm, applies_when: { night: yes } }, { id: c }]\n";
        var measures = Plan(firm, Head + "measures: [{ part: b, what: of the plan }, that-apply, { id: a, what: of the plan }]\n").Measures;
        Assert.Equal([("b", "of the plan"), ("c", null), ("a", "of the plan")], measures.Select(measure => (measure.Id, measure.What)));
    }

    [Fact]
    public void A_plan_that_takes_no_measure_that_applies_has_none()
    {
        Assert.Empty(Plan("parts: 1\nmeasures: [{ id: a, applies_when: { railway: yes } }]\n", Head + "measures: [that-apply]\n").Measures);
    }

    [Fact]
    public void Settings_may_name_files_for_every_plan_and_only_what_is_taken_is_listed()
    {
        var files = new Files(("firm.yaml", Machines), ("more.yaml", "parts: 1\nmeasures: [{ id: other }]\n")) { Everywhere = ["firm.yaml", "more.yaml"] };
        const string text = "format: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: upper, mix: mix-a, thickness: 45 mm }]\n";
        Assert.Empty(Assert.Single(Reader.Read("plan.yaml", Encoding.UTF8.GetBytes(text), files).Plans).Uses);

        var read = Assert.Single(Reader.Read("plan.yaml", Encoding.UTF8.GetBytes(text + "rolling: { rollers: [r7] }\n"), files).Plans);
        Assert.Equal(9.5, Assert.Single(read.Plan.Rolling!.Rollers).Mass!.Number);
        Assert.Equal(["firm.yaml"], read.Uses.Select(one => one.File), StringComparer.Ordinal);
        Assert.Equal(["firm.yaml"], WholePlan.FilesOf("plan.yaml", Encoding.UTF8.GetBytes(text + "rolling: { rollers: [r7] }\n"), files), StringComparer.Ordinal);

        var problem = Assert.Single(Reader.Read("plan.yaml", Encoding.UTF8.GetBytes(text + "rolling: { rollers: [r8] }\n"), new Files { Everywhere = ["lost.yaml"] }).Problems);
        Assert.Equal(("laygate.yaml", 1), (problem.File, problem.Position!.Line));
    }

    [Fact]
    public void The_whole_plan_as_one_file_reads_to_the_same_plan()
    {
        var text = Head + "mixes: [mix-a]\npavers: [{ part: p1, courses: [upper] }]\nsupply: { feeder: f1 }\nrolling: { rollers: [r7] }\nmeasures: [spotter, { id: words, what: \"no\", where: \"a: b # c\", who: \"\\\"x\\\"\" }]\n";
        var (whole, _, problems) = WholePlan.Of("plan.yaml", Encoding.UTF8.GetBytes(text), new Files(("firm.yaml", Machines)));

        Assert.Empty(problems);
        var alone = Reader.Read("whole.yaml", Encoding.UTF8.GetBytes(whole!), new NoPartFiles());
        Assert.Empty(alone.Problems);
        Assert.Equal(Shown(Plan(text)), Shown(Assert.Single(alone.Plans).Plan), StringComparer.Ordinal);
    }

    private static string Shown(object plan) => System.Text.Json.JsonSerializer.Serialize(plan);

    private static (string? File, int Line) Place(Laygate.Reading.Yaml.TextSpan span) => (span.File, span.Line);

    private static Laygate.Model.Plans.Plan Plan(string text)
    {
        var read = Read(text);
        Assert.Empty(read.Problems);
        return Assert.Single(read.Plans).Plan;
    }

    private static PlanFile Read(string text, string? parts = null) =>
        Reader.Read("plan.yaml", Encoding.UTF8.GetBytes(text), new Files(("firm.yaml", parts ?? Machines)));

    private static Laygate.Model.Plans.Plan Plan(string parts, string text)
    {
        var read = Read(text, parts);
        Assert.Empty(read.Problems);
        return Assert.Single(read.Plans).Plan;
    }

    private sealed class Files(params (string Name, string Text)[] files) : IPartFiles
    {
        public IReadOnlyList<string> Everywhere { get; init; } = [];

        public IReadOnlyList<NamedFile> Common(string plan) => [.. Everywhere.Select(name => new NamedFile(name, new Position(1, 8, 1, 9) { File = "laygate.yaml" }))];

        public PartText Read(string from, string name) => files.FirstOrDefault(file => string.Equals(file.Name, name, StringComparison.Ordinal)) is { Name: { } found, Text: { } text }
            ? new PartText(found, Encoding.UTF8.GetBytes(text))
            : new PartText(name, null, "There is no such file.");
    }
}

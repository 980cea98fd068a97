using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using Laygate.UnitTests.Rules;

namespace Laygate.UnitTests.Reading.RuleFiles;

/// <summary>Rule books as text: what is read, and where what is wrong is found.</summary>
public sealed class RuleFileTests
{
    private const string Rule = """
        id: LAY-001
        title: Course too thin for its aggregate
        why: The mat tears.
        remedy: Lay it thicker.
        local: Your specification governs.
        applies_to: course
        when:
          - quantity: course.laid
            is: [separately, hot-on-warm]
          - quantity: course.thickness
            at_least: 10 mm
            below: 0.5 ft
        check: at-least
        quantity: course.thickness_to_size
        from_stage: concept
        life: { state: in-use, since: 0.1.0 }
        bounds:
          - strength: required
            basis: requirement
            above: 2.50
            source: { id: manual, clause: table 3, evidence: read, valid_from: 2020-02-29, successor: third edition }
          - strength: advised
            basis: recommendation
            table:
              by: [mix.kind, course.thickness]
              rows:
                - match: [[stone-mastic, porous], any]
                  at_least: 4
                  source: { id: manual, clause: "5.2", evidence: recalled, remark: as printed }
                - match: [asphalt-concrete, { below: 30 mm }]
                  at_least: 3
            source: { id: manual, evidence: second-hand }
        """;

    private const string Sources = "- { id: manual, title: Manual, issuer: Issuer, year: 2020 }\n";

    private const string Specification = """
        title: State
        issuer: Issuer
        edition: 2026
        layer: standard
        jurisdiction: US-WA
        set:
          - rule: LAY-001
            reason: asks for more
            bounds:
              - { strength: required, basis: requirement, at_least: 3.5, source: { id: manual, evidence: second-hand } }
        assume:
          - { id: density, value: 2.45 t/m3, low: 2.40 t/m3, source: mix design, evidence: read }
        """;

    public static RuleSchemas Schemas { get; } = RuleSchemas.Load(name => File.ReadAllText(Path.Combine(Root(), "schemas", name)));

    [Fact]
    public void A_rule_is_read_as_written()
    {
        var rule = Assert.Single(Read(Book()).General!.Rules);
        Assert.Equal(("LAY-001", "layers", "thin", ElementKind.Course, Stage.Concept), (rule.Id, rule.Family, rule.Name, rule.AppliesTo, rule.FromStage));
        Assert.Equal(new Life(LifeState.InUse, "0.1.0", null), rule.Life);
        Assert.Equal((new LimitValue(10, "mm", "10 mm"), new LimitValue(0.5, "ft", "0.5 ft")), (rule.When[1].AtLeast!, rule.When[1].Below!));
        Assert.Equal(["separately", "hot-on-warm"], rule.When[0].Words!, StringComparer.Ordinal);
        var required = rule.Bounds[0];
        Assert.Equal((Strength.Required, Basis.Requirement, true, false), (required.Strength, required.Basis, required.LowExclusive, required.HighExclusive));
        Assert.Equal(new ConstantLimit(new LimitValue(2.5, "", "2.50"), null), required.Limit);
        Assert.Equal(new SourceReference { Source = "manual", Clause = "table 3", Evidence = Evidence.Read, ValidFrom = new DateOnly(2020, 2, 29), Successor = "third edition" }, required.Source);
        var table = Assert.IsType<TableLimit>(rule.Bounds[1].Limit);
        Assert.Equal(["stone-mastic", "porous"], table.Rows[0].Matches[0].Words!, StringComparer.Ordinal);
        Assert.True(table.Rows[0].Matches[1].Any);
        Assert.Equal((new LimitValue(30, "mm", "30 mm"), "as printed"), (table.Rows[1].Matches[1].Below!, table.Rows[0].Source!.Remark));
        Assert.Empty(Bind(Book()));
    }

    [Theory]
    [InlineData("quantity: paver.speed, times: 1.15", typeof(QuantityLimit))]
    [InlineData("words: [dry]", typeof(WordsLimit))]
    [InlineData("place: skin", typeof(PresenceLimit))]
    [InlineData("at_least: 20 mm, at_most: 55 F", typeof(ConstantLimit))]
    public void Other_limits(string limit, Type kind)
    {
        var start = Rule.IndexOf("  - strength: required", StringComparison.Ordinal);
        var end = Rule.IndexOf("  - strength: advised", StringComparison.Ordinal);
        var text = $"{Rule[..start]}  - {{ strength: required, basis: requirement, {limit}, source: {{ id: manual, evidence: read }} }}\n{Rule[end..]}";
        var rule = Assert.Single(Read(Book(text)).General!.Rules);
        Assert.IsType(kind, rule.Bounds[0].Limit);
    }

    [Fact]
    public void Specifications_are_read_from_a_folder_and_from_a_single_file()
    {
        var files = Book();
        files["specifications/wa/specification.yaml"] = Specification;
        files["specifications/wa/rules/layers/own/rule.yaml"] = Rule.Replace("LAY-001", "LAY-901", StringComparison.Ordinal);
        var specification = Assert.Single(Read(files).Specifications);
        Assert.Equal(("wa", "2026", "LAY-901", Layer.StandardSpecification), (specification.Name, specification.Edition, specification.Rules[0].Id, specification.Layer));
        Assert.Equal((2.45, 2.40, 2.45), (specification.Assume[0].Number, specification.Assume[0].Low, specification.Assume[0].High));
        Assert.Empty(Bind(files));

        var single = new RuleFileReader(Schemas).ReadSpecificationFile("my/own.yaml", Encoding.UTF8.GetBytes(Specification));
        Assert.Empty(single.Problems);
        Assert.Equal("own", Assert.Single(single.Specifications).Name);
    }

    [Theory]
    [InlineData("low: 2.40 t/m3", "low: 2400 kg/m3", "low")]
    [InlineData("low: 2.40 t/m3", "high: 2500 kg/m3", "high")]
    public void The_ends_of_an_assumption_have_the_unit_of_its_value(string old, string now, string key)
    {
        var text = Specification.Replace(old, now, StringComparison.Ordinal);
        var problem = Assert.Single(new RuleFileReader(Schemas).ReadSpecificationFile("my/own.yaml", Encoding.UTF8.GetBytes(text)).Problems);
        Assert.Equal(($"`{key}` has another unit than `value`.", "Write it in `t/m3`."), (problem.Message, problem.Hint));
        Assert.Equal(text.Split('\n').Length, problem.Position!.Line);
    }

    [Fact]
    public void Words_of_the_last_version_are_read_and_named()
    {
        var text = Specification.TrimEnd() + "\nselect: [LAY-008]\ndeselect: [ { rule: LAY-009, reason: not ours } ]\n";
        var read = new RuleFileReader(Schemas).ReadSpecificationFile("my/own.yaml", Encoding.UTF8.GetBytes(text));
        Assert.Empty(read.Problems);
        var specification = Assert.Single(read.Specifications);
        Assert.Equal(("LAY-008", "LAY-009"), (specification.BringIn[^1], specification.TakeOut[^1].Rule));
        Assert.Equal([("select", "bring_in"), ("deselect", "take_out")], specification.OldWords.Select(word => (word.Old, word.New)));
        Assert.StartsWith("my/own.yaml:", specification.OldWords[0].At, StringComparison.Ordinal);

        var files = Book();
        files["specifications/wa/specification.yaml"] = Specification;
        files["specifications/wa/rules/layers/own/rule.yaml"] = Rule.Replace("LAY-001", "LAY-901", StringComparison.Ordinal).Replace("in-use", "stable", StringComparison.Ordinal);
        var old = Assert.Single(Read(files).Specifications);
        Assert.Equal(LifeState.InUse, old.Rules[0].Life.State);
        Assert.Equal("stable", Assert.Single(old.OldWords).Old);
    }

    [Fact]
    public void An_old_key_beside_the_new_one_is_refused()
    {
        var text = Specification.TrimEnd() + "\nselect: [LAY-008]\nbring_in: [LAY-009]\n";
        Assert.NotEmpty(new RuleFileReader(Schemas).ReadSpecificationFile("my/own.yaml", Encoding.UTF8.GetBytes(text)).Problems);
    }

    [Theory]
    [InlineData("quantity: course.thickness_to_size", "quantity: course.thicknes", "`course.thicknes` is no quantity.", "Did you mean `course.thickness`?", 14, 11)]
    [InlineData("below: 30 mm", "below: 30 °C", "`°C` does not measure `course.thickness`.", null, 30, 46)]
    [InlineData("below: 30 mm", "below: 30 mmm", "`mmm` is no unit.", "Did you mean `mm`", 30, 46)]
    [InlineData("id: manual, clause: table 3", "id: manuel, clause: table 3", "`manuel` is not in the bibliography.", "Add it to `sources.yaml`, or to `sources:` of the specification.", 21, 19)]
    [InlineData("basis: requirement", "basis: judgement", "A judgement cannot be required.", null, 19, 12)]
    [InlineData("is: [separately, hot-on-warm]", "is: [separately, hot-on-warn]", "`hot-on-warn` is no word of `course.laid`.", "Did you mean `hot-on-warm`?", 9, 22)]
    [InlineData("at_least: 10 mm", "at_least: 10mm", "needs a limit such as", null, 11, 15)]
    [InlineData("check: at-least", "check: at-leased", null, "at-least", 13, 8)]
    [InlineData("remedy:", "remedie:", "remedie", "remedy", 4, 1)]
    [InlineData("evidence: read,", "evidence: confirmed,", "confirmed", null, 21, 54)]
    [InlineData("valid_from: 2020-02-29", "valid_from: 2021-02-29", "2021-02-29", null, 21, 72)]
    [InlineData("        - match: [[stone-mastic, porous], any]\n", "        - match: [porous, { at_least: 90 mm }]\n          above: 5\n        - match: [[stone-mastic, porous], any]\n", "some `at_least`", "Write `above` in all rows, or `at_least`.", 30, 11)]
    [InlineData("above: 2.50", "above: 2.50\n    words: [dry]", "one limit", null, 21, 5)]
    [InlineData("above: 2.50", "above: 2.50\n    times: 2", "`times`", null, 21, 5)]
    public void What_is_wrong_is_said_with_line_and_column(string old, string now, string? message, string? hint, int line, int column)
    {
        var files = Book(Rule.Replace(old, now, StringComparison.Ordinal));
        var problems = Read(files) is { Problems.Count: > 0 } read ? read.Problems : Bind(files);
        Assert.Equal("rules/layers/thin/rule.yaml", problems[0].File);
        Assert.Contains(message ?? string.Empty, problems[0].Message, StringComparison.Ordinal);
        Assert.Contains(hint ?? string.Empty, problems[0].Hint ?? string.Empty, StringComparison.Ordinal);
        Assert.Equal((line, column), (problems[0].Position!.Line, problems[0].Position!.Column));
    }

    [Fact]
    public void Files_that_nobody_reads_are_reported()
    {
        var files = Book();
        files["layers/thin/extra.yaml"] = "a: 1";
        files["asphalt/thin/rule.yaml"] = Rule;
        files["layers/thin/cases.yaml"] = "a: 1";
        files["README.md"] = "text";
        Assert.Equal(
            ["rules/asphalt/thin/rule.yaml", "rules/layers/thin/extra.yaml"], Read(files).Problems.Select(problem => problem.File).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void Mistakes_of_a_specification_stand_in_its_own_file()
    {
        var files = Book();
        files["specifications/wa/specification.yaml"] = Specification.Replace("rule: LAY-001", "rule: LAY-010", StringComparison.Ordinal);
        var problem = Assert.Single(Bind(files));
        Assert.Equal(("rules/specifications/wa/specification.yaml", 7, 11), (problem.File, problem.Position!.Line, problem.Position.Column));
        Assert.Equal("Did you mean `LAY-001`?", problem.Hint);
    }

    [Fact]
    public void Every_mistake_has_words()
    {
        var kinds = typeof(BookMistake).GetNestedTypes();
        Assert.All(kinds, kind =>
        {
            var words = kind.GetConstructors().Single();
            var (message, _) = BookBinder.Word((BookMistake)words.Invoke([.. words.GetParameters().Select(parameter => Any(parameter.ParameterType))]), TestBook.Catalogue);
            Assert.EndsWith(".", message, StringComparison.Ordinal);
        });
        Assert.NotEmpty(kinds);
    }

    private static object Any(Type type) => type == typeof(string) ? "word"
        : type == typeof(Limit) ? new PresenceLimit()
        : type.IsValueType ? Activator.CreateInstance(type)!
        : new[] { "one", "another" };

    [Theory]
    [InlineData("rule")]
    [InlineData("cases")]
    [InlineData("specification")]
    [InlineData("sources")]
    [InlineData("departures")]
    [InlineData("settings")]
    public void Every_key_of_the_schemas_has_a_description_and_an_example(string name)
    {
        using var schema = System.Text.Json.JsonDocument.Parse(File.ReadAllText(Path.Combine(Root(), "schemas", $"{name}.schema.json")));
        var keys = Keys(schema.RootElement).ToList();
        Assert.NotEmpty(keys);
        Assert.All(keys, key => Assert.True(
            key.Value.GetProperty("description").GetString()!.EndsWith('.') && key.Value.GetProperty("examples").GetArrayLength() > 0, key.Name));
    }

    [Fact]
    public void A_pack_gives_back_what_was_packed()
    {
        var files = Book();
        files["specifications/wa/specification.yaml"] = Specification;
        var read = Read(files);
        var pack = new RulePack(read.General!, read.Specifications, RulePack.HashOf(Folder(files)));
        var again = RulePack.Read(pack.Write());
        Assert.Equal(pack.Write(), again.Write());
        var first = BookBinder.Bind(pack.General, pack.Specifications, TestBook.Catalogue, TestBook.Assumptions).Book!;
        var second = BookBinder.Bind(again.General, again.Specifications, TestBook.Catalogue, TestBook.Assumptions).Book!;
        Assert.Equal(first.Text, second.Text);
        Assert.Throws<InvalidDataException>(() => RulePack.Read("{}"u8));
        files["layers/thin/rule.yaml"] += "\n";
        Assert.NotEqual(pack.ContentHash, RulePack.HashOf(Folder(files)), StringComparer.Ordinal);
    }

    private static Dictionary<string, string> Book(string rule = Rule) =>
        new(StringComparer.Ordinal) { ["layers/thin/rule.yaml"] = rule, ["sources.yaml"] = Sources };

    private static RuleFolderInMemory Folder(Dictionary<string, string> files) =>
        new("rules", files.ToDictionary(file => file.Key, file => Encoding.UTF8.GetBytes(file.Value), StringComparer.Ordinal));

    private static RuleFilesResult Read(Dictionary<string, string> files) => new RuleFileReader(Schemas).ReadBook(Folder(files), "0.1.0");

    private static IReadOnlyList<Problem> Bind(Dictionary<string, string> files)
    {
        var read = Read(files);
        Assert.Empty(read.Problems);
        return BookBinder.Bind(read.General!, read.Specifications, TestBook.Catalogue, TestBook.Assumptions, read.Positions).Problems;
    }

    private static IEnumerable<System.Text.Json.JsonProperty> Keys(System.Text.Json.JsonElement element) => element.ValueKind switch
    {
        System.Text.Json.JsonValueKind.Object => element.EnumerateObject().SelectMany(member =>
            (member.NameEquals("properties") && member.Value.ValueKind == System.Text.Json.JsonValueKind.Object ? member.Value.EnumerateObject() : Enumerable.Empty<System.Text.Json.JsonProperty>())
                .Concat(member.NameEquals("examples") ? [] : Keys(member.Value))),
        System.Text.Json.JsonValueKind.Array => element.EnumerateArray().SelectMany(Keys),
        _ => [],
    };

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "Laygate.slnx")))
        {
            folder = folder.Parent;
        }

        return folder.FullName;
    }
}

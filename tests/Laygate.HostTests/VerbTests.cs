using System.Text.Json;

namespace Laygate.HostTests;

/// <summary>The commands beside <c>check</c>, run as a process on the shipped rules.</summary>
public sealed class VerbTests : IDisposable
{
    // Invented: a 25 mm course of an 11 mm mix; general practice advises at least three times the stones.
    private const string Thin = """
        format: 1
        plan: { id: thin, stage: concept }
        location: { jurisdiction: none }
        mixes:
          - { id: ac11, kind: asphalt-concrete, gradation: fine, aggregate_size: { sieve: 11 mm, basis: upper-sieve } }
        courses:
          - { id: wearing, kind: surface, mix: ac11, thickness: 25 mm, laid: separately }

        """;

    private const string Departure = """
        departures:
          - id: dep-001
            rule: LAY-001
            address: course:wearing
            reason: The kerbs fix the level.
            compensating_measure: One more core.
            asked_by: A
            approved_by: B
            approved_on: 2026-11-02
            expires_on: 2027-06-30
            accepted: 2.2

        """;

    private readonly string folder = Directory.CreateTempSubdirectory("laygate-verbs-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Every_command_is_listed_and_told_in_the_documentation()
    {
        var help = BuiltProgram.Run(null, Path.GetTempPath(), "--help").Out;
        var commands = PageText.All(help, @"(?m)^  laygate ([a-z]+) ").Distinct(StringComparer.Ordinal).ToList();
        Assert.True(commands.Count >= 10, string.Join(' ', commands));
        var page = File.ReadAllText(Path.Combine(SourceTree.Root, "docs", "command-line.md"));
        var (synopsis, rest) = (page[..page.IndexOf("## Files", StringComparison.Ordinal)], page[page.IndexOf("## Files", StringComparison.Ordinal)..]);
        Assert.All(commands, command =>
        {
            Assert.Contains($"laygate {command}", synopsis, StringComparison.Ordinal);
            Assert.Contains($"laygate {command}", rest, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Rules_are_listed_filtered_and_written_as_json()
    {
        var all = Run(0, "rules");
        Assert.Contains("LAY-001", all.Out, StringComparison.Ordinal);
        Assert.Contains("Layers: General practice (general practice).", all.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        var weather = Run(0, "rules", "--family", "weather", "--evidence", "recalled", "--in-force", "--rules", "de", "--format", "json");
        using var json = JsonDocument.Parse(weather.Out);
        var rules = json.RootElement.GetProperty("rules").EnumerateArray().ToList();
        Assert.NotEmpty(rules);
        Assert.All(rules, rule =>
        {
            Assert.Equal(("weather", true), (rule.GetProperty("family").GetString(), rule.GetProperty("in_force").GetBoolean()));
            Assert.Contains(rule.GetProperty("limits").EnumerateArray(), limit => limit.GetProperty("known").GetString()!.StartsWith("recalled", StringComparison.Ordinal));
        });
    }

    [Theory]
    [InlineData("--family wether", "Did you mean weather?")]
    [InlineData("--evidence red", "Did you mean read?")]
    [InlineData("--famly weather", "Did you mean `--family`?")]
    [InlineData("--test nowhere", "There is no folder `nowhere`.")]
    [InlineData("--test .", "There is neither a rule book nor a specification here.")]
    public void What_rules_cannot_do_is_said(string arguments, string message) =>
        Assert.Contains(message, Run(2, ["rules", .. arguments.Split(' ')]).Error, StringComparison.Ordinal);

    [Fact]
    public void The_merged_book_names_the_layer_of_each_limit_and_ends_with_its_hash()
    {
        var text = Run(0, "rules", "--merged", "--rules", "us-wa").Out;
        Assert.Contains("set by standard-specification us-wa", text, StringComparison.Ordinal);
        Assert.Contains("set by general-practice", text, StringComparison.Ordinal);
        Assert.Matches("\nhash [0-9a-f]{64}\n$", text);
    }

    [Theory]
    [InlineData("set: [ { rule: LAY-001, bounds: [ { strength: required, basis: requirement, at_least: 3 mm, source: { id: own, evidence: read } } ] } ]", "is a ratio or count and has no unit")]
    [InlineData("select: [LAY-001]", "This entry for `LAY-001` changes nothing.")]
    [InlineData("take_out: [ { rule: LAY-001, reason: a }, { rule: LAY-001, reason: b } ]", "This entry for `LAY-001` changes nothing.")]
    [InlineData("take_out: [ { rule: SEVERE, reason: we do not need it } ]", "guards lives (severity A) and cannot be taken out of force.")]
    public void Dead_entries_conflicts_and_weakened_rules_are_errors_with_a_place(string entry, string message)
    {
        Write("own.yaml", $"title: Own\nissuer: Us\nedition: 1\nlayer: particular\njurisdiction: none\nsources: [ {{ id: own, title: Own, issuer: Us }} ]\n{entry.Replace("SEVERE", Severe(), StringComparison.Ordinal)}\n");
        var result = Run(2, "rules", "--merged", "--rules", "own.yaml");
        Assert.Empty(result.Out);
        Assert.StartsWith("own.yaml:7:", result.Error, StringComparison.Ordinal);
        Assert.Contains(message, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_and_a_specification_in_words_of_the_last_version_are_checked_and_the_words_are_named()
    {
        Write("plan.yaml", Thin + "pavers:\n  - id: p1\n    screeds: [ { course: wearing, kind: tamper-and-pressure-bars } ]\n");
        Write("own.yaml", "title: Own\nissuer: Us\nedition: 1\nlayer: particular\njurisdiction: none\nselect: []\n");
        var shown = string.Join(' ', Run(0, "check", "plan.yaml", "--rules", "own.yaml", "--full").Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("plan.yaml:10: `tamper-and-pressure-bars` is a word of the last version", shown, StringComparison.Ordinal);
        Assert.Contains("Write `high-compaction`.", shown, StringComparison.Ordinal);
        Assert.Contains("own.yaml:6: `select` is a word of the last version", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_specifications_of_one_layer_are_never_averaged()
    {
        foreach (var name in (string[])["one", "two"])
        {
            Write($"{name}.yaml", $"title: Own\nissuer: Us\nedition: 1\nlayer: particular\njurisdiction: none\ntake_out: [ {{ rule: LAY-001, reason: {name} }} ]\n");
        }

        Assert.Contains("`one` and `two` both change `LAY-001`.", Run(2, "rules", "--merged", "--rules", "one.yaml", "--rules", "two.yaml").Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("quantity: course.thicknes", "`course.thicknes` is no quantity.\n  Did you mean `course.thickness`", 8)]
    [InlineData("at_least: 30 kg", "`kg` does not measure `course.thickness`.", 14)]
    public void A_rule_with_a_wrong_unit_or_quantity_stops_a_check_with_its_place(string wrong, string message, int line)
    {
        Write("plan.yaml", Thin);
        Run(0, "new", "specification", "own");
        var rule = """
            id: LAY-901
            title: Course thinner than we want
            why: It tears.
            remedy: Lay it thicker.
            local: Ask us.
            applies_to: course
            check: at-least
            quantity: course.thickness
            from_stage: concept
            life: { state: on-trial, since: 0.1.0 }
            bounds:
              - strength: required
                basis: requirement
                at_least: 30 mm
                source: { id: own, evidence: read }

            """;
        var key = wrong.Split(' ')[0];
        var lines = rule.Split('\n').Select(one => one.TrimStart().StartsWith(key, StringComparison.Ordinal) ? one[..one.IndexOf(key, StringComparison.Ordinal)] + wrong : one);
        Write("own/rules/layers/course-thinner-than-we-want/rule.yaml", string.Join('\n', lines));
        var result = Run(2, "check", "plan.yaml", "--rules", "own");
        Assert.Empty(result.Out);
        Assert.StartsWith($"own/rules/layers/course-thinner-than-we-want/rule.yaml:{line}:", result.Error, StringComparison.Ordinal);
        Assert.Contains(message, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_is_explained_in_full()
    {
        var text = Run(0, "explain", "LAY-001").Out;
        Assert.All(["why ", "looks at ", "compares ", "limit ", "do ", "ask ", "case "], label => Assert.Contains($"\n{label}", text, StringComparison.Ordinal));
        Assert.Contains("There is no rule `LAY-01`. Did you mean LAY-001?", Run(2, "explain", "LAY-01").Error, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Run(0, "explain", "lay-001", "--format", "json").Out);
        Assert.NotEqual(0, json.RootElement.GetProperty("cases").GetArrayLength());
    }

    [Fact]
    public void A_key_of_a_plan_is_explained_in_full_and_one_that_is_not_there_gets_the_nearest()
    {
        var text = Run(0, "explain", "courses.kind").Out;
        Assert.StartsWith("courses.kind\nmeans       Part that the course plays in the pavement.\n", text, StringComparison.Ordinal);
        Assert.Contains("\nword        regulating: ", text, StringComparison.Ordinal);
        Assert.Contains("\nfindings    name it course:ID, kind\n", text, StringComparison.Ordinal);
        Assert.Contains("\nusual       at least 10 mm and at most 250 mm (CON-101)\n", Run(0, "explain", "courses.thickness").Out, StringComparison.Ordinal);
        Assert.Contains("\nmeans       Addresses of what the job has and this shift has not.\n", Run(0, "explain", "shifts.without").Out, StringComparison.Ordinal);
        Assert.Contains("measures.applies_when\n", Run(0, "explain", "applies_when").Out, StringComparison.Ordinal);
        Assert.StartsWith("Several keys are called so.", Run(0, "explain", "thickness").Out, StringComparison.Ordinal);
        Assert.Contains("There is no key `courses.thicknes`. Did you mean courses.thickness?", Run(2, "explain", "courses.thicknes").Error, StringComparison.Ordinal);
        Assert.Contains("There is neither a rule nor a key `xyzzyx`.", Run(2, "explain", "xyzzyx").Error, StringComparison.Ordinal);
        Assert.Contains("console only", Run(2, "explain", "courses.kind", "--format", "json").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_schema_is_printed_as_it_is()
    {
        var files = Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "schemas"), "*.schema.json").ToDictionary(file => Path.GetFileName(file).Split('.')[0], StringComparer.Ordinal);
        Assert.Equal(files.Keys.Order(StringComparer.Ordinal), Run(0, "schema").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries), StringComparer.Ordinal);
        Assert.Equal(File.ReadAllText(files["plan"]), Run(0, "schema", "plan").Out);
        Assert.Contains("Did you mean plan?", Run(2, "schema", "plam").Error, StringComparison.Ordinal);
    }

    [FactOfFullRun]
    public void All_shipped_cases_hold_and_the_last_line_counts_them()
    {
        // Some 500 cases, each with its own plan: 4 s alone, many times that beside other work.
        var result = BuiltProgram.Run(null, folder, "rules", "--test");
        Assert.Equal(0, result.Code);
        Assert.Matches("^[0-9]+ cases of [0-9]+ rules: all hold.\n$", result.Out);
    }

    [Fact]
    public void A_confirmed_limit_fails_and_the_finding_says_who_confirmed()
    {
        Write("plan.yaml", Thin.Replace("stage: concept", "stage: submission", StringComparison.Ordinal) + "weather: { envelope: { air_lowest: -5 °C } }\n");
        string[] check = ["check", "plan.yaml", "--rules", "de", "--fail-on", "none"];
        Assert.Equal("warn", Status(Run(0, [.. check, "--format", "json"]).Out, "WEA-002"));
        Run(0, "confirm", "WEA-002", "--rules", "de", "--edition", "2013", "--page", "14", "--by", "A. Checker", "--date", "2026-11-25", "--into", "confirmed.yaml");
        Assert.Equal("fail", Status(Run(0, [.. check, "--rules", "confirmed.yaml", "--format", "json"]).Out, "WEA-002"));
        Assert.Contains("confirmed by A. Checker on 2026-11-25, 2013, page 14", string.Join(' ', Run(0, [.. check, "--rules", "confirmed.yaml", "--full"]).Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-11-25", "2.2", "departed", 0)]
    [InlineData("2027-07-01", "2.2", "warn", 1)]
    [InlineData("2026-11-25", "2.3", "warn", 1)]
    public void A_departure_covers_its_finding_until_its_day_and_up_to_its_value(string day, string accepted, string status, int warnings)
    {
        Write("plan.yaml", Thin);
        Write("departures.yaml", Departure.Replace("accepted: 2.2", $"accepted: {accepted}", StringComparison.Ordinal));
        var result = Run(0, "check", "plan.yaml", "--departures", "departures.yaml", "--date", day, "--format", "json");
        using var json = JsonDocument.Parse(result.Out);
        var report = json.RootElement.GetProperty("files")[0].GetProperty("reports")[0];
        Assert.Equal((status, "missed"), (Finding(report, "LAY-001").GetProperty("status").GetString(), Finding(report, "LAY-001").GetProperty("outcome").GetString()));
        Assert.Equal(warnings, report.GetProperty("counts").GetProperty("departure_warnings").GetInt32());
        var text = Run(0, "check", "plan.yaml", "--departures", "departures.yaml", "--date", day, "--full").Out;
        Assert.Contains(status == "departed" ? "DEPARTED" : "Departures that do not hold: 1", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_departure_from_a_rule_that_guards_lives_stops_the_check_with_its_place()
    {
        Write("plan.yaml", Thin);
        Write("departures.yaml", Departure.Replace("LAY-001", Severe(), StringComparison.Ordinal));
        var result = Run(2, "check", "plan.yaml", "--departures", "departures.yaml");
        Assert.StartsWith("departures.yaml:3:11: ", result.Error, StringComparison.Ordinal);
        Assert.Contains("guards lives (severity A)", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_nearest_settings_name_plans_rules_and_departures_and_only_make_it_stricter()
    {
        Write("jobs/north/plan.yaml", Thin);
        Write("contract/departures.yaml", Departure);
        Write("laygate.yaml", "plans: ['jobs/**/*.yaml']\nrules: [de]\ndepartures: [contract/departures.yaml]\nfail_on: warn\nstage: submission\n");
        var result = Run(1, "check", "--fail-on", "none", "--date", "2026-11-25", "--format", "json");
        using var json = JsonDocument.Parse(result.Out);
        var report = json.RootElement.GetProperty("files")[0].GetProperty("reports")[0];
        Assert.Equal(("submission", "laygate.yaml"), (report.GetProperty("stage").GetString(), report.GetProperty("settings").GetString()));
        Assert.Equal(["general-practice", "de"], report.GetProperty("layers").EnumerateArray().Select(layer => layer.GetProperty("name").GetString()!), StringComparer.Ordinal);
        Assert.Equal("departed", Finding(report, "LAY-001").GetProperty("status").GetString());
        Write("jobs/north/laygate.yaml", "stage: relaese\n");
        Assert.StartsWith("jobs/north/laygate.yaml:1:8: ", Run(2, "check", "jobs/north/plan.yaml").Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("concept")]
    [InlineData("submission")]
    [InlineData("release")]
    public void A_new_plan_says_where_its_blanks_are_and_is_never_overwritten(string stage)
    {
        Assert.Contains("Made hill.yaml: fill in what is marked TO FILL IN, on lines ", Run(0, "new", "plan", "hill", "--stage", stage).Out, StringComparison.Ordinal);
        Assert.Contains("`hill.yaml` is there already; nothing is overwritten.", Run(2, "new", "plan", "hill").Error, StringComparison.Ordinal);
        Run(2, "check", "hill.yaml");
    }

    [Fact]
    public void Answers_in_a_file_begin_a_plan_with_parts_and_its_measures_are_added_in_place()
    {
        Write("firm/parts.yaml", "parts: 1\nrollers: [{ id: r7, kind: tandem }]\nmeasures: [{ id: ours, kind: reversing-spotter, what: one man, where: feeder, who: foreman, when: always, checked: list }]\n");
        Write("laygate.yaml", "stage: concept\n");
        Write("answers.yaml", "kind: overlay\nstage: submission\nthickness: 40 mm\nrollers: [r7]\nuses: [firm/parts.yaml]\n");
        var made = Run(0, "new", "plan", "hill", "--into", "jobs", "--answers", "answers.yaml", "--width", "3.6 m", "--traffic", "none").Out;
        Assert.Contains("Not answered, so the usual or a blank: units, title, jurisdiction, mixes, lanes, length, speed, night, plants, trucks, pavers, by-hand, conditions.", made, StringComparison.Ordinal);
        var text = File.ReadAllText(Path.Combine(folder, "jobs/hill.yaml"));
        foreach (var line in (string[])["# yaml-language-server: $schema=../plan-with-parts.schema.json", "uses: [\"../firm/parts.yaml\"]", "    width: 3.6 m", "    - part: r7"])
        {
            Assert.Contains(line, text.Split('\n'), StringComparer.Ordinal);
        }

        Write("jobs/hill.yaml", text.Replace("trucks_reverse: TO FILL IN", "trucks_reverse: yes", StringComparison.Ordinal));
        Assert.Contains("from the files that the plan uses", Run(0, "new", "measures", "--for", "jobs/hill.yaml", "--write").Out, StringComparison.Ordinal);
        Assert.Contains("\n  - ours\n", File.ReadAllText(Path.Combine(folder, "jobs/hill.yaml")), StringComparison.Ordinal);
        Assert.Contains("No measure is missing that the stated conditions ask for.", Run(0, "new", "measures", "--for", "jobs/hill.yaml", "--write").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("thickness: 40", "answers.yaml:1: `thickness`: `40` ")]
    [InlineData("kind: overlays", "answers.yaml:1: `kind`: `overlays` is none of overlay, thin-overlay, mill-and-fill, two-courses, hot-on-hot. Did you mean overlay?")]
    [InlineData("widht: 3 m", "answers.yaml:1: `widht` is no question. Did you mean `width`?")]
    [InlineData("uses: [nowhere.yaml]", "The file `nowhere.yaml` cannot be used. There is no such file.")]
    [InlineData("rollers: some r", "Write ids of machines in the files that are used, divided by commas, or a number.")]
    public void An_answer_that_cannot_be_used_is_said_with_its_line(string answers, string message)
    {
        Write("answers.yaml", answers + "\n");
        Assert.Contains(message, Run(2, "new", "plan", "hill", "--answers", "answers.yaml").Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder, "hill.yaml")));
    }

    [Theory]
    [InlineData("new rule layers/a-b", "There is neither a specification nor a rule book in `.`.")]
    [InlineData("new rule leyers/a-b", "A rule is named after its family and the bad situation")]
    [InlineData("new specification Harbour", "`Harbour` is no name")]
    [InlineData("new departure LAY-999 course:a", "There is no rule `LAY-999`.")]
    [InlineData("new plann hill", "Did you mean plan?")]
    [InlineData("confirm LAY-001 --by A", "--edition is missing.")]
    public void What_cannot_be_begun_is_said(string arguments, string message) =>
        Assert.Contains(message, Run(2, arguments.Split(' ')).Error, StringComparison.Ordinal);

    [Theory]
    [InlineData("rules")]
    [InlineData("explain")]
    [InlineData("schema")]
    [InlineData("new")]
    [InlineData("confirm")]
    public void Each_command_has_help(string verb) => Assert.Contains($"laygate {verb}", Run(0, verb, "--help").Out, StringComparison.Ordinal);

    private BuiltProgram.Result Run(int code, params string[] arguments)
    {
        var result = BuiltProgram.Run(null, folder, arguments);
        Assert.True(code == result.Code, $"laygate {string.Join(' ', arguments)} gave {result.Code}\n{result.Out}\n{result.Error}");
        return result;
    }

    private void Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private string Severe()
    {
        using var json = JsonDocument.Parse(Run(0, "rules", "--family", "safety", "--in-force", "--format", "json").Out);
        return json.RootElement.GetProperty("rules").EnumerateArray().First(rule => rule.GetProperty("severity").GetString() == "A").GetProperty("id").GetString()!;
    }

    private static JsonElement Finding(JsonElement report, string rule) =>
        report.GetProperty("findings").EnumerateArray().First(finding => finding.GetProperty("rule").GetString() == rule);

    private static string? Status(string text, string rule)
    {
        using var json = JsonDocument.Parse(text);
        return Finding(json.RootElement.GetProperty("files")[0].GetProperty("reports")[0], rule).GetProperty("status").GetString();
    }
}

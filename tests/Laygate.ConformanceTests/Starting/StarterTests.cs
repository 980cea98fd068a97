using System.Text;
using Laygate.Checking;
using Laygate.Checking.Starting;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Starting;

/// <summary>What the starter writes, filled in, leaves no finding open for a key that it left out.</summary>
public sealed class StarterTests
{
    private static readonly PlanTools Tools = new();

    public static TheoryData<string, string, string> Jobs
    {
        get
        {
            var data = new TheoryData<string, string, string>();
            foreach (var (kind, stage, units) in (from kind in Words.Of<JobKind>() from stage in Words.Of<Stage>() from units in new[] { "metric", "us" } select (kind, stage, units)).Usual(3))
            {
                data.Add(kind, stage, units);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_key_that_the_stage_asks_for_stands_in_the_file(string kind, string stage, string units)
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["kind"] = kind, ["stage"] = stage, ["units"] = units, ["lanes"] = "2" });
        var made = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, FirmParts.Of("hill-road.yaml", [], new NoPartFiles()));
        Assert.Empty(Left(UsualFill.Of(made.Text), answers.Stage));
    }

    /// <summary>Places laid by hand bring what their stage asks of them, and the condition that follows from them is no question.</summary>
    [Theory]
    [MemberData(nameof(Jobs))]
    public void Places_laid_by_hand_have_every_key_that_the_stage_asks_for(string kind, string stage, string units)
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["kind"] = kind, ["stage"] = stage, ["units"] = units, ["by-hand"] = "driveway, bay" });
        var made = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts);
        var filled = UsualFill.Of(made.Text, others: new Dictionary<string, string>(StringComparer.Ordinal) { ["site.conditions.hand_work"] = "yes" });
        var run = Tools.Reader.Read("hill-road.yaml", Encoding.UTF8.GetBytes(filled), new NoPartFiles()).Plans[0].Plan.Runs[0];
        Assert.Equal(["driveway", "bay"], run.HandLaid.Select(place => place.Id), StringComparer.Ordinal);
        Assert.All(run.HandLaid, place => Assert.NotNull(place.Area));
        Assert.All(run.HandLaid, place => Assert.NotNull(place.Mix));
        Assert.Empty(Left(filled, answers.Stage));
    }

    [Theory]
    [InlineData("2", 2)]
    [InlineData("none", 0)]
    [InlineData("gully-west", 1)]
    public void Places_laid_by_hand_may_be_counted_or_none(string answer, int count)
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "concept", ["by-hand"] = answer });
        var filled = UsualFill.Of(PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text);
        Assert.Equal(count, Tools.Reader.Read("hill-road.yaml", Encoding.UTF8.GetBytes(filled), new NoPartFiles()).Plans[0].Plan.Runs[0].HandLaid.Count);
    }

    [Theory]
    [InlineData("driveway, bay-2", true)]
    [InlineData("none", true)]
    [InlineData("40", true)]
    [InlineData("41", false)]
    [InlineData("0", false)]
    [InlineData("Drive Way", false)]
    public void Places_laid_by_hand_are_named_as_ids_or_counted_up_to_forty(string answer, bool taken) =>
        Assert.Equal(taken, StartQuestions.All(Tools.Reader).Single(question => question.Id is StartQuestions.ByHand).Problem(answer) is null);

    [Theory]
    [InlineData("metric", "900 m", "3.6 m", "from: 0 m")]
    [InlineData("us", "3000 ft", "12 ft", "from: 0 ft")]
    public void Each_strip_has_the_length_and_width_that_were_answered(string units, string length, string width, string from)
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["units"] = units, ["length"] = length, ["width"] = width, ["lanes"] = "2" });
        var runs = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text.Split("\nruns:")[1].Split("\njoints:")[0];
        Assert.All((string[])[from, $"to: {length}", $"width: {width}"], key => Assert.Equal(3, runs.Split(key).Length));
    }

    /// <summary>The times of the shift say whether it is night, once the place is known; nobody has said no.</summary>
    [Fact]
    public void Whether_it_is_night_stays_open_where_only_the_other_conditions_were_answered()
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "release", ["conditions"] = "none", ["start"] = "20:30", ["end"] = "05:00" });
        var lines = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text.Split('\n').Select(line => line.Trim()).ToList();
        Assert.Contains(lines, line => line.StartsWith("lone_work: no", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.StartsWith("night: no", StringComparison.Ordinal) || line.StartsWith("night: yes", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("submission")]
    [InlineData("release")]
    public void Measures_for_the_conditions_leave_none_of_them_without_a_place(string stage)
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = stage });
        var made = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts);
        var filled = UsualFill.Of(made.Text, conditions: "yes");
        var before = Left(filled, answers.Stage);
        var found = MeasureStarter.Find(Tools, Repository.Bound(), "hill-road.yaml", Encoding.UTF8.GetBytes(filled), NoParts);
        Assert.Empty(found.Problems);
        Assert.True(found.Count > 20, found.Entries);
        Assert.StartsWith(filled.Split("documents:")[0].Split("measures:")[0], found.Text, StringComparison.Ordinal);
        var after = Left(UsualFill.Of(found.Text!), answers.Stage);
        // An entry that a person wrote is not changed; what it lacks is said.
        Assert.All(after.Where(left => left.Contains("measure", StringComparison.Ordinal)), left =>
            Assert.Contains(found.Lacking, sentence => sentence.Contains($"`{left.Split("measure:")[1].Split('/')[0]}`", StringComparison.Ordinal) && sentence.Contains($"`{left.Split('/')[^1]}`", StringComparison.Ordinal)));
        Assert.Equal(before.Where(left => !left.Contains("measure", StringComparison.Ordinal)), after.Where(left => !left.Contains("measure", StringComparison.Ordinal)), StringComparer.Ordinal);
    }

    [Fact]
    public void Measures_are_added_to_a_plan_without_touching_what_a_person_wrote()
    {
        const string Plan = """
            # my plan
            format: 1   # keep this
            plan: { id: a, stage: submission }
            courses:
              - { id: surface, mix: m, thickness: 40 mm }   # and this
            measures:
                - id: supervisor   # indented by four
                  kind: supervisor

            # the end
            """;
        var found = MeasureStarter.Find(Tools, Repository.Bound(), "a.yaml", Encoding.UTF8.GetBytes(Plan), NoParts);
        var lines = Plan.ReplaceLineEndings("\n").Split('\n');
        Assert.All(lines, line => Assert.Contains(line, found.Text!.Split('\n'), StringComparer.Ordinal));
        Assert.Equal(lines, found.Text!.Split('\n').Where(line => lines.Contains(line, StringComparer.Ordinal)), StringComparer.Ordinal);
        Assert.Contains(found.Lacking, sentence => sentence.StartsWith("line 7: the measure `supervisor` does not say ", StringComparison.Ordinal));
        Assert.DoesNotContain("kind: supervisor", found.Entries, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_of_the_firm_stand_where_they_fit()
    {
        var files = new PartsInMemory("""
            parts: 1
            people: [{ id: manager, role: shift manager, name: A. Person, call: channel 3 }]
            mixes: [{ id: ac8, kind: asphalt-concrete }]
            pavers: [{ id: p7, availability: 85 % }]
            rollers: [{ id: r7, kind: tandem }]
            tests: [{ id: our-cores, kind: density, where: wheel tracks }]
            hold_points: [{ id: our-base, step: before-laying, before: first load, criterion: base dry, evidence: form, owner: quality, released_by: engineer }]
            contingencies: [{ id: our-rain, event: paver-fails, action: stop }]
            measures: [{ id: our-burns, kind: burns-first-aid, what: cool }]
            """);
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "release", ["mixes"] = "ac8", ["pavers"] = "p7", ["rollers"] = "r7" });
        var text = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, FirmParts.Of("hill-road.yaml", ["firm.yaml"], files)).Text;
        foreach (var line in (string[])["uses: [firm.yaml]", "  people: [manager]", "  - part: ac8", "  - part: p7", "    - part: r7", "  - part: our-cores", "  - part: our-rain", "hold_points:", "  - part: our-burns"])
        {
            Assert.Contains(line, text.Split('\n'), StringComparer.Ordinal);
        }

        Assert.DoesNotContain("kind: burns-first-aid", text, StringComparison.Ordinal);
        Assert.Contains("  - our-base\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("step: before-laying", text, StringComparison.Ordinal);
        Assert.DoesNotContain("availability", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_only_feeder_of_the_firm_and_the_screeds_of_its_paver_are_not_asked_for_again()
    {
        var files = new PartsInMemory("""
            parts: 1
            pavers:
              - id: twin
                screeds: [{ course: lower, width_lowest: 3 m, width_highest: 8 m }, { course: upper, width_lowest: 3 m, width_highest: 8 m }]
                buffers: [{ course: lower, capacity: 50 t, lowest: 8 t }, { course: upper, capacity: 28 t, lowest: 5 t, call: 12 t }]
            feeders: [{ id: f1, rate: 900 t/h, exchange: 1 min, changeover: 45 s }]
            """);
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["kind"] = "hot-on-hot", ["stage"] = "release", ["pavers"] = "twin" });
        var text = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, FirmParts.Of("hill-road.yaml", ["firm.yaml"], files)).Text;
        Assert.Contains("  - id: lower\n    kind: binder\n", text, StringComparison.Ordinal);
        Assert.Contains("  - id: upper\n    kind: surface\n", text, StringComparison.Ordinal);
        Assert.Contains("feeder:\n    part: f1\n", text, StringComparison.Ordinal);
        Assert.All((string[])["width_highest:", "capacity:", "changeover:"], key => Assert.DoesNotContain(key, text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("submission")]
    [InlineData("release")]
    public void Where_no_traffic_passes_nothing_is_asked_about_it(string stage)
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = stage, ["traffic"] = "none", ["conditions"] = "none" });
        var text = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text;
        Assert.All((string[])["traffic_speed:", "kind: safety-zone", "kind: traffic-management", "kind: side-clearance", "  space:"], key => Assert.DoesNotContain(key, text, StringComparison.Ordinal));
        Assert.Empty(Left(UsualFill.Of(text), answers.Stage));
    }

    [Theory]
    [InlineData("overlay")]
    [InlineData("mill-and-fill")]
    [InlineData("two-courses")]
    [InlineData("hot-on-hot")]
    public void What_follows_from_the_plan_itself_is_not_denied(string kind)
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["kind"] = kind, ["stage"] = "release", ["traffic"] = "none", ["conditions"] = "none" });
        var text = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text;
        var filled = UsualFill.Of(text);
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, new DateOnly(2027, 6, 1), "1") { Quick = true }).Run("hill-road.yaml", Encoding.UTF8.GetBytes(filled));
        Assert.DoesNotContain(result.Reports[0].Findings, finding => finding is { Rule: "SAF-120" or "SAF-121", Outcome: Outcome.Missed }
            && text.Contains($"    {finding.Address["condition:".Length..]}: no\n", StringComparison.Ordinal));
        Assert.DoesNotContain("    several_machines: ", text, StringComparison.Ordinal); // Three rollers and a paver, whatever is filled in.
        Assert.Contains("    spraying: TO FILL IN", text, StringComparison.Ordinal);
        Assert.Empty(Left(filled, answers.Stage));
    }

    [Fact]
    public void Measures_that_are_all_parts_stand_on_lines_of_their_own_so_that_more_can_be_added()
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "submission", ["conditions"] = "none" });
        var alone = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text;
        var kinds = alone.Split("\nmeasures:")[1].Split("\ndocuments:")[0].Split('\n').Select(line => line.Trim().TrimStart('-').Trim()).Where(line => line.StartsWith("kind: ", StringComparison.Ordinal))
            .Select(line => line["kind: ".Length..].Split(' ')[0]).Distinct(StringComparer.Ordinal).ToList();
        var files = new PartsInMemory("parts: 1\nmeasures:\n" + string.Concat(kinds.Select(kind => $"  - {{ id: our-{kind}, kind: {kind}, what: a, where: b, who: c, when: d, checked: e, reference: f }}\n")));
        var text = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, FirmParts.Of("hill-road.yaml", ["firm.yaml"], files)).Text;
        Assert.Contains("\nmeasures:\n  - ", text, StringComparison.Ordinal);
        Assert.Contains("\n  - our-", text, StringComparison.Ordinal);
        Assert.DoesNotContain("measures: [", text, StringComparison.Ordinal);
    }

    /// <summary>An id that a person gave to another kind of measure is not taken again, wherever it stands in the list.</summary>
    [Theory]
    [InlineData("{ id: supervisor, kind: induction }, { id: other, kind: spill-control }")]
    [InlineData("{ id: other, kind: spill-control }, { id: supervisor, kind: induction }")]
    public void A_new_measure_gets_an_id_that_is_free(string measures)
    {
        var plan = $"format: 1\nplan: {{ id: a, stage: submission }}\ncourses: [{{ id: surface, mix: m, thickness: 40 mm }}]\nmeasures: [{measures}]\n";
        var entries = MeasureStarter.Find(Tools, Repository.Bound(), "a.yaml", Encoding.UTF8.GetBytes(plan), NoParts).Entries;
        Assert.Contains("  - id: supervisor-2\n    kind: supervisor", entries, StringComparison.Ordinal);
    }

    /// <summary>A measure of the firm that fits is counted as one that was found, and one is enough.</summary>
    [Fact]
    public void A_measure_of_the_firm_is_taken_once_and_counted()
    {
        const string Plan = "format: 1\nuses: [firm.yaml]\nplan: { id: a, stage: submission }\ncourses: [{ id: surface, mix: m, thickness: 40 mm }]\nsite: { conditions: { railway: yes } }\n";
        var parts = FirmParts.Of("a.yaml", ["firm.yaml"], new PartsInMemory("parts: 1\nmeasures: [{ id: our-supervisor, kind: supervisor, what: a, where: b, who: c, when: d, checked: e, reference: f }]\n"));
        var found = MeasureStarter.Find(Tools, Repository.Bound(), "a.yaml", Encoding.UTF8.GetBytes(Plan), parts);
        Assert.Empty(found.Problems);
        Assert.Equal(1, found.Parts);
        Assert.Equal(found.Count, found.Entries.Split('\n').Count(line => line.StartsWith("  - ", StringComparison.Ordinal)));
        Assert.Equal(2, found.Entries.Split("  - our-supervisor\n").Length);
        Assert.DoesNotContain("kind: supervisor", found.Entries, StringComparison.Ordinal);
    }

    [Fact]
    public void Conditions_that_were_answered_are_written_out_and_the_others_are_no()
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "release", ["conditions"] = "railway, drains" });
        var text = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text;
        Assert.Contains("    railway: yes\n", text, StringComparison.Ordinal);
        Assert.Contains("    overhead_line: no\n", text, StringComparison.Ordinal);
        Assert.Contains("kind: railway-", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_blank_says_what_it_wants_in_the_units_of_the_plan()
    {
        var answers = new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "release", ["units"] = "us" });
        var blanks = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", answers, NoParts).Text.Split('\n').Where(line => line.Contains(": TO FILL IN", StringComparison.Ordinal)).ToList();
        Assert.True(blanks.Count > 100);
        Assert.All(blanks, line => Assert.Matches("TO FILL IN +# [^ ]", line));
        Assert.Contains(blanks, line => line.Contains(" base: ", StringComparison.Ordinal) && line.Contains("surface that is laid upon", StringComparison.Ordinal) && line.Contains("°F", StringComparison.Ordinal));
        Assert.DoesNotContain(blanks, line => line.EndsWith(" mm", StringComparison.Ordinal) || line.EndsWith("°C", StringComparison.Ordinal) || line.EndsWith(" t/h", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_step_of_first_aid_that_is_asked_for_has_a_blank_that_names_it()
    {
        var text = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "release" }), NoParts).Text;
        Assert.Contains(text.Split('\n'), line => line.Contains("- TO FILL IN", StringComparison.Ordinal) && line.Contains("# call-ambulance, if that is done", StringComparison.Ordinal));
        Assert.DoesNotContain("- call-ambulance", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_with_many_blanks_is_refused_in_few_lines()
    {
        var made = PlanStarter.Make(Tools, Repository.Bound(), "hill-road", new StartAnswers(new Dictionary<string, string>(StringComparer.Ordinal) { ["stage"] = "release" }), NoParts);
        var read = Tools.Reader.Read("hill-road.yaml", Encoding.UTF8.GetBytes(made.Text), new NoPartFiles());
        Assert.Contains("places are still blanks, on lines ", Assert.Single(read.Problems).Message, StringComparison.Ordinal);
    }

    private static readonly FirmParts NoParts = FirmParts.Of("hill-road.yaml", [], new NoPartFiles());

    private static List<string> Left(string filled, Stage stage)
    {
        var bytes = Encoding.UTF8.GetBytes(filled);
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, new DateOnly(2027, 6, 1), "1") { Quick = true }).Run("hill-road.yaml", bytes);
        Assert.True(result.Problems.Count == 0, string.Join("\n", result.Problems.Select(problem => $"{problem.Position?.Line}: {problem.Message}")) + "\n" + filled);
        var due = Repository.Bound().InForce.Where(rule => rule.Definition.FromStage <= stage).Select(rule => rule.Definition.Id).ToHashSet(StringComparer.Ordinal);
        var positions = Tools.Reader.Read("hill-road.yaml", bytes, new NoPartFiles()).Plans[0].Positions;
        return [.. result.Reports[0].Findings
            .Where(finding => due.Contains(finding.Rule) && finding.Outcome is Outcome.Open or Outcome.NotAssessed or Outcome.Missed)
            .SelectMany(finding => finding.Missing.Where(at => !Stands(positions, at)).Select(at => $"{finding.Rule} {finding.Address}: {at.Address}/{at.Key}"))];
    }

    private sealed class PartsInMemory(string text) : IPartFiles
    {
        public PartText Read(string from, string name) => new(name, Encoding.UTF8.GetBytes(text));
    }

    // What is missing points at the group above it.
    private static bool Stands(PlanPositions positions, InputReference at) => positions.Of(at.Address, at.Key) != positions.Of(at.Address, Parent(at.Key));

    private static string Parent(string key) => key.LastIndexOf('.') is var dot and >= 0 ? key[..dot] : string.Empty;
}

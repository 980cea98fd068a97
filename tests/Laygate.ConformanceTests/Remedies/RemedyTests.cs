using System.Collections.Concurrent;
using Laygate.Checking;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Levers;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Remedies;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Remedies;

/// <summary>Remedies of the examples, each carried out and judged anew by a fresh evaluation that shares nothing with the search.</summary>
public sealed class RemedyTests
{
    private const string Quay = Repository.WholeQuay;
    private const string QuayRules = "examples/particular/port-of-tamarel.yaml";
    private const string Moor = "examples/moor-road-thin-overlay.yaml";
    private const string County = "examples/county-route-us.yaml";

    // A paver too fast for its supply, whose slowing down makes the main phase late.
    private const string TightFind = "speed: 23 ft/min|done_within: 26 min|done_within: 6 min|done_within: 18 min|availability: 90 %";
    private const string TightPut = "speed: 26 ft/min|done_within: 40 min|done_within: 9 min|done_within: 15.5 min|availability: 100 %";

    [Theory]
    [InlineData(Quay, QuayRules)]
    [InlineDataOfFullRun(Moor, "us-wa")]
    [InlineData(County, "us-wa", "speed: 23 ft/min", "speed: 26 ft/min")]
    [InlineDataOfFullRun(County, "us-wa", TightFind, TightPut)]
    [InlineDataOfFullRun(County, "us-wa", "count: 18,", "count: 12,")]
    [InlineDataOfFullRun(County, "us-wa", "after: 2.5 h", "after: 1.5 h")]
    [InlineDataOfFullRun(Quay, QuayRules, "speed: 2.6 m/min", "speed: 3.2 m/min")]
    [InlineDataOfFullRun(Quay, QuayRules, "call: 12 t", "call: 17 t")]
    [InlineDataOfFullRun(Quay, QuayRules, "expected: 156 °C", "expected: 146 °C")]
    [InlineData(Quay, QuayRules, "capacity: 50 t", "capacity: 38 t")]
    [InlineDataOfFullRun(Moor, "us-wa", "speed: 16 ft/min", "speed: 23 ft/min")]
    public void A_remedy_mends_its_finding_and_makes_none_worse(string example, string rules, string? find = null, string? put = null)
    {
        var bench = Bench.Of(example, rules, find, put);
        var before = bench.Unmended.Findings.ToDictionary(finding => (finding.Rule, finding.Address));
        var remedies = bench.Report.Findings.SelectMany(finding => (finding.Remedies?.Found ?? []).Select(remedy => (finding, remedy))).ToList();
        Assert.NotEmpty(remedies);
        Parallel.ForEach(remedies, one => bench.Fresh(one.remedy.Changes)); // Kept; each stands for itself.
        foreach (var (finding, remedy) in remedies)
        {
            Assert.InRange(remedy.Changes.Count, 1, 2);
            var changed = Carried(bench.Plan, remedy.Changes);
            Assert.Empty(PlanConsistency.Check(changed));
            var after = bench.Fresh(remedy.Changes).Findings;
            var mended = after.Single(one => one.Rule == finding.Rule && one.Address == finding.Address);
            Assert.Equal(Outcome.Met, mended.Outcome);
            Assert.True(mended.Status < finding.Status || finding.Outcome == Outcome.Missed);
            Assert.Equal((remedy.Status, remedy.Value), (mended.Status, mended.Value));
            Assert.All(after, one => Assert.False(Rank(one) > Rank(Before(before, one)), $"{remedy.Changes[0]} makes {one.Rule} at {one.Address} worse"));
        }
    }

    [Theory]
    [InlineData(Quay, QuayRules)]
    [InlineData(Moor, "us-wa")]
    public void Proposed_values_keep_to_what_a_site_would_accept(string example, string rules)
    {
        var bench = Bench.Of(example, rules);
        var levers = PlanLevers.Of(bench.Plan);
        var changes = bench.Report.Findings.SelectMany(finding => finding.Remedies?.Found ?? []).Where(remedy => remedy.Changes.Count == 1).SelectMany(remedy => remedy.Changes).ToList();
        foreach (var change in changes)
        {
            var lever = Lever(levers, change);
            if (change.To.Number is not { } to)
            {
                continue;
            }

            Assert.InRange(to, lever.Lowest, lever.Highest);
            Assert.True(!lever.IsCount || double.IsInteger(to));
            Assert.NotEqual(lever.Current, to);
            Assert.Equal(lever.Kind == LeverKind.Thickness, change.ByDesigner);
            Assert.True(lever.Kind != LeverKind.PaverSpeed || lever.Unit!.ToSi(to) >= (1.5 / 60) - 1e-9);
            Assert.True(lever.Kind != LeverKind.MixTemperature
                || to <= bench.Plan.Mixes.Single(mix => $"mix:{mix.Id}" == change.Address).Loading!.Highest!.Number);
        }
    }

    [Fact]
    public void The_fewest_trucks_that_keep_up_with_the_moor_road_by_hand()
    {
        // Demand 5 m/min · 3.30 m · 0.025 m · 2.36 t/m³ = 0.9735 t/min. Round 6 + 4 + 80 + 10 + exchange + 18 / 0.9735 + 6 + 70 min
        // = 194.5 min with the exchange of about 1 min: 0.9735 · 195 / 18 = 10.6, so eleven trucks.
        var bench = Bench.Of(Moor, "us-wa", "waiting_places: 2", "waiting_places: 9");
        var finding = bench.Report.Findings.Single(one => one.RuleName == "supply/too-few-trucks");
        var change = Assert.Single(finding.Remedies!.Found[0].Changes);
        Assert.Equal((LeverKind.TruckCount, 6.0, 11.0), (change.Lever, change.From.Number, change.To.Number));
        var ten = Lever(PlanLevers.Of(bench.Plan), change).Change(10);
        Assert.Equal(Outcome.Missed, bench.Fresh(ten).Findings.Single(one => one.RuleName == "supply/too-few-trucks").Outcome);
    }

    [Fact]
    public void Two_levers_are_proposed_only_where_neither_does_it_alone()
    {
        var bench = Bench.Of(County, "us-wa", TightFind, TightPut);
        var before = bench.Unmended.Findings.ToDictionary(finding => (finding.Rule, finding.Address));
        var pairs = bench.Report.Findings.SelectMany(finding => (finding.Remedies?.Found ?? []).Where(remedy => remedy.Changes.Count == 2).Select(remedy => (finding, remedy))).ToList();
        Assert.NotEmpty(pairs);
        Assert.All(pairs.SelectMany(pair => pair.remedy.Changes.Select(change => (pair.finding, change))), one =>
        {
            var after = bench.Fresh([one.change]).Findings;
            var mended = after.Single(finding => finding.Rule == one.finding.Rule && finding.Address == one.finding.Address).Outcome == Outcome.Met;
            Assert.True(!mended || after.Any(finding => Rank(finding) > Rank(Before(before, finding))), $"{one.change} suffices alone.");
        });
    }

    [Fact]
    public void A_change_that_can_go_no_further_without_harm_stands_on_expected_values()
    {
        // Slower still would let the unfavourable end pass too, and make the main phase late.
        var bench = Bench.Of(County, "us-wa", "speed: 23 ft/min|availability: 90 %|done_within: 26 min|done_within: 6 min|haul_out_bad: 38 min", "speed: 30 ft/min|availability: 100 %|done_within: 40 min|done_within: 9 min|haul_out_bad: 46 min");
        var finding = bench.Report.Findings.Single(one => one.RuleName == "supply/stop-for-want-of-mix-likely");
        var slower = finding.Remedies!.Found.Single(remedy => remedy.Changes is [{ Lever: LeverKind.PaverSpeed }]);
        Assert.True(slower.OnExpectedValuesOnly);
    }

    [Theory]
    [InlineData("tonnage: 1756 t", "tonnage: 1600 t", "consistency/less-mix-ordered-than-the-course-needs", 1)]
    [InlineData("tonnage: 1756 t", "tonnage: 1950 t", "consistency/more-mix-ordered-than-the-course-needs", -1)]
    public void An_order_is_mended_to_what_the_course_needs_and_not_to_the_edge_of_the_band(string find, string put, string rule, int side)
    {
        // 1,050 m of 8.5 m at 85 mm and the plan's density; 95 % of it would leave the last 50 m unpaved.
        var bench = Bench.Of(Quay, QuayRules, find, put);
        var finding = bench.Report.Findings.Single(one => one.RuleName == rule && one.Outcome == Outcome.Missed);
        var change = Assert.Single(finding.Remedies!.Found[0].Changes);
        var limit = finding.Limit!;
        var need = (limit.Low ?? limit.High)!.Number!.Value / limit.Factor!.Value;
        Assert.Equal(LeverKind.Tonnage, change.Lever);
        Assert.InRange((change.To.Number!.Value - need) * side, -1e-6, 1);
    }

    [Theory]
    [InlineData(Quay, QuayRules, "speed: 2.6 m/min", "speed: 3.2 m/min")]
    [InlineDataOfFullRun(Quay, QuayRules, "expected: 156 °C", "expected: 146 °C")]
    [InlineDataOfFullRun(Quay, QuayRules, null, null)]
    [InlineDataOfFullRun(Moor, "us-wa", "speed: 16 ft/min", "speed: 23 ft/min")]
    [InlineData(Moor, "us-wa", "waiting_places: 2", "waiting_places: 9")]
    [InlineDataOfFullRun(Moor, "us-wa", null, null)]
    public void The_design_is_touched_only_where_no_operation_mends_it(string example, string rules, string? find, string? put)
    {
        var found = Bench.Of(example, rules, find, put).Report.Findings.Select(finding => finding.Remedies?.Found ?? []).Where(list => list.Count > 0).ToList();
        Assert.NotEmpty(found);
        Assert.All(found, list => Assert.Single(list.Select(ByDesigner).Distinct()));

        static bool ByDesigner(Remedy remedy) => remedy.Changes.Any(change => change.ByDesigner);
    }

    [Fact]
    public void What_a_finding_is_about_is_proposed_first_and_then_the_smaller_change()
    {
        // Plans that other tests of this class have mended already.
        Bench[] benches =
        [
            Bench.Of(Quay, QuayRules, "speed: 2.6 m/min", "speed: 3.2 m/min"),
            Bench.Of(Quay, QuayRules),
            Bench.Of(County, "us-wa", "speed: 23 ft/min", "speed: 26 ft/min"),
            Bench.Of(County, "us-wa", "count: 18,", "count: 12,"),
        ];
        var sets = benches.SelectMany(bench => bench.Report.Findings
            .Where(finding => finding.Notes.All(note => Laygate.Engineering.Supply.Simulation.SimulationNotes.CauseOf(note.Id) is null))
            .Select(finding => (finding.Address, Changes: Numbers(finding), Levers: PlanLevers.Of(bench.Plan))))
            .Where(one => one.Changes.Count > 1)
            .ToList();
        Assert.NotEmpty(sets);
        Assert.All(sets, one => Assert.Equal(
            one.Changes.OrderBy(change => change.Address != one.Address).ThenBy(change => Lever(one.Levers, change).Share(change.To.Number!.Value)), one.Changes));

        static List<LeverSetting> Numbers(Finding finding) =>
            [.. (finding.Remedies?.Found ?? []).Where(remedy => remedy.Changes is [{ To.Number: not null }]).Select(remedy => remedy.Changes[0])];
    }

    [Fact]
    public void More_trucks_than_find_a_place_to_wait_are_no_remedy()
    {
        var finding = Bench.Of(Moor, "us-wa").Report.Findings.Single(one => one.RuleName == "supply/too-few-trucks");
        Assert.DoesNotContain(finding.Remedies!.Found, remedy => remedy.Changes is [{ Lever: LeverKind.TruckCount }]);
        var more = finding.Remedies.CannotBy.Single(failed => failed.Change.Lever == LeverKind.TruckCount);
        Assert.Equal((11.0, RemedyObstacle.WorsensAnother), (more.Change.To.Number, more.Obstacle));
        Assert.Contains(more.Worsened, other => other.Rule == "SUP-022");
    }

    [Fact]
    public void What_no_number_mends_says_how_far_it_was_tried()
    {
        var window = Bench.Of(Moor, "us-wa").Report.Findings.Single(one => one.RuleName == "rolling/last-densifying-pass-after-the-window");
        Assert.Empty(window.Remedies!.Found);
        var hotter = window.Remedies.CannotBy.Single(failed => failed.Change.Lever == LeverKind.MixTemperature);
        // By hand: the hottest that the plan itself allows, 330 °F.
        Assert.Equal((330.0, RemedyObstacle.EndOfRange), (hotter.Change.To.Number, hotter.Obstacle));
    }

    [Fact]
    public void A_buffer_that_is_too_small_is_said_to_be_the_machines_and_how_large_it_would_have_to_be()
    {
        // The worst-case relation asks for 41.26 t on this plan: 42 t in whole tonnes.
        var report = Bench.Of(Quay, QuayRules, "capacity: 50 t", "capacity: 38 t").Report;
        var buffer = report.Findings.Single(one => one.RuleName == "supply/buffer-of-the-lower-course-too-small");
        Assert.Equal(Outcome.Missed, buffer.Outcome);
        var given = buffer.Remedies!.CannotBy.Single(failed => failed.Obstacle == RemedyObstacle.GivenByMachine);
        Assert.Equal((LeverKind.BufferCapacity, 38.0, 42.0), (given.Change.Lever, given.Change.From.Number, given.Change.To.Number));
        Assert.DoesNotContain(report.Findings.SelectMany(one => one.Remedies?.Found ?? []).SelectMany(remedy => remedy.Changes), change => change.Lever == LeverKind.BufferCapacity);
    }

    [Fact]
    public void A_time_that_its_passes_cannot_keep_is_mended_by_a_longer_one()
    {
        var bench = Bench.Of(County, "us-wa", "done_within: 6 min", "done_within: 3 min");
        var finding = bench.Report.Findings.Single(one => one.RuleName == "rolling/phase-done-before-its-last-pass" && one.Address == "phase:breakdown");
        Assert.Equal(Outcome.Missed, finding.Outcome);
        var change = Assert.Single(finding.Remedies!.Found.Single(remedy => remedy.Changes[0].Lever == LeverKind.DoneWithin).Changes);

        // By hand: three passes on 150 ft behind a screed at 23 ft/min: the last one begins after 2/3 · 150 / 23 = 4.35 min.
        Assert.Equal((3.0, 5.0), (change.From.Number, change.To.Number));
    }

    [Theory]
    [InlineData("count: 15", "count: 12", FindingNotes.SimulationMisses)]
    [InlineData("capacity: 50 t", "capacity: 41 t", null)]
    [InlineData(null, null, null)]
    public void Where_the_worst_case_holds_and_the_simulated_shift_does_not_the_finding_says_which_governs(string? find, string? put, string? note)
    {
        var report = Bench.Of(Quay, QuayRules, find, put).Unmended;
        string[] governs = [FindingNotes.SimulationPasses, FindingNotes.SimulationMisses];
        var buffer = report.Findings.Single(one => one.RuleName == "supply/buffer-of-the-lower-course-too-small");
        Assert.Equal(note, buffer.Notes.Select(one => one.Id).SingleOrDefault(id => governs.Contains(id, StringComparer.Ordinal)));
    }

    [Fact]
    public void What_a_departure_covers_gets_no_remedy_and_its_neighbours_do()
    {
        var plain = Checked([]).Findings;
        var covered = plain.First(finding => finding.RuleName == "paving/paver-faster-than-its-rollers");
        var other = plain.First(finding => finding.RuleName == "supply/too-few-trucks");
        Assert.NotEmpty(covered.Remedies!.Found);
        Assert.NotNull(other.Remedies);
        var departed = Checked([Departure(covered)]).Findings;
        var after = departed.Single(finding => finding.Rule == covered.Rule && finding.Address == covered.Address);
        Assert.Equal((Status.Departed, Outcome.Missed), (after.Status, after.Outcome));
        Assert.Null(after.Remedies);
        Assert.NotNull(departed.Single(finding => finding.Rule == other.Rule && finding.Address == other.Address).Remedies);

        static Report Checked(IReadOnlyList<Departure> departures) => Assert.Single(new PlanCheck(
            Repository.Bound("us-wa"), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Remedies = true }, departures).Run(Moor, Repository.Bytes(Moor)).Reports);
    }

    private static Departure Departure(Finding finding) => new()
    {
        Id = "d1",
        Rule = finding.Rule,
        Address = finding.Address,
        Reason = "trial length agreed",
        CompensatingMeasure = "cores",
        AskedBy = "A",
        ApprovedBy = "B",
        ApprovedOn = Repository.CheckDate,
        ExpiresOn = Repository.CheckDate,
        Accepted = new AcceptedValue("5 m/min", 5.0 / 60, null),
    };

    [Fact]
    public void A_barely_met_bound_is_carried_until_the_unfavourable_end_meets_it()
    {
        var grit = Bench.Of(Quay, QuayRules).Report.Findings.Single(one => one.RuleName == "friction-and-opening/grit-later-than-the-grit-window");
        Assert.True(grit.OnExpectedValuesOnly);
        Assert.All(grit.Remedies!.Found, remedy => Assert.Equal((Status.Pass, false), (remedy.Status, remedy.OnExpectedValuesOnly)));
    }

    [Fact]
    public void A_change_of_trucks_does_not_solve_the_mat_again()
    {
        var bench = Bench.Of(Quay, QuayRules);
        var context = bench.Context().Remembering();
        bench.Evaluate(context);
        var kept = context.KeptSolves;
        Assert.True(kept > 0);
        var trucks = PlanLevers.Of(bench.Plan).First(lever => lever.Kind == LeverKind.TruckCount).Change(20);
        bench.Evaluate(context.For(trucks, withSpread: true));
        Assert.Equal(kept, context.KeptSolves);
        bench.Evaluate(context.For(PlanLevers.Of(bench.Plan).First(lever => lever.Kind == LeverKind.MixTemperature).Change(175), withSpread: true));
        Assert.True(context.KeptSolves > kept);
    }

    [Fact]
    public void The_number_of_threads_changes_nothing() => Assert.Equal(
        Changes(Bench.Of(Quay, QuayRules, workers: 1).Report), Changes(Bench.Of(Quay, QuayRules).Report), StringComparer.Ordinal);

    private static List<string> Changes(Report report) =>
        [.. report.Findings.SelectMany(finding => finding.Remedies?.Found ?? []).SelectMany(remedy => remedy.Changes).Select(change => change.ToString())];

    private static Plan Carried(Plan plan, IReadOnlyList<LeverSetting> changes) =>
        changes.Aggregate(plan, (current, change) =>
        {
            var lever = Lever(PlanLevers.Of(current), change);
            Assert.False(lever.IsGiven);
            Assert.InRange(change.To.Number ?? lever.Lowest, lever.Lowest, lever.Highest);
            Assert.True(!lever.IsCount || double.IsInteger(change.To.Number!.Value));
            return lever.Change(change.To.Number ?? Minutes(change.To.Text!));
        });

    private static double Minutes(string clock)
    {
        var day = clock.Contains("+1 d", StringComparison.Ordinal) ? 1440 : 0;
        return TimeOnly.ParseExact(clock[..5], "HH:mm", System.Globalization.CultureInfo.InvariantCulture).ToTimeSpan().TotalMinutes + day;
    }

    private static Lever Lever(IReadOnlyList<Lever> levers, LeverSetting change) =>
        levers.Single(lever => lever.Kind == change.Lever && lever.Address == change.Address && lever.Key == change.Key);

    private static Finding? Before(Dictionary<(string, string), Finding> before, Finding after) =>
        before.GetValueOrDefault((after.Rule, after.Address)) ?? before.GetValueOrDefault((after.Rule, RollerCopy.ModelOf(after.Address)));

    private static int Rank(Finding? finding) => finding?.Status switch { Status.Fail => 2, Status.Warn => 1, _ => 0 };

    /// <summary>
    /// One example under its rules: the report with remedies, and fresh evaluations without. The search for remedies is what these tests spend
    /// their time on, so it runs once for each plan and only where a test looks at remedies; a changed plan is judged anew once, however many
    /// findings it mends.
    /// </summary>
    [Theory]
    [InlineDataOfFullRun(1)]
    [InlineData(4)]
    public void A_search_judges_no_more_plans_than_its_budget_and_says_what_it_left(int workers)
    {
        // A budget of next to nothing is 32 plans for the levers and half as many each for harm and for confirmation. A last wave
        // of two items may end beyond it: each at most 8 plans by expected values, or the 4 of one remedy for each of three.
        var most = 32 + 16 + 16 + (2 * 8) + (2 * 8) + (2 * 3 * 4);
        var bench = Bench.Of(Moor, "us-wa");
        var (report, plans) = bench.Search(mostFindings: 1, workers);
        Assert.InRange(plans, 1, most);
        Assert.True(bench.Search(RemedySearch.MostFindings, workers).Plans > 2 * most);
        var whole = bench.Report.Findings.ToDictionary(finding => (finding.Rule, finding.Address));
        var targets = report.Findings.Where(finding => finding.Notes.Any(note => note.Id == FindingNotes.RemediesNotAllTried)).ToList();
        Assert.All(report.Findings.Where(finding => whole[(finding.Rule, finding.Address)].Remedies is not null), finding =>
            Assert.True(finding.Remedies?.Found.Count == RemedySearch.MostPerFinding || targets.Contains(finding)));
        Assert.All(report.Findings.SelectMany(finding => (finding.Remedies?.Found ?? []).Select(remedy => (finding, remedy))), one =>
            Assert.Equal(Outcome.Met, bench.Fresh(one.remedy.Changes).Findings.Single(found => found.Rule == one.finding.Rule && found.Address == one.finding.Address).Outcome));
        Assert.Equivalent(bench.Search(mostFindings: 1, workers: 2).Report.Findings.Select(Seen), report.Findings.Select(Seen), strict: true);
    }

    [Fact]
    public void Where_a_budget_ends_the_worst_findings_have_been_followed_up()
    {
        // The whole search mends one failure and one warning of this plan; 256 changed plans do for half of it.
        var bench = Bench.Of(Moor, "us-wa");
        var (report, plans) = bench.Search(256 * bench.Unmended.Findings.Count, workers: 2);
        Assert.InRange(plans, 1, bench.Search(RemedySearch.MostFindings, workers: 2).Plans - 1);
        Assert.True(report.Findings.Any(finding => finding is { Status: Status.Fail, Remedies.Found.Count: > 0 }), "no failure is mended");
    }

    [Fact]
    public void A_plan_of_usual_size_is_searched_to_the_end() =>
        Assert.DoesNotContain(new[] { Bench.Of(Moor, "us-wa"), Bench.Of(Quay, QuayRules), Bench.Of(County, "us-wa", TightFind, TightPut) }
            .SelectMany(bench => bench.Report.Findings).SelectMany(finding => finding.Notes), note => note.Id == FindingNotes.RemediesNotAllTried);

    private static (string, string, int, int, int) Seen(Finding finding) =>
        (finding.Rule, finding.Address, finding.Notes.Count, finding.Remedies?.Found.Count ?? -1, finding.Remedies?.CannotBy.Count ?? -1);

    private sealed class Bench
    {
        private static readonly ConcurrentDictionary<(string, string, string?, string?, int), Bench> Known = new();

        private readonly Laygate.Rules.Merging.RuleBook book;
        private readonly EvaluationSettings settings;
        private readonly AssumptionSet assumptions;
        private readonly Lazy<Report> mended;
        private readonly Lazy<Report> unmended;
        private readonly ConcurrentDictionary<string, Report> carried = new(StringComparer.Ordinal);

        private Bench(string example, string rules, string? find, string? put, int workers)
        {
            var text = System.Text.Encoding.UTF8.GetString(Repository.Bytes(example));
            foreach (var (old, other) in (find?.Split('|') ?? []).Zip(put?.Split('|') ?? []))
            {
                Assert.Contains(old, text, StringComparison.Ordinal);
                text = text.Replace(old, other, StringComparison.Ordinal);
            }

            book = Repository.Bound(rules);
            Plan = PlanMapper.Map(YamlReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Documents[0]).Plan!;
            settings = new EvaluationSettings { File = example, CheckedOn = Repository.CheckDate };
            assumptions = new AssumptionSet([.. LaygateAssumptions.All, .. book.Assumptions]);
            unmended = new(() => Fresh(Plan));
            mended = new(() =>
            {
                var context = Context().Remembering();
                return RemedySearch.AddTo(Evaluate(context), book, context, settings, plan => PlanConsistency.Check(plan).Count == 0, workers);
            });
        }

        public (Report Report, int Plans) Search(int mostFindings, int workers)
        {
            var plans = 0;
            var context = Context().Remembering();
            var report = RemedySearch.AddTo(Evaluate(context), book, context, settings, IsConsistent, workers, mostFindings: mostFindings);
            return (report, plans);

            bool IsConsistent(Plan plan)
            {
                Interlocked.Increment(ref plans);
                return PlanConsistency.Check(plan).Count == 0;
            }
        }

        public Plan Plan { get; }

        public Report Report => mended.Value;

        public Report Unmended => unmended.Value;

        public static Bench Of(string example, string rules, string? find = null, string? put = null, int workers = 2) =>
            Known.GetOrAdd((example, rules, find, put, workers), _ => new Bench(example, rules, find, put, workers));

        public QuantityContext Context(Plan? plan = null) => new(plan ?? Plan, LaygateQuantities.Catalogue(), assumptions, 1);

        public Report Evaluate(QuantityContext context) => Evaluator.Evaluate(book, context, settings);

        public Report Fresh(Plan plan) => Evaluate(Context(plan));

        public Report Fresh(IReadOnlyList<LeverSetting> changes) => carried.GetOrAdd(string.Join('|', changes), _ => Fresh(Carried(Plan, changes)));
    }
}

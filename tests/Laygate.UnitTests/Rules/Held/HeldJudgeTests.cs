using System.Text;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Records;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Held;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Rules.Held;

/// <summary>What a record comes to under the rules of its plan. Plans, rules and rows are invented; a figure that comes from elsewhere says so.</summary>
public sealed class HeldJudgeTests
{
    private const string PlanText = """
        format: 1
        plan: { id: small, stage: release }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m, refuse_below: { value: 150 °C, place: in-load }, density: { compacted: 2.40 t/m3, reference: maximum, degree: 92 % } }]
        courses: [{ id: c, mix: m, thickness: 40 mm, laid: separately }]
        runs: [{ id: r, courses: [c], paver: p, from: 0 m, to: 1000 m, width: 7.5 m }]
        pavers: [{ id: p, courses: [c], speed: 4 m/min, stop_limit: 20 min }]
        supply: { trucks: [{ id: t, mix: m, payload: 25 t, haul_out: 30 min }] }
        hold_points: [{ id: base, step: before-laying, before: first load is tipped, criterion: dry, evidence: form, owner: foreman, released_by: client }]
        """;

    private static readonly DateTimeOffset Start = new(2027, 5, 14, 21, 15, 0, TimeSpan.FromHours(2));

    // Derived: with a lower limit of 92.0 % and U = 0.8 %, 92.4 lies within U of the limit, 93.0 is above it by more and 91.1 below it by more (guard band as JCGM 106:2012 has it, recalled).
    [Theory]
    [InlineData(92.4, HeldOutcome.NotDecided)]
    [InlineData(93.0, HeldOutcome.Held)]
    [InlineData(91.1, HeldOutcome.Missed)]
    public void A_value_within_its_uncertainty_of_a_limit_is_not_decided(double percent, HeldOutcome outcome)
    {
        var record = new ShiftRecord { Cores = [Core(percent)], Uncertainty = new(null, 0.4 / percent, null, null) };
        var found = Of(Degree(), record);
        Assert.Equal(outcome, found.Outcome);
        Assert.Equal(0.8, found.Uncertainty!.Value, 1e-9);
    }

    // As above, but the contract takes readings as they are.
    [Theory]
    [InlineData(92.4, HeldOutcome.Held)]
    [InlineData(91.9, HeldOutcome.Missed)]
    public void Simple_acceptance_shows_the_uncertainty_and_leaves_the_decision_to_the_value(double percent, HeldOutcome outcome)
    {
        var record = new ShiftRecord { Cores = [Core(percent)], Uncertainty = new(null, 0.4 / percent, null, null) };
        var found = Of(Degree(), record, simple: "clause 7.3");
        Assert.Equal(outcome, found.Outcome);
        Assert.Equal(0.8, found.Uncertainty!.Value, 1e-9);
    }

    [Fact]
    public void Without_an_uncertainty_a_value_within_its_limit_is_not_decided_and_one_beyond_it_is_missed()
    {
        Assert.Equal(NotDecidedBecause.NoUncertainty, Of(Degree(), new ShiftRecord { Cores = [Core(99)] }).Because);
        Assert.Equal(HeldOutcome.Missed, Of(Degree(), new ShiftRecord { Cores = [Core(91)] }).Outcome);
    }

    [Fact]
    public void Nothing_recorded_is_never_held()
    {
        var found = Of(Degree(), new ShiftRecord());
        Assert.Equal((HeldOutcome.NotRecorded, Status.Fail), (found.Outcome, found.Status));
        Assert.Null(found.Worst);
    }

    [Fact]
    public void One_load_without_a_temperature_keeps_all_others_from_being_held_and_is_named()
    {
        Load[] loads = [Delivered("1", 160), Delivered("2", null)];
        var found = Of(Delivery(), new ShiftRecord { Loads = loads, Uncertainty = Thermometer });
        Assert.Equal(HeldOutcome.NotRecorded, found.Outcome);
        Assert.Equal(new RowPlace("site.csv", 2), Assert.Single(found.Lacking).Row);
        Assert.Equal(HeldOutcome.Held, Of(Delivery(), new ShiftRecord { Loads = [loads[0]], Uncertainty = Thermometer }).Outcome);
    }

    [Fact]
    public void The_worst_of_the_shift_decides_with_its_row_and_the_others_are_counted()
    {
        var found = Of(Delivery(), new ShiftRecord { Loads = [Delivered("1", 160), Delivered("2", 149), Delivered("3", 140), Delivered("4", 151)], Uncertainty = Thermometer });
        Assert.Equal((HeldOutcome.Missed, 140.0), (found.Outcome, found.Number));
        Assert.Equal([new RowPlace("site.csv", 3)], found.Worst!.Rows);
        Assert.Equal([HeldOutcome.Missed, HeldOutcome.NotDecided, HeldOutcome.NotDecided], found.NotHeld.Select(one => one.Outcome));
        Assert.Equal(4, found.Count);
    }

    [Fact]
    public void A_refused_load_is_not_one_that_was_laid_too_cold()
    {
        var found = Of(Delivery(), new ShiftRecord { Loads = [Delivered("1", 160), Delivered("2", 120) with { State = LoadState.Refused }], Uncertainty = Thermometer });
        Assert.Equal((HeldOutcome.Held, 1), (found.Outcome, found.Count));
    }

    // 145 ± 2 °C lies wholly within what was permitted, 144 ± 2 °C does not.
    [Theory]
    [InlineData(145, HeldOutcome.Departed)]
    [InlineData(144, HeldOutcome.Missed)]
    public void A_departure_permits_a_value_with_its_whole_uncertainty(double celsius, HeldOutcome outcome) =>
        Assert.Equal(outcome, Of(Delivery(), new ShiftRecord { Loads = [Delivered("1", celsius)], Uncertainty = Thermometer }, departures: [Permitted()]).Outcome);

    [Fact]
    public void A_departure_never_permits_that_nothing_was_recorded() =>
        Assert.Equal(HeldOutcome.NotRecorded, Of(Delivery(), new ShiftRecord(), departures: [Permitted()]).Outcome);

    [Fact]
    public void A_limit_that_is_only_recalled_warns_and_never_fails()
    {
        var record = new ShiftRecord { Cores = [Core(80)], Uncertainty = new(null, 0.005, null, null) };
        var found = Of(Degree(Evidence.Recalled), record);
        Assert.Equal((HeldOutcome.Missed, Status.Warn), (found.Outcome, found.Status));
        Assert.Equal(Status.Fail, Of(Degree(), record).Status);
    }

    // The screed passes 100 m at 21:40 (4 m/min from 21:15); a reading 20 min later shows only that the mat was no colder.
    [Fact]
    public void A_mat_read_late_and_too_cold_is_not_decided_and_hot_enough_is_held()
    {
        StationReading[] stations = [new(new RowPlace("stations.csv", 2), Start, 0), new(new RowPlace("stations.csv", 3), Start.AddMinutes(250), 1000)];
        MatTemperature Read(double minutes, double celsius) => new(new RowPlace("mat.csv", 2), Start.AddMinutes(25 + minutes), celsius) { Station = 100, Course = "c", Depth = 0.02 };
        ShiftRecord Record(MatTemperature one) => new() { Stations = stations, Temperatures = [one], Uncertainty = Thermometer };
        var rule = Rule("course.laying_temperature", CheckKind.AtLeast, ElementKind.Course, TestBook.AtLeast(130, "°C"));
        Assert.Equal(HeldOutcome.Missed, Of(rule, Record(Read(0, 120))).Outcome);
        Assert.Equal(NotDecidedBecause.ReadLater, Of(rule, Record(Read(20, 120))).Because);
        Assert.Equal(HeldOutcome.Held, Of(rule, Record(Read(20, 135))).Outcome);
    }

    [Fact]
    public void What_happened_in_place_of_a_limit_is_held_against_what_the_plan_states()
    {
        var plan = PlanText + "\nrolling: { phases: [{ id: main, kind: main, passes: 2, done_within: 20 min }], rollers: [{ id: r1, phase: main }] }\n";
        StationReading[] stations = [new(new RowPlace("stations.csv", 2), Start, 0), new(new RowPlace("stations.csv", 3), Start.AddMinutes(250), 1000)];
        PassReading Pass(double minutes) => new(new RowPlace("passes.csv", 2), Start.AddMinutes(25 + minutes), "r1") { Station = 100 };
        var rule = Rule("phase.done_by", CheckKind.AtLeast, ElementKind.Phase, TestBook.Of(new QuantityLimit("phase.last_pass_from", 1, "1")));
        ShiftRecord Record(double minutes) => new() { Stations = stations, Passes = [Pass(5), Pass(minutes)], Uncertainty = new(null, null, null, null) { Time = 1 } };
        Assert.Equal(HeldOutcome.Held, Of(rule, Record(19), plan: plan).Outcome);
        var late = Of(rule, Record(24), plan: plan);
        Assert.Equal((HeldOutcome.Missed, 24.0), (late.Outcome, Math.Round(late.Number, 6)));
    }

    [Theory]
    [InlineData("client", -30, "form 1", HoldPointState.Released)]
    [InlineData("foreman", -30, "form 1", HoldPointState.ByAnother)]
    [InlineData("client", 30, "form 1", HoldPointState.TooLate)]
    [InlineData("client", -30, null, HoldPointState.Incomplete)]
    public void A_hold_point_is_held_only_by_whom_the_plan_names_in_time_and_on_evidence(string by, double minutes, string? evidence, HoldPointState state)
    {
        StationReading[] stations = [new(new RowPlace("stations.csv", 2), Start, 0)];
        var record = new ShiftRecord { Stations = stations, HoldPoints = [new(new RowPlace("hold.csv", 2), "base") { At = Start.AddMinutes(minutes), By = by, Evidence = evidence }] };
        Assert.Equal(state, Assert.Single(Judge(Degree(), record).HoldPoints).Use.State);
        Assert.Equal(HoldPointState.NotRecorded, Assert.Single(Judge(Degree(), record with { HoldPoints = [] }).HoldPoints).Use.State);
    }

    [Fact]
    public void The_gate_passes_only_where_all_is_held()
    {
        ShiftRecord Record(double percent) => new()
        {
            Cores = [Core(percent)],
            HoldPoints = [new(new RowPlace("hold.csv", 2), "base") { At = Start.AddMinutes(-30), By = "client", Evidence = "form 1" }],
            Uncertainty = new(null, 0.001, null, null),
        };
        Assert.Equal(Status.Pass, Judge(Degree(), Record(95)).Gate);
        Assert.Equal(Status.Warn, Judge(Degree(), Record(92.05)).Gate);
        Assert.Equal(Status.Fail, Judge(Degree(), Record(91)).Gate);
        Assert.Equal(Status.Fail, Judge(Degree(), Record(95) with { HoldPoints = [] }).Gate);
    }

    // The plan of the tests asks for 92 % itself, without a rule: its own limit stands beside those of rules.
    [Fact]
    public void What_a_plan_states_as_its_own_limit_is_judged_without_a_rule()
    {
        var own = Assert.Single(Judge(Delivery(), new ShiftRecord { Cores = [Core(91)], Uncertainty = new(null, 0.001, null, null) }).Findings, one => one.IsOwn);
        Assert.Equal(("mix:m", HeldOutcome.Missed, Status.Fail), (own.Finding.Address, own.Outcome, own.Status));
        Assert.Equal(92, own.Finding.Limit!.Low!.Number!.Value, 1e-9);
        Assert.Equal(CheckKind.AtLeast, own.Finding.Check);
    }

    // The course is laid from 21:15 to 01:25; at 22:05 the air is at 5 °C, and only then the rule applies.
    [Fact]
    public void A_rule_that_applies_in_some_weather_only_judges_each_value_in_its_own()
    {
        StationReading[] stations = [new(new RowPlace("stations.csv", 2), Start, 0), new(new RowPlace("stations.csv", 3), Start.AddMinutes(250), 1000)];
        MatTemperature Read(double minutes, double celsius) => new(new RowPlace("mat.csv", (int)minutes), Start.AddMinutes(minutes), celsius) { Station = 4 * minutes, Course = "c", Depth = 0.02 };
        WeatherReading Air(double minutes, double celsius) => new(new RowPlace("weather.csv", (int)minutes), Start.AddMinutes(minutes)) { Air = celsius };
        var record = new ShiftRecord
        {
            Stations = stations,
            Temperatures = [Read(25, 130), Read(50, 135), Read(75, 150)],
            Weather = [Air(0, 15), Air(25, 15), Air(50, 5), Air(75, 15), Air(250, 15)],
            Uncertainty = Thermometer,
        };
        var rule = Rule("course.laying_temperature", CheckKind.AtLeast, ElementKind.Course, TestBook.AtLeast(140, "°C")) with { When = [new Condition("course.air_lowest", null, null, TestBook.Value(10, "°C"))] };
        var found = Of(rule, record);
        Assert.Equal((HeldOutcome.Missed, 135.0), (found.Outcome, found.Number));
    }

    [Fact]
    public void Feedback_counts_each_finding_once_by_what_the_plan_was_told()
    {
        ShiftRecord Record(double percent) => new() { Cores = [Core(percent)], Uncertainty = new(null, 0.001, null, null) };
        var strict = Rule("mix.degree", CheckKind.AtLeast, ElementKind.Mix, TestBook.AtLeast(93, "%"));
        HeldReport[] reports = [Judge(strict, Record(95)), Judge(strict, Record(91)), Judge(strict, Record(93.05)), Judge(strict, new ShiftRecord()), Judge(Degree(), Record(91))];
        var row = Assert.Single(RuleFeedbacks.Of(reports), one => one.Rule is "LAY-001");
        // The plan states 92 %: it fails the rule that asks for 93 %, and passes the one that asks for 92 %.
        Assert.Equal(new RuleFeedback("LAY-001", "density of a core", WarnedMissed: 1, WarnedHeld: 1, PassedMissed: 1, PassedHeld: 0, NotDecided: 1, NotRecorded: 1), row);
    }

    private static RecordUncertainty Thermometer => new(null, null, null, null) { Temperature = 1 };

    private static RuleDefinition Rule(string quantity, CheckKind check, ElementKind on, params Bound[] bounds) => TestBook.Rule(quantity, check, bounds) with { AppliesTo = on };

    private static RuleDefinition Degree(Evidence evidence = Evidence.Read) => Rule("mix.degree", CheckKind.AtLeast, ElementKind.Mix, TestBook.AtLeast(92, "%", evidence: evidence));

    private static RuleDefinition Delivery() => Rule("mix.delivery_lowest", CheckKind.AtLeast, ElementKind.Mix, TestBook.Of(new QuantityLimit("mix.refuse_below", 1, "1")));

    private static Core Core(double percent) => new(new RowPlace("cores.csv", 2), "C1") { Bulk = 25 * percent, Maximum = 2500, Course = "c" };

    private static Load Delivered(string ticket, double? celsius) => new(new RowPlace("scale.csv", int.Parse(ticket, System.Globalization.CultureInfo.InvariantCulture)), ticket, 25_000)
    {
        Mix = "m",
        SiteTemperature = celsius,
        Delivery = new RowPlace("site.csv", int.Parse(ticket, System.Globalization.CultureInfo.InvariantCulture)),
    };

    private static Departure Permitted() => new()
    {
        Id = "d-1",
        Rule = "LAY-001",
        Address = "mix:m",
        Reason = "invented",
        CompensatingMeasure = "invented",
        AskedBy = "A",
        ApprovedBy = "B",
        ApprovedOn = new DateOnly(2027, 5, 1),
        ExpiresOn = new DateOnly(2027, 6, 1),
        Accepted = new AcceptedValue("143 °C", 143, null),
    };

    private static HeldFinding Of(RuleDefinition rule, ShiftRecord record, string? simple = null, IReadOnlyList<Departure>? departures = null, string plan = PlanText) =>
        Assert.Single(Judge(rule, record, simple, departures, plan).Findings, one => !one.IsOwn);

    private static HeldReport Judge(RuleDefinition rule, ShiftRecord record, string? simple = null, IReadOnlyList<Departure>? departures = null, string plan = PlanText)
    {
        var built = RuleBook.Build(TestBook.General(rule), [], LaygateQuantities.Catalogue(), LaygateAssumptions.Set());
        Assert.Empty(built.Problems);
        var mapped = PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(plan)).Documents[0]).Plan!;
        var context = new QuantityContext(mapped, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), seed: 1) { IsQuick = true };
        var settings = new HeldSettings(new EvaluationSettings { File = "plan.yaml", CheckedOn = TestBook.Today }, departures ?? [], simple);
        return HeldJudge.Judge(built.Book!, new HappenedShift(context, record), settings);
    }
}

using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Quantities;

/// <summary>Edges and levels of a run, cores, trial lengths and editions: what follows from what is stated, and what stays unknown.</summary>
public class EdgeLevelAndProofTests
{
    private static readonly Run Run = new() { Id = "r" };

    [Theory]
    [InlineData(EdgeKind.Free, null, true)]
    [InlineData(null, EdgeKind.Free, true)]
    [InlineData(EdgeKind.Kerb, EdgeKind.Cut, false)]
    [InlineData(EdgeKind.Kerb, null, null)]
    public void An_edge_that_is_not_stated_may_be_free(EdgeKind? left, EdgeKind? right, bool? expected)
    {
        var answer = Ask.Answer(With(Run with { LeftEdge = left, RightEdge = right }), "run.has_free_edge", "run:r");
        Assert.Equal(expected is { } flag ? new FlagValue(flag) : null, answer.Value);
        Assert.True(expected is not null || Ask.Missing(answer).SequenceEqual(["run:r/right_edge"]));
    }

    [Fact]
    public void A_cover_or_a_tie_in_is_a_fixed_point_whatever_the_edges_are()
    {
        Assert.Equal(new FlagValue(true), Ask.Answer(With(Run with { Obstacles = [new Obstacle { Id = "c", What = "cover" }] }), "run.has_fixed_points", "run:r").Value);
        Assert.Equal(new FlagValue(true), Ask.Answer(With(Run with { TieIns = [new TieIn { Id = "t" }] }), "run.has_fixed_points", "run:r").Value);
        Assert.Equal(new FlagValue(false), Ask.Answer(With(Run with { LeftEdge = EdgeKind.Free, RightEdge = EdgeKind.Cut }), "run.has_fixed_points", "run:r").Value);
    }

    [Fact]
    public void Levels_are_stated_when_every_fixed_point_has_its_fields()
    {
        var full = new FixedLevel { Id = "a", At = Metres(1), What = "kerb", Above = Mm(-100), RollDown = Mm(7) };
        Assert.Equal(PresenceLevel.Absent, Level(Run));
        Assert.Equal(PresenceLevel.Stated, Level(Run with { Levels = [full, full with { Id = "b" }] }));
        Assert.Equal(PresenceLevel.Thin, Level(Run with { Levels = [full, full with { Id = "b", RollDown = null }] }));
        Assert.Equal(PresenceLevel.Thin, Level(Run with { Levels = [full, new FixedLevel { Id = "b" }] }));
        Assert.Equal(PresenceLevel.Absent, Level(Run with { Levels = [new FixedLevel { Id = "b", What = "kerb" }] }));
    }

    [Fact]
    public void A_fixed_point_without_its_fields_is_named_by_its_id()
    {
        var answer = Ask.Answer(With(Run with { Levels = [new FixedLevel { Id = "b", At = Metres(1) }] }), "run.levels", "run:r");
        Assert.Equal(new InputReference("run:r", "levels.b"), answer.Input);
        Assert.Equal(["above", "roll_down"], ((PresenceValue)answer.Value!).MissingFields);
    }

    [Fact]
    public void Without_hold_points_all_that_one_needs_is_missing() =>
        Assert.Equal(["criterion", "evidence", "owner", "released_by"], ((PresenceValue)Ask.Answer(Small.Plan, "plan.hold_points", "plan").Value!).MissingFields);

    [Fact]
    public void Whether_a_run_lies_beside_an_earlier_one_asks_for_both_ends_of_each()
    {
        var answer = Ask.Answer(Small.Plan with { Runs = [Run with { From = Metres(0), To = Metres(10) }, Run with { Id = "s" }] }, "run.lies_beside_another", "run:r");
        Assert.Equal(["run:s/from", "run:s/to"], Ask.Missing(answer));
    }

    [Theory]
    [InlineData(true, true, true)]
    [InlineData(true, false, false)]
    [InlineData(null, false, false)]
    [InlineData(true, null, null)]
    public void Cores_of_a_pair_are_cut_when_each_test_on_cores_cuts_them(bool? first, bool? second, bool? expected)
    {
        var plan = ScenarioA.Plan with { Tests = [Cored("one", first), Cored("two", second), new Test { Id = "three", Kind = TestKind.Yield }] };
        var pair = Ask.Context(plan).Elements.Of(ElementKind.Pair).Single().Address;
        Assert.Equal(new FlagValue(true), Ask.Answer(plan, "pair.cored", pair).Value);
        Assert.Equal(expected is { } flag ? new FlagValue(flag) : null, Ask.Answer(plan, "pair.cores_cut_at_interface", pair).Value);
    }

    [Fact]
    public void A_trial_after_the_shift_has_a_time_below_zero()
    {
        // By hand, calendar: 29 April to 14 May are 15 days, to 28 April one day back.
        var shift = new Shift { Date = new DateOnly(2027, 5, 14) };
        var trial = new Test { Id = "t", Kind = TestKind.TrialLength, Done = new DateOnly(2027, 4, 29) };
        Assert.Equal(15, Ask.Number(Small.Plan with { Shift = shift, Tests = [trial] }, "test.time_before_shift", "test:t", "d"));
        Assert.Equal(-1, Ask.Number(Small.Plan with { Shift = shift with { Date = new DateOnly(2027, 4, 28) }, Tests = [trial] }, "test.time_before_shift", "test:t", "d"));
        Assert.Equal(["test:t/done", "shift/date"], Ask.Missing(Ask.Answer(Small.Plan with { Tests = [trial with { Done = null }] }, "test.time_before_shift", "test:t")));
    }

    [Theory]
    [InlineData("2027-05-14", "2027-05-14", null, true)]
    [InlineData(null, "2027-05-13", "2027-05-01", false)]
    [InlineData("2027-05-15", null, "2027-05-01", false)]
    [InlineData(null, null, "2027-05-01", true)]
    [InlineData("2020-01-01", null, null, null)]
    public void An_edition_holds_from_its_first_to_its_last_day(string? from, string? to, string? seen, bool? expected)
    {
        var document = new Document { Id = "d", Kind = DocumentKind.GoverningCode, Title = "Code", Edition = "1", ValidFrom = Day(from), ValidTo = Day(to), SeenInForce = Day(seen) };
        var plan = Small.Plan with { Shift = new Shift { Date = new DateOnly(2027, 5, 14) }, Documents = [document, new Document { Id = "r", Kind = DocumentKind.Drawing, Title = "Drawing", Edition = "A" }] };
        Assert.Equal(expected is { } flag ? new FlagValue(flag) : null, Ask.Answer(plan, "plan.edition_holds", "plan").Value);
    }

    [Fact]
    public void A_course_takes_the_longest_stop_of_its_pavers()
    {
        var pavers = new[] { new Paver { Id = "p", StopLimit = Min(12) }, new Paver { Id = "q", StopLimit = Min(20) } };
        var plan = Small.Plan with { Pavers = pavers, Runs = [Run with { Paver = "p" }, new Run { Id = "s", Paver = "q" }] };
        Assert.Equal(20, Ask.Number(plan, "course.stop_limit", $"course:{Small.Plan.Courses[0].Id}", "min"), 1e-9);
        Assert.Equal(["paver:q/stop_limit"], Ask.Missing(Ask.Answer(plan with { Pavers = [pavers[0], pavers[1] with { StopLimit = null }] }, "course.stop_limit", $"course:{Small.Plan.Courses[0].Id}")));
    }

    private static DateOnly? Day(string? text) => text is null ? null : DateOnly.ParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static Test Cored(string id, bool? cut) => new() { Id = id, Kind = TestKind.Density, Cores = new Cores { Count = 8, MatCold = true, CutAtInterface = cut } };

    private static Plan With(Run run) => Small.Plan with { Runs = [run] };

    private static PresenceLevel Level(Run run) => ((PresenceValue)Ask.Answer(With(run), "run.levels", "run:r").Value!).Level;
}

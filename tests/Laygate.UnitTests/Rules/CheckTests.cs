using CsCheck;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>Each check of the closed set, at both sides of its bounds.</summary>
public sealed class CheckTests
{
    [Theory]
    [InlineData(CheckKind.AtLeast, false, 39.99, false)]
    [InlineData(CheckKind.AtLeast, false, 40, true)]
    [InlineData(CheckKind.AtLeast, false, 40.01, true)]
    [InlineData(CheckKind.AtLeast, true, 40, false)]
    [InlineData(CheckKind.AtLeast, true, 40.01, true)]
    [InlineData(CheckKind.AtMost, false, 39.99, true)]
    [InlineData(CheckKind.AtMost, false, 40, true)]
    [InlineData(CheckKind.AtMost, false, 40.01, false)]
    [InlineData(CheckKind.AtMost, true, 40, false)]
    [InlineData(CheckKind.AtMost, true, 39.99, true)]
    public void One_ended_bounds(CheckKind check, bool exclusive, double millimetres, bool met)
    {
        var bound = check == CheckKind.AtLeast ? AtLeast(40, "mm") : AtMost(40, "mm");
        var rule = Rule("course.thickness", check, bound with { LowExclusive = exclusive && check == CheckKind.AtLeast, HighExclusive = exclusive && check == CheckKind.AtMost });
        Assert.Equal(met ? Outcome.Met : Outcome.Missed, Judge(rule, Context().Given("course.thickness", new NumberValue(millimetres / 1000))).Outcome);
    }

    [Theory]
    [InlineData(false, false, 20, true)]
    [InlineData(false, false, 25, true)]
    [InlineData(false, false, 19.9, false)]
    [InlineData(false, false, 25.1, false)]
    [InlineData(true, false, 20, false)]
    [InlineData(true, false, 25, true)]
    [InlineData(false, true, 25, false)]
    [InlineData(false, true, 20, true)]
    public void Bands(bool lowExclusive, bool highExclusive, double millimetres, bool met)
    {
        var bound = Of(new ConstantLimit(Value(20, "mm"), Value(25, "mm"))) with { LowExclusive = lowExclusive, HighExclusive = highExclusive };
        var finding = Judge(Rule("course.thickness", CheckKind.Between, bound), Context().Given("course.thickness", new NumberValue(millimetres / 1000)));
        Assert.Equal(met ? Outcome.Met : Outcome.Missed, finding.Outcome);
    }

    [Theory]
    [InlineData(22, 21, 24, Status.Pass)]
    [InlineData(22, 19, 24, Status.Warn)]
    [InlineData(22, 21, 26, Status.Warn)]
    public void A_band_is_held_against_both_ends(double expected, double low, double high, Status status)
    {
        var rule = Rule("course.thickness", CheckKind.Between, Of(new ConstantLimit(Value(20, "mm"), Value(25, "mm"))));
        Assert.Equal(status, Judge(rule, Context().Given("course.thickness", new NumberValue(expected / 1000, low / 1000, high / 1000))).Status);
    }

    [Theory]
    [InlineData(41, Outcome.NotAssessed, Status.Warn)]
    [InlineData(39, Outcome.Missed, Status.Fail)]
    public void A_value_for_a_part_shows_a_miss_but_never_that_the_whole_meets(double millimetres, Outcome outcome, Status status)
    {
        var left = Note.Of(NoteIds.HoursEndEarly, ("end", "00:00"), ("laying", "04:05"));
        var answer = new Answer { Value = new NumberValue(millimetres / 1000), Partial = left };
        var finding = Judge(Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")), Context().GivenAnswer("course.thickness", answer));
        Assert.Equal((outcome, status), (finding.Outcome, finding.Status));
        Assert.Equal(outcome == Outcome.NotAssessed, finding.Notes.Contains(left));
        Assert.NotNull(finding.Value);
    }

    [Fact]
    public void At_most_looks_at_the_high_end()
    {
        var rule = Rule("course.densification_window", CheckKind.AtMost, AtMost(20, "min"));
        Assert.Equal(Status.Warn, Judge(rule, Context().Given("course.densification_window", new NumberValue(1100, 900, 1300))).Status);
        Assert.Equal(Status.Pass, Judge(rule, Context().Given("course.densification_window", new NumberValue(1100, 900, 1200))).Status);
    }

    [Theory]
    [InlineData(PresenceLevel.Stated, Outcome.Met, Status.Pass)]
    [InlineData(PresenceLevel.Thin, Outcome.Missed, Status.Warn)]
    [InlineData(PresenceLevel.Absent, Outcome.Missed, Status.Fail)]
    public void Presence(PresenceLevel level, Outcome outcome, Status status)
    {
        var context = Context().Given("site.measure_reversing_spotter", new PresenceValue(level, level == PresenceLevel.Stated ? [] : ["who"]));
        var finding = Judge(PresenceRule, context);
        Assert.Equal((outcome, status, Words.Of(level)), (finding.Outcome, finding.Status, finding.Value!.Text));
        Assert.Equal(level == PresenceLevel.Stated ? [] : [new InputReference("site", "who")], finding.Missing);
        Assert.Equal(level == PresenceLevel.Thin ? Strength.Advised : Strength.Required, finding.Limit!.Strength);
    }

    [Fact]
    public void What_need_not_be_stated_yet_is_open_and_silence_is_absence()
    {
        Assert.Equal((Outcome.Open, Status.None), (Judge(PresenceRule, Context(Plan(Stage.Concept))).Outcome, Judge(PresenceRule, Context(Plan(Stage.Concept))).Status));
        Assert.Equal((Outcome.Missed, Status.Fail), (Judge(PresenceRule, Context()).Outcome, Judge(PresenceRule, Context()).Status));
    }

    [Theory]
    [InlineData(-1, Outcome.Missed)]
    [InlineData(0, Outcome.Met)]
    [InlineData(1, Outcome.Met)]
    public void Order_of_moments(int minutesAfter, Outcome outcome)
    {
        var end = new DateTimeOffset(2027, 5, 15, 5, 0, 0, TimeSpan.FromHours(2));
        var rule = Rule("site.closure_end", CheckKind.NotBefore, Of(new QuantityLimit("opening.at", 1, "1")));
        var context = Context().Given("opening.at", new MomentValue(end)).Given("site.closure_end", new MomentValue(end.ToOffset(TimeSpan.Zero).AddMinutes(minutesAfter)));
        var finding = Judge(rule, context);
        Assert.Equal(outcome, finding.Outcome);
        Assert.Equal("2027-05-15T05:00+02:00", finding.Limit!.Low!.Text);
    }

    [Fact]
    public void Agreement_with_words_and_with_a_quantity()
    {
        var words = Rule("course.laid", CheckKind.Agrees, Of(new WordsLimit(["separately", "hot-on-warm"])));
        Assert.Equal(Outcome.Met, Judge(words, Context().Given("course.laid", new CategoryValue("hot-on-warm"))).Outcome);
        Assert.Equal(Outcome.Missed, Judge(words, Context().Given("course.laid", new CategoryValue("hot-on-hot"))).Outcome);
        var flag = Rule("site.trucks_reverse", CheckKind.Agrees, Of(new WordsLimit(["no"])));
        Assert.Equal(Outcome.Missed, Judge(flag, Context().Given("site.trucks_reverse", new FlagValue(true))).Outcome);
        var other = Rule("mix.kind", CheckKind.Agrees, Of(new QuantityLimit("mix.other_kind", 1, "1")));
        var context = Context().Given("mix.kind", new CategoryValue("porous"));
        Assert.Equal(Outcome.Missed, Judge(other, context.Given("mix.other_kind", new CategoryValue("stone-mastic"))).Outcome);
        Assert.Equal(Outcome.Met, Judge(other, context.Given("mix.other_kind", new CategoryValue("porous"))).Outcome);
    }

    [Fact]
    public void A_factor_multiplies_the_other_quantity()
    {
        var rule = Rule("course.thickness", CheckKind.AtLeast, Of(new QuantityLimit("course.thickness_lowest", 1.15, "1.15")));
        var context = Context().Given("course.thickness_lowest", new NumberValue(0.1));
        Assert.Equal(Outcome.Met, Judge(rule, context.Given("course.thickness", new NumberValue(0.115))).Outcome);
        Assert.Equal(Outcome.Missed, Judge(rule, context.Given("course.thickness", new NumberValue(0.1149))).Outcome);
    }

    // 1 in = 25.4 mm and 32 °F = 0 °C exactly (NIST SP 811); rounding on the way must not decide.
    [Fact]
    public void Rounding_of_conversions_never_decides()
    {
        var thickness = Rule("course.thickness", CheckKind.AtLeast, AtLeast(1.5, "in"));
        Assert.Equal(Outcome.Met, Judge(thickness, Context().Given("course.thickness", new NumberValue(0.0381))).Outcome);
        Assert.Equal(Outcome.Missed, Judge(thickness, Context().Given("course.thickness", new NumberValue(0.03809))).Outcome);
        var freezing = Rule("course.laying_temperature", CheckKind.AtLeast, AtLeast(32, "F"));
        Assert.Equal(Outcome.Met, Judge(freezing, Context().Given("course.laying_temperature", new NumberValue(0))).Outcome);
        Assert.Equal(Outcome.Missed, Judge(freezing, Context().Given("course.laying_temperature", new NumberValue(-0.001))).Outcome);
        Assert.False(LimitComparison.MeetsLow(0.0381, 1.5 * 0.0254, exclusive: true, Dimension.Length));
    }

    [Fact]
    public void The_limit_is_shown_in_the_unit_of_the_plan_and_as_its_source_states_it()
    {
        var finding = Judge(Rule("course.thickness", CheckKind.AtLeast, AtLeast(1.5, "in")), Context().Given("course.thickness", new NumberValue(0.035), "mm"));
        Assert.Equal((35, "mm"), (finding.Value!.Number!.Value, finding.Value.Unit));
        Assert.Equal((38.1, "mm", "1.5 in"), (Math.Round(finding.Limit!.Low!.Number!.Value, 9), finding.Limit.Low.Unit, finding.Limit.Stated));
        Assert.Equal("Manual", finding.Limit.Publication!.Title);
    }

    [Theory]
    [InlineData(30, Strength.Required, Outcome.Missed)]
    [InlineData(45, Strength.Advised, Outcome.Missed)]
    [InlineData(51, Strength.Advised, Outcome.Met)]
    public void The_bound_that_decides_stands_as_the_limit(double millimetres, Strength strength, Outcome outcome)
    {
        var rule = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm"), AtLeast(50, "mm", Strength.Advised));
        var finding = Judge(rule, Context().Given("course.thickness", new NumberValue(millimetres / 1000)));
        Assert.Equal((outcome, strength), (finding.Outcome, finding.Limit!.Strength));
        Assert.NotEqual(strength, finding.OtherLimit!.Strength);
    }

    [Fact]
    public void A_recalled_limit_that_is_met_says_so()
    {
        var finding = Judge(Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm", evidence: Evidence.Recalled)), Context().Given("course.thickness", new NumberValue(0.05)));
        Assert.Equal((Status.Pass, FindingNotes.LimitRecalled), (finding.Status, Assert.Single(finding.Notes).Id));
    }

    [Fact]
    public void Tightening_a_limit_never_turns_a_miss_into_a_meet() => Gen.Select(Gen.Double[0, 100], Gen.Double[0, 100], Gen.Double[0, 100], Gen.Bool, Gen.Bool).Hold((value, one, other, lower, exclusive) =>
    {
        var (softer, tighter) = lower == one < other ? (one, other) : (other, one);
        Outcome With(double limit, bool open)
        {
            var bound = lower ? AtLeast(limit, "mm") : AtMost(limit, "mm");
            var rule = Rule("course.thickness", lower ? CheckKind.AtLeast : CheckKind.AtMost, bound with { LowExclusive = lower && open, HighExclusive = !lower && open });
            return Judge(rule, Context().Given("course.thickness", new NumberValue(value / 1000))).Outcome;
        }

        Assert.True(With(softer, exclusive) == Outcome.Met || With(tighter, exclusive) == Outcome.Missed);
    });

    private static RuleDefinition PresenceRule => Rule(
        "site.measure_reversing_spotter", CheckKind.Present, Of(new PresenceLimit()), Of(new PresenceLimit(), Strength.Advised)) with
    {
        Family = "safety",
        Severity = Severity.A,
    };
}

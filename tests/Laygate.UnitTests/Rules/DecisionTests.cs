using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>The decision table once more through the evaluator: definitions and answers in, statuses out.</summary>
public sealed class DecisionTests
{
    private static readonly Evidence[] Strong = [Evidence.Read, Evidence.SecondHand, Evidence.Confirmed, Evidence.Derived];

    [Fact]
    public void Values_are_judged_by_lines_4_to_7()
    {
        var cells =
            from strength in Enum.GetValues<Strength>()
            from evidence in Enum.GetValues<Evidence>()
            from layer in Enum.GetValues<Layer>()
            from weak in new[] { false, true }
            from value in new[] { (38.0, 34.0, 39.0), (38.0, 34.0, 42.0), (42.0, 38.0, 44.0), (42.0, 41.0, 44.0) }
            select (strength, evidence, layer, weak, value);
        foreach (var (strength, evidence, layer, weak, (expected, low, high)) in cells)
        {
            var rule = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm", strength, evidence));
            var book = layer == Layer.GeneralPractice
                ? Book(General(rule))
                : Book(General(rule with { Bounds = [AtLeast(1, "mm")] }), Specification(layer: layer) with { Set = [new LimitOverride(rule.Id, rule.Bounds, null)] });
            var context = Context().GivenAnswer("course.thickness", new Answer
            {
                Value = new NumberValue(expected / 1000, low / 1000, high / 1000),
                Working = weak ? WeakWorking : Working.None,
            });
            var finding = Assert.Single(Evaluate(book, context).Findings);

            var wanted = expected >= 40 ? (low >= 40 ? Status.Pass : Status.Warn)
                : strength == Strength.Advised ? Status.Warn
                : !Strong.Contains(evidence) && layer != Layer.ParticularSpecification ? Status.Warn
                : weak && high >= 40 ? Status.Warn
                : Status.Fail;
            Assert.True(wanted == finding.Status, $"{strength} {evidence} {layer} weak {weak} {expected}: {finding.Status}, not {wanted}");
            Assert.Equal(expected >= 40 ? Outcome.Met : Outcome.Missed, finding.Outcome);
            Assert.Equal(expected >= 40 && low < 40, finding.OnExpectedValuesOnly);
            Assert.Equal(expected < 40 && high >= 40, finding.FavourableEndMeets);
        }
    }

    [Fact]
    public void Silence_is_judged_by_lines_1_and_2()
    {
        var cells =
            from plan in Enum.GetValues<Stage>()
            from since in Enum.GetValues<Stage>()
            from severity in new Severity?[] { null, Severity.A, Severity.B }
            from opening in new[] { false, true }
            from inCondition in new[] { false, true }
            from strength in Enum.GetValues<Strength>()
            from evidence in new[] { Evidence.Read, Evidence.Recalled }
            select (plan, since, severity, opening, inCondition, strength, evidence);
        foreach (var (plan, since, severity, opening, inCondition, strength, evidence) in cells)
        {
            var quantity = opening ? "opening.temperature" : "course.laying_temperature";
            var rule = Rule(quantity, CheckKind.AtMost, AtMost(80, "°C", strength, evidence)) with
            {
                Family = severity is null ? "layers" : "safety",
                Severity = severity,
                FromStage = since,
                When = [new Condition("site.trucks_reverse", ["yes"], null, null)],
            };
            var context = Context(Plan(plan));
            context = inCondition ? context : context.Given("site.trucks_reverse", new FlagValue(true));
            var finding = Judge(rule, context);

            if (plan < since || (severity == Severity.B && inCondition))
            {
                Assert.Equal((Outcome.Open, Status.None), (finding.Outcome, finding.Status));
                continue;
            }

            var atRelease = plan == Stage.Release && (opening || (severity == Severity.A && inCondition));
            var later = plan > since && strength == Strength.Required && evidence == Evidence.Read;
            Assert.Equal((Outcome.NotAssessed, atRelease || later ? Status.Fail : Status.Warn), (finding.Outcome, finding.Status));
            Assert.Equal([inCondition ? new("site", "trucks_reverse") : new InputReference(opening ? "opening" : "course:wearing", opening ? "temperature" : "laying_temperature")], finding.Missing);
        }
    }

    [Fact]
    public void Stage_is_the_later_of_the_plan_s_and_the_one_asked_for()
    {
        var book = Book(General(Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm"))));
        Assert.Equal(Stage.Release, Evaluate(book, Context(), Stage.Release).Stage);
        Assert.Equal(Stage.Submission, Evaluate(book, Context(), Stage.Concept).Stage);
        Assert.Equal(Status.Fail, Evaluate(book, Context(), Stage.Release).Findings[0].Status);
        Assert.Equal(Status.Warn, Evaluate(book, Context()).Findings[0].Status);
    }

    [Fact]
    public void A_limit_that_is_a_quantity_of_the_plan_may_fail_however_it_is_known()
    {
        var rule = Rule("course.last_densifying_pass", CheckKind.AtMost, Of(new QuantityLimit("course.densification_window", 1, "1"), evidence: Evidence.Recalled));
        var context = Context()
            .Given("course.last_densifying_pass", new NumberValue(1500)).Given("course.densification_window", new NumberValue(1200));
        var finding = Judge(rule, context);
        Assert.Equal((Outcome.Missed, Status.Fail), (finding.Outcome, finding.Status));
        Assert.Equal(("course.densification_window", 20.0), (finding.Limit!.Quantity, finding.Limit.High!.Number));
    }

    [Theory]
    [InlineData(600, Outcome.NotAssessed)] // Beyond the advised 5 min; nobody knows whether beyond the required limit, too.
    [InlineData(240, Outcome.NotAssessed)]
    public void An_advised_miss_does_not_decide_while_a_required_bound_is_unknown(double pass, Outcome outcome)
    {
        var rule = Rule("course.last_densifying_pass", CheckKind.AtMost) with
        {
            FromStage = Stage.Concept,
            Bounds = [Of(new QuantityLimit("course.densification_window", 1, "1")), AtMost(5, "min", Strength.Advised)],
        };
        var context = Context(Plan(Stage.Submission)).Given("course.last_densifying_pass", new NumberValue(pass));
        var finding = Judge(rule, context);
        Assert.Equal((outcome, Status.Fail), (finding.Outcome, finding.Status));
        Assert.Equal([new InputReference("course:wearing", "densification_window")], finding.Missing);
    }

    [Fact]
    public void A_required_miss_decides_while_an_advised_bound_is_unknown()
    {
        var rule = Rule("course.last_densifying_pass", CheckKind.AtMost) with
        {
            Bounds = [AtMost(20, "min"), Of(new QuantityLimit("course.densification_window", 1, "1"), Strength.Advised)],
        };
        var finding = Judge(rule, Context().Given("course.last_densifying_pass", new NumberValue(1500)));
        Assert.Equal((Outcome.Missed, Status.Fail), (finding.Outcome, finding.Status));
    }

    [Fact]
    public void A_weak_assumption_behind_the_limit_softens_the_miss_too()
    {
        var rule = Rule("course.last_densifying_pass", CheckKind.AtMost, Of(new QuantityLimit("course.densification_window", 1, "1")));
        var context = Context().Given("course.last_densifying_pass", new NumberValue(1500));
        context.GivenAnswer("course.densification_window", new Answer { Value = new NumberValue(1200, 900, 1600), Working = WeakWorking });
        Assert.Equal(Status.Warn, Judge(rule, context).Status);
        context.GivenAnswer("course.densification_window", new Answer { Value = new NumberValue(1200, 900, 1400), Working = WeakWorking });
        var finding = Judge(rule, context);
        Assert.Equal(Status.Fail, finding.Status);
        Assert.Single(finding.Working!.Assumptions);
    }

    [Fact]
    public void A_value_that_only_a_person_can_judge_needs_a_person()
    {
        var context = Context().GivenAnswer("course.thickness", Answer.None(AbsenceReason.NeedsPerson, Note.Of("size-basis-maximum")));
        var finding = Judge(Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")), context, Stage.Release);
        Assert.Equal((Outcome.NeedsPerson, Status.Warn), (finding.Outcome, finding.Status));
    }

    [Fact]
    public void A_number_outside_the_range_of_a_formula_warns_and_fails_at_release_at_its_line()
    {
        var input = new InputReference("course:wearing", "thickness");
        var context = Context(Plan(Stage.Concept)).GivenAnswer("course.thickness", Answer.None(AbsenceReason.OutsideRange, Note.Of("outside"), input));
        var rule = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm"));
        Assert.Equal((Outcome.NotAssessed, Status.Warn), (Judge(rule, context).Outcome, Judge(rule, context).Status));
        Assert.Equal(Status.Warn, Judge(rule, context, Stage.Submission).Status);
        var released = Judge(rule, context, Stage.Release);
        Assert.Equal((Outcome.NotAssessed, Status.Fail, input), (released.Outcome, released.Status, released.Input));
        Assert.Equal(["outside", FindingNotes.OutOfRangeFails], released.Notes.Select(note => note.Id), StringComparer.Ordinal);
        Assert.Empty(released.Missing);
    }

    [Fact]
    public void A_number_outside_the_range_of_an_advised_limit_only_warns()
    {
        var context = Context().GivenAnswer("course.thickness", Answer.None(AbsenceReason.OutsideRange, Note.Of("outside")));
        Assert.Equal(Status.Warn, Judge(Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm", Strength.Advised)), context, Stage.Release).Status);
    }

    [Fact]
    public void What_cannot_be_computed_for_another_reason_warns_at_release()
    {
        var context = Context().GivenAnswer("course.thickness", Answer.None(AbsenceReason.NotComputable, Note.Of("two-feeders")));
        Assert.Equal(Status.Warn, Judge(Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")), context, Stage.Release).Status);
    }

    [Fact]
    public void Each_finding_is_counted_once()
    {
        var book = Book(General(
            Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")),
            Rule("course.thickness_lowest", CheckKind.AtLeast, AtLeast(40, "mm")) with { Id = "LAY-002", Name = "b" },
            Rule("course.thickness_to_size", CheckKind.AtLeast, AtLeast(3, "", Strength.Advised)) with { Id = "LAY-003", Name = "c" },
            Rule("course.laid", CheckKind.Agrees, Of(new WordsLimit(["separately"]))) with { Id = "LAY-004", Name = "d" },
            Rule("course.densification_window", CheckKind.AtLeast, AtLeast(10, "min")) with { Id = "LAY-005", Name = "e", FromStage = Stage.Release },
            Rule("course.last_densifying_pass", CheckKind.AtMost, AtMost(10, "min")) with { Id = "LAY-006", Name = "f", When = [new Condition("course.thickness", null, null, Value(1, "mm"))] }));
        var context = Context()
            .Given("course.thickness", new NumberValue(0.05)).Given("course.thickness_lowest", new NumberValue(0.03)).Given("course.thickness_to_size", new NumberValue(2));
        var report = Evaluate(book, context);
        Assert.Equal(new Counts(Failed: 1, Warned: 1, Passed: 1, NotAssessed: 1, NeedsPerson: 0, Open: 1, NotApplicable: 1, Departed: 0), report.Counts);
        Assert.True(report.Findings.Select(finding => finding.Rule).SequenceEqual(["LAY-001", "LAY-002", "LAY-003", "LAY-004", "LAY-005", "LAY-006"], StringComparer.Ordinal));
    }
}

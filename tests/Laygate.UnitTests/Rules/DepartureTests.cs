using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Departures;
using Laygate.Rules.Results;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>Departures as the design words them: what they cover, when they end, and what happens beside them. All figures are invented.</summary>
public sealed class DepartureTests
{
    private static readonly RuleDefinition AtLeast40 = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm"));

    [Theory]
    [InlineData(Evidence.Read, Status.Fail)]
    [InlineData(Evidence.Recalled, Status.Warn)]
    public void A_finding_that_warns_or_fails_becomes_departed_and_keeps_its_outcome(Evidence evidence, Status without)
    {
        var rule = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm", evidence: evidence));
        var report = Apply(rule, 35, Departure(accepted: 35));
        var finding = Assert.Single(report.Findings);
        Assert.Equal((Outcome.Missed, Status.Departed, "d1"), (finding.Outcome, finding.Status, finding.Departure!.Id));
        Assert.Equal((1, 0, 0, 0), (report.Counts.Departed, report.Counts.Failed, report.Counts.Warned, report.Counts.DepartureWarnings));
        Assert.Equal((DepartureState.Holds, without), (report.Departures[0].State, report.Departures[0].Status));
    }

    [Theory]
    [InlineData("2027-05-13", "2027-12-31", DepartureState.Holds)]
    [InlineData("2027-05-14", "2027-05-14", DepartureState.Holds)]
    [InlineData("2027-01-01", "2027-05-13", DepartureState.Expired)]
    [InlineData("2027-05-15", "2027-12-31", DepartureState.NotYet)]
    public void The_day_of_checking_decides_and_both_days_are_inside(string from, string to, DepartureState state)
    {
        var report = Apply(AtLeast40, 35, Departure(accepted: 35) with { ApprovedOn = Day(from), ExpiresOn = Day(to) });
        var holds = state == DepartureState.Holds;
        Assert.Equal(state, Assert.Single(report.Departures).State);
        Assert.Equal((holds ? 1 : 0, holds ? 0 : 1, holds ? 0 : 1), (report.Counts.Departed, report.Counts.Failed, report.Counts.DepartureWarnings));
    }

    [Theory]
    [InlineData(CheckKind.AtLeast, 40, 0, 35, 35, true)]
    [InlineData(CheckKind.AtLeast, 40, 0, 35, 36, true)]
    [InlineData(CheckKind.AtLeast, 40, 0, 35, 34.9, false)]
    [InlineData(CheckKind.AtMost, 0, 60, 70, 70, true)]
    [InlineData(CheckKind.AtMost, 0, 60, 70, 70.1, false)]
    [InlineData(CheckKind.Between, 40, 60, 35, 36, true)]
    [InlineData(CheckKind.Between, 40, 60, 35, 34, false)]
    [InlineData(CheckKind.Between, 40, 60, 70, 69, true)]
    [InlineData(CheckKind.Between, 40, 60, 70, 71, false)]
    [InlineData(CheckKind.Between, 40, 60, 70, 39, false)]
    public void A_value_further_beyond_its_bound_than_the_accepted_one_counts_again(CheckKind check, double low, double high, double accepted, double value, bool covered)
    {
        var limit = new ConstantLimit(low > 0 ? Value(low, "mm") : null, high > 0 ? Value(high, "mm") : null);
        var report = Apply(Rule("course.thickness", check, Of(limit)), value, Departure(accepted));
        Assert.Equal(covered ? DepartureState.Holds : DepartureState.Exceeded, report.Departures[0].State);
        Assert.Equal(covered ? Status.Departed : Status.Fail, report.Findings[0].Status);
    }

    [Fact]
    public void The_value_is_compared_in_whatever_unit_the_plan_uses()
    {
        var context = Context().Given("course.thickness", new NumberValue(0.0254), "in");
        var report = Apply(AtLeast40, context, Departure(accepted: 25.4));
        Assert.Equal(DepartureState.Holds, report.Departures[0].State);
    }

    [Fact]
    public void A_departure_that_accepts_no_value_is_no_blank_permission()
    {
        var report = Apply(AtLeast40, 35, Departure(accepted: null));
        Assert.Equal((DepartureState.NoValueAccepted, Status.Fail), (report.Departures[0].State, report.Findings[0].Status));
    }

    [Fact]
    public void Silence_has_no_value_and_is_covered_as_it_stands()
    {
        var report = Apply(AtLeast40, Context(), Departure(accepted: null));
        Assert.Equal((Outcome.NotAssessed, Status.Departed), (report.Findings[0].Outcome, report.Findings[0].Status));
        Assert.Equal((0, 1), (report.Counts.NotAssessed, report.Counts.Departed));
    }

    [Theory]
    [InlineData("course:wearing", 45, DepartureState.Unused)]
    [InlineData("course:other", 35, DepartureState.NoElement)]
    [InlineData("mix:sma", 35, DepartureState.NoFinding)]
    public void A_departure_that_covers_nothing_warns(string address, double value, DepartureState state)
    {
        var report = Apply(AtLeast40, value, Departure(accepted: 35) with { Address = address });
        Assert.Equal(state, report.Departures[0].State);
        Assert.Equal((0, 1), (report.Counts.Departed, report.Counts.DepartureWarnings));
    }

    [Fact]
    public void One_for_another_plan_is_left_alone()
    {
        var report = Apply(AtLeast40, 35, Departure(accepted: 35) with { Plan = "another" });
        Assert.Empty(report.Departures);
        Assert.Equal(Status.Fail, report.Findings[0].Status);
    }

    [Theory]
    [InlineData("2027-06-08T05:00", true)]
    [InlineData("2027-06-08T05:01", false)]
    public void An_earlier_moment_is_further_beyond_not_before(string accepted, bool covered)
    {
        var rule = Rule("opening.at", CheckKind.NotBefore, Of(new QuantityLimit("site.closure_end", 1, "1")));
        var context = Context()
            .Given("opening.at", new MomentValue(new DateTimeOffset(2027, 6, 8, 5, 0, 0, TimeSpan.FromHours(2))))
            .Given("site.closure_end", new MomentValue(new DateTimeOffset(2027, 6, 8, 6, 0, 0, TimeSpan.FromHours(2))));
        var moment = new Moment(DateTime.Parse(accepted, System.Globalization.CultureInfo.InvariantCulture), null);
        var report = Apply(rule, context, Departure(null) with { Address = "opening", Accepted = new AcceptedValue(accepted, null, moment) });
        Assert.Equal(covered ? DepartureState.Holds : DepartureState.Exceeded, report.Departures[0].State);
    }

    [Theory]
    [InlineData("porous", DepartureState.Holds)]
    [InlineData("stone-mastic", DepartureState.Exceeded)]
    public void An_accepted_word_is_that_word_and_no_other(string accepted, DepartureState state)
    {
        var rule = Rule("mix.kind", CheckKind.Agrees, Of(new WordsLimit(["asphalt-concrete"])));
        var report = Apply(rule, Context().Given("mix.kind", new CategoryValue("porous")), Departure(null) with { Address = "mix:sma", Accepted = new AcceptedValue(accepted, null, null) });
        Assert.Equal(state, report.Departures[0].State);
    }

    private static Report Apply(RuleDefinition rule, double millimetres, Departure departure) =>
        Apply(rule, Context().Given("course.thickness", new NumberValue(millimetres / 1000), "mm"), departure);

    private static Report Apply(RuleDefinition rule, QuantityContext context, Departure departure)
    {
        var book = Book(General(rule));
        return DepartureJudge.Apply(Evaluate(book, context), book, [departure], context.Elements.All.Select(element => element.Address), Today);
    }

    private static Departure Departure(double? accepted) => new()
    {
        Id = "d1",
        Rule = "LAY-001",
        Address = "course:wearing",
        Reason = "levels",
        CompensatingMeasure = "cores",
        AskedBy = "A",
        ApprovedBy = "B",
        ApprovedOn = Today,
        ExpiresOn = Today,
        Accepted = accepted is { } value ? new AcceptedValue(FormattableString.Invariant($"{value} mm"), value / 1000, null) : null,
    };

    private static DateOnly Day(string day) => DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture);
}

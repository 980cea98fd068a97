using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Quantities;

public class ControlTests
{
    private static readonly Plan Plan = ScenarioA.Plan;

    [Theory]
    [InlineData("first load is tipped", "plan.hold_before_laying")]
    [InlineData("laying", "plan.hold_before_laying")]
    [InlineData("Opening to traffic", "plan.hold_before_opening")]
    public void Without_a_step_the_words_count_that_leave_no_doubt(string before, string quantity) =>
        Assert.Equal(PresenceLevel.Stated, LevelOf(Complete(before, step: null), quantity));

    [Theory]
    [InlineData("spraying of the bond coat")]
    [InlineData("paver goes beyond 40 m")]
    [InlineData("next surface load")]
    public void Words_that_leave_doubt_count_for_no_step(string before)
    {
        Assert.Equal(PresenceLevel.Absent, LevelOf(Complete(before, step: null), "plan.hold_before_laying"));
        Assert.Equal(PresenceLevel.Absent, LevelOf(Complete(before, step: null), "plan.hold_before_opening"));
    }

    [Fact]
    public void The_stated_step_goes_before_the_words()
    {
        var point = Complete("laying of the second strip", HoldStep.DuringLaying);
        Assert.Equal(PresenceLevel.Absent, LevelOf(point, "plan.hold_before_laying"));
        Assert.Equal(PresenceLevel.Stated, LevelOf(point with { Step = HoldStep.BeforeLaying }, "plan.hold_before_laying"));
    }

    [Fact]
    public void A_hold_point_without_owner_is_thin() =>
        Assert.Equal(PresenceLevel.Thin, LevelOf(Complete("laying", step: null) with { Owner = null }, "plan.hold_before_laying"));

    private static HoldPoint Complete(string before, HoldStep? step) => new()
    {
        Id = "x",
        Step = step,
        Before = before,
        Criterion = "dry",
        Evidence = "form",
        Owner = "foreman",
        ReleasedBy = "client",
    };

    private static PresenceLevel LevelOf(HoldPoint point, string quantity) =>
        ((PresenceValue)Ask.Answer(Plan with { HoldPoints = [point] }, quantity, "plan").Value!).Level;
}

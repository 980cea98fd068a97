using Laygate.Engineering.Onward;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Onward;

/// <summary>The window of what is laid now, with its low and high end.</summary>
public sealed class OnwardWindowsTests
{
    // Derived: one weather all night, so that moments differ by what the days before left in the base alone, a minute at most; the check takes the worst of them and draws the same samples.
    [Theory]
    [InlineData("binder")]
    [InlineData("wearing")]
    public void In_steady_weather_it_is_the_window_of_the_check_with_its_ends(string course)
    {
        var check = Assert.IsType<NumberValue>(Ask.Answer(Steady, "course.densification_window", $"course:{course}").Value);
        var window = Assert.Single(Now(Steady, course));
        Assert.InRange(window.Seconds, check.Si - 1, check.Si + 60);
        Assert.Equal(check.Low!.Value / check.Si, window.Low / window.Seconds, 0.01);
        Assert.Equal(check.High!.Value / check.Si, window.High / window.Seconds, 0.01);
        Assert.True(window.Low < window.Seconds - 30 && window.High > window.Seconds + 30, $"{window}");
    }

    // Newton's law of cooling: colder air takes heat sooner, at each end of the range too.
    [Fact]
    public void Colder_air_makes_no_end_longer()
    {
        var (before, after) = (Assert.Single(Now(Steady, "binder")), Assert.Single(Now(Colder(Steady), "binder")));
        Assert.True(after.Seconds <= before.Seconds && after.Low <= before.Low && after.High <= before.High, $"{before} {after}");
    }

    private static Plan Steady { get; } = ScenarioA.Plan with { Weather = ScenarioA.Plan.Weather! with { Hours = [.. ScenarioA.Plan.Weather.Hours.Select(hour => ScenarioA.Plan.Weather.Hours[0] with { At = hour.At })] } };

    private static Plan Colder(Plan plan) => plan with
    {
        Weather = plan.Weather! with { Hours = [.. plan.Weather.Hours.Select(hour => hour with { Air = Stated.C(-3) })] },
    };

    private static IReadOnlyList<WindowAt> Now(Plan plan, string course)
    {
        var context = Ask.Context(plan);
        return new OnwardWindows(context, context, []).Of(course, [PlanView.Of(context).Clock.Start!.Value.AddHours(1)]);
    }
}

using Laygate.Engineering.Mat;
using Laygate.Engineering.PlotData;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>What was learnt never makes an answer about the mat more favourable than what is assumed, and lies within the range that is assumed.</summary>
public sealed class LearntMatTests
{
    [Theory]
    [InlineData(70, -5)]
    [InlineData(140, -5)]
    [InlineData(70, 5)]
    [InlineData(140, 5)]
    [InlineData(100, 0)]
    [InlineData(900, 60)]
    public void The_more_careful_answer_counts(double conductivity, double laying)
    {
        var (plain, learnt) = (Ask.Context(ScenarioA.Plan), Ask.Context(With(conductivity, laying)));
        foreach (var (quantity, address, isLowWorse) in new[] { ("course.densification_window", "course:binder", true), ("course.densification_window", "course:wearing", true), ("opening.soft_until", "opening", false) })
        {
            if (plain.Elements.Find(address) is not { } element || plain.Get(quantity, element).Value is not Laygate.Engineering.Quantities.NumberValue before)
            {
                Assert.Equal("opening.soft_until", quantity);
                continue;
            }

            var after = Assert.IsType<Laygate.Engineering.Quantities.NumberValue>(learnt.Get(quantity, learnt.Elements.Find(address)!).Value);
            Assert.True(isLowWorse ? after.Si <= before.Si + 1e-6 : after.Si >= before.Si - 1e-6, $"{quantity}: {before.Si} {after.Si}");
            Assert.True(isLowWorse ? after.Low <= before.Low + 1e-6 : after.High >= before.High - 1e-6, $"{quantity}: {before.Low} {after.Low}, {before.High} {after.High}");
        }
    }

    // Second law of thermodynamics: what is laid colder is cold sooner.
    [Fact]
    public void What_was_learnt_to_the_worse_counts()
    {
        var (plain, colder) = (Window(ScenarioA.Plan), Window(With(100, -5)));
        Assert.True(colder < plain - 60, $"{plain} {colder}");
        Assert.Equal(plain, Window(With(100, 5)), 1e-6);
    }

    // By definition: the drawn mean of a course is at its cessation temperature when its window ends, whichever of the two decides.
    [Theory]
    [InlineData(-5, true)]
    [InlineData(5, false)]
    public void The_drawn_curve_is_the_one_by_which_the_window_is_judged(double laying, bool isLearnt)
    {
        var body = new PlotQuantities(Ask.Context(With(100, laying))).Bodies()[0];
        Assert.NotEmpty(body.Cessations);
        foreach (var cessation in body.Cessations)
        {
            var series = body.Curves!.Series.Single(one => string.Equals(one.Course, cessation.Course.Id, StringComparison.Ordinal));
            Assert.Equal(isLearnt, series.IsLearnt);
            var at = cessation.At!.Value + body.Curves.LastScreed;
            var next = body.Curves.Seconds.TakeWhile(second => second < at).Count();
            var (before, after) = (body.Curves.Seconds[next - 1], body.Curves.Seconds[next]);
            var drawn = series.Celsius[next - 1] + ((series.Celsius[next] - series.Celsius[next - 1]) * (at - before) / (after - before));
            Assert.Equal(cessation.Celsius, drawn, 0.3);
        }
    }

    [Fact]
    public void It_is_shown_among_the_assumptions()
    {
        var working = Ask.Answer(With(110, -3), "course.densification_window", "course:binder").Working;
        Assert.Equal([(LearntMat.Conductivity, 110.0), (LearntMat.Laying, -3.0)], working.Assumptions.Where(use => use.Id.StartsWith("learnt", StringComparison.Ordinal) && use.Address is "course:binder").Select(use => (use.Id, use.Number)));
        Assert.DoesNotContain(Ask.Answer(With(110, -3, "other"), "course.densification_window", "course:binder").Working.Assumptions, use => use.Id.StartsWith("learnt", StringComparison.Ordinal));
    }

    private static double Window(Plan plan) => Ask.Number(plan, "course.densification_window", "course:binder");

    private static Plan With(double conductivity, double laying, string mix = "ac16") => ScenarioA.Plan with
    {
        Learnt =
        [
            new LearntValues
            {
                Id = "nights", Mixes = mix is "ac16" ? ["ac16", "sma8"] : [mix], Shifts = 3,
                Conductivity = new() { Value = M<Ratio>(conductivity, "%"), Low = M<Ratio>(conductivity - 5, "%"), High = M<Ratio>(conductivity + 5, "%") },
                Laying = new() { Value = M<TemperatureDelta>(laying, "K"), Low = M<TemperatureDelta>(laying - 1, "K"), High = M<TemperatureDelta>(laying + 1, "K") },
            },
        ],
    };
}

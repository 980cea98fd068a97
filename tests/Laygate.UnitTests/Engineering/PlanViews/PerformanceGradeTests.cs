using Laygate.Engineering.PlanViews;

namespace Laygate.UnitTests.Engineering.PlanViews;

public sealed class PerformanceGradeTests
{
    [Theory]
    [InlineData("PG 64-22", 64, 22)]
    [InlineData("PG76-16", 76, 16)]
    public void Both_grades_are_read(string text, int high, int low) => Assert.Equal((high, low), PerformanceGrade.Read(text));

    [Theory]
    [InlineData(null)]
    [InlineData("50/70")]
    [InlineData("PG 64")]
    [InlineData("PG 64-22-10")]
    [InlineData("PG 64-E")]
    [InlineData("PG X-22")]
    [InlineData("pg 64-22")]
    public void Other_words_are_no_performance_grade(string? text) => Assert.Null(PerformanceGrade.Read(text));
}

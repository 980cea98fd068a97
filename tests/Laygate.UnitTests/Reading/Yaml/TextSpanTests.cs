using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Yaml;

/// <summary>Problems are told in the order of their places.</summary>
public sealed class TextSpanTests
{
    [Theory]
    [InlineData(3, 5, 3, 9, 3, 5, 3, 9, 0)]
    [InlineData(3, 5, 3, 9, 4, 1, 4, 2, -1)] // The line decides,
    [InlineData(3, 6, 3, 9, 3, 5, 3, 20, 1)] // then the column,
    [InlineData(3, 5, 3, 9, 3, 5, 3, 20, -1)] // then the shorter of two that begin alike.
    public void The_one_that_begins_first_comes_first(int line, int column, int endLine, int endColumn, int otherLine, int otherColumn, int otherEndLine, int otherEndColumn, int order)
    {
        var (left, right) = (new TextSpan(line, column, endLine, endColumn), new TextSpan(otherLine, otherColumn, otherEndLine, otherEndColumn));
        Assert.Equal([order < 0, order > 0, order <= 0, order >= 0], (bool[])[left < right, left > right, left <= right, left >= right]);
    }
}

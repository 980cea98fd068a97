namespace Laygate.UnitTests.Reading.Plans;

/// <summary>Every number of a plan that cannot be below zero is refused there, at its line: no key is forgotten.</summary>
public class ImpossibleNumberTests
{
    // Where something lies on the globe or along the road, what is measured to either side of a line, a difference of temperatures that may be either, and the name of a revision.
    private static readonly string[] Either =
    [
        "learnt/laying/assumed_high", "location/altitude", "location/latitude", "plan/revision", "runs/above_gutter", "runs/crossfall", "runs/crossfalls/at", "runs/crossfalls/value", "runs/from",
        "runs/hand_laid/at", "runs/right_reach", "runs/tie_ins/at", "runs/widths/at", "site/overhead_lines/at",
    ];

    [Fact]
    public void A_number_below_zero_is_refused_at_its_line()
    {
        var lines = PlanFiles.EveryKey.Split('\n');
        var accepted = new List<string>();
        foreach (var (path, span) in PlanFiles.Numbers().Where(number => !PlanFiles.TextAt(number.Span).StartsWith('-')))
        {
            var line = lines[span.Line - 1];
            var changed = string.Join('\n', [.. lines[..(span.Line - 1)], line[..(span.Column - 1)] + Below(PlanFiles.TextAt(span)) + line[(span.EndColumn - 1)..], .. lines[span.Line..]]);
            if (!PlanFiles.Problems(changed).Any(problem => problem.Position.Line == span.Line))
            {
                accepted.Add(path);
            }
        }

        Assert.Equal((IEnumerable<string>)Either, accepted.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    // Temperatures go below absolute zero, everything else below nothing; zero itself has no other side.
    private static string Below(string text)
    {
        var isTemperature = text.EndsWith('C') || text.EndsWith(" F", StringComparison.Ordinal);
        var isZero = text[0] == '0' && !text.Contains('.', StringComparison.Ordinal);
        return isTemperature ? $"-500 {text.Split(' ')[^1]}" : isZero ? $"-1{text[1..]}" : $"-{text}";
    }
}

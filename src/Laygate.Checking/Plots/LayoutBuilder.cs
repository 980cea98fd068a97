using System.Globalization;
using System.Text.RegularExpressions;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Checking.Plots;

/// <summary>Runs, joints and obstacles from above. The plan does not say how runs lie beside each other, so each has a lane of its own.</summary>
internal sealed partial class LayoutBuilder(Plan plan, Unit length)
{
    /// <summary>The outline; null where no run has two stations and a width.</summary>
    public LayoutPlot? Build()
    {
        var runs = plan.Runs.Select(Outline).OfType<RunOutline>().ToList();
        return runs.Count > 0 ? new LayoutPlot(length.Spelling, runs) : null;
    }

    private RunOutline? Outline(Run run)
    {
        if (run is not { From: { } from, To: { } to } || run.WidthAlong.Count == 0 || from.Si.Equals(to.Si))
        {
            return null;
        }

        var (first, last) = (length.FromSi(from.Si), length.FromSi(to.Si));
        return new RunOutline(
            run.Id,
            run.Courses.Count > 0 ? run.Courses : [.. plan.Courses.Select(course => course.Id)],
            first,
            last,
            [.. run.WidthAlong.Select(width => new WidthMark(width.At is { } at ? length.FromSi(at.Si) : first, length.FromSi(width.Value.Si)))],
            [.. plan.Joints.Where(joint => string.Equals(joint.Run, run.Id, StringComparison.Ordinal)).Select(joint => Mark(joint, first, last))],
            [.. run.Obstacles.Select(obstacle => new StationMark(obstacle.Id, obstacle.What ?? obstacle.Id, obstacle.At is { } at ? length.FromSi(at.Si) : null, null))]);
    }

    private StationMark Mark(Joint joint, double first, double last)
    {
        var kind = joint.Kind is { } known ? $"{Words.Of(known)} joint" : "joint";
        var station = joint.Kind == JointKind.Transverse ? Station(joint.Where) : null;
        return new StationMark(joint.Id, kind, station is { } at && at >= Math.Min(first, last) && at <= Math.Max(first, last) ? at : null, joint.Where);
    }

    // The trade writes stations as 0+150 (m) or 12+50 (ft); a joint is placed by words only.
    private double? Station(string? words)
    {
        if (words is null || StationText().Match(words) is not { Success: true } match)
        {
            return null;
        }

        var (big, small) = (match.Groups["big"].Value, match.Groups["small"].Value);
        var metric = length.Spelling is "m";
        return small.Length == (metric ? 3 : 2) && int.TryParse(big, NumberStyles.None, CultureInfo.InvariantCulture, out var whole)
            ? (whole * (metric ? 1000.0 : 100.0)) + int.Parse(small, CultureInfo.InvariantCulture)
            : null;
    }

    [GeneratedRegex(@"\b(?<big>\d{1,4})\+(?<small>\d{2,3})\b", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex StationText();
}

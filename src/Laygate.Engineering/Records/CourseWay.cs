using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.SheetData;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Records;

/// <summary>The way of a course: its runs one after the other in the order of laying, as one distance.</summary>
public sealed class CourseWay
{
    private readonly List<(Run Run, double Start, double Length)> runs = [];
    private readonly Course course;
    private readonly MassAlong mass;

    /// <summary>Lays out the way of a course.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="course">The course.</param>
    public CourseWay(QuantityContext context, Course course)
    {
        this.course = course;
        var ordered = ShiftTimeline.Of(context)?.Of(course).Select(strip => strip.Run).ToList() ?? [];
        foreach (var run in ordered.Count > 0 ? ordered : PlanView.Of(context).RunsOf(course))
        {
            if (RunProfile.Length(run) is { } length)
            {
                runs.Add((run, Length, length));
                Length += length;
            }
        }

        mass = new MassAlong(runs.Select(one => one.Run), course, CourseQuantities.MixDensity(new Calculation(context), course));
    }

    /// <summary>Length of the way, m.</summary>
    public double Length { get; }

    /// <summary>Distance that a mass covers, m.</summary>
    /// <param name="kilograms">Mass from the start, kg.</param>
    public double Reached(double kilograms) => mass.Reached(kilograms);

    /// <summary>Mass of the plan for all of it, kg.</summary>
    public double Mass => mass.Total;

    /// <summary>Distance of a station; null where it lies in no run, or in several.</summary>
    /// <param name="station">Station, m.</param>
    public double? DistanceOf(double station)
    {
        var holding = runs.FindAll(one => station >= Math.Min(one.Run.From!.Si, one.Run.To!.Si) && station <= Math.Max(one.Run.From.Si, one.Run.To.Si));
        return holding is [var (run, start, _)] ? start + Math.Abs(station - run.From!.Si) : null;
    }

    /// <summary>Run and station of a distance; null outside.</summary>
    /// <param name="distance">Distance from the start, m.</param>
    public (string Run, double Station)? PlaceAt(double distance)
    {
        var index = runs.FindLastIndex(one => one.Start <= distance);
        if (index < 0 || distance > Length)
        {
            return null;
        }

        var (run, start, _) = runs[index];
        return (run.Id, run.From!.Si + (Math.Sign(run.To!.Si - run.From.Si) * (distance - start)));
    }

    /// <summary>Width at a distance, m.</summary>
    /// <param name="distance">Distance from the start, m.</param>
    public double WidthAt(double distance)
    {
        var (run, start, length) = runs[Math.Max(0, runs.FindLastIndex(one => one.Start <= distance))];
        var into = Math.Clamp(distance - start, 0, length);
        foreach (var part in RunProfile.Parts(run, course))
        {
            if (into <= part.Length)
            {
                return part.Length > 0 ? part.WidthAtStart + ((part.WidthAtEnd - part.WidthAtStart) * into / part.Length) : part.WidthAtStart;
            }

            into -= part.Length;
        }

        return 0;
    }
}

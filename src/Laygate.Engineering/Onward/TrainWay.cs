using System.Runtime.InteropServices;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Engineering.Timeline;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>A station that was read, as the length that the train had laid.</summary>
/// <param name="At">When it was read.</param>
/// <param name="Position">Length laid, m.</param>
/// <param name="Strip">Number of the strip in the order of laying.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct ReachedPlace(DateTimeOffset At, double Position, int Strip);

/// <summary>The way of a paving train: its strips one after the other in the order of laying, as one distance.</summary>
internal sealed class TrainWay
{
    private readonly List<(LaidStrip Strip, double Start)> strips = [];
    private readonly IReadOnlyList<TrainLane> lanes;

    public TrainWay(PavingTrain train)
    {
        lanes = train.Lanes;
        foreach (var strip in train.Strips)
        {
            strips.Add((strip, Length));
            Length += strip.Length;
        }
    }

    /// <summary>Length of the way, m.</summary>
    public double Length { get; }

    /// <summary>What the stations of a record say, in the order of their times; a station that lies in no strip of the train, in several, or behind an earlier one is left out.</summary>
    /// <param name="record">The record.</param>
    public IReadOnlyList<ReachedPlace> Reached(ShiftRecord record)
    {
        var read = record.Stations.Select(reading => (reading.At, reading.Station, reading.Run, reading.Course))
            .Concat(record.Loads.Where(load => load is { StationAtEnd: not null, Emptied: not null, State: LoadState.Valid }).Select(load => (At: load.Emptied!.Value, Station: load.StationAtEnd!.Value, load.Run, Course: CourseOf(load))))
            .Concat(record.Stops.Where(stop => stop.Station is not null).SelectMany(stop => new[] { stop.From, stop.To }.OfType<DateTimeOffset>().Select(at => (At: at, Station: stop.Station!.Value, Run: (string?)null, Course: (string?)null))))
            .OrderBy(reading => reading.At).ThenBy(reading => reading.Station);
        var reached = new List<ReachedPlace>();
        foreach (var reading in read)
        {
            if (PlaceOf(reading.Station, reading.Run, reading.Course, reached.Count > 0 ? reached[^1].Position : 0) is var (position, strip) && (reached.Count == 0 || position >= reached[^1].Position))
            {
                reached.Add(new ReachedPlace(reading.At, position, strip));
            }
        }

        return reached;
    }

    /// <summary>Run and station of a distance.</summary>
    /// <param name="position">Length laid, m.</param>
    public (string Run, double Station) At(double position)
    {
        var (strip, start) = strips[Math.Max(0, strips.FindLastIndex(one => one.Start <= position))];
        return (strip.Run.Id, strip.First + (Math.Sign(strip.Last - strip.First) * Math.Min(position - start, strip.Length)));
    }

    /// <summary>Distance of a station; null where it lies in no strip, or in several.</summary>
    /// <param name="run">Run; null for any.</param>
    /// <param name="station">Station, m.</param>
    /// <param name="course">Course that is laid there; null for any.</param>
    public double? DistanceOf(string? run, double station, string? course = null)
    {
        var holding = strips.FindAll(one => (run is null || PlanView.Same(one.Strip.Run.Id, run)) && (course is null || one.Strip.Courses.Any(laid => PlanView.Same(laid.Id, course))) && station >= Math.Min(one.Strip.First, one.Strip.Last) && station <= Math.Max(one.Strip.First, one.Strip.Last));
        return holding is [var (strip, start)] ? start + Math.Abs(station - strip.First) : null;
    }

    // One strip holds it; of several that do, the one that is being laid, so that nothing is skipped.
    private (double Position, int Strip)? PlaceOf(double station, string? run, string? course, double laid)
    {
        var holding = Enumerable.Range(0, strips.Count).Where(i => strips[i].Strip is var strip
            && (run is null || PlanView.Same(strip.Run.Id, run))
            && (course is null || strip.Courses.Any(one => PlanView.Same(one.Id, course)))
            && station >= Math.Min(strip.First, strip.Last) - ReadStations.Slack && station <= Math.Max(strip.First, strip.Last) + ReadStations.Slack).ToList();
        int? found = holding is [var only] ? only : holding.Where(i => strips[i].Start <= laid + ReadStations.Slack && strips[i].Start + strips[i].Strip.Length > laid + ReadStations.Slack).Select(i => (int?)i).FirstOrDefault();
        return found is { } at && (course is not null || run is not null || holding.Count == 1)
            ? (strips[at].Start + Math.Clamp(Math.Abs(station - strips[at].Strip.First), 0, strips[at].Strip.Length), at)
            : null;
    }

    private string? CourseOf(Load load) => load.Course ?? (lanes.Where(lane => PlanView.Same(lane.Course.Mix, load.Mix)).Select(lane => lane.Course.Id).Distinct(StringComparer.Ordinal).ToList() is [var only] ? only : null);
}

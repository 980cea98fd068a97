using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>A plan with the record of its shift: who carried which load, and when the screed passed which place.</summary>
public sealed class HappenedShift
{
    private readonly Dictionary<Course, ScreedTimes> screeds = [];

    /// <summary>Puts plan and record together.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="record">The record.</param>
    public HappenedShift(QuantityContext context, ShiftRecord record) => (Context, Record) = (context, record);

    /// <summary>The plan.</summary>
    public QuantityContext Context { get; }

    /// <summary>The record.</summary>
    public ShiftRecord Record { get; }

    internal Plan Plan => Context.Plan;

    internal RecordUncertainty Known => Record.Uncertainty;

    /// <summary>Standard uncertainty of a length of time between two times of day, s; null where the record states none.</summary>
    internal double? OfDuration => Known.Time * Math.Sqrt(2);

    /// <summary>Loads that count, of one mix.</summary>
    internal IEnumerable<Load> LoadsOf(string? mix) => Record.Loads.Where(load => load.State == LoadState.Valid && PlanView.Same(MixOf(load), mix));

    /// <summary>Times at which the screed of a course passed its places.</summary>
    internal ScreedTimes Screed(Course course)
    {
        if (!screeds.TryGetValue(course, out var times))
        {
            screeds[course] = times = new ScreedTimes(PlanView.Of(Context).RunsOf(course), Readings(course));
        }

        return times;
    }

    /// <summary>Whether rows that name a course, or none, are of this one; those that name none are where a plan has no other.</summary>
    internal bool IsOf(string? named, Course course) => named is null ? Plan.Courses.Count == 1 : PlanView.Same(named, course.Id);

    /// <summary>The course whose screed passed a place last before a moment; null before the first, and where the place lies in several runs.</summary>
    internal (Course Course, DateTimeOffset Laid)? LaidBefore(double station, DateTimeOffset at)
    {
        (Course, DateTimeOffset)? last = null;
        foreach (var course in Plan.Courses)
        {
            if (Screed(course).At(station) is { } laid && laid <= at && !(last?.Item2 > laid))
            {
                last = (course, laid);
            }
        }

        return last;
    }

    private string? MixOf(Load load) => load.Mix ?? Plan.Courses.FirstOrDefault(course => PlanView.Same(course.Id, load.Course))?.Mix;

    private IEnumerable<StationReading> Readings(Course course)
    {
        var read = Record.Stations.Where(reading => reading.Course is null || PlanView.Same(reading.Course, course.Id));
        var ofLoads = LoadsOf(course.Mix).Where(load => load is { StationAtEnd: not null, Emptied: not null } && (load.Course is null ? Plan.Courses.Count(other => PlanView.Same(other.Mix, course.Mix)) == 1 : PlanView.Same(load.Course, course.Id)))
            .Select(load => new StationReading(load.Delivery ?? load.Place, load.Emptied!.Value, load.StationAtEnd!.Value) { Run = load.Run });
        return read.Concat(ofLoads).OrderBy(reading => reading.At).ThenBy(reading => reading.Station);
    }
}

/// <summary>When the screed of a course passed its places, from the stations that were read; between two of them in proportion to the way.</summary>
internal sealed class ScreedTimes
{
    private readonly List<(Run Run, List<StationReading> Readings)> runs;

    public ScreedTimes(IEnumerable<Run> plan, IEnumerable<StationReading> readings)
    {
        runs = [.. plan.Where(run => run is { From: not null, To: not null }).Select(run => (run, new List<StationReading>()))];
        foreach (var reading in readings)
        {
            var holding = runs.FindAll(one => (reading.Run is null || PlanView.Same(one.Run.Id, reading.Run)) && Holds(one.Run, reading.Station));
            if (holding is [var (run, read)] && (read.Count == 0 || Along(run, reading.Station) >= Along(run, read[^1].Station)))
            {
                read.Add(reading);
            }
        }
    }

    /// <summary>The first reading of all; null without any.</summary>
    public StationReading? First => runs.SelectMany(run => run.Readings).MinBy(reading => reading.At);

    /// <summary>The last reading of all; null without any.</summary>
    public StationReading? Last => runs.SelectMany(run => run.Readings).MaxBy(reading => reading.At);

    /// <summary>Where the run that was laid first begins, m; null without a reading.</summary>
    public double? Start => runs.Where(run => run.Readings.Count > 0).OrderBy(run => run.Readings[0].At).Select(run => (double?)run.Run.From!.Si).FirstOrDefault();

    /// <summary>The station that the screed had reached at a moment, m; null before the first reading of a run and behind its last.</summary>
    public double? StationAt(DateTimeOffset at)
    {
        foreach (var (_, readings) in runs)
        {
            var next = readings.FindIndex(reading => reading.At >= at);
            if (next == 0 && readings[0].At == at)
            {
                return readings[0].Station;
            }

            if (next > 0)
            {
                var (before, behind) = (readings[next - 1], readings[next]);
                return before.Station + ((behind.Station - before.Station) * ((at - before.At) / (behind.At - before.At)));
            }
        }

        return null;
    }

    /// <summary>When the screed passed a station; null where it was not read before and behind it, or where it lies in several runs.</summary>
    public DateTimeOffset? At(double station)
    {
        var found = runs.Where(one => Holds(one.Run, station)).Select(one => At(one.Run, one.Readings, station)).OfType<DateTimeOffset>().ToList();
        return found is [var only] ? only : null;
    }

    private static DateTimeOffset? At(Run run, List<StationReading> readings, double station)
    {
        var along = Along(run, station);
        for (var i = 1; i < readings.Count; i++)
        {
            var (before, behind) = (Along(run, readings[i - 1].Station), Along(run, readings[i].Station));
            if (along >= before && along <= behind)
            {
                return behind > before ? readings[i - 1].At + ((readings[i].At - readings[i - 1].At) * ((along - before) / (behind - before))) : readings[i - 1].At;
            }
        }

        return null;
    }

    private static double Along(Run run, double station) => (station - run.From!.Si) * Math.Sign(run.To!.Si - run.From.Si);

    private static bool Holds(Run run, double station) => station >= Math.Min(run.From!.Si, run.To!.Si) - ReadStations.Slack && station <= Math.Max(run.From.Si, run.To.Si) + ReadStations.Slack;
}

using System.Runtime.InteropServices;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.SheetData;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records;

/// <summary>What of a course is laid.</summary>
/// <param name="Length">Length, m.</param>
/// <param name="Mass">Mass of the plan for it, kg.</param>
/// <param name="Area">Area, m²: by measured widths where both ends of a stretch have one, else by the plan.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LaidSoFar(double Length, double Mass, double Area)
{
    public static LaidSoFar operator +(LaidSoFar a, LaidSoFar b) => new(a.Length + b.Length, a.Mass + b.Mass, a.Area + b.Area);

    public static LaidSoFar operator -(LaidSoFar a, LaidSoFar b) => new(a.Length - b.Length, a.Mass - b.Mass, a.Area - b.Area);
}

/// <summary>How far a course was laid at each time, run by run, from the stations that were read.</summary>
internal sealed class LayingProgress
{
    private readonly List<RunProgress> runs;

    /// <summary>Reads the stations of a course.</summary>
    /// <param name="plan">Runs that lay it.</param>
    /// <param name="course">The course.</param>
    /// <param name="density">Its density in the plan, kg/m³.</param>
    /// <param name="readings">Stations in the order of their times.</param>
    public LayingProgress(IEnumerable<Run> plan, Course course, double density, IEnumerable<StationReading> readings)
    {
        runs = [.. plan.Where(run => run is { From: not null, To: not null }).Select(run => new RunProgress(run, new MassAlong([run], course, density)))];
        foreach (var reading in readings)
        {
            if (RunOf(reading) is not { } run)
            {
                Unplaced.Add(reading);
            }
            else if (!run.Add(reading))
            {
                Backwards.Add(reading);
            }
        }

        Whole = runs.Aggregate(default(LaidSoFar), (sum, run) => sum + run.Whole);
    }

    /// <summary>Everything that the plan lays.</summary>
    public LaidSoFar Whole { get; }

    /// <summary>Readings that lie in no run, or in several.</summary>
    public List<StationReading> Unplaced { get; } = [];

    /// <summary>Readings behind one that was read before.</summary>
    public List<StationReading> Backwards { get; } = [];

    /// <summary>When the first station was read; null without any.</summary>
    public DateTimeOffset? First => runs.Min(run => run.First);

    /// <summary>When the last was.</summary>
    public DateTimeOffset? Last => runs.Max(run => run.Last);

    /// <summary>Whether a run has been begun.</summary>
    public bool IsBegun(Run run) => runs.Exists(one => ReferenceEquals(one.Run, run) && one.First is not null);

    /// <summary>What was laid at a time; between two readings in proportion to the time.</summary>
    public LaidSoFar At(DateTimeOffset time) => runs.Aggregate(default(LaidSoFar), (sum, run) => sum + run.At(time));

    private RunProgress? RunOf(StationReading reading)
    {
        var holding = runs.FindAll(run => (reading.Run is null || PlanView.Same(run.Run.Id, reading.Run)) && run.Holds(reading.Station));
        return holding.Count == 1 ? holding[0] : null;
    }

    /// <summary>One run.</summary>
    private sealed class RunProgress(Run run, MassAlong mass)
    {
        private readonly List<(DateTimeOffset At, double Along, double? Width, LaidSoFar Laid)> points = [];

        public Run Run => run;

        public DateTimeOffset? First => points.Count > 0 ? points[0].At : null;

        public DateTimeOffset? Last => points.Count > 0 ? points[^1].At : null;

        public LaidSoFar Whole => Planned(mass.Length);

        public bool Holds(double station) => station >= Math.Min(run.From!.Si, run.To!.Si) - ReadStations.Slack && station <= Math.Max(run.From.Si, run.To.Si) + ReadStations.Slack;

        public bool Add(StationReading reading)
        {
            var along = Math.Abs(reading.Station - run.From!.Si);
            if (points.Count == 0)
            {
                points.Add((reading.At, along, reading.Width, Planned(along)));
                return true;
            }

            var before = points[^1];
            if (along < before.Along - ReadStations.Slack)
            {
                return false;
            }

            var laid = Planned(along) - Planned(before.Along);
            var area = reading.Width is { } width && before.Width is { } first ? LedgerFormulas.Taper(first, width, laid.Length) ?? laid.Area : laid.Area;
            points.Add((reading.At, along, reading.Width, before.Laid + laid with { Area = area }));
            return true;
        }

        public LaidSoFar At(DateTimeOffset time)
        {
            var (low, high) = (0, points.Count);
            while (low < high)
            {
                var middle = (low + high) / 2;
                (low, high) = points[middle].At <= time ? (middle + 1, high) : (low, middle);
            }

            if (low == 0)
            {
                return default;
            }

            var point = points[low - 1];
            if (low == points.Count || time == point.At)
            {
                return point.Laid;
            }

            var next = points[low];
            var along = point.Along + ((next.Along - point.Along) * ((time - point.At) / (next.At - point.At)));
            var (whole, part) = (Planned(next.Along) - Planned(point.Along), Planned(along) - Planned(point.Along));
            var measured = next.Laid.Area - point.Laid.Area;
            return point.Laid + (part with { Area = whole.Area > 0 ? part.Area * measured / whole.Area : part.Area });
        }

        private LaidSoFar Planned(double along)
        {
            var (planned, area) = mass.Upto(along);
            return new LaidSoFar(Math.Min(along, mass.Length), planned, area);
        }
    }
}

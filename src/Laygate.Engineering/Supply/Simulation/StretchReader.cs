using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Reads what is laid, stretch by stretch: the strips of a train in their order, each along its stations.</summary>
internal sealed class StretchReader(Calculation calculation)
{
    /// <summary>Stretches of constant width that stand for a taper.</summary>
    private const int TaperParts = 8;

    /// <summary>Reads the stretches of a train.</summary>
    public IReadOnlyList<ShiftStretch> Read(PavingTrain train)
    {
        var densities = train.Lanes.Select(lane => CourseQuantities.MixDensity(calculation, lane.Course)).ToArray();
        var passes = train.Strips.Select(strip => strip.Pass).Distinct().ToList();
        var all = new List<ShiftStretch>();
        for (var i = 0; i < train.Strips.Count; i++)
        {
            var strip = train.Strips[i];
            var own = OfRun(strip.Run, [.. train.Lanes.Select(lane => lane.Train == strip.Train && strip.Courses.Contains(lane.Course) ? lane.Course : null)], densities).ToList();
            own = train.IsEchelon ? Beside(own, train.Beside[i], strip, train, densities) : own;
            all.AddRange(own.Select((stretch, k) => stretch with { Move = k == 0 ? strip.Move : 0, Pass = passes.IndexOf(strip.Pass) }));
        }

        return all;
    }

    // The follower lays the same way later by its distance behind the leader.
    private List<ShiftStretch> Beside(List<ShiftStretch> leader, LaidStrip beside, LaidStrip strip, PavingTrain train, double[] densities)
    {
        var behind = (beside.Begins - strip.Begins) * strip.Speed;
        var follower = OfRun(beside.Run, [.. train.Lanes.Select(lane => lane.Train == beside.Train ? lane.Course : null)], densities).ToList();
        var places = Places(leader, 0).Concat(Places(follower, behind)).Append(behind).Distinct().Order().ToList();
        return [.. places.Zip(places.Skip(1)).Where(part => part.Second - part.First > 1e-9).Select(part =>
        {
            var middle = (part.First + part.Second) / 2;
            var (one, other) = (At(leader, middle), At(follower, middle - behind));
            return new ShiftStretch(part.Second - part.First, [.. densities.Select((_, i) => (one?.PerMetre[i] ?? 0) + (other?.PerMetre[i] ?? 0))]);
        })];
    }

    private static IEnumerable<double> Places(IEnumerable<ShiftStretch> stretches, double start)
    {
        yield return start;
        foreach (var stretch in stretches)
        {
            yield return start += stretch.Length;
        }
    }

    private static ShiftStretch? At(IEnumerable<ShiftStretch> stretches, double place)
    {
        var end = 0.0;
        return place < 0 ? null : stretches.FirstOrDefault(stretch => place < (end += stretch.Length));
    }

    private IEnumerable<ShiftStretch> OfRun(Run run, IReadOnlyList<Course?> courses, double[] densities)
    {
        var address = $"run:{run.Id}";
        calculation.Stated("from", run.From, address, "from");
        calculation.Stated("to", run.To, address, "to");
        if (run.WidthAlong.Count == 0)
        {
            calculation.Miss(address, "width");
        }

        foreach (var width in run.WidthAlong)
        {
            calculation.Show("W", "width", address, width.Value.Si, width.Value.Unit);
        }

        if (run is not { From: not null, To: not null, WidthAlong.Count: > 0 })
        {
            return [];
        }

        var parts = courses.Select(course => course is not null && PlanView.Lays(run, course) ? RunProfile.Parts(run, course) : []).ToArray();
        var ends = parts.SelectMany(Ends).Where(double.IsFinite).Append(0).Distinct().Order().ToList();
        return ends.Zip(ends.Skip(1)).SelectMany(between => Split(parts, densities, between.First, between.Second));
    }

    /// <summary>Where the parts of one course end, from the start of the run, m.</summary>
    private static IEnumerable<double> Ends(IReadOnlyList<RunPart> parts)
    {
        var end = 0.0;
        foreach (var part in parts)
        {
            end += part.Length;
            yield return end;
        }
    }

    private static IEnumerable<ShiftStretch> Split(IReadOnlyList<RunPart>[] parts, double[] densities, double from, double to)
    {
        var isTaper = parts.Any(course => course.Any(part => Math.Abs(part.WidthAtEnd - part.WidthAtStart) > 0));
        var count = isTaper ? TaperParts : 1;
        for (var i = 0; i < count; i++)
        {
            var middle = from + ((to - from) * (i + 0.5) / count);
            yield return new ShiftStretch((to - from) / count, [.. parts.Select((course, c) => SectionAt(course, middle) * densities[c])]);
        }
    }

    /// <summary>Width times thickness at a place, m².</summary>
    private static double SectionAt(IReadOnlyList<RunPart> parts, double at)
    {
        var start = 0.0;
        foreach (var part in parts)
        {
            if (at <= start + part.Length)
            {
                var share = part.Length > 0 ? (at - start) / part.Length : 0;
                return (part.WidthAtStart + ((part.WidthAtEnd - part.WidthAtStart) * share)) * part.Thickness;
            }

            start += part.Length;
        }

        return 0;
    }
}

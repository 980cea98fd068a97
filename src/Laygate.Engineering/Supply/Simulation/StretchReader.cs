using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Reads what is laid, stretch by stretch: runs in plan order, each along its stations.</summary>
internal sealed class StretchReader(Calculation calculation, PlanView view)
{
    /// <summary>Stretches of constant width that stand for a taper.</summary>
    private const int TaperParts = 8;

    /// <summary>Reads the stretches of courses laid together.</summary>
    public IReadOnlyList<ShiftStretch> Read(IReadOnlyList<Course> courses)
    {
        var densities = courses.Select(course => CourseQuantities.MixDensity(calculation, course)).ToArray();
        var runs = calculation.Context.Plan.Runs.Where(run => courses.Any(course => view.RunsOf(course).Contains(run))).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        return [.. runs.SelectMany(run => OfRun(run, courses, densities))];
    }

    private IEnumerable<ShiftStretch> OfRun(Run run, IReadOnlyList<Course> courses, double[] densities)
    {
        var address = $"run:{run.Id}";
        calculation.Stated("from", run.From, address, "from");
        calculation.Stated("to", run.To, address, "to");
        if (run.Width.Count == 0)
        {
            calculation.Miss(address, "width");
        }

        foreach (var width in run.Width)
        {
            calculation.Show("W", "width", address, width.Value.Si, width.Value.Unit);
        }

        if (run is not { From: not null, To: not null, Width.Count: > 0 })
        {
            return [];
        }

        var parts = courses.Select(course => view.RunsOf(course).Contains(run) ? RunProfile.Parts(run, course) : []).ToArray();
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

namespace Laygate.Engineering.Cooling;

/// <summary>
/// A recorded solve: answers any number of questions about temperatures over time. Between steps it uses the
/// integrator's own interpolation (cubic Hermite polynomial through temperatures and rates at both ends of a step).
/// </summary>
/// <remarks>Times in s from the start of the solve, temperatures in °C. A question about a time outside the solve, or
/// about a layer that is not laid at that time, is answered by null.</remarks>
public sealed class CoolingCurve
{
    private CoolingProblem problem = null!;
    private CoolingGrid grid = null!;
    private CoolingRecord record = null!;

    internal CoolingCurve()
    {
    }

    /// <summary>Time at which the solve ended, s.</summary>
    public double End => record.Time[record.Count - 1];

    /// <summary>Number of recorded moments.</summary>
    public int Count => record.Count;

    /// <summary>Number of grid cells.</summary>
    public int Cells => grid.Cells;

    /// <summary>Time of one recorded moment, s.</summary>
    public double TimeOf(int index) => record.Time[index];

    /// <summary>A copy that stays valid when the solver goes on to another problem.</summary>
    public CoolingCurve Keep()
    {
        var ownGrid = new CoolingGrid();
        ownGrid.Build(problem);
        var kept = new CoolingCurve();
        kept.Take(problem, ownGrid, record.Trimmed());
        return kept;
    }

    /// <summary>Temperature at a place (a difference in K for the core-skin difference).</summary>
    public double? Value(CoolingPlace place, double time)
    {
        if (!(time >= 0 && time <= End))
        {
            return null;
        }

        var value = new CoolingMoment(problem, grid, record, time).Value(place);
        return double.IsNaN(value) ? null : value;
    }

    /// <summary>Heat flux downwards through the lower face of a layer, W/m².</summary>
    public double? FluxBelow(int layer, double time)
    {
        if (!(time >= 0 && time <= End) || layer < 0 || layer >= problem.Layers.Count)
        {
            return null;
        }

        var flux = new CoolingMoment(problem, grid, record, time).FluxBelow(layer);
        return double.IsNaN(flux) ? null : flux;
    }

    /// <summary>Values at a place for a series of times; NaN where there is none.</summary>
    public void Series(CoolingPlace place, ReadOnlySpan<double> times, Span<double> values)
    {
        for (var i = 0; i < times.Length && i < values.Length; i++)
        {
            values[i] = Value(place, times[i]) ?? double.NaN;
        }
    }

    /// <summary>
    /// Time in s at which a place is first below a temperature, located inside the step. Where it is below from
    /// the moment at which it exists, that moment; null if it stays at or above until the end of the solve. A dip that
    /// begins and ends within one time step of the solver is not seen.
    /// </summary>
    /// <param name="place">Where the temperature is taken.</param>
    /// <param name="celsius">Temperature in °C (K for the core-skin difference).</param>
    /// <param name="after">Time in s from which to look.</param>
    public double? FirstBelow(CoolingPlace place, double celsius, double after = 0)
    {
        var left = Math.Max(0, after);
        if (!(left <= End))
        {
            return null;
        }

        var before = double.NaN;
        for (var k = record.Before(left); k < record.Count; k++)
        {
            var t = Math.Max(left, record.Time[k]);
            var value = new CoolingMoment(problem, grid, record, t, k).Value(place) - celsius;
            if (value < 0)
            {
                return before >= 0 ? Crossing(place, celsius, k - 1, Math.Max(left, record.Time[k - 1]), t) : t;
            }

            before = value;
        }

        return null;
    }

    /// <summary>Heat per area at the end of the solve.</summary>
    public HeatBalance Balance()
    {
        var last = record.Count - 1;
        var content = 0.0;
        for (var i = record.First[last]; i < grid.Cells; i++)
        {
            content += grid.Capacity[i] * record.Content[(last * grid.Cells) + i];
        }

        return new(content, record.HeatBrought[last], record.HeatIn[last], record.HeatOutBelow[last]);
    }

    internal void Take(CoolingProblem solved, CoolingGrid ownGrid, CoolingRecord ownRecord) =>
        (problem, grid, record) = (solved, ownGrid, ownRecord);

    /// <summary>Root of value − limit between two times of one step (Illinois variant of regula falsi).</summary>
    private double Crossing(CoolingPlace place, double celsius, int k, double from, double to)
    {
        var (a, b) = (from, to);
        var (fa, fb) = (Gap(place, celsius, k, a), Gap(place, celsius, k, b));
        for (var i = 0; i < 60 && b - a > 1e-9 * (1 + b) && fa > fb; i++)
        {
            var t = Math.Clamp(a + ((b - a) * fa / (fa - fb)), a, b);
            var f = Gap(place, celsius, k, t);
            if (f >= 0)
            {
                fb *= t > a && i > 0 ? 0.5 : 1;
                (a, fa) = (t, f);
            }
            else
            {
                fa *= t < b && i > 0 ? 0.5 : 1;
                (b, fb) = (t, f);
            }

            if (Math.Abs(f) < 1e-10)
            {
                return t;
            }
        }

        return 0.5 * (a + b);
    }

    private double Gap(CoolingPlace place, double celsius, int k, double time) =>
        new CoolingMoment(problem, grid, record, time, k).Value(place) - celsius;
}

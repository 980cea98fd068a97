namespace Laygate.Engineering.Cooling;

/// <summary>
/// Solves transient one-dimensional heat conduction in a stack of layers that join over time.
/// </summary>
/// <remarks>
/// Conservative finite volumes on a graded grid, face fluxes of third to fourth order; an L-stable implicit
/// Runge–Kutta method of order 4 whose step follows its own error estimate; one elimination from the bottom up leaves one
/// scalar equation for the skin, solved exactly in each stage. Steps end where a course is laid and where the weather bends.
/// Where the specific heat changes with temperature the unknown of a cell is its heat content, and each stage is repeated
/// until temperature and content agree.
/// The solver keeps its arrays: after the first solve of a size it allocates nothing.
/// One solver serves one thread. It never throws for a bad problem but says what is wrong with it.
/// </remarks>
public sealed class CoolingSolver
{
    private const double FirstStep = 0.01;
    private const double LeastStep = 1e-10;

    private readonly CoolingGrid grid = new();
    private readonly CoolingRecord record = new();
    private readonly CoolingCurve curve = new();
    private readonly ImplicitColumn column;

    private CoolingProblem problem = null!;
    private double heatBrought;

    /// <summary>Makes a solver with its own working memory.</summary>
    public CoolingSolver() => column = new(grid);

    /// <summary>Steps tried in the last solve, rejected ones included.</summary>
    public int StepsTried { get; private set; }

    /// <summary>Solves a problem.</summary>
    /// <param name="question">Layers, boundaries and time; SI units, temperatures in °C.</param>
    /// <returns>The recorded solve, valid until the next call, or the reason why it cannot be computed.</returns>
    public CoolingResult Solve(CoolingProblem question)
    {
        if (ProblemCheck.Find(question) is { } failure)
        {
            return new(null, failure);
        }

        problem = question;
        if (!grid.Build(question))
        {
            return new(null, new(CoolingFailureKind.Settings, "grid", "The stack needs more grid cells than the solver allows."));
        }

        Start();
        if (March() is { } stopped)
        {
            return new(null, stopped);
        }

        curve.Take(question, grid, record);
        return new(curve, null);
    }

    private void Start()
    {
        record.Clear(grid.Cells);
        column.Clear();
        (heatBrought, StepsTried) = (0, 0);
        Join();
    }

    /// <summary>Lays what is due now on top of the body as it is, and starts the rates afresh.</summary>
    private void Join()
    {
        var segment = 0;
        while (grid.SegmentLaidAt[segment] > column.Time)
        {
            segment++;
        }

        var joined = grid.SegmentStart[segment];
        for (var layer = problem.Layers.Count - 1; layer >= 0; layer--)
        {
            if (problem.Layers[layer].LaidAt.Equals(column.Time))
            {
                Fill(layer);
            }
        }

        var y = column.Content;
        for (var i = joined; i < column.First; i++)
        {
            y[i] = grid.Heat.Content(i, y[i] / grid.Width[i]);
            heatBrought += grid.Capacity[i] * y[i];
        }

        column.Join(joined, problem.Top, grid.SegmentMaterial[segment], problem.Settings);
        Record(default);
    }

    private void Record(ReadOnlySpan<double> rate)
    {
        record.Add(column.Time, column.First, column.Content, rate, column.Curved);
        record.AddHeat(column.HeatIn, column.HeatOut, heatBrought);
    }

    /// <summary>Adds temperature times width of one layer to the cells that it covers.</summary>
    private void Fill(int layer)
    {
        var (top, bottom) = (grid.LayerTop[layer], grid.LayerTop[layer + 1]);
        var segment = grid.SegmentOf(layer);
        for (var i = grid.CellAt(top, grid.SegmentStart[segment], grid.SegmentStart[segment + 1]); i < grid.SegmentStart[segment + 1]; i++)
        {
            var (from, to) = (Math.Max(top, grid.Face[i]), Math.Min(bottom, grid.Face[i + 1]));
            if (i == grid.SegmentStart[segment + 1] - 1 && (layer + 1 == problem.Layers.Count || grid.SegmentOf(layer + 1) != segment))
            {
                to = grid.Face[i + 1];
            }

            if (to > from)
            {
                column.Content[i] += (to - from) * problem.Layers[layer].Initial.Mean(from - top, to - top);
            }
        }
    }

    private static CoolingFailure Lost => new(CoolingFailureKind.NotFinite, "stack", "The temperatures cannot be followed: a property or flux is out of any range that can be computed.");

    private static CoolingFailure TooLong => new(CoolingFailureKind.TooManySteps, "settings", "The solve needs more time steps than the settings or the memory allow.");

    private CoolingFailure? March()
    {
        var start = FirstStep * Math.Pow(problem.Settings.FinestCell / CoolingSettings.Default.FinestCell, 2);
        var (step, end, done) = (start, NextBreak(), !(column.Time < problem.Duration));
        while (!done)
        {
            if (++StepsTried > problem.Settings.MaxSteps || record.IsFull)
            {
                return TooLong;
            }

            var left = end - column.Time;
            var ends = step >= left * (1 - 1e-9);
            var dt = ends ? left : Math.Min(step, 0.5 * left);
            var error = column.Try(dt) / problem.Settings.Tolerance;
            if (!(error <= 1))
            {
                step = dt * (double.IsFinite(error) ? Math.Max(0.2, 0.9 * Root(error)) : 0.2);
                if (step < LeastStep)
                {
                    return Lost;
                }

                continue;
            }

            column.Accept(dt, ends ? end : column.Time + dt);
            Record(column.Rate);
            step = Math.Max(ends ? step : 0, dt * Math.Clamp(0.9 * Root(error), 0.2, 2.5));
            done = HasReachedStop() || !(column.Time < problem.Duration);
            if (ends && !done)
            {
                (step, end) = (JoinIfDue() ? start : step, NextBreak());
            }
        }

        return null;
    }

    /// <summary>The error of the embedded method of order 3 grows with the fourth power of the step.</summary>
    private static double Root(double error) =>
        error <= 1e-12 ? 10 : 1 / Math.Sqrt(Math.Sqrt(error));

    private bool JoinIfDue()
    {
        for (var i = 0; i < problem.Layers.Count; i++)
        {
            if (problem.Layers[i].LaidAt.Equals(column.Time))
            {
                Join();
                return true;
            }
        }

        return false;
    }

    /// <summary>Next time at which a course is laid or the weather bends.</summary>
    private double NextBreak()
    {
        var next = problem.Duration;
        for (var i = 0; i < problem.Layers.Count; i++)
        {
            var laid = problem.Layers[i].LaidAt;
            next = laid > column.Time && laid < next ? laid : next;
        }

        if (problem.Top is TopBoundary.Weather weather)
        {
            for (var i = 0; i < weather.Series.Count; i++)
            {
                var bend = weather.Series[i].Time;
                next = bend > column.Time && bend < next ? bend : next;
            }
        }

        return next;
    }

    private bool HasReachedStop()
    {
        if (problem.StopAt is not { } stop || column.Time < stop.NotBefore || problem.Layers[stop.Layer].LaidAt >= column.Time)
        {
            return false;
        }

        var (top, bottom) = (grid.LayerTop[stop.Layer], grid.LayerTop[stop.Layer + 1]);
        var segment = grid.SegmentOf(stop.Layer);
        var sum = 0.0;
        for (var i = grid.SegmentStart[segment]; i < grid.SegmentStart[segment + 1]; i++)
        {
            sum += grid.Heat.Celsius(i, column.Content[i]) * Math.Max(0, Math.Min(bottom, grid.Face[i + 1]) - Math.Max(top, grid.Face[i]));
        }

        return sum < stop.Celsius * (bottom - top);
    }
}

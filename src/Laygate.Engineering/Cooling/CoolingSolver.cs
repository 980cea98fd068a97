using System.Numerics;

namespace Laygate.Engineering.Cooling;

/// <summary>
/// Solves transient one-dimensional heat conduction in a stack of layers that join over time.
/// </summary>
/// <remarks>
/// Conservative finite volumes on a graded grid, face fluxes of third to fourth order; an L-stable implicit
/// Runge–Kutta method of order 4 whose step follows its own error estimate; one elimination from the bottom up leaves one
/// scalar equation for the skin, solved exactly in each stage. Steps end where a course is laid and where the weather bends.
/// Seam for heat capacities that depend on temperature: replace capacity times temperature by the heat content of the
/// cell in the load of a stage, and repeat factor and stage until the content agrees. The solver keeps its arrays: after the first solve of a size it allocates nothing.
/// One solver serves one thread. It never throws for a bad problem but says what is wrong with it.
/// </remarks>
public sealed class CoolingSolver
{
    private const double FirstStep = 0.01;
    private const double ErrorDepth = 50;
    private const double SettlingCells = 2;
    private const double LeastStep = 1e-10;

    private readonly Tableau tableau = Tableau.Esdirk4;
    private readonly CoolingGrid grid = new();
    private readonly CoolingRecord record = new();
    private readonly CoolingCurve curve = new();
    private readonly double[] fluxIn = new double[Tableau.Esdirk4.Stages];
    private readonly double[] fluxOut = new double[Tableau.Esdirk4.Stages];

    private CoolingProblem problem = null!;
    private SurfaceBalance surface;
    private int first;
    private double time;
    private double skin;
    private double joinedAt;
    private double settling;
    private double lag;
    private double heatIn;
    private double heatOut;
    private double heatBrought;
    private double[] y = [];
    private double[] stage = [];
    private double[] right = [];
    private double[] beta = [];
    private double[] alpha = [];
    private double[] own = [];
    private double[] ownUp = [];
    private double[] ownDown = [];
    private double[] below = [];
    private double[] rates = [];

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
        var n = grid.Cells;
        if (y.Length < n)
        {
            y = new double[n];
            stage = new double[n];
            right = new double[n];
            beta = new double[n];
            alpha = new double[n];
            own = new double[n];
            ownUp = new double[n];
            ownDown = new double[n];
            below = new double[n];
            rates = new double[n * tableau.Stages];
        }

        record.Clear(n);
        Array.Clear(y, 0, n);
        Array.Clear(rates, 0, n * tableau.Stages);
        (time, heatIn, heatOut, heatBrought, StepsTried) = (0, 0, 0, 0, 0);
        first = n;
        skin = double.NaN;
        Join();
    }

    /// <summary>Lays what is due now on top of the body as it is, and starts the rates afresh.</summary>
    private void Join()
    {
        var segment = 0;
        while (grid.SegmentLaidAt[segment] > time)
        {
            segment++;
        }

        var joined = grid.SegmentStart[segment];
        for (var layer = problem.Layers.Count - 1; layer >= 0; layer--)
        {
            if (problem.Layers[layer].LaidAt.Equals(time))
            {
                Fill(layer);
            }
        }

        for (var i = joined; i < first; i++)
        {
            y[i] /= grid.Width[i];
            heatBrought += grid.Capacity[i] * y[i];
        }

        first = joined;
        joinedAt = time;
        settling = SettlingCells * problem.Settings.FinestCell * problem.Settings.FinestCell;
        surface.Use(problem.Top, grid.SegmentMaterial[segment]);
        FindRates();
        record.Add(time, first, y, default, 0);
        record.AddHeat(heatIn, heatOut, heatBrought);
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
                y[i] += (to - from) * problem.Layers[layer].Initial.Mean(from - top, to - top);
            }
        }
    }

    private void FindRates()
    {
        var n = grid.Cells;
        var half = grid.Half[first];
        skin = surface.Skin(half, half * y[first], time, y[first]);
        fluxIn[0] = half * (skin - y[first]);
        fluxOut[0] = grid.Down[n - 1] * (y[n - 1] - grid.BottomTemperature);
        var incoming = fluxIn[0];
        for (var i = first; i < n; i++)
        {
            var outgoing = i + 1 < n ? grid.Down[i] * (y[i] - y[i + 1]) : fluxOut[0];
            rates[i] = (incoming - outgoing) / grid.Capacity[i];
            incoming = outgoing;
        }
    }

    private CoolingFailure? March()
    {
        var start = FirstStep * Math.Min(1, Math.Pow(problem.Settings.FinestCell / CoolingSettings.Default.FinestCell, 2));
        var step = start;
        var end = NextBreak();
        while (time < problem.Duration)
        {
            if (++StepsTried > problem.Settings.MaxSteps)
            {
                return new(CoolingFailureKind.TooManySteps, "settings", "The solve needs more time steps than the settings allow.");
            }

            var left = end - time;
            var ends = step >= left * (1 - 1e-9);
            var dt = ends ? left : Math.Min(step, 0.5 * left);
            var error = Try(dt) / problem.Settings.Tolerance;
            if (!(error <= 1))
            {
                step = dt * (double.IsFinite(error) ? Math.Max(0.2, 0.9 * Root(error)) : 0.2);
                if (step < LeastStep)
                {
                    return new(CoolingFailureKind.NotFinite, "stack", "The temperatures cannot be followed: a property or flux is out of any range that can be computed.");
                }

                continue;
            }

            Accept(dt, ends ? end : time + dt);
            step = Math.Max(ends ? step : 0, dt * Math.Clamp(0.9 * Root(error), 0.2, 2.5));
            if (HasReachedStop())
            {
                return null;
            }

            if (ends && time < problem.Duration)
            {
                step = JoinIfDue() ? start : step;
                end = NextBreak();
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
            if (problem.Layers[i].LaidAt.Equals(time))
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
            next = laid > time && laid < next ? laid : next;
        }

        if (problem.Top is TopBoundary.Weather weather)
        {
            for (var i = 0; i < weather.Series.Count; i++)
            {
                var bend = weather.Series[i].Time;
                next = bend > time && bend < next ? bend : next;
            }
        }

        return next;
    }

    private bool HasReachedStop()
    {
        if (problem.StopAt is not { } stop || problem.Layers[stop.Layer].LaidAt > time)
        {
            return false;
        }

        var (top, bottom) = (grid.LayerTop[stop.Layer], grid.LayerTop[stop.Layer + 1]);
        var segment = grid.SegmentOf(stop.Layer);
        var sum = 0.0;
        for (var i = grid.SegmentStart[segment]; i < grid.SegmentStart[segment + 1]; i++)
        {
            sum += y[i] * Math.Max(0, Math.Min(bottom, grid.Face[i + 1]) - Math.Max(top, grid.Face[i]));
        }

        return sum < stop.Celsius * (bottom - top);
    }

    /// <summary>Tries a step; leaves the new temperatures in <see cref="stage"/> and returns the error in K.</summary>
    private double Try(double dt)
    {
        Factor(tableau.Gamma * dt);
        var guess = skin;
        for (var i = 1; i < tableau.Stages; i++)
        {
            guess = Stage(i, dt, guess);
        }

        return Estimate(dt);
    }

    private void Accept(double dt, double reached)
    {
        var n = grid.Cells;
        var last = tableau.Stages - 1;
        var b = tableau.Rows[last];
        for (var j = 0; j <= last; j++)
        {
            heatIn += dt * b[j] * fluxIn[j];
            heatOut += dt * b[j] * fluxOut[j];
        }

        (y, stage) = (stage, y);
        Array.Clear(y, 0, first);
        fluxIn[0] = fluxIn[last];
        fluxOut[0] = fluxOut[last];
        var rate = rates.AsSpan(last * n, n);
        skin = y[first] + ((fluxIn[0] - (lag * grid.Capacity[first] / 3 * rate[first])) / grid.Half[first]);
        rate.CopyTo(rates);
        time = reached;
        record.Add(time, first, y, rate, lag);
        record.AddHeat(heatIn, heatOut, heatBrought);
    }

    /// <summary>
    /// Eliminates from the bottom up: T[i] = alpha[i] T[i−1] + beta[i], so that what remains is one equation for the skin.
    /// </summary>
    private void Factor(double g)
    {
        // Right after a contact the profile is a step, whose curvature no grid resolves: plain differences there.
        var c = time - joinedAt < settling ? 0.0 : 1.0;
        lag = c;
        var (capacity, down, lagAbove, lagBelow) = (grid.Capacity, grid.Down, grid.LagAbove, grid.LagBelow);
        var carry = 0.0;
        for (var i = grid.Cells - 1; i >= first; i--)
        {
            var isTop = i == first;
            var conductance = isTop ? grid.Half[i] : down[i - 1];
            var massUp = isTop ? 0 : c * conductance * lagAbove[i - 1];
            var massDown = c * down[i] * lagBelow[i];
            var mass = capacity[i] - (c * down[i] * lagAbove[i]) - (isTop ? c * capacity[i] / 3 : c * conductance * lagBelow[i - 1]);
            var up = (g * conductance) - massUp;
            var low = (g * down[i]) - massDown;
            var inverse = 1 / (mass + (g * (conductance + down[i])) - (low * carry));
            ownUp[i] = massUp * inverse;
            own[i] = mass * inverse;
            ownDown[i] = massDown * inverse;
            below[i] = low * inverse;
            alpha[i] = carry = up * inverse;
        }
    }

    private double Stage(int index, double dt, double guess)
    {
        var n = grid.Cells;
        Combine(tableau.Rows[index], index, dt);
        Load();
        var b = grid.BottomTemperature;
        for (var i = n - 1; i >= first; i--)
        {
            b = Math.FusedMultiplyAdd(below[i], b, beta[i]);
            beta[i] = b;
        }

        var half = grid.Half[first];
        var store = lag * grid.Capacity[first] / (3 * tableau.Gamma * dt);
        var ts = surface.Skin(
            (half * (1 - alpha[first])) + (store * alpha[first]),
            (half * b) - (store * (b - right[first])),
            time + (tableau.Nodes[index] * dt),
            guess);
        var above = ts;
        for (var i = first; i < n; i++)
        {
            above = Math.FusedMultiplyAdd(alpha[i], above, beta[i]);
            stage[i] = above;
        }

        Differentiate(index * n, 1 / (tableau.Gamma * dt));
        fluxIn[index] = (half * (ts - stage[first])) + (store * (stage[first] - right[first]));
        fluxOut[index] = grid.Down[n - 1] * (above - grid.BottomTemperature - (lag * grid.LagAbove[n - 1] * rates[(index * n) + n - 1]));
        return ts;
    }

    /// <summary>beta = mass matrix · right, scaled by the pivots.</summary>
    private void Load()
    {
        var last = grid.Cells - 1;
        beta[first] = (own[first] * right[first]) + (first < last ? ownDown[first] * right[first + 1] : 0);
        var i = first + 1;
        for (; i + Vector<double>.Count <= last; i += Vector<double>.Count)
        {
            var sum = (new Vector<double>(ownUp, i) * new Vector<double>(right, i - 1))
                + (new Vector<double>(own, i) * new Vector<double>(right, i))
                + (new Vector<double>(ownDown, i) * new Vector<double>(right, i + 1));
            sum.CopyTo(beta, i);
        }

        for (; i <= last; i++)
        {
            beta[i] = (ownUp[i] * right[i - 1]) + (own[i] * right[i]) + (i < last ? ownDown[i] * right[i + 1] : 0);
        }
    }

    private void Differentiate(int row, double scale)
    {
        var n = grid.Cells;
        var i = first;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            var rate = (new Vector<double>(stage, i) - new Vector<double>(right, i)) * scale;
            rate.CopyTo(rates, row + i);
        }

        for (; i < n; i++)
        {
            rates[row + i] = (stage[i] - right[i]) * scale;
        }
    }

    /// <summary>right = y + dt · Σ coefficient[j] · rate[j].</summary>
    private void Combine(double[] coefficients, int count, double dt)
    {
        var n = grid.Cells;
        var i = first;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            var sum = Vector<double>.Zero;
            for (var j = 0; j < count; j++)
            {
                sum += new Vector<double>(rates, (j * n) + i) * coefficients[j];
            }

            (new Vector<double>(y, i) + (sum * dt)).CopyTo(right, i);
        }

        for (; i < n; i++)
        {
            var sum = 0.0;
            for (var j = 0; j < count; j++)
            {
                sum += rates[(j * n) + i] * coefficients[j];
            }

            right[i] = y[i] + (sum * dt);
        }
    }

    private double Estimate(double dt)
    {
        var n = grid.Cells;
        var e = tableau.Error;
        var (squares, depth) = (0.0, 0.0);
        for (var i = first; i < n; i++)
        {
            var sum = 0.0;
            for (var j = 0; j < e.Length; j++)
            {
                sum += e[j] * rates[(j * n) + i];
            }

            squares += grid.Weight[i] * sum * sum;
            depth += grid.Weight[i];
        }

        return dt * Math.Sqrt(squares / Math.Min(depth, ErrorDepth));
    }
}

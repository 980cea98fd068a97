namespace Laygate.Engineering.Cooling;

/// <summary>
/// The column of cells and one implicit step of it. What is laid is the cells from <see cref="First"/> down.
/// </summary>
internal sealed partial class ImplicitColumn(CoolingGrid grid)
{
    private const double ErrorDepth = 50;
    private const double SettlingCells = 2;
    private const int MostIterations = 25;

    /// <summary>Share of the step tolerance to which temperature and heat content of a stage must agree.</summary>
    private const double Agreement = 0.3;

    private readonly Tableau tableau = Tableau.Esdirk4;
    private readonly double[] fluxIn = new double[Tableau.Esdirk4.Stages];
    private readonly double[] weights = new double[2];
    private readonly double[] fluxOut = new double[Tableau.Esdirk4.Stages];

    private SurfaceBalance surface;
    private double joinedAt;
    private double settling;
    private double skin;
    private double agreement;
    private double lowest;
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
    private double[] slope = [];
    private double[] celsius = [];
    private double[] load = [];
    private double[] solved = [];

    /// <summary>First cell that is laid.</summary>
    public int First { get; private set; }

    /// <summary>Time reached, s.</summary>
    public double Time { get; private set; }

    /// <summary>1 while fluxes count the curvature of the profile, 0 right after a contact.</summary>
    public double Curved { get; private set; }

    /// <summary>Heat that came in through the skin, J/m².</summary>
    public double HeatIn { get; private set; }

    /// <summary>Heat that went out through the bottom, J/m².</summary>
    public double HeatOut { get; private set; }

    /// <summary>Heat content of the cells as u of <see cref="HeatScale"/>: their temperature in °C where c is constant.</summary>
    public double[] Content => y;

    /// <summary>Rates of the heat content, K/s.</summary>
    public ReadOnlySpan<double> Rate => rates.AsSpan(0, grid.Cells);

    public void Clear()
    {
        var n = grid.Cells;
        if (y.Length < n)
        {
            (y, stage, right, beta, alpha) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
            (own, ownUp, ownDown, below) = (new double[n], new double[n], new double[n], new double[n]);
            (slope, celsius, load, solved) = (new double[n], new double[n], new double[n], new double[n]);
            rates = new double[n * tableau.Stages];
        }

        Array.Clear(y, 0, n);
        Array.Clear(rates, 0, n * tableau.Stages);
        Array.Fill(slope, 1, 0, n);
        (Time, HeatIn, HeatOut, First) = (0, 0, 0, n);
    }

    /// <summary>Takes cells that were filled above the body, and starts the rates afresh.</summary>
    public void Join(int joined, TopBoundary top, LayerMaterial skinMaterial, CoolingSettings settings)
    {
        First = joined;
        agreement = Agreement * settings.Tolerance;
        joinedAt = Time;
        Curved = 0;
        settling = SettlingCells * settings.FinestCell * settings.FinestCell;
        surface.Use(top, skinMaterial);
        FindRates();
    }

    /// <summary>Tries a step and returns its error in K; <see cref="Accept"/> takes it over.</summary>
    public double Try(double dt)
    {
        // Right after a contact the profile is a step, whose curvature no grid resolves: plain differences there.
        Curved = Time - joinedAt < settling ? 0 : 1;
        if (grid.Heat.Varies)
        {
            Predict(0.5, dt, 1);
            grid.Heat.Slopes(celsius, slope, First);
        }

        Factor(tableau.Gamma * dt);
        var guess = skin;
        for (var i = 1; i < tableau.Stages; i++)
        {
            guess = Stage(i, dt, guess);
        }

        return Estimate(dt);
    }

    /// <summary>Takes over the step tried last.</summary>
    public void Accept(double dt, double reached)
    {
        var n = grid.Cells;
        var last = tableau.Stages - 1;
        var b = tableau.Rows[last];
        for (var j = 0; j <= last; j++)
        {
            HeatIn += dt * b[j] * fluxIn[j];
            HeatOut += dt * b[j] * fluxOut[j];
        }

        (y, stage) = (stage, y);
        Array.Clear(y, 0, First);
        fluxIn[0] = fluxIn[last];
        fluxOut[0] = fluxOut[last];
        rates.AsSpan(last * n, n).CopyTo(rates);
        skin = grid.Heat.Celsius(First, y[First]) + ((fluxIn[0] - (Curved * grid.Capacity[First] / 3 * rates[First])) / grid.Half[First]);
        Time = reached;
    }

    private void FindRates()
    {
        var n = grid.Cells;
        var half = grid.Half[First];
        var t = y;
        if (grid.Heat.Varies)
        {
            grid.Heat.ToCelsius(y, celsius, First);
            t = celsius;
        }

        skin = surface.Skin(half, half * t[First], Time, t[First]);
        fluxIn[0] = half * (skin - t[First]);
        fluxOut[0] = grid.Down[n - 1] * (t[n - 1] - grid.BottomTemperature);
        var incoming = fluxIn[0];
        for (var i = First; i < n; i++)
        {
            var outgoing = i + 1 < n ? grid.Down[i] * (t[i] - t[i + 1]) : fluxOut[0];
            rates[i] = (incoming - outgoing) / grid.Capacity[i];
            incoming = outgoing;
        }
    }

    /// <summary>
    /// Eliminates from the bottom up: T[i] = alpha[i] T[i−1] + beta[i], so that what remains is one equation for the skin.
    /// A change of temperature counts in the heat content with the slope du/dT of its cell.
    /// </summary>
    private void Factor(double g)
    {
        var c = Curved;
        var (capacity, down, lagAbove, lagBelow) = (grid.Capacity, grid.Down, grid.LagAbove, grid.LagBelow);
        var carry = 0.0;
        for (var i = grid.Cells - 1; i >= First; i--)
        {
            var isTop = i == First;
            var conductance = isTop ? grid.Half[i] : down[i - 1];
            var massUp = isTop ? 0 : c * conductance * lagAbove[i - 1];
            var massDown = c * down[i] * lagBelow[i];
            var mass = capacity[i] - (c * down[i] * lagAbove[i]) - (isTop ? c * capacity[i] / 3 : c * conductance * lagBelow[i - 1]);
            var up = (g * conductance) - (isTop ? 0 : massUp * slope[i - 1]);
            var low = (g * down[i]) - (massDown == 0 || i + 1 == grid.Cells ? 0 : massDown * slope[i + 1]);
            var inverse = 1 / ((mass * slope[i]) + (g * (conductance + down[i])) - (low * carry));
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
        CellMaths.Combine(right, y, rates, n, tableau.Rows[index], index, dt, First);
        var ts = grid.Heat.Varies ? Iterate(index, dt, guess) : Sweep(right, stage, index, dt, guess);
        CellMaths.Differentiate(rates, index * n, stage, right, 1 / (tableau.Gamma * dt), First, n);
        fluxOut[index] = grid.Down[n - 1] * (lowest - grid.BottomTemperature - (Curved * grid.LagAbove[n - 1] * rates[(index * n) + n - 1]));
        return ts;
    }

    /// <summary>Solves the factored equations for one right side; returns the skin temperature.</summary>
    private double Sweep(double[] source, double[] target, int index, double dt, double guess)
    {
        var n = grid.Cells;
        CellMaths.Multiply(beta, ownUp, own, ownDown, source, First, n);
        var b = grid.BottomTemperature;
        for (var i = n - 1; i >= First; i--)
        {
            b = Math.FusedMultiplyAdd(below[i], b, beta[i]);
            beta[i] = b;
        }

        var half = grid.Half[First];
        var store = Curved * grid.Capacity[First] / (3 * tableau.Gamma * dt);
        var kept = store * slope[First];
        var ts = surface.Skin(
            (half * (1 - alpha[First])) + (kept * alpha[First]),
            (half * b) - ((kept * b) - (store * source[First])),
            Time + (tableau.Nodes[index] * dt),
            guess);
        var above = ts;
        for (var i = First; i < n; i++)
        {
            above = Math.FusedMultiplyAdd(alpha[i], above, beta[i]);
            target[i] = above;
        }

        lowest = above;
        fluxIn[index] = (half * (ts - target[First])) + ((kept * target[First]) - (store * source[First]));
        return ts;
    }

    /// <summary>Root mean square of the estimated error over the depth √alpha · 50 √s, about 40 mm of asphalt.</summary>
    private double Estimate(double dt)
    {
        var n = grid.Cells;
        var (squares, depth) = (0.0, 0.0);
        CellMaths.Combine(right, null, rates, n, tableau.Error, tableau.Stages, 1, First);
        for (var i = First; i < n; i++)
        {
            squares += grid.Weight[i] * right[i] * right[i];
            depth += grid.Weight[i];
        }

        return dt * Math.Sqrt(squares / Math.Min(depth, ErrorDepth));
    }
}

namespace Laygate.ConformanceTests.Outside;

/// <summary>A slab as the reference solver takes it: conductivity, density, specific heat c0 + c1 T, temperature over depth below its own top.</summary>
internal sealed record Slab(double Thickness, double K, double Rho, double C0, double C1, Func<double, double> Celsius)
{
    /// <summary>When it is laid, s; the lowest hot one at 0.</summary>
    public double LaidAt { get; init; }
}

/// <summary>Air in °C, wind at the mat in m/s, sky in °C and absorbed sun in W/m² at a time in s.</summary>
internal sealed record Outdoors(double Air, double Wind, double Sky, double Absorbed);

/// <summary>
/// A reference for the cooling of a mat, written from the heat equation and sharing no code with the program: explicit
/// finite volumes, 1 mm cells that grow below 150 mm of base, a skin temperature that balances conduction, convection 4 + 4 v, long-wave and sun.
/// </summary>
internal sealed class BareConduction
{
    private const double Zero = 273.15;
    private const double Boltzmann = 5.670374419e-8;
    private const double Cell = 1e-3;

    private readonly List<(double Width, double K, double Rho, double C0, double C1, int Slab)> cells = [];
    private readonly List<double> kelvin = [];
    private readonly List<Slab> slabs;
    private readonly double emissivity;
    private readonly Func<double, Outdoors> weather;

    /// <param name="slabs">From bottom to top: the base first, then the courses in the order of laying.</param>
    /// <param name="emissivity">Of the surface.</param>
    /// <param name="weather">What stands above the surface.</param>
    public BareConduction(IReadOnlyList<Slab> slabs, double emissivity, Func<double, Outdoors> weather)
    {
        (this.slabs, this.emissivity, this.weather) = ([.. slabs], emissivity, weather);
        while (Laid < slabs.Count && slabs[Laid].LaidAt <= 0)
        {
            Lay();
        }
    }

    /// <summary>Time since the start, s.</summary>
    public double Time { get; private set; }

    /// <summary>Temperature of the skin, °C.</summary>
    public double Skin { get; private set; } = double.NaN;

    private int Laid { get; set; }

    /// <summary>Mean of a slab, °C.</summary>
    public double Mean(int slab)
    {
        var (sum, width) = (0.0, 0.0);
        for (var i = 0; i < cells.Count; i++)
        {
            if (cells[i].Slab == slab)
            {
                sum += cells[i].Width * kelvin[i];
                width += cells[i].Width;
            }
        }

        return sum / width;
    }

    /// <summary>Hottest cell of the slabs from one on, °C.</summary>
    public double Hottest(int from) => Enumerable.Range(0, cells.Count).Where(i => cells[i].Slab >= from).Max(i => kelvin[i]);

    /// <summary>Temperature at a depth below the top of the base while nothing is laid on it, °C.</summary>
    public double AtDepth(double depth)
    {
        if (depth <= 0)
        {
            return Skin;
        }

        var (top, above, centre) = (0.0, Skin, 0.0);
        for (var i = cells.Count - 1; i >= 0; i--)
        {
            var middle = top + (cells[i].Width / 2);
            if (middle >= depth)
            {
                return above + ((depth - centre) / (middle - centre) * (kelvin[i] - above));
            }

            (above, centre) = (kelvin[i], middle);
            top += cells[i].Width;
        }

        return above;
    }

    /// <summary>Time in s at which a value falls below a limit.</summary>
    public double Below(Func<BareConduction, double> read, double limit, double longest)
    {
        var (before, at) = (read(this), Time);
        while (Time < longest)
        {
            Step();
            var now = read(this);
            if (now < limit)
            {
                return at + ((before - limit) / (before - now) * (Time - at));
            }

            (before, at) = (now, Time);
        }

        return double.PositiveInfinity;
    }

    /// <summary>Goes on to a time, s.</summary>
    public void Until(double time)
    {
        while (Time < time)
        {
            Step(time - Time);
        }
    }

    private void Lay()
    {
        var slab = slabs[Laid];
        List<double> widths = [];
        var isBase = slab.C1.Equals(0);
        if (isBase)
        {
            // The base lies still below some depth, so that wide cells do there.
            var (depth, below) = (0.0, slabs.Skip(Laid + 1).TakeWhile(upper => upper.C1.Equals(0)).Sum(upper => upper.Thickness));
            while (depth < slab.Thickness - 1e-9)
            {
                var wanted = Math.Max(Cell, 0.06 * (depth + below - 0.15));
                var width = Math.Min(wanted, slab.Thickness - depth);
                widths.Add(width);
                depth += width;
            }
        }
        else
        {
            var count = (int)Math.Round(slab.Thickness / Cell);
            widths.AddRange(Enumerable.Repeat(slab.Thickness / count, count));
        }

        var down = slab.Thickness;
        foreach (var width in Enumerable.Reverse(widths))
        {
            cells.Add((width, slab.K, slab.Rho, slab.C0, slab.C1, Laid));
            kelvin.Add(slab.Celsius(down - (width / 2)));
            down -= width;
        }

        Laid++;
        Skin = kelvin[^1];
    }

    private void Step(double most = double.PositiveInfinity)
    {
        var step = Math.Min(most, 0.4 * cells.Min(cell => cell.Width * cell.Width * cell.Rho * (cell.C0 + (cell.C1 * 20)) / cell.K));
        var next = Laid < slabs.Count ? slabs[Laid].LaidAt - Time : double.PositiveInfinity;
        step = Math.Min(step, next);
        var flux = new double[cells.Count + 1];
        for (var i = 1; i < cells.Count; i++)
        {
            flux[i] = (kelvin[i - 1] - kelvin[i]) / ((cells[i - 1].Width / cells[i - 1].K / 2) + (cells[i].Width / cells[i].K / 2));
        }

        flux[^1] = Out(weather(Time));
        for (var i = 0; i < cells.Count; i++)
        {
            var (width, _, rho, c0, c1, _) = cells[i];
            var heat = rho * (c0 + (c1 * kelvin[i]));
            kelvin[i] += step * (flux[i] - flux[i + 1]) / (width * heat);
        }

        Time += step;
        if (Laid < slabs.Count && Time >= slabs[Laid].LaidAt - 1e-9)
        {
            Lay();
        }
    }

    /// <summary>Heat that leaves through the skin, W/m², with the skin in balance.</summary>
    private double Out(Outdoors outdoors)
    {
        var conductance = 2 * cells[^1].K / cells[^1].Width;
        var h = 4 + (4 * outdoors.Wind);
        var sky = Math.Pow(outdoors.Sky + Zero, 4);
        for (var i = 0; i < 30; i++)
        {
            var absolute = Skin + Zero;
            var loss = (h * (Skin - outdoors.Air)) + (emissivity * Boltzmann * (Math.Pow(absolute, 4) - sky)) - outdoors.Absorbed;
            var change = ((conductance * (kelvin[^1] - Skin)) - loss) / (conductance + h + (4 * emissivity * Boltzmann * Math.Pow(absolute, 3)));
            Skin += change;
            if (Math.Abs(change) < 1e-9)
            {
                break;
            }
        }

        return conductance * (kelvin[^1] - Skin);
    }
}

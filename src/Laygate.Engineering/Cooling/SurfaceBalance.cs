using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Engineering.Cooling;

/// <summary>
/// Heat balance of the skin: conduction to the skin plus flux from outside is zero. Solved exactly for the skin
/// temperature by Newton's method, so that the long-wave term is never linearised in time.
/// </summary>
internal struct SurfaceBalance
{
    private const int MostIterations = 50;

    private TopBoundary top;
    private double emissivity;
    private double absorptivity;
    private bool hasTime;
    private double preparedFor;
    private WeatherPoint weather;
    private double flux;

    public void Use(TopBoundary boundary, LayerMaterial skin)
    {
        top = boundary;
        emissivity = skin.Emissivity;
        absorptivity = skin.Absorptivity;
        hasTime = false;
    }

    /// <summary>Skin temperature Ts with a·Ts − b = flux into the skin; a &gt; 0.</summary>
    public double Skin(double a, double b, double time, double guess)
    {
        Prepare(time);
        return top switch
        {
            TopBoundary.GivenTemperature => flux,
            TopBoundary.ConstantCoefficient c when c.Emissivity <= 0 =>
                (b + (c.Coefficient * c.Fluid) + c.Absorbed) / (a + c.Coefficient),
            TopBoundary.ConstantCoefficient or TopBoundary.Weather => Newton(a, b, guess),
            _ => (b + flux) / a,
        };
    }

    private void Prepare(double time)
    {
        if (hasTime && preparedFor.Equals(time))
        {
            return;
        }

        (hasTime, preparedFor) = (true, time);
        switch (top)
        {
            case TopBoundary.GivenTemperature t:
                flux = t.Amplitude.Equals(0) ? t.Mean : t.Mean + (t.Amplitude * Math.Sin(2 * Math.PI * time / t.Period));
                break;
            case TopBoundary.GivenFlux f:
                flux = f.Flux;
                break;
            case TopBoundary.Weather w:
                weather = w.Series.At(time);
                flux = (absorptivity * weather.Sun) + weather.AddedHeat;
                break;
            default:
                flux = 0;
                break;
        }
    }

    private readonly double Newton(double a, double b, double guess)
    {
        var ts = double.IsFinite(guess) ? guess : b / a;
        for (var i = 0; i < MostIterations; i++)
        {
            var q = Flux(ts, out var slope);
            var step = ((a * ts) - b - q) / (a - slope);
            ts = Math.Max(ts - step, -CoolingPhysics.ZeroCelsius);
            if (Math.Abs(step) < 1e-11 * (1 + Math.Abs(ts)))
            {
                break;
            }
        }

        return ts;
    }

    /// <summary>Flux into the skin and its (never positive) derivative with respect to the skin temperature.</summary>
    private readonly double Flux(double ts, out double slope) => top is TopBoundary.ConstantCoefficient c
        ? Sum(ts, c.Coefficient, 0, c.Fluid, c.Emissivity, c.Surroundings, c.Absorbed, out slope)
        : InWeather(ts, ((TopBoundary.Weather)top).Convection, out slope);

    private readonly double InWeather(double ts, ConvectionForm form, out double slope)
    {
        var h = form.Coefficient(weather.Wind, ts, weather.Air);
        var change = 0.0;
        if (form.DependsOnSurface)
        {
            const double Step = 1e-3;
            change = (form.Coefficient(weather.Wind, ts + Step, weather.Air) - h) / Step;
        }

        var q = Sum(ts, h, change, weather.Air, form.IncludesRadiation ? 0 : emissivity, weather.Sky, flux, out slope);
        return weather.Rain > 0 ? q - InRain(ts, ref slope) : q;
    }

    private readonly double InRain(double ts, ref double slope)
    {
        const double Step = 1e-3;
        var loss = RainHeat.Loss(weather, ts);
        slope -= Math.Max(0, (RainHeat.Loss(weather, ts + Step) - loss) / Step);
        return loss;
    }

    private static double Sum(double ts, double h, double change, double air, double eps, double sky, double added, out double slope)
    {
        var kelvin = ts + CoolingPhysics.ZeroCelsius;
        var square = kelvin * kelvin;
        var es = eps * CoolingPhysics.StefanBoltzmann;
        slope = Math.Min(0, -h - (change * (ts - air)) - (4 * es * square * kelvin));
        return added - (h * (ts - air)) - (es * ((square * square) - CoolingPhysics.Fourth(sky + CoolingPhysics.ZeroCelsius)));
    }
}

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>
/// Explicit finite differences on an even grid, written for the tests alone; shares nothing with the solver that it checks. A hot body on old asphalt
/// that goes on, sky as warm as the air, no sun: loss at the skin (4 + 4 v)(Ts − Ta) + ε σ (Ts⁴ − Ta⁴), the convection of EN ISO 6946.
/// </summary>
internal sealed class OwnDifferences
{
    private const double Step = 0.001;
    private const double Ground = 0.5;

    private readonly double[] conductivity;
    private readonly double[] capacity;
    private readonly double[] celsius;

    /// <summary>Lays on a ground of one temperature.</summary>
    public OwnDifferences(double ground, double conductivityBelow, double capacityBelow, double conductivityHot, double capacityHot, params (double Metres, double Celsius)[] fromTheTop)
    {
        var hot = fromTheTop.SelectMany(course => Enumerable.Repeat(course.Celsius, (int)Math.Round(course.Metres / Step))).ToArray();
        var cells = hot.Length + (int)(Ground / Step);
        celsius = [.. hot, .. Enumerable.Repeat(ground, cells - hot.Length)];
        conductivity = [.. Enumerable.Range(0, cells).Select(i => i < hot.Length ? conductivityHot : conductivityBelow)];
        capacity = [.. Enumerable.Range(0, cells).Select(i => i < hot.Length ? capacityHot : capacityBelow)];
    }

    /// <summary>Skin, °C.</summary>
    public double Skin { get; private set; }

    /// <summary>Hottest cell, °C.</summary>
    public double Core => celsius.Max();

    /// <summary>Mean between two depths, °C.</summary>
    public double Mean(double from, double to) => celsius[(int)Math.Round(from / Step)..(int)Math.Round(to / Step)].Average();

    /// <summary>Follows until a condition holds, at most six hours; minutes, on a straight line within the last step.</summary>
    public double Until(Func<double, (double Air, double Wind)> weather, double emissivity, Func<double> value, double below)
    {
        var dt = 0.4 * Step * Step * capacity.Zip(conductivity, (c, k) => c / k).Min();
        var flux = new double[celsius.Length + 1];
        var before = double.NaN;
        for (var time = 0.0; time < 6 * 3600; time += dt)
        {
            var (air, wind) = weather(time);
            flux[0] = -Loss(air, wind, emissivity);
            var now = value();
            if (now < below)
            {
                return (time - (double.IsNaN(before) ? 0 : dt * (below - now) / (before - now))) / 60;
            }

            before = now;
            for (var i = 1; i < celsius.Length; i++)
            {
                flux[i] = (celsius[i - 1] - celsius[i]) * 2 / ((Step / conductivity[i - 1]) + (Step / conductivity[i]));
            }

            for (var i = 0; i < celsius.Length; i++)
            {
                celsius[i] += dt * (flux[i] - flux[i + 1]) / (capacity[i] * Step);
            }
        }

        return double.PositiveInfinity;
    }

    /// <summary>Loss at the skin, W/m²: what reaches it from the middle of the first cell.</summary>
    private double Loss(double air, double wind, double emissivity)
    {
        var inner = 2 * conductivity[0] / Step;
        var skin = double.IsNaN(Skin) || Skin == 0 ? celsius[0] : Skin;
        for (var i = 0; i < 20; i++)
        {
            var (ts, ta) = (skin + 273.15, air + 273.15);
            var f = (inner * (celsius[0] - skin)) - ((4 + (4 * wind)) * (skin - air)) - (emissivity * 5.670374419e-8 * (Math.Pow(ts, 4) - Math.Pow(ta, 4)));
            skin += f / (inner + 4 + (4 * wind) + (4 * emissivity * 5.670374419e-8 * Math.Pow(ts, 3)));
        }

        Skin = skin;
        return inner * (celsius[0] - skin);
    }
}

using System.Numerics;

namespace Laygate.Engineering.Cooling;

/// <summary>
/// Specific heat c that changes with temperature, and its integral, the heat content per mass (enthalpy) relative to
/// 0 °C. Made of pieces in which c runs along a straight line; it may jump between pieces and is constant outside.
/// </summary>
/// <remarks>Piecewise lines make the integral and its inverse closed, so that a temperature follows from a heat content
/// without iteration. A law that cannot be used (no point, c not positive, temperatures that fall) is refused by the solver.</remarks>
public sealed class SpecificHeatLaw
{
    private readonly double[] from;
    private readonly double[] heat;
    private readonly double[] slope;
    private readonly double[] content;

    private SpecificHeatLaw((double Celsius, double Heat)[] points)
    {
        var n = points.Length;
        (from, heat, slope, content) = (new double[n + 1], new double[n + 1], new double[n + 1], new double[n + 1]);
        IsUsable = n > 0;
        for (var i = 0; i < n; i++)
        {
            IsUsable &= CoolingPhysics.IsTemperature(points[i].Celsius) && points[i].Heat > 0 && double.IsFinite(points[i].Heat)
                && (i == 0 || points[i].Celsius >= points[i - 1].Celsius);
            (from[i + 1], heat[i + 1]) = points[i];
            if (i > 0 && points[i].Celsius > points[i - 1].Celsius)
            {
                slope[i] = (points[i].Heat - points[i - 1].Heat) / (points[i].Celsius - points[i - 1].Celsius);
            }
        }

        // The first piece reaches down to absolute zero, the last one upwards without end, both level.
        (from[0], heat[0]) = (-CoolingPhysics.ZeroCelsius, n > 0 ? points[0].Heat : 1);
        Integrate();
    }

    internal bool IsUsable { get; }

    /// <summary>A law through points: straight lines between them, a jump where two share a temperature.</summary>
    /// <param name="points">Temperature in °C, never falling, and specific heat in J/(kg K), positive.</param>
    public static SpecificHeatLaw Through(params IReadOnlyList<(double Celsius, double Heat)> points) => new([.. points]);

    /// <summary>c = at0 + perKelvin · T between two temperatures, constant outside.</summary>
    /// <param name="at0">c at 0 °C in J/(kg K).</param>
    /// <param name="perKelvin">Rise in J/(kg K²).</param>
    /// <param name="low">Lower end of the line in °C.</param>
    /// <param name="high">Upper end of the line in °C.</param>
    public static SpecificHeatLaw Linear(double at0, double perKelvin, double low = -40, double high = 200) =>
        Through((low, at0 + (perKelvin * low)), (high, at0 + (perKelvin * high)));

    /// <summary>The same law with every c multiplied by a factor, for ranges of the specific heat.</summary>
    public SpecificHeatLaw Scaled(double factor)
    {
        var points = new (double, double)[from.Length - 1];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = (from[i + 1], heat[i + 1] * factor);
        }

        return new(points);
    }

    /// <summary>c in J/(kg K) at a temperature in °C.</summary>
    public double At(double celsius)
    {
        var i = PieceOf(from, celsius);
        return heat[i] + (slope[i] * (celsius - from[i]));
    }

    /// <summary>Heat content in J/kg at a temperature in °C, zero at 0 °C.</summary>
    public double Content(double celsius)
    {
        var i = PieceOf(from, celsius);
        var x = celsius - from[i];
        return content[i] + (x * (heat[i] + (0.5 * slope[i] * x)));
    }

    /// <summary>Temperature in °C at a heat content in J/kg; inverse of <see cref="Content"/>.</summary>
    public double Temperature(double joulePerKilogram)
    {
        var i = PieceOf(content, joulePerKilogram);
        var rest = joulePerKilogram - content[i];
        return from[i] + (2 * rest / (heat[i] + Math.Sqrt((heat[i] * heat[i]) + (2 * slope[i] * rest))));
    }

    /// <summary>Temperatures in °C of many heat contents, each given as u with content = u · perUnit; what <see cref="Temperature"/> gives, several at a time.</summary>
    /// <param name="u">Heat contents.</param>
    /// <param name="perUnit">J/kg for one of u.</param>
    /// <param name="celsius">Takes the temperatures.</param>
    public void Temperatures(ReadOnlySpan<double> u, double perUnit, Span<double> celsius)
    {
        var i = 0;
        for (; i <= u.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            var value = new Vector<double>(u[i..]) * perUnit;
            var k = PieceOf(content, value[0]);
            if (!IsWithin(content, k, value))
            {
                for (var lane = 0; lane < Vector<double>.Count; lane++)
                {
                    celsius[i + lane] = Temperature(value[lane]);
                }

                continue;
            }

            var rest = value - new Vector<double>(content[k]);
            var root = Vector.SquareRoot(new Vector<double>(heat[k] * heat[k]) + (rest * (2 * slope[k])));
            (new Vector<double>(from[k]) + (rest * 2 / (new Vector<double>(heat[k]) + root))).CopyTo(celsius[i..]);
        }

        for (; i < u.Length; i++)
        {
            celsius[i] = Temperature(u[i] * perUnit);
        }
    }

    /// <summary>Heat contents of many temperatures, as u; the inverse of <see cref="Temperatures"/>.</summary>
    /// <param name="celsius">Temperatures in °C.</param>
    /// <param name="perUnit">J/kg for one of u.</param>
    /// <param name="u">Takes the heat contents.</param>
    public void Contents(ReadOnlySpan<double> celsius, double perUnit, Span<double> u)
    {
        var i = 0;
        for (; i <= celsius.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            var value = new Vector<double>(celsius[i..]);
            var k = PieceOf(from, value[0]);
            if (!IsWithin(from, k, value))
            {
                for (var lane = 0; lane < Vector<double>.Count; lane++)
                {
                    u[i + lane] = Content(value[lane]) / perUnit;
                }

                continue;
            }

            var x = value - new Vector<double>(from[k]);
            ((new Vector<double>(content[k]) + (x * (new Vector<double>(heat[k]) + (x * (0.5 * slope[k]))))) / new Vector<double>(perUnit)).CopyTo(u[i..]);
        }

        for (; i < celsius.Length; i++)
        {
            u[i] = Content(celsius[i]) / perUnit;
        }
    }

    private static bool IsWithin(double[] ends, int piece, Vector<double> value) =>
        Vector.GreaterThanOrEqualAll(value, new Vector<double>(ends[piece])) && (piece == ends.Length - 1 || Vector.LessThanAll(value, new Vector<double>(ends[piece + 1])));

    private static int PieceOf(double[] ends, double value)
    {
        var i = ends.Length - 1;
        while (i > 0 && !(ends[i] <= value))
        {
            i--;
        }

        return i;
    }

    private void Integrate()
    {
        for (var i = 1; i < from.Length; i++)
        {
            var x = from[i] - from[i - 1];
            content[i] = content[i - 1] + (x * (heat[i - 1] + (0.5 * slope[i - 1] * x)));
        }

        var zero = Content(0);
        for (var i = 0; i < content.Length; i++)
        {
            content[i] -= zero;
        }
    }
}

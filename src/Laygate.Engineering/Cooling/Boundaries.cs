using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Engineering.Cooling;

/// <summary>What happens at the lower end of the stack.</summary>
public abstract record BottomBoundary
{
    private BottomBoundary()
    {
    }

    /// <summary>No heat passes the bottom face.</summary>
    public sealed record Insulated : BottomBoundary;

    /// <summary>The bottom face keeps a given temperature.</summary>
    /// <param name="Celsius">Temperature in °C.</param>
    public sealed record GivenTemperature(double Celsius) : BottomBoundary;

    /// <summary>The bottom face hangs in air, such as the underside of a bridge deck: q = h (T − Ta), positive downwards.</summary>
    /// <param name="Coefficient">Heat transfer coefficient h in W/(m² K), long-wave exchange included; not negative.</param>
    /// <param name="Fluid">Temperature Ta of the air below in °C.</param>
    public sealed record ConstantCoefficient(double Coefficient, double Fluid) : BottomBoundary;

    /// <summary>
    /// The lowest layer goes on without end. It is modelled down to a depth of 6 √(alpha t) below the lowest
    /// face at which temperatures jump (t: duration of the solve), where the disturbance is below 3e-5 of the jump
    /// (erfc 3, from the solution for a sudden change at the face of a half-space: Carslaw and Jaeger, Conduction of Heat in Solids,
    /// second edition 1959, section 2.4, recalled).
    /// </summary>
    public sealed record HalfSpace : BottomBoundary;
}

/// <summary>What happens at the skin, whichever layer is on top at the time.</summary>
public abstract record TopBoundary
{
    private TopBoundary()
    {
    }

    /// <summary>No heat passes the skin.</summary>
    public sealed record Insulated : TopBoundary;

    /// <summary>The skin has a given temperature: mean + amplitude · sin(2 pi t / period).</summary>
    /// <param name="Mean">Mean temperature in °C.</param>
    /// <param name="Amplitude">Amplitude in K; 0 for a constant temperature.</param>
    /// <param name="Period">Period in s; positive.</param>
    public sealed record GivenTemperature(double Mean, double Amplitude = 0, double Period = 86400) : TopBoundary;

    /// <summary>A given heat flux into the skin.</summary>
    /// <param name="Flux">Heat flux in W/m², positive into the stack.</param>
    public sealed record GivenFlux(double Flux) : TopBoundary;

    /// <summary>
    /// Constant coefficient: q = h (Ta − Ts) + eps sigma (Tr⁴ − Ts⁴) + absorbed, positive into the stack.
    /// </summary>
    /// <param name="Coefficient">Heat transfer coefficient h in W/(m² K); not negative.</param>
    /// <param name="Fluid">Temperature Ta of the air in °C.</param>
    /// <param name="Emissivity">Emissivity eps, 0 (no long-wave) to 1.</param>
    /// <param name="Surroundings">Temperature Tr of sky or surroundings in °C.</param>
    /// <param name="Absorbed">Absorbed radiation in W/m².</param>
    public sealed record ConstantCoefficient(
        double Coefficient,
        double Fluid,
        double Emissivity = 0,
        double Surroundings = 0,
        double Absorbed = 0) : TopBoundary;

    /// <summary>
    /// Weather over time: convection by a published form, long-wave to the sky, absorbed sun. Emissivity and
    /// absorptivity are those of the layer that is on top at the time.
    /// </summary>
    /// <param name="Series">Weather at mat level over time.</param>
    /// <param name="Convection">Convection form; <see cref="ConvectionForms.Iso6946"/> is the house default.
    /// A form that already contains radiation is used without the separate long-wave term.</param>
    public sealed record Weather(WeatherSeries Series, ConvectionForm Convection) : TopBoundary;
}

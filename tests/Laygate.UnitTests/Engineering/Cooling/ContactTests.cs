using Laygate.Engineering.Cooling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>Resistance of a contact, such as a membrane.</summary>
public class ContactTests
{
    /// <summary>
    /// Two half-spaces of one material at 150 and −130 °C with a resistance R between them: by symmetry each sees the
    /// middle temperature 10 °C through h = 2/R, so the half-space under convection (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, section 2.7, recalled; HOT, h 25, to 10 °C) holds with R = 0.08 m² K/W.
    /// </summary>
    [Theory]
    [InlineData(60, 132.69504, 147.54713, 149.88447)]
    [InlineData(300, 115.62470, 133.47666, 143.50127)]
    [InlineData(900, 98.34623, 114.93147, 127.69074)]
    [InlineData(1800, 85.55971, 100.30828, 112.90219)]
    public void Half_spaces_through_a_resistance(double time, double face, double at10, double at20)
    {
        var upper = StackLayer.Course("upper", 0.4, Hot, 150) with { ResistanceBelow = 0.08 };
        var curve = Solve([upper, StackLayer.Existing("lower", 0.4, Hot, -130)], Insulated, HalfSpace, 1800);
        Near(face, curve.Value(CoolingPlace.BottomFace(0), time), 0.05);
        Near(at10, curve.Value(CoolingPlace.Depth(0.39), time), 0.05);
        Near(at20, curve.Value(CoolingPlace.Depth(0.38), time), 0.05);
        Near(20 - face, curve.Value(CoolingPlace.TopFace(1), time), 0.05);
        Near((face - (20 - face)) / 0.08, curve.FluxBelow(0, time), 0.001 * (face - 10) / 0.04);
    }

    /// <summary>Steady state: flux = temperature difference over the sum of the resistances (any textbook).</summary>
    [Fact]
    public void Steady_flux_through_layers_and_contact()
    {
        var upper = StackLayer.Course("upper", 0.02, Hot, 60) with { ResistanceBelow = 0.02 };
        var curve = Solve([upper, StackLayer.Existing("lower", 0.03, Old, 60)], new TopBoundary.ConstantCoefficient(10, 100), new BottomBoundary.GivenTemperature(20), 40000);
        var flux = 80 / (0.1 + (0.02 / 1.2) + 0.02 + (0.03 / 1.5));
        Near(flux, curve.FluxBelow(0, 40000), 0.001 * flux);
        Near(0.02 * flux, curve.Value(CoolingPlace.BottomFace(0), 40000)!.Value - curve.Value(CoolingPlace.TopFace(1), 40000)!.Value, 0.01);
    }

    [Fact]
    public void A_negative_resistance_is_refused()
    {
        var upper = StackLayer.Course("upper", 0.02, Hot, 60) with { ResistanceBelow = -1 };
        Assert.Equal("upper", new CoolingSolver().Solve(new([upper], Insulated, HalfSpace, 60)).Failure!.Subject);
    }
}

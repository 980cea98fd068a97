using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>
/// Fair-weather figures of the trade: common practice, no published source. Compared on one mild day that lies within
/// wind ≤ 1 m/s, air 15 to 25 °C, sun ≤ 600 W/m², with the central properties of the catalogue; nothing was fitted.
/// They are no default and no validation: on a windy night a mat loses far more.
/// </summary>
public class CommonPracticeTests
{
    private const double Wind = 0.5;
    private const double Air = 20;
    private const double Sun = 300;
    private const double Base = 25;
    private const double Laid = 155;
    private const double Cessation = 80;

    private static readonly LayerMaterial Binder = ThermalProperties.Of(MaterialClass.AsphaltConcrete).ToMaterial();
    private static readonly LayerMaterial Surface = ThermalProperties.Of(MaterialClass.StoneMastic).ToMaterial();

    /// <summary>Common practice, no published source: a 10 cm binder course with 2 cm of surface course hot-on-hot, mean of the two.</summary>
    [Theory]
    [InlineData(30, 30, 8)]
    [InlineData(90, 50, 12)]
    public void Pair_loses(double minutes, double kelvin, double accepted) =>
        Near(kelvin, Laid - Pair().Value(CoolingPlace.HotBodyMean, 60 * minutes), accepted);

    /// <summary>Common practice, no published source: a 4 cm stone-mastic surface course on a cold course, mean.</summary>
    [Fact]
    public void Single_course_loses() => Near(70, Laid - Single().Value(CoolingPlace.Mean(0), 60 * 27), 10);

    /// <summary>Common practice, no published source: the surface course has up to five times as long hot-on-hot as a conventional one of 4 cm.</summary>
    [Fact]
    public void Window_grows() => Assert.InRange(
        Pair().FirstBelow(CoolingPlace.Mean(0), Cessation)!.Value / Single().FirstBelow(CoolingPlace.Mean(0), Cessation)!.Value, 3, 6);

    private static CoolingCurve Pair() => On(StackLayer.Course("surface", 0.020, Surface, Laid), StackLayer.Course("binder", 0.100, Binder, Laid));

    private static CoolingCurve Single() => On(StackLayer.Course("surface", 0.040, Surface, Laid));

    private static CoolingCurve On(params StackLayer[] courses)
    {
        var old = ThermalProperties.Of(MaterialClass.ExistingAsphalt).ToMaterial();
        var rock = ThermalProperties.Of(MaterialClass.CrushedRockDry).ToMaterial();
        var sky = SkyForms.Temperature(Air, SkyForms.ClarkAllen.Emissivity(Air, 10, 2, 12));
        return Solve(
            [.. courses, StackLayer.Existing("asphalt", 0.14, old, Base), StackLayer.Existing("rock", 0.3, rock, Base)],
            new TopBoundary.Weather(WeatherSeries.Constant(Air, Wind, sky, Sun), ConvectionForms.Iso6946), HalfSpace, 4 * 3600);
    }
}

using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

public class CatalogueTests
{
    /// <summary>Each form of its publication (named at <see cref="ConvectionForms"/>), multiplied out at 0, 1, 2, 3, 5, 8, 10 m/s; Vehrencamp at skin 100 and air
    /// 10 °C, Herb at a difference of 90 K. Rounded to 0.01 from coefficients of one digit more (Corlew and Dickson). Source: derived from forms that are recalled or second-hand.</summary>
    [Theory]
    [InlineData("barber-1957", 7.40, 13.79, 18.15, 21.97, 28.77, 37.80, 43.33)]
    [InlineData("corlew-dickson-1968", 0, 7.03, 12.24, 16.93, 25.47, 37.10, 44.35)]
    [InlineData("nusselt-juerges-1922", 5.80, 9.74, 13.68, 17.62, 25.50, 37.32, 45.20)]
    [InlineData("mcadams-1954", 5.70, 9.50, 13.30, 17.10, 24.70, 36.10, 43.70)]
    [InlineData("en-iso-6946", 4.00, 8.00, 12.00, 16.00, 24.00, 36.00, 44.00)]
    [InlineData("vehrencamp-1953", 2.61, 8.33, 11.90, 14.95, 20.25, 27.12, 31.27)]
    [InlineData("ashrae-1989", 10.79, 14.98, 19.17, 23.37, 31.75, 44.33, 52.71)]
    [InlineData("emmel-2007", 0, 4.60, 7.95, 10.96, 16.40, 23.78, 28.36)]
    [InlineData("turbulent-plate", 0, 4.42, 7.70, 10.65, 16.02, 23.34, 27.90)]
    [InlineData("herb-2008", 8.19, 10.02, 11.85, 13.67, 17.33, 22.81, 26.47)]
    public void Convection(string id, double at0, double at1, double at2, double at3, double at5, double at8, double at10)
    {
        double[] expected = [at0, at1, at2, at3, at5, at8, at10];
        var form = ConvectionForms.All.Single(f => f.Id.Equals(id, StringComparison.Ordinal));
        double[] winds = [0, 1, 2, 3, 5, 8, 10];
        for (var i = 0; i < winds.Length; i++)
        {
            Near(expected[i], form.Coefficient(winds[i], 100, 10), 0.0101);
        }

        Assert.Equal(form.HasStillAirTerm, form.Coefficient(0, 100, 10) > 0);
        Assert.Equal(form.DependsOnSurface, !form.Coefficient(2, 100, 10).Equals(form.Coefficient(2, 60, 10)));
    }

    /// <summary>Walton 1983 (EnergyPlus Engineering Reference (NREL), read): 1.509 dT^(1/3).</summary>
    [Fact]
    public void Natural_convection() => Near(1.509 * Math.Cbrt(90), ConvectionForms.Walton.Coefficient(7, 100, 10), 0.001);

    /// <summary>
    /// By hand: smooth glass at 90 K: √(3.764² + (3.26 v^0.89)²); Jansson 2.284 v; Kreith 36/37 of the turbulent plate; laminar at 1 m/s, Re 188172:
    /// 0.664 · 433.8 · 0.8913 · 0.0283/3.5; Schlichting at 5 m/s, Re 940860: 0.037 · 60 092 · 0.708/(1 + 2.443 · 0.2527 · (0.7944 − 1)) · 0.0283/3.5;
    /// McAdams over a hot plate at 100 and 10 °C: 0.15 · 0.0283 (9.80665 · 90 · 0.708/(328.15 · 1.86e-5²))^(1/3).
    /// </summary>
    [Theory]
    [InlineData("smooth-glass", 0, 3.764)]
    [InlineData("smooth-glass", 5, 14.17)]
    [InlineData("jansson-2006", 5, 11.42)]
    [InlineData("kreith-plate", 5, 15.59)]
    [InlineData("laminar-plate", 1, 2.076)]
    [InlineData("schlichting-plate", 5, 14.58)]
    [InlineData("mcadams-hot-plate", 3, 7.50)]
    public void Convection_by_hand(string id, double wind, double expected) =>
        Near(expected, ConvectionForms.All.Single(f => f.Id.Equals(id, StringComparison.Ordinal)).Coefficient(wind, 100, 10), 0.01);

    /// <summary>Power law of ASHRAE Fundamentals 2005 (EnergyPlus Engineering Reference (NREL), read): shares of the wind at 10 m.</summary>
    [Theory]
    [InlineData(2, WindExposure.Open, 0.798)]
    [InlineData(2, WindExposure.Town, 0.264)]
    [InlineData(1, WindExposure.Open, 0.724)]
    [InlineData(10, WindExposure.Open, 1)]
    public void Wind_at_height(double height, WindExposure exposure, double share) => Near(5 * share, WindHeight.At(5, height, exposure), 0.005);

    /// <summary>The profile of the wind holds above the ground and below its gradient height of 270 m in open country (as the formula says).</summary>
    [Theory]
    [InlineData(0, 2, false)]
    [InlineData(10, 0, false)]
    [InlineData(271, 2, false)]
    [InlineData(10, 271, false)]
    [InlineData(270, 2, true)]
    [InlineData(10, 270, true)]
    public void Outside_the_profile_of_the_wind_there_is_no_share(double station, double mat, bool isThere) => Assert.Equal(isThere, WindReduction.InTerrain(station, mat, Exposure.Open) is not null);

    /// <summary>Each sky form of its publication (named at <see cref="SkyForms"/>), multiplied out by hand: air 10 °C, dew point 4 °C.</summary>
    [Theory]
    [InlineData("swinbank", -10.15)]
    [InlineData("brunt", -13.66)]
    [InlineData("brunt-2017", -7.25)]
    [InlineData("idso-2017", -6.20)]
    [InlineData("clark-allen", -5.49)]
    [InlineData("brutsaert", -9.94)]
    [InlineData("bliss", -4.03)]
    [InlineData("berdahl-martin", -11.02)]
    [InlineData("edinger-herb", -6.01)]
    [InlineData("berdahl-fromberg-night", -8.27)]
    [InlineData("idso-jackson", -8.86)]
    public void Sky(string id, double expected) => Near(expected, SkyForms.All.Single(f => f.Id.Equals(id, StringComparison.Ordinal)).Temperature(10, 4), 0.011);

    /// <summary>Example after Clark and Allen 1978 printed in the EnergyPlus Engineering Reference (NREL, read), climate calculations: air 20 °C, dew point 10 °C, clear: emissivity 0.815; vapour pressure at 4 °C 8.1323 hPa.</summary>
    [Fact]
    public void Sky_example()
    {
        Near(0.815, SkyForms.ClarkAllen.ClearEmissivity(20, 10), 0.0006);
        Near(8.1323, SkyForms.VapourPressure(4), 0.0002);
    }

    /// <summary>Cloud factor of Clark and Allen 1978 (EnergyPlus Engineering Reference (NREL), read) at N = 0, 5, 8, 10 tenths.</summary>
    [Theory]
    [InlineData(0, 1.0000)]
    [InlineData(5, 1.0595)]
    [InlineData(8, 1.0986)]
    [InlineData(10, 1.1540)]
    public void Clouds(double tenths, double factor) => Near(0.7 * factor, SkyForms.WithOpaqueCover(0.7, tenths), 0.00005);

    /// <summary>After Campbell and Norman 1998 (second-hand): eps (1 − 0.84 n) + 0.84 n (arithmetic of the formula at its ends and middle).</summary>
    [Theory]
    [InlineData(0, 0.7)]
    [InlineData(0.5, 0.826)]
    [InlineData(1, 0.952)]
    public void Clouds_linear(double share, double expected) => Near(expected, SkyForms.WithCloudShare(0.7, share), 1e-12);

    /// <summary>Clear-sky model of ASHRAE (EnergyPlus Engineering Reference (NREL), read, climate calculations), June and October.</summary>
    [Theory]
    [InlineData(6, 20, 304.6)]
    [InlineData(6, 40, 638.6)]
    [InlineData(6, 60, 884.6)]
    [InlineData(6, 90, 1031.9)]
    [InlineData(10, 20, 338.7)]
    [InlineData(10, 40, 693.8)]
    [InlineData(6, -5, 0)]
    public void Clear_sun(int month, double altitude, double expected) => Near(expected, Sun.Clear(month, altitude), 0.051);

    /// <summary>Each month, from the constants A, B and C of the clear-sky model of ASHRAE (EnergyPlus Engineering Reference (NREL), second-hand; derived): overhead A exp(−B) (1 + C), at 30° A exp(−2 B) (0.5 + C), of which 0.5/(0.5 + C) comes from the disc.</summary>
    [Theory]
    [InlineData(1, 1151.4, 546.7, 0.8292)]
    [InlineData(2, 1137.0, 539.7, 0.8278)]
    [InlineData(3, 1112.2, 526.2, 0.8210)]
    [InlineData(4, 1074.2, 504.7, 0.8065)]
    [InlineData(5, 1047.0, 489.1, 0.7937)]
    [InlineData(6, 1031.9, 480.5, 0.7849)]
    [InlineData(7, 1032.7, 480.7, 0.7837)]
    [InlineData(8, 1046.5, 487.7, 0.7886)]
    [InlineData(9, 1079.8, 507.2, 0.8052)]
    [InlineData(10, 1112.8, 525.7, 0.8183)]
    [InlineData(11, 1139.6, 540.7, 0.8251)]
    [InlineData(12, 1153.4, 547.6, 0.8292)]
    public void Clear_sun_of_each_month(int month, double overhead, double low, double direct)
    {
        Near(overhead, Sun.Clear(month, 90), 0.051);
        Near(low, Sun.Clear(month, 30), 0.051);
        Near(direct, Sun.DirectShare(month, 30), 0.00006);
    }

    /// <summary>Haurwitz 1945 (recalled): 1098 sin b exp(−0.057/sin b) W/m².</summary>
    [Theory]
    [InlineData(20, 317.9)]
    [InlineData(40, 645.9)]
    [InlineData(60, 890.3)]
    [InlineData(90, 1037.2)]
    [InlineData(-1, 0)]
    public void Haurwitz_sun(double altitude, double expected) => Near(expected, Sun.Haurwitz(altitude), 0.051);

    /// <summary>Kasten and Czeplak 1980 (recalled): clouds, oktas.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(2, 0.993)]
    [InlineData(4, 0.929)]
    [InlineData(6, 0.718)]
    [InlineData(8, 0.250)]
    public void Cloudy_sun(double oktas, double share) => Near(share, Sun.CloudShare(oktas), 0.0006);

    /// <summary>Geometry: at noon of the equinox the sun stands at 90° − latitude, at the solstices 23.45° higher or lower (any astronomy text; recalled).</summary>
    [Theory]
    [InlineData(50, 81, 12, 40)]
    [InlineData(50, 172, 12, 63.45)]
    [InlineData(50, 355, 12, 16.55)]
    [InlineData(0, 81, 18, 0)]
    [InlineData(-35, 355, 12, 78.45)]
    public void Sun_height(double latitude, int day, double hour, double expected) => Near(expected, Sun.Altitude(latitude, day, hour), 0.05);

    /// <summary>Every row lies in its range, has a source, and no compacted mix conducts below 0.3 W/(m K).</summary>
    [Fact]
    public void Properties_are_complete()
    {
        Assert.Equal(Enum.GetValues<MaterialClass>(), ThermalProperties.All.Select(r => r.Class));
        foreach (var row in ThermalProperties.All)
        {
            Assert.All(new[] { row.Conductivity, row.Density, row.SpecificHeat, row.Emissivity, row.Absorptivity }.OfType<MaterialProperty>(), p =>
            {
                Assert.InRange(p.Value, p.Low, p.High);
                Assert.NotEmpty(p.Source);
            });
            Assert.True(row.Conductivity.Low >= 0.3);
            Assert.Same(row, ThermalProperties.Of(row.Class));
            Assert.Equal(row.Conductivity.Value, row.ToMaterial().Conductivity);
        }

        Assert.All(ConvectionForms.All, f => Assert.NotEmpty(f.Source));
        Assert.All(SkyForms.All, f => Assert.NotEmpty(f.Source));
    }
}

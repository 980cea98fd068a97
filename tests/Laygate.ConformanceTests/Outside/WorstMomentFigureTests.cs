using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Quantities;
using Xunit.Abstractions;

namespace Laygate.ConformanceTests.Outside;

/// <summary>
/// Shifts in which one worst hour for everything would mislead, with the figures by name. Source: derived with <see cref="BareConduction"/>, a solver that shares no code with the program;
/// the inputs stand beside it. Both are written out: what the shift is told now, and what the hour says that is worst for something else.
/// </summary>
public class WorstMomentFigureTests(ITestOutputHelper output)
{
    private static readonly Laid Forty = new(40, 160, 80);

    [Fact]
    public void Forty_millimetres_on_a_cold_calm_morning_and_a_hot_windy_noon_have_19_7_minutes_not_27_8()
    {
        // 40 mm at 160 °C, cessation 80 °C, 2350 kg/m³. 06:00: air 12 °C, base 2 °C, 2 m/s. 12:00: air 25 °C, base 40 °C, 6 m/s, 700 W/m² of sun.
        var plan = new OutsidePlan("morning and noon", Forty, [new(6, 12, 2, 2), new(12, 25, 40, 6, 700)]) { Shift = (6, 12) };
        var (found, working) = Window(plan, "up");
        Assert.Equal(19.7, MatAgainstReferenceTests.Window(plan, 6, "up", working), 0.1);
        Assert.Equal(27.8, MatAgainstReferenceTests.Window(plan, 12, "up", working), 0.1);
        Assert.Equal(19.7, found, 0.1);
        Assert.Equal("06:00", Laid(working));
    }

    [Fact]
    public void The_lower_course_of_85_and_25_mm_has_83_9_minutes_at_seven_not_105_0_of_the_noon_that_is_worst_for_the_upper()
    {
        // 85 mm at 155 °C under 25 mm at 150 °C, cessation 85 °C. 07:00: air 9 °C, base 10 °C, 2 m/s. 13:00: air 26 °C, base 47 °C, 6 m/s.
        var plan = new OutsidePlan("pair", new Laid(25, 150, 85), [new(7, 9, 10, 2), new(13, 26, 47, 6)]) { Shift = (7, 13), Lower = (new Laid(85, 155, 85), 0) };
        var (lower, working) = Window(plan, "low");
        var (upper, upperWorking) = Window(plan, "up");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{lower:0.00} {upper:0.00}, reference {MatAgainstReferenceTests.Window(plan, 7, "low", working):0.00} {MatAgainstReferenceTests.Window(plan, 13, "low", working):0.00}"));
        Assert.Equal(83.9, MatAgainstReferenceTests.Window(plan, 7, "low", working), 0.5);
        Assert.Equal(105, MatAgainstReferenceTests.Window(plan, 13, "low", working), 0.5);
        Assert.Equal(1, lower / MatAgainstReferenceTests.Window(plan, 7, "low", working), 0.005);
        Assert.Equal("07:00", Laid(working));
        Assert.True(upper < MatAgainstReferenceTests.Window(plan, 7, "up", upperWorking));
        Assert.NotEqual("07:00", Laid(upperWorking), StringComparer.Ordinal);
    }

    [Fact]
    public void A_shift_that_ends_at_18_00_has_the_16_3_minutes_of_one_that_ends_at_18_01_not_19_2()
    {
        // 40 mm at 150 °C, cessation 80 °C. 15:00: air 14 °C, base 20 °C, 2.8 m/s. 18:00: air 10 °C, base 9 °C, 3.3 m/s.
        OutsidePlan Until(double end) => new("evening", Forty with { Celsius = 150 }, [new(15, 14, 20, 2.8), new(18, 10, 9, 3.3), new(21, 10, 9, 3.3)]) { Shift = (15, end) };
        var (at, working) = Window(Until(18), "up");
        var (after, _) = Window(Until(18 + (1 / 60.0)), "up");
        Assert.Equal(19.2, MatAgainstReferenceTests.Window(Until(18), 15, "up", working), 0.1);
        Assert.Equal(16.3, MatAgainstReferenceTests.Window(Until(18), 18, "up", working), 0.1);
        Assert.Equal(16.3, at, 0.1);
        Assert.Equal(1, after / at, 0.005);
    }

    [Fact]
    public void On_45_degrees_above_27_at_150_mm_the_window_is_8_per_cent_shorter_and_the_core_cold_21_per_cent_sooner()
    {
        // 60 mm at 150 °C, cessation 70 °C, air 25 °C, 3 m/s, 200 W/m² of sun, all afternoon.
        OutsidePlan On(params (double, double)[] deep) => new("afternoon", new Laid(60, 150, 70), [new(14, 25, 45, 3, 200) { Deep = deep }, new(15, 25, 45, 3, 200) { Deep = deep }])
        {
            Shift = (14, 15),
            Below = [("asphalt", 2000)],
            OpenedBelow = 60,
        };
        var (even, real) = (On((0.15, 45)), On((0.15, 27)));
        var ((evenWindow, working), (window, _)) = (Window(even, "up"), Window(real, "up"));
        var (evenSoft, soft) = (Soft(even), Soft(real));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"window {evenWindow:0.00} to {window:0.00}, core {evenSoft:0.0} to {soft:0.0} min"));
        var (ownWindow, ownCore) = (
            MatAgainstReferenceTests.Window(real, 14, "up", working) / MatAgainstReferenceTests.Window(even, 14, "up", working),
            MatAgainstReferenceTests.ColdCore(real, 15, 60, working) / MatAgainstReferenceTests.ColdCore(even, 15, 60, working));
        Assert.Equal(0.92, ownWindow, 0.006);
        Assert.Equal(0.785, ownCore, 0.006);
        Assert.Equal(ownWindow, window / evenWindow, 0.005);
        Assert.Equal(ownCore, soft / evenSoft, 0.005);
    }

    [Theory]
    [InlineData(85, 31.4)] // W/m²: as shipped, what a clear sky gives at that hour.
    [InlineData(120, 31.8)] // As the plan was when 42.0 was found.
    public void The_county_route_has_some_31_minutes_at_six_in_the_morning_not_42_0(double sun, double minutes)
    {
        // The base is stated uniform, as deep as the layers that the plan names; everything else is the shipped plan.
        var text = File.ReadAllText(Path.Combine(Repository.Root, "examples/county-route-us.yaml")).Replace("sun: 85 W/m2", FormattableString.Invariant($"sun: {sun} W/m2"), StringComparison.Ordinal);
        foreach (var stated in (string[])["70 °F", "88 °F", "118 °F", "112 °F"])
        {
            text = text.Replace($"base: {stated},", $"base: {stated}, base_at_depth: [{{ depth: 12 in, temperature: {stated} }}],", StringComparison.Ordinal);
        }

        var finding = MatAgainstReferenceTests.Checked(text).Findings.Single(one => Is(one.Rule, "ROL-001"));
        var found = finding.Limit!.High!.Number!.Value;
        Assert.Equal(minutes, County(6, sun), 0.1);
        Assert.Equal(42.0, County(17, sun), 0.2);
        Assert.Equal(minutes, found, 0.1);
        Assert.Equal("06:00", Laid(finding.Working!));
    }

    /// <summary>
    /// Window in min of the county route laid at an hour: 2 in of 147 lb/ft³ at 288 °F to 175 °F, on 4 in of old asphalt and dry rock; wind of 10 m over open
    /// country at 2 m, (2/10)^0.14; two eighths of cloud. Numbers copied from the plan and turned into SI by exact factors.
    /// </summary>
    private static double County(double hour, double morning)
    {
        Hour At(double at, double air, double below, double wind, double dew, double sun) =>
            new(at, Celsius(air), Celsius(below), wind * 0.44704 * Math.Pow(0.2, 0.14), sun) { Sky = (2, Celsius(dew)) };
        var lines = new WeatherLine([At(6, 64, 70, 3, 50, morning), At(10, 75, 88, 5, 52, 720), At(14, 84, 118, 8, 52, 880), At(17, 82, 112, 9, 51, 520)]);
        var surface = lines.At(hour, one => one.Base);
        double Of(string id) => MatAgainstReferenceTests.Of(id);
        var (heat, rise) = (Of(AssumptionIds.SpecificHeatOf(MaterialClass.AsphaltConcrete)), Of(AssumptionIds.HeatRise));
        var (asphalt, rock) = (MatAgainstReferenceTests.Base("asphalt"), MatAgainstReferenceTests.Base("crushed-rock-dry"));
        var solver = new BareConduction(
            [
                new Slab(1.5, rock.K, rock.Rho, rock.C, 0, _ => surface),
                new Slab(4 * 0.0254, asphalt.K, asphalt.Rho, asphalt.C, 0, _ => surface),
                new Slab(2 * 0.0254, Of(AssumptionIds.ConductivityOf(MaterialClass.AsphaltConcrete)), 147 * 0.45359237 / Math.Pow(0.3048, 3), heat - (85 * rise), rise, _ => Celsius(288)),
            ],
            Of(AssumptionIds.EmissivityOf(MaterialClass.AsphaltConcrete)),
            seconds => lines.Outdoors(hour + (seconds / 3600), Of(AssumptionIds.AbsorptivityOf(MaterialClass.AsphaltConcrete)), Of(AssumptionIds.SkyBelowAir)));
        return solver.Below(one => one.Mean(2), Celsius(175), 12 * 3600) / 60;
    }

    private static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    private static (double Minutes, Working Working) Window(OutsidePlan plan, string course)
    {
        var finding = MatAgainstReferenceTests.Checked(plan.Yaml()).Findings.Single(one => Is(one.Rule, "ROL-001") && Is(one.Address, $"course:{course}"));
        return (finding.Limit!.High!.Number!.Value, finding.Working!);
    }

    /// <summary>Minutes until the core is cold, as the rule on opening takes it for its limit.</summary>
    private static double Soft(OutsidePlan plan)
    {
        var limit = MatAgainstReferenceTests.Checked(plan.Yaml()).Findings.Single(one => Is(one.Rule, "FRI-002")).Limit!.Low!;
        return limit.Number!.Value * (Is(limit.Unit, "h") ? 60 : 1);
    }

    private static string Laid(Working working) => working.Inputs.Single(input => Is(input.Symbol, "laid")).Text!.Substring(11, 5);

    private static bool Is(string left, string right) => string.Equals(left, right, StringComparison.Ordinal);
}

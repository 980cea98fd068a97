using System.Globalization;
using System.Text;
using Laygate.Checking;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Rules.Results;
using Xunit.Abstractions;

namespace Laygate.ConformanceTests.Outside;

/// <summary>
/// Plans end to end, text in and finding out, against a reference that was written from the heat equation and shares no code with the
/// program. What is compared is the physics and the search for the worst moment, not the choice of properties: conductivity, specific heat, density of the mix
/// come from the working of the finding, those of the base, emissivity, absorptivity and the sky's depression from the catalogue of assumptions. No field
/// measurement stands behind either.
/// </summary>
public class MatAgainstReferenceTests(ITestOutputHelper output)
{
    private const double Minute = 60;
    private static readonly Laid Forty = new(40, 150, 80);
    private static readonly Laid Sma = new(30, 155, 95, 2400, "stone-mastic");
    private static readonly Lazy<PlanCheck> Check = new(() => new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }));

    public static TheoryData<string> Names { get; } = [.. Plans().Select(plan => plan.Name).Usual(3)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Window_and_worst_moment_are_those_of_the_reference(string name)
    {
        var plan = Plans().Single(one => Same(one.Name, name));
        var report = Checked(plan.Yaml());
        foreach (var course in plan.Lower is null ? ["up"] : (string[])["low", "up"])
        {
            var finding = report.Findings.Single(one => Same(one.Rule, "ROL-001") && Same(one.Address, $"course:{course}"));
            var found = finding.Limit?.High?.Number;
            Assert.True(found is not null, $"{course}: {finding.Outcome} {string.Join(' ', finding.Missing)}");
            var worst = Worst(plan, course, finding.Working!);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{course}: {found:0.000} min, reference {worst.Window:0.000} min, {100 * ((found.Value / worst.Window) - 1):+0.000;-0.000} %"));
            Assert.True(Math.Abs((found.Value / worst.Window) - 1) < 0.005, $"{course}: {found} min, reference {worst.Window} min at {worst.Moment} h");
            if (plan.IsHourly)
            {
                var said = finding.Working!.Inputs.Single(input => input.Text?.StartsWith("2027-06-2", StringComparison.Ordinal) == true).Text!;
                var at = DateTimeOffset.Parse(said, CultureInfo.InvariantCulture) - new DateTimeOffset(2027, 6, 21, 0, 0, 0, TimeSpan.Zero);
                Assert.Equal(worst.Moment, at.TotalHours, 0.2);
                Assert.Equal(1, found.Value / Window(plan, at.TotalHours, course, finding.Working!), 0.005);
            }
        }
    }

    /// <summary>The report on a plan.</summary>
    internal static Report Checked(string yaml) => Assert.Single(Check.Value.Run("outside.yaml", Encoding.UTF8.GetBytes(yaml)).Reports);

    /// <summary>The moment of laying with the shortest window: the worst of the bends, then every twelve minutes within 36 minutes of it.</summary>
    private static (double Moment, double Window) Worst(OutsidePlan plan, string course, Working working)
    {
        (double Moment, double Window) At(double moment) => (moment, Window(plan, moment, course, working));
        var worst = Moments(plan).Select(At).MinBy(one => one.Window);
        return plan.IsHourly
            ? Enumerable.Range(-3, 7).Select(step => worst.Moment + (step / 5.0)).Where(at => at >= plan.Shift.Start && at <= plan.Shift.End).Select(At).Append(worst).MinBy(one => one.Window)
            : worst;
    }

    /// <summary>Each moment at which the weather bends while laying, start and end included.</summary>
    private static IEnumerable<double> Moments(OutsidePlan plan) => plan.IsHourly
        ? plan.Hours.Select(hour => hour.At).Append(plan.Shift.Start).Append(plan.Shift.End).Where(at => at >= plan.Shift.Start && at <= plan.Shift.End).Distinct()
        : [0];

    /// <summary>Window of a course laid at a moment, min.</summary>
    internal static double Window(OutsidePlan plan, double moment, string course, Working working)
    {
        var (solver, laid) = Laid(plan, moment, working);
        var (index, limit, from) = Same(course, "low") ? (laid.Count - 2, plan.Lower!.Value.Course.Cessation, 0.0) : (laid.Count - 1, plan.Upper.Cessation, laid[^1].LaidAt);
        solver.Until(from);
        return (solver.Below(one => one.Mean(index), limit, 12 * 3600) - from) / Minute;
    }

    /// <summary>Time until no point of what was laid at a moment is above a temperature, min.</summary>
    internal static double ColdCore(OutsidePlan plan, double moment, double celsius, Working working)
    {
        var (solver, laid) = Laid(plan, moment, working);
        return solver.Below(one => one.Hottest(laid.Count - (plan.Lower is null ? 1 : 2)), celsius, 12 * 3600) / Minute;
    }

    private static (BareConduction Solver, IReadOnlyList<Slab> Slabs) Laid(OutsidePlan plan, double moment, Working working)
    {
        var lines = new WeatherLine(plan.Hours);
        var surface = lines.At(moment, hour => hour.Base);
        var slabs = new List<Slab>();
        var bottom = plan.Below.Sum(layer => layer.Thickness) / 1000;
        for (var i = plan.Below.Length - 1; i >= 0; i--)
        {
            var layer = Base(plan.Below[i].Material);
            var top = bottom - (plan.Below[i].Thickness / 1000);
            slabs.Add(new Slab(i == plan.Below.Length - 1 ? 1.5 : plan.Below[i].Thickness / 1000, layer.K, layer.Rho, layer.C, 0, z => surface + lines.Deep(moment, top + z)));
            bottom = top;
        }

        if (plan.Lower is { } lower)
        {
            slabs.Add(Hot(lower.Course, "low", "m-low", working, 0));
        }

        slabs.Add(Hot(plan.Upper, "up", "m-up", working, (plan.Lower?.Delay ?? 0) * Minute));
        var absorbs = Of(AssumptionIds.AbsorptivityOf(ClassOf(plan.Upper.Kind)));
        return (new BareConduction(slabs, Of(AssumptionIds.EmissivityOf(ClassOf(plan.Upper.Kind))), seconds => lines.Outdoors(moment + (seconds / 3600), absorbs, Of(AssumptionIds.SkyBelowAir))), slabs);
    }

    private static Slab Hot(Laid course, string id, string mix, Working working, double laidAt)
    {
        double Read(string symbol, string address) => working.Inputs.First(input => Same(input.Symbol, symbol) && Same(input.Address, address) && input.Number is not null).Number!.Value;
        var (heat, rise) = (Read("c", $"course:{id}"), Read("dc/dT", $"course:{id}"));
        Assert.Equal(course.Density / 1000, Read("ρ", $"mix:{mix}") / (Read("ρ", $"mix:{mix}") > 100 ? 1000 : 1), 1e-9);
        return new Slab(course.Thickness / 1000, Read("k", $"course:{id}"), course.Density, heat - (85 * rise), rise, _ => course.Celsius) { LaidAt = laidAt };
    }

    internal static (double K, double Rho, double C) Base(string material)
    {
        var known = material switch
        {
            "asphalt" => MaterialClass.ExistingAsphalt,
            "concrete" => MaterialClass.Concrete,
            "crushed-rock-dry" => MaterialClass.CrushedRockDry,
            "soil" => MaterialClass.Soil,
            _ => MaterialClass.CrushedRockMoist,
        };
        return (Of(AssumptionIds.ConductivityOf(known)), Of(AssumptionIds.DensityOfMaterial(known)), Of(AssumptionIds.SpecificHeatOf(known)));
    }

    private static MaterialClass ClassOf(string kind) => kind switch
    {
        "stone-mastic" => MaterialClass.StoneMastic,
        "porous" => MaterialClass.PorousAsphalt,
        _ => MaterialClass.AsphaltConcrete,
    };

    internal static double Of(string id) => LaygateAssumptions.All.Single(one => Same(one.Id, id)).Number;

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.Ordinal);

    private static Hour Held(double air, double below, double wind) => new(0, air, below, wind);

    private static IEnumerable<OutsidePlan> Plans() => [.. InEnvelopes(), .. ByTheHour(), .. InPairs(), .. WithDepths()];

    private static IEnumerable<OutsidePlan> InEnvelopes() =>
    [
        new("40 mm in a breeze", Forty, [Held(10, 10, 5)]),
        new("25 mm in frost", new Laid(25, 165, 85), [Held(-3, 1, 6)]),
        new("120 mm on soil", new Laid(120, 145, 80), [Held(12, 14, 3)]) { Below = [("soil", 500)] },
        new("60 mm on concrete", new Laid(60, 150, 75), [Held(8, 9, 2)]) { Below = [("concrete", 200), ("crushed-rock-dry", 300)] },
        new("50 mm of porous mix in calm air", new Laid(50, 150, 90, 1900, "porous"), [Held(18, 20, 0)]),
        new("30 mm of stone mastic in strong wind", Sma, [Held(7, 8, 10)]),
    ];

    private static IEnumerable<OutsidePlan> ByTheHour() =>
    [
        new("morning colder than noon", Forty, [new(8, 4, 6, 3), new(12, 14, 20, 3, 500), new(16, 13, 24, 3, 300)]),
        new("evening that cools down", Forty, [new(18, 22, 35, 3, 200), new(20, 17, 27, 3), new(22, 13, 21, 3), new(24, 11, 17, 3), new(26, 10, 15, 3)]) { Shift = (18, 26) },
        new("wind that rises at noon", Sma, [new(8, 10, 12, 1), new(12, 12, 13, 8), new(15, 12, 14, 3)]) { Shift = (8, 15) },
        new("thick course through a night", new Laid(100, 150, 85), [new(20, 16, 22, 2), new(23, 12, 17, 2), new(26, 8, 12, 2), new(29, 8, 13, 2)]) { Shift = (20, 29) },
        new("sun on dark stone mastic", Sma, [new(9, 20, 25, 2, 300), new(12, 26, 40, 2, 800), new(15, 27, 42, 2, 600)]) { Shift = (9, 15) },
        new("clouds and dew point stated", Forty, [new(8, 9, 10, 4) { Sky = (1, 3) }, new(11, 12, 16, 4, 350) { Sky = (6, 4) }, new(14, 14, 20, 4, 400) { Sky = (7, 6) }]) { Shift = (8, 14) },
        new("start between two hours", new Laid(50, 150, 80), [new(6, 3, 4, 4), new(10, 12, 15, 4, 400), new(15, 15, 25, 4, 400)]) { Shift = (6, 15) },
        new("coldest in the middle", Forty, [new(20, 14, 18, 2), new(22, 9, 13, 4), new(24, 6, 8, 6), new(26, 8, 10, 2), new(28, 9, 11, 2)]) { Shift = (20, 28) },
        new("concrete that warms up", new Laid(45, 148, 78), [new(7, 6, 8, 3), new(10, 13, 17, 3, 500), new(13, 18, 28, 3, 700)]) { Below = [("concrete", 220), ("crushed-rock-moist", 300)], Shift = (7, 13) },
    ];

    private static IEnumerable<OutsidePlan> InPairs() =>
    [
        new("25 on 85 mm at once", Sma with { Thickness = 25 }, [Held(12, 15, 3)]) { Lower = (new Laid(85, 155, 100, 2460), 1) },
        new("30 on 80 mm after 12 min", Sma, [Held(5, 7, 5)]) { Lower = (new Laid(80, 150, 90), 12) },
        new("20 on 100 mm through a morning", Sma with { Thickness = 20 }, [new(6, 8, 12, 3), new(9, 15, 20, 3, 400), new(12, 20, 32, 3, 700)]) { Lower = (new Laid(100, 150, 95), 4), Shift = (6, 12) },
        new("25 on 60 mm in a night", Sma with { Thickness = 25 }, [new(20, 15, 22, 2), new(23, 10, 15, 2), new(26, 6, 10, 3), new(29, 8, 13, 2)]) { Lower = (new Laid(60, 152, 95), 3), Shift = (20, 29) },
    ];

    private static IEnumerable<OutsidePlan> WithDepths() =>
    [
        new("sunny afternoon, 45 °C on top and 27 °C at 150 mm", new Laid(50, 150, 80), [Held(25, 45, 3) with { Deep = [(0.15, 27)] }]),
        new("cold morning, 5 °C on top and 12 °C at 200 mm", Forty, [Held(4, 5, 3) with { Deep = [(0.05, 7), (0.2, 12)] }]),
        new("thick course on a base warm below", new Laid(110, 145, 80), [Held(8, 10, 4) with { Deep = [(0.03, 12), (0.1, 16), (0.3, 18)] }]),
        new("pair on a base heated by the sun", Sma with { Thickness = 25 }, [Held(24, 40, 2) with { Deep = [(0.1, 29), (0.25, 24)] }]) { Lower = (new Laid(70, 150, 95), 5) },
        new("depths stated at two of three hours", Forty,
            [new(8, 8, 9, 3) { Deep = [(0.1, 14)] }, new(12, 15, 26, 3, 500) { Deep = [(0.1, 17), (0.25, 15)] }, new(16, 17, 30, 3, 500)]),
        new("depths on concrete", new Laid(60, 150, 80), [Held(20, 38, 3) with { Deep = [(0.08, 30), (0.2, 24)] }]) { Below = [("concrete", 200), ("crushed-rock-dry", 300)] },
    ];
}

using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using LayerMaterial = Laygate.Engineering.Cooling.LayerMaterial;
using PlanHour = Laygate.Model.Plans.WeatherHour;
using WeatherHour = Laygate.Engineering.Cooling.WeatherHour;

namespace Laygate.Engineering.Mat;

/// <summary>
/// What the days before leave in the base, by the same conduction solver that cools the mat. One serves a plan and those of its changed
/// copies that have the same weather, place and times, on several threads.
/// </summary>
/// <remarks>
/// The pavement lies bare from <see cref="Days"/> days before the shift on. From the first stated hour the stated weather holds; before it the air
/// swings about the first stated hour by an assumed daily range, warmest at 15:00, with the mean of the stated winds. The sun of hours that state
/// neither sun nor cloud is unknown: the base is solved without it and with all of a clear sky's, and that share of it is taken with which the
/// surface is as warm as the plan states for the moment of laying. Where no share between nothing and all does it, the nearer end is taken; what then is
/// missing moves the whole profile, so that the surface always has the stated temperature.
/// </remarks>
internal sealed class BaseHistory
{
    /// <summary>Days before the shift; what the base started from has left the upper 0.3 m by then (α t of 0.25 m², diffusion length 1 m).</summary>
    private const int Days = 5;

    private const double Day = 24 * 3600;

    private const double WarmestHour = 15;

    /// <summary>Coarser than for a hot mat: the base changes slowly, and no temperature in it jumps.</summary>
    private static readonly CoolingSettings Coarse = new(2, 0.15, 0.02, 50_000);

    private readonly Plan plan;
    private readonly AssumptionSet assumptions;
    private readonly PlanClock clock;
    private readonly MatMemory? memory;
    private readonly SolverPool solvers;
    private readonly double windShare;
    private readonly Lock gate = new();
    private readonly List<(IReadOnlyList<MatLayer> Below, CoolingCurve? Dark, CoolingCurve? Sunny)> solved = [];
    private readonly Dictionary<(int Below, DateTimeOffset Start, double Surface), BaseProfile?> profiles = [];

    /// <summary>A history of its own for a context.</summary>
    public BaseHistory(QuantityContext context)
    {
        (plan, assumptions, memory, clock) = (context.Plan, context.Assumptions, context.Memory, PlanView.Of(context).Clock);
        solvers = memory?.Solvers ?? new();
        windShare = WindReduction.Factor(new Calculation(context));
    }

    private DateTimeOffset From => (Stated is [var first, ..] ? clock.At(first.At) : clock.Start!.Value).AddDays(-Days);

    /// <summary>The stated hours that say something of this shift; the same for a shift that is moved within them.</summary>
    private List<PlanHour> Stated =>
    [
        .. plan.Weather!.Hours.Where(hour => IsWhole(hour) && clock.At(hour.At) >= clock.Start!.Value.AddDays(-2) && clock.At(hour.At) <= clock.End!.Value.AddDays(1))
            .OrderBy(hour => clock.At(hour.At)).DistinctBy(hour => clock.At(hour.At)),
    ];

    /// <summary>The history of a context.</summary>
    public static BaseHistory Of(QuantityContext context) => context.Service(one => one.Memory?.History(one) ?? new BaseHistory(one));

    /// <summary>Whether this is the history of a context: all that goes into it is the same.</summary>
    public bool IsOf(QuantityContext context) => ReferenceEquals(assumptions, context.Assumptions)
        && ReferenceEquals(plan.Weather, context.Plan.Weather) && ReferenceEquals(plan.Location, context.Plan.Location)
        && Equals(plan.Shift, context.Plan.Shift) && ReferenceEquals(plan.Site, context.Plan.Site) && Equals(plan.Opening?.At, context.Plan.Opening?.At);

    /// <summary>Whether place, offset from UTC and hours are known, and nothing is frozen: thawing and freezing of the days before is not followed.</summary>
    public static bool CanSolve(QuantityContext context, IReadOnlyList<MatLayer> below)
    {
        var times = PlanView.Of(context).Clock;
        return times is { HasZone: true, Start.Year: > 1 and < 9990, End: not null }
            && context.Plan.Location?.Latitude is not null
            && context.Plan.Existing?.Condition != Moisture.Frozen
            && below.Count > 0 && below.All(layer => layer is { IsFrozen: false, Thickness: > 0 })
            && context.Plan.Weather?.Hours.Any(IsWhole) == true;
    }

    /// <summary>The profile under a mat that is laid in some weather; null where the solver finds none.</summary>
    public BaseProfile? At(IReadOnlyList<MatLayer> below, MatWeather weather)
    {
        lock (gate)
        {
            var place = Place(below);
            var key = (place, weather.Start!.Value, weather.Base);
            if (!profiles.TryGetValue(key, out var known))
            {
                profiles[key] = known = Read(solved[place], weather);
            }

            return known;
        }
    }

    private BaseProfile? Read((IReadOnlyList<MatLayer> Below, CoolingCurve? Dark, CoolingCurve? Sunny) history, MatWeather weather)
    {
        if (history is not { Dark: { } dark, Sunny: { } sunny, Below: var below })
        {
            return null;
        }

        var time = Math.Clamp((weather.Start!.Value - From).TotalSeconds, 0, Math.Min(dark.End, sunny.End));
        var (without, with) = (Read(dark, below, time), Read(sunny, below, time));
        var gain = with[0] - without[0];
        var share = gain > 1e-6 ? Math.Clamp((weather.Base - without[0]) / gain, 0, 1) : 0;
        double[] celsius = [.. without.Zip(with, (a, b) => a + (share * (b - a)))];
        return celsius.All(double.IsFinite)
            ? new BaseProfile(BaseSource.Computed, [.. BaseProfile.ReadAt], [.. celsius.Select(value => value - celsius[0])])
            : null;
    }

    private static bool IsWhole(PlanHour hour) => hour is { Air: not null, Wind: not null };

    private static double[] Read(CoolingCurve curve, IReadOnlyList<MatLayer> below, double time)
    {
        // A deck ends; below it there is nothing that could be read.
        var deepest = below[^1].Material is MaterialClass.SteelDeck or MaterialClass.ConcreteDeck ? below.Sum(layer => layer.Thickness) * (1 - 1e-9) : double.PositiveInfinity;
        return
        [
            .. BaseProfile.ReadAt.Select(depth => depth <= 0
                ? curve.Value(CoolingPlace.Skin, time) ?? double.NaN
                : curve.Value(CoolingPlace.Depth(Math.Min(depth, deepest)), time) ?? double.NaN),
        ];
    }

    private int Place(IReadOnlyList<MatLayer> below)
    {
        var index = solved.FindIndex(one => one.Below.SequenceEqual(below));
        if (index < 0)
        {
            index = solved.Count;
            solved.Add((below, Solve(below, 0), Solve(below, 1)));
        }

        return index;
    }

    private CoolingCurve? Solve(IReadOnlyList<MatLayer> below, double sunny)
    {
        if (Stated is not { Count: > 0 } stated)
        {
            return null;
        }

        var points = Points(stated, sunny);
        var end = clock.At(stated[^1].At) > clock.End!.Value ? clock.At(stated[^1].At) : clock.End.Value;
        var mean = points.Average(point => point.Air);
        var layers = below.Select((layer, i) => StackLayer.Existing(i.ToString(CultureInfo.InvariantCulture), layer.Thickness, Material(layer.Material), mean)).ToList();
        BottomBoundary bottom = below[^1].Material is MaterialClass.SteelDeck or MaterialClass.ConcreteDeck
            ? new BottomBoundary.ConstantCoefficient(assumptions[AssumptionIds.DeckUnderside].Number, mean)
            : new BottomBoundary.HalfSpace();
        return MatCooling.Curve(memory, solvers, new CoolingProblem(
            layers, new TopBoundary.Weather(new WeatherSeries(points), ConvectionForms.Iso6946), bottom, (end - From).TotalSeconds + 60)
        { Settings = Coarse }).Curve;
    }

    private LayerMaterial Material(MaterialClass material) => new(
        assumptions[AssumptionIds.ConductivityOf(material)].Number,
        assumptions[AssumptionIds.DensityOfMaterial(material)].Number,
        assumptions[AssumptionIds.SpecificHeatOf(material)].Number,
        assumptions.Find(AssumptionIds.EmissivityOf(material))?.Number ?? assumptions[AssumptionIds.EmissivityOf(MaterialClass.ExistingAsphalt)].Number,
        assumptions.Find(AssumptionIds.AbsorptivityOf(material))?.Number ?? assumptions[AssumptionIds.AbsorptivityOf(MaterialClass.ExistingAsphalt)].Number);

    private List<WeatherPoint> Points(List<PlanHour> stated, double sunny)
    {
        var from = From;
        var wind = stated.Average(hour => hour.Wind!.Si);
        var (first, air) = (clock.At(stated[0].At), stated[0].Air!.Si);
        var half = assumptions[AssumptionIds.DayRange].Number / 2;
        var site = new WeatherSite
        {
            WindShare = windShare,
            Position = new SitePosition(plan.Location!.Latitude!.Si, plan.Location.Longitude?.Si),
        };
        var builder = new WeatherBuilder(site, SkyForms.ClarkAllen);
        var depression = assumptions[AssumptionIds.SkyBelowAir].Number;
        var points = new List<WeatherPoint>((24 * Days) + stated.Count + 1);
        for (var at = from; at < first; at = at.AddHours(1))
        {
            var cool = air + (half * (Swing(at) - Swing(first)));
            points.Add(Point(new WeatherHour(at, cool, wind, 0, cool), hasSky: false, isKnown: false));
        }

        points.AddRange(stated.Select(hour => Point(
            new WeatherHour(clock.At(hour.At), hour.Air!.Si, hour.Wind!.Si, hour.CloudEighths ?? 0, hour.DewPoint?.Si ?? hour.Air.Si) { Sun = hour.Sun?.Si },
            hour is { DewPoint: not null, CloudEighths: not null },
            hour.Sun is not null || hour.CloudEighths is not null)));
        return points;

        WeatherPoint Point(WeatherHour hour, bool hasSky, bool isKnown)
        {
            var point = builder.Point(hour, (hour.At - from).TotalSeconds);
            return point with { Sky = hasSky ? point.Sky : point.Air - depression, Sun = isKnown ? point.Sun : sunny * point.Sun };
        }
    }

    /// <summary>1 when the air of a day is warmest, −1 twelve hours from it.</summary>
    private static double Swing(DateTimeOffset at) => Math.Cos(2 * Math.PI * (at.TimeOfDay.TotalSeconds - (WarmestHour * 3600)) / Day);
}

using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>
/// Temperatures below the surface that one hot body is laid upon, at any moment of laying: as the plan states them; else what the days before
/// leave, where place and hours are known; else as at the surface, within a range.
/// </summary>
/// <remarks>One serves one reading of a plan; it may be asked from several threads.</remarks>
internal sealed class MatBase
{
    private readonly QuantityContext context;
    private readonly IReadOnlyList<MatLayer> below;
    private readonly Lock gate = new();
    private readonly List<(DateTimeOffset? Start, double Base, BaseProfile Profile)> known = [];
    private readonly BaseSource hourly;
    private readonly BaseSource inEnvelope;

    private MatBase(QuantityContext context, IReadOnlyList<MatLayer> below)
    {
        (this.context, this.below) = (context, below);
        var weather = context.Plan.Weather;
        hourly = weather?.Hours.Any(IsWhole) == true ? BaseSource.Stated : BaseHistory.CanSolve(context, below) ? BaseSource.Computed : BaseSource.Assumed;
        inEnvelope = weather?.Envelope is { BaseLowest: not null } envelope && envelope.BaseAtDepth.Any(IsWhole) ? BaseSource.Stated : BaseSource.Assumed;
    }

    /// <summary>Reads how the temperatures below the surface are known, and lists what is assumed for it.</summary>
    public static MatBase Read(QuantityContext context, Calculation calculation, IReadOnlyList<MatLayer> below)
    {
        var read = new MatBase(context, below);
        var clock = PlanView.Of(context).Clock;
        switch (context.Plan.Weather?.Hours.Count > 0 && clock is { Start: not null, End: not null } ? read.hourly : read.inEnvelope)
        {
            case BaseSource.Assumed:
                calculation.Assumed(AssumptionIds.BaseDepthDifference, "ΔTz", "existing", null);
                break;
            case BaseSource.Computed:
                calculation.Assumed(AssumptionIds.BaseDepthShare, "fz", "existing", null);
                calculation.Assumed(AssumptionIds.DayRange, "Rd", "weather", null);
                break;
        }

        calculation.Assumed(AssumptionIds.BaseSpread, "ΔTb", "weather", null);
        calculation.Assumed(AssumptionIds.AirSpread, "ΔTa", "weather", null);
        calculation.Below = read;
        return read;
    }

    /// <summary>The profile under a mat that is laid in some weather: of the hours where it has a moment, else of the envelope.</summary>
    public BaseProfile At(MatWeather weather)
    {
        if ((weather.Start is null ? inEnvelope : hourly) == BaseSource.Assumed)
        {
            return BaseProfile.Unknown;
        }

        lock (gate)
        {
            var index = known.FindIndex(one => one.Start == weather.Start && one.Base.Equals(weather.Base));
            if (index < 0)
            {
                index = known.Count;
                known.Add((weather.Start, weather.Base, Find(weather)));
            }

            return known[index].Profile;
        }
    }

    private static bool IsWhole(WeatherHour hour) => hour.Base is not null && hour.BaseAtDepth.Any(IsWhole);

    private static bool IsWhole(DepthTemperature point) => point is { Depth.Si: > 0, Temperature: not null };

    private BaseProfile Find(MatWeather weather) => weather.Start is not { } moment
        ? Stated(context.Plan.Weather!.Envelope!.BaseAtDepth, context.Plan.Weather.Envelope.BaseLowest!.Si)
        : hourly == BaseSource.Stated ? Between(moment) : BaseHistory.Of(context).At(below, weather) ?? BaseProfile.Unknown;

    private static BaseProfile Stated(IReadOnlyList<DepthTemperature> points, double surface)
    {
        var whole = points.Where(IsWhole).OrderBy(point => point.Depth!.Si).DistinctBy(point => point.Depth!.Si).ToList();
        return new BaseProfile(
            BaseSource.Stated, [0, .. whole.Select(point => point.Depth!.Si)], [0, .. whole.Select(point => point.Temperature!.Si - surface)]);
    }

    /// <summary>Differences from the surface between the hours that state them; those of the nearest one before the first and after the last.</summary>
    private BaseProfile Between(DateTimeOffset moment)
    {
        var clock = PlanView.Of(context).Clock;
        var hours = context.Plan.Weather!.Hours.Where(IsWhole)
            .Select(hour => (At: clock.At(hour.At), Profile: Stated(hour.BaseAtDepth, hour.Base!.Si))).OrderBy(hour => hour.At).ToList();
        var next = hours.FindIndex(hour => hour.At > moment);
        if (next <= 0)
        {
            return (next < 0 ? hours[^1] : hours[0]).Profile;
        }

        var (from, to) = (hours[next - 1], hours[next]);
        var share = (moment - from.At) / (to.At - from.At);
        double[] depths = [.. from.Profile.Depths.Union(to.Profile.Depths).Order()];
        return new BaseProfile(BaseSource.Stated, depths, [.. depths.Select(depth => ((1 - share) * from.Profile.At(depth)) + (share * to.Profile.At(depth)))]);
    }
}

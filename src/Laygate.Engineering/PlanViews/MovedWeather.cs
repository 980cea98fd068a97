using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>Weather moved by differences: warmer or colder air and surface, more or less wind; what is not stated stays so.</summary>
internal static class MovedWeather
{
    /// <summary>An hour moved.</summary>
    /// <param name="hour">The hour.</param>
    /// <param name="air">Air, K.</param>
    /// <param name="below">Surface that is laid upon and what lies below it, K.</param>
    /// <param name="wind">Wind, m/s; it never falls below 0.</param>
    public static WeatherHour Hour(WeatherHour hour, double air, double below, double wind) => hour with
    {
        Air = Of(hour.Air, air),
        Base = Of(hour.Base, below),
        BaseAtDepth = Points(hour.BaseAtDepth, below),
        Wind = Wind(hour.Wind, wind),
    };

    /// <summary>A temperature moved.</summary>
    /// <param name="measure">The temperature.</param>
    /// <param name="kelvins">Difference, K.</param>
    public static Measure<Temperature>? Of(Measure<Temperature>? measure, double kelvins) => measure is null ? null : With(measure, measure.Si + kelvins);

    /// <summary>A wind moved.</summary>
    /// <param name="measure">The wind.</param>
    /// <param name="by">Difference, m/s.</param>
    public static Measure<Speed>? Wind(Measure<Speed>? measure, double by) => measure is null ? null : With(measure, Math.Max(0, measure.Si + by));

    /// <summary>Temperatures by depth moved.</summary>
    /// <param name="points">The temperatures.</param>
    /// <param name="kelvins">Difference, K.</param>
    public static DepthTemperature[] Points(IReadOnlyList<DepthTemperature> points, double kelvins) =>
        [.. points.Select(point => point with { Temperature = With(point.Temperature, point.Temperature.Si + kelvins) })];

    /// <summary>Another value in the unit of a measure.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="si">The value in SI.</param>
    public static Measure<T> With<T>(Measure<T> measure, double si)
        where T : IDimension => measure with { Number = measure.Unit.FromSi(si) };
}

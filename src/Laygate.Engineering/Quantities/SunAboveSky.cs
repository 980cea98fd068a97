using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Whether the sun that a plan states can shine at that hour and place.</summary>
internal static class SunAboveSky
{
    private const string Expression = "ΔG = G − E₀ · sin b, b ≥ 0";

    /// <summary>
    /// What the sun sends to the top of the air at its nearest, early in January: 1361 W/m² (Kopp and Lean 2011, recalled) over the square of the
    /// distance 0.983 (recalled). Less arrives at the ground.
    /// </summary>
    private const double AtTheTopOfTheAir = 1361 / (0.983 * 0.983);

    // A stated hour may be the mean over the hour before or after it.
    private static readonly TimeSpan Around = TimeSpan.FromHours(1);
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(10);

    /// <summary>How it is found.</summary>
    public static Method Method { get; } = new(Expression, "geometry of the sun; solar constant of Kopp and Lean 2011", "the highest sun within an hour before and after; the largest excess of all hours");

    /// <summary>The largest excess of all hours that state the sun.</summary>
    public static Answer Of(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var latitude = calculation.Stated("φ", context.Plan.Location?.Latitude, "location", "latitude");
        var longitude = calculation.Stated("λ", context.Plan.Location?.Longitude, "location", "longitude");
        var clock = PlanView.Of(context).Clock;
        if (!clock.HasZone)
        {
            calculation.Miss("shift", "zone");
        }

        if (calculation.Stopped is { } stopped)
        {
            return stopped;
        }

        var hours = (context.Plan.Weather?.Hours ?? []).Where(hour => hour.Sun is not null).ToList();
        if (hours.Count == 0)
        {
            return Answer.Missing(WeatherAtLaying.OfEachHour("sun"));
        }

        var (worst, over) = hours.Select(hour => (hour, hour.Sun!.Si - (AtTheTopOfTheAir * HighestSine(clock.At(hour.At), latitude, longitude)))).MaxBy(one => one.Item2);
        var input = new InputReference(element.Address, $"hours.{Written(worst.At)}.sun");
        calculation.Stated("G", worst.Sun, input.Address, input.Key);
        calculation.Reach(worst.Sun!.Unit, worst.Sun.Si);
        return calculation.Result("weather.sun_above_sky", "ΔG", Expression, over) with { Input = input };
    }

    private static double HighestSine(DateTimeOffset at, double latitude, double longitude)
    {
        var highest = 0.0;
        for (var moment = at - Around; moment <= at + Around; moment += Step)
        {
            highest = Math.Max(highest, Math.Sin(Sun.Altitude(latitude, moment.DayOfYear, Sun.SolarHour(moment, longitude)) * Math.PI / 180));
        }

        return highest;
    }

    private static string Written(Moment at) => at.Local.ToString("yyyy-MM-dd'T'HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}

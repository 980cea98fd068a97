using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.SheetData;

/// <summary>Densification window of what is laid in one hour.</summary>
/// <param name="From">Begin of the hour; of the first one, the first metre.</param>
/// <param name="Seconds">Expected window in s: the shorter of those at the begin and at the end of the hour.</param>
public sealed record HourWindow(DateTimeOffset From, double Seconds);

/// <summary>How long a course can be densified, by the hour in which it is laid.</summary>
internal static class WindowsByHour
{
    /// <summary>Longest time of laying that is looked at.</summary>
    private const int MostHours = 48;

    /// <summary>The windows; none where weather, times or mix do not tell them.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="course">The course.</param>
    public static IReadOnlyList<HourWindow> Of(QuantityContext context, Course course)
    {
        var calculation = new Calculation(context);
        var pass = PlanView.Of(context).PassOf(course);
        MatLimits.Cessation(calculation, course);
        if (Span(context, course) is not { } span || CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is not null
            || new MatWeatherReader(context, new Calculation(context)).Read(pass, MatQuestion.Fast) is not { } weather)
        {
            return [];
        }

        var cooling = MatCooling.Of(context).While(pass);
        var asked = Moments(span.First, span.Last).Select(moment => (At: moment, Window: IsKnown(weather, moment) ? cooling.At(weather.At(moment), $"window {course.Id}") : null)).ToList();
        return [.. asked.Zip(asked.Skip(1)).Where(hour => hour.First.Window is not null && hour.Second.Window is not null)
            .Select(hour => new HourWindow(hour.First.At, Math.Min(hour.First.Window!.Value, hour.Second.Window!.Value)))];
    }

    private static bool IsKnown(LayingWeather weather, DateTimeOffset moment) => weather.Parts.Any(part => part[0] <= moment && moment <= part[^1]);

    private static (DateTimeOffset First, DateTimeOffset Last)? Span(QuantityContext context, Course course)
    {
        var timeline = ShiftTimeline.Of(context);
        var strips = timeline?.Of(course).ToList() ?? [];
        return strips.Count > 0 && timeline!.At(strips.Min(strip => strip.Begins)) is { } first && timeline.At(strips.Max(strip => strip.Ends)) is { } last
            && last > first && last - first <= TimeSpan.FromHours(MostHours) ? (first, last) : null;
    }

    // The first metre, every full hour, the last metre.
    private static IEnumerable<DateTimeOffset> Moments(DateTimeOffset first, DateTimeOffset last)
    {
        yield return first;
        for (var hour = new DateTimeOffset(first.Date, first.Offset).AddHours(first.Hour + 1); hour < last; hour = hour.AddHours(1))
        {
            yield return hour;
        }

        yield return last;
    }
}

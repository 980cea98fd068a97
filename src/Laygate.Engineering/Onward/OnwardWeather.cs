using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>
/// The plan in the weather and with the temperatures of tonight: by as much as air, surface and wind were measured above or below the forecast, the hours that
/// come are moved; by as much as the last loads came hotter or colder than planned, their course is.
/// </summary>
internal sealed class OnwardWeather
{
    /// <summary>Older readings say nothing about now: judgement, the step of the forecast.</summary>
    public static readonly TimeSpan Fresh = TimeSpan.FromHours(1);

    private readonly QuantityContext context;
    private readonly DateTimeOffset now;
    private readonly OnwardEvents events;
    private readonly WeatherReading? reading;

    public OnwardWeather(QuantityContext context, Model.Records.ShiftRecord record, DateTimeOffset now, OnwardEvents events)
    {
        (this.context, this.now, this.events) = (context, now, events);
        reading = record.Weather.LastOrDefault(row => row.At <= now && row.At >= now - Fresh && row is not { Air: null, Surface: null, Wind: null });
        Plan = Loaded(Moved(context.Plan), record);
    }

    /// <summary>The plan as it is tonight.</summary>
    public Plan Plan { get; }

    /// <summary>What it rests on.</summary>
    public List<OnwardFact> Facts { get; } = [];

    /// <summary>Whether weather was measured lately, or said.</summary>
    public bool IsKnown => reading is not null || events is { Air: not null, Base: not null, Wind: not null };

    private Plan Moved(Plan plan)
    {
        if (WeatherTable.Of(context) is not { } table || plan.Weather is not { } weather)
        {
            return plan;
        }

        var at = reading?.At ?? now;
        var air = Above(FactKind.Air, events.Air, reading?.Air, table.At(now).Air, table.At(at).Air, OnwardUnits.Celsius);
        var below = Above(FactKind.Base, events.Base, reading?.Surface, table.At(now).Base, table.At(at).Base, OnwardUnits.Celsius);
        var wind = Above(FactKind.Wind, events.Wind, WindReduction.AsForecast(context, reading?.Wind), table.At(now).Wind, table.At(at).Wind, OnwardUnits.Wind);
        return plan with { Weather = weather with { Hours = [.. weather.Hours.Select(hour => MovedWeather.Hour(hour, air, below, wind))] } };
    }

    // What is said holds now; what was measured holds at its time. Either way the forecast keeps its course from there on.
    private double Above(FactKind kind, double? said, double? measured, IMeasure? forecastNow, IMeasure? forecastThen, Unit unit)
    {
        var (value, planned, basis) = said is not null ? (said, forecastNow, FactBasis.Said) : measured is not null ? (measured, forecastThen, FactBasis.Record) : (forecastNow?.Si, forecastNow, FactBasis.Plan);
        if (value is not { } si || planned is null)
        {
            return 0;
        }

        Facts.Add(new OnwardFact(kind, null, basis, new LedgerFigure(si, unit) { PlanSi = planned.Si }) { At = basis == FactBasis.Record ? reading!.At : null });
        return si - planned.Si;
    }

    private Plan Loaded(Plan plan, Model.Records.ShiftRecord record)
    {
        var above = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var mix in plan.Mixes)
        {
            var measured = record.Loads.Where(load => PlanView.Same(load.Mix, mix.Id) && load is { SiteTemperature: not null, State: LoadState.Valid } && load.Arrived <= now && load.Arrived >= now - Fresh)
                .OrderBy(load => load.Arrived).TakeLast(CourseLedgers.MeanOf).Select(load => load.SiteTemperature!.Value).ToList();
            if (measured.Count > 0 && mix.Delivery?.Expected is { } planned)
            {
                above[mix.Id] = measured.Average() - planned.Si;
            }
        }

        return plan with
        {
            Mixes = [.. plan.Mixes.Select(mix => above.TryGetValue(mix.Id, out var more) ? mix with { Delivery = mix.Delivery! with { Expected = MovedWeather.Of(mix.Delivery.Expected, more) } } : mix)],
            Courses = [.. plan.Courses.Select(course => Laid(course, above))],
        };
    }

    private Course Laid(Course course, Dictionary<string, double> above)
    {
        if (course.LayingTemperature?.Expected is not { } planned)
        {
            return course;
        }

        var isMeasured = above.TryGetValue(course.Mix, out var more);
        Facts.Add(new OnwardFact(FactKind.LayingTemperature, course.Id, isMeasured ? FactBasis.Record : FactBasis.Plan, new LedgerFigure(planned.Si + more, planned.Unit) { PlanSi = planned.Si }));
        return course with { LayingTemperature = course.LayingTemperature with { Expected = MovedWeather.Of(planned, more) } };
    }
}

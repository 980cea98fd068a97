using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>The mat behind the screed.</summary>
internal static class HappenedMat
{
    // Times are written to the minute; what is read within one of the screed is read at the screed. Judgement.
    private static readonly TimeSpan AtScreed = TimeSpan.FromMinutes(1);

    public static IEnumerable<HappenedQuantity> All() =>
    [
        new("course.laying_temperature", "temperature in the mat behind the screed", RowsOf.Temperatures, "at, value, station, depth", "temperature", (shift, element) => HappenedSet.Of(Laid(shift, (Course)element.Subject!))),
        new("course.temperature_over_trial", "temperature in the mat behind the screed, less that of the trial length", RowsOf.Temperatures, "at, value, station, depth", "temperature", OverTrial),
    ];

    // The first reading in the course at each place; one that was taken later shows only that the mat was no colder when it was laid.
    private static IEnumerable<HappenedValue> Laid(HappenedShift shift, Course course) => shift.Record.Temperatures
        .Where(reading => reading is { Station: not null, Depth: > 0 } && shift.IsOf(reading.Course, course))
        .GroupBy(reading => (reading.Station, reading.Offset))
        .Select(group => group.MinBy(reading => reading.At)!)
        .Select(reading => new HappenedValue(reading.Value, shift.Known.Temperature, [reading.Place])
        {
            At = reading.At,
            Station = reading.Station,
            Side = shift.Screed(course).At(reading.Station!.Value) is { } passed && reading.At - passed <= AtScreed ? KnownSide.Value : KnownSide.AtLeast,
        });

    private static HappenedSet OverTrial(HappenedShift shift, Element element)
    {
        var course = (Course)element.Subject!;
        var trial = shift.Plan.Tests.FirstOrDefault(test => test.Kind == TestKind.TrialLength && test.Reached is not null && (PlanView.Same(test.Course, course.Id) || (test.Course is null && shift.Plan.Courses.Count == 1)));
        return trial?.Reached?.LayingTemperature is { } then ? HappenedSet.Of(Laid(shift, course).Select(value => value with { Si = value.Si - then.Si })) : HappenedSet.Nothing;
    }
}

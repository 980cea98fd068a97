using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>Rolling: when the passes came, how many, and how warm the skin was.</summary>
internal static class HappenedRolling
{
    public static IEnumerable<HappenedQuantity> All() =>
    [
        new("course.first_pass", "time from the screed to the first pass", RowsOf.Passes, "at, roller, station", "time", (shift, element) => HappenedSet.Of(Times(shift, (Course)element.Subject!, densifying: false))),
        new("course.last_densifying_pass", "time from the screed to the last pass that densifies", RowsOf.Passes, "at, roller, station", "time", (shift, element) => HappenedSet.Of(Times(shift, (Course)element.Subject!, densifying: true))),
        new("course.temperature_at_first_pass", "skin at the first pass", RowsOf.Passes, "skin", "skin", (shift, element) => HappenedSet.Of(
            PlacesOf(shift, (Course)element.Subject!).Select(place => Skin(shift, place.Passes[0])).OfType<HappenedValue>())),
        new("phase.skin_at_last_pass", "skin at the last pass of the phase", RowsOf.Passes, "skin", "skin", (shift, element) => HappenedSet.Of(
            Places(shift).Select(place => place.Passes.LastOrDefault(pass => PlanView.Same(PhaseOf(shift, pass)?.Id, element.Id))).OfType<PassReading>().Select(pass => Skin(shift, pass)).OfType<HappenedValue>())),
        new("phase.last_pass_from", "time from the screed to the last pass of the phase", RowsOf.Passes, "at, roller, station", "time", (shift, element) => HappenedSet.Of(
            Places(shift).Select(place => (place, Last: place.Passes.LastOrDefault(pass => PlanView.Same(PhaseOf(shift, pass)?.Id, element.Id)))).Where(one => one.Last is not null)
                .Select(one => Since(shift, one.Last!, one.place.Laid)))) { IsLimit = true },
        new("course.passes_over_trial", "passes over a place, less those of the trial length", RowsOf.Passes, "at, roller, station", "", OverTrial),
    ];

    /// <summary>The passes over each place since the screed last passed it.</summary>
    internal static IEnumerable<RolledPlace> Places(HappenedShift shift) =>
        from pass in shift.Record.Passes
        where pass.Station is not null
        let laid = shift.LaidBefore(pass.Station!.Value, pass.At)
        where laid is not null
        group pass by (Station: pass.Station!.Value, laid.Value.Course.Id, laid.Value.Laid, laid.Value.Course) into place
        select new RolledPlace(place.Key.Station, place.Key.Course, place.Key.Laid, [.. place]);

    // What is rolled after the screed of the upper course of a pair compacts both.
    private static IEnumerable<RolledPlace> PlacesOf(HappenedShift shift, Course course) =>
        Places(shift).Where(place => PlanView.Of(shift.Context).PassOf(course).Courses.Contains(place.Course));

    private static IEnumerable<HappenedValue> Times(HappenedShift shift, Course course, bool densifying) =>
        from place in PlacesOf(shift, course)
        let pass = densifying ? place.Passes.LastOrDefault(one => PhaseOf(shift, one)?.Kind is PhaseKind.Initial or PhaseKind.Main) : place.Passes[0]
        let laid = shift.Screed(course).At(place.Station)
        where pass is not null && laid is not null
        select Since(shift, pass, laid.Value);

    private static HappenedValue Since(HappenedShift shift, PassReading pass, DateTimeOffset laid) =>
        new((pass.At - laid).TotalSeconds, shift.OfDuration, [pass.Place]) { At = pass.At, Station = pass.Station };

    private static HappenedValue? Skin(HappenedShift shift, PassReading pass) => pass.Skin is { } skin
        ? new HappenedValue(skin, shift.Known.Skin, [pass.Place]) { At = pass.At, Station = pass.Station, Place = Place.Skin } : null;

    internal static Phase? PhaseOf(HappenedShift shift, PassReading pass)
    {
        var roller = shift.Plan.Rolling?.Rollers.FirstOrDefault(one => PlanView.Same(one.Id, pass.Roller));
        return roller is null ? null : shift.Plan.Rolling!.Phases.FirstOrDefault(phase => PlanView.Same(phase.Id, roller.Phase));
    }

    private static HappenedSet OverTrial(HappenedShift shift, Element element)
    {
        var course = (Course)element.Subject!;
        var trial = shift.Plan.Tests.FirstOrDefault(test => test.Kind == TestKind.TrialLength && test.Reached is { Passes.Count: > 0 } && (PlanView.Same(test.Course, course.Id) || (test.Course is null && shift.Plan.Courses.Count == 1)));
        return trial is null ? HappenedSet.Nothing : HappenedSet.Of(PlacesOf(shift, course).Select(place => new HappenedValue(
            trial.Reached!.Passes.Min(shown => place.Passes.Count(pass => PlanView.Same(PhaseOf(shift, pass)?.Id, shown.Phase)) - shown.Passes), 0, [.. place.Passes.Select(pass => pass.Place)])
        {
            At = place.Passes[^1].At,
            Station = place.Station,
        }));
    }
}

/// <summary>The passes over one place.</summary>
/// <param name="Station">Station, m.</param>
/// <param name="Course">The course whose screed passed it last.</param>
/// <param name="Laid">When that was.</param>
/// <param name="Passes">The passes in the order of their times; at least one.</param>
internal sealed record RolledPlace(double Station, Course Course, DateTimeOffset Laid, IReadOnlyList<PassReading> Passes);

using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>The paver: its stops and the width of its mat.</summary>
internal static class HappenedPaving
{
    public static IEnumerable<HappenedQuantity> All() =>
    [
        new("paver.stop_longest", "stop of the paver", RowsOf.Stops, "from, to", "time", (shift, element) => Stops(shift, element.Subject as Paver)) { Implies = "paver.has_stops" },
        new("course.stop_limit", "stop of the paver", RowsOf.Stops, "from, to", "time", (shift, element) => Stops(shift, element.Subject is Course course ? PlanView.Of(shift.Context).AnyPaverOf(course) : null)),
        new("run.width_highest", "width of the mat", RowsOf.Stations, "width", "width", Widths),
        new("run.width_lowest", "width of the mat", RowsOf.Stations, "width", "width", Widths),
    ];

    private static HappenedSet Stops(HappenedShift shift, Paver? paver) => paver is null ? HappenedSet.Nothing : HappenedSet.Of(PaverStops.Union(shift.Record.Stops
            .Where(stop => stop.Paver is null ? shift.Plan.Pavers.Count == 1 : PlanView.Same(stop.Paver, paver.Id))
            .Where(stop => (stop.To ?? shift.Record.Last) is not null))
        .Select(stop => new HappenedValue(stop.Length(shift.Record.Last ?? stop.From), shift.OfDuration, [.. stop.Rows.Select(row => row.Place)])
        {
            At = stop.From,
            Station = stop.Rows.Select(row => row.Station).FirstOrDefault(station => station is not null),
            Of = string.Join(", ", stop.Rows.Select(row => row.Reason).OfType<string>().Distinct(StringComparer.Ordinal)) is { Length: > 0 } reasons ? reasons : null,
            Side = stop.To is null ? KnownSide.AtLeast : KnownSide.Value,
        }));

    private static HappenedSet Widths(HappenedShift shift, Element element) => HappenedSet.Of(shift.Record.Stations
        .Where(reading => reading.Width is not null && element.Subject is Run run && (reading.Run is null ? shift.Plan.Runs.Count == 1 : PlanView.Same(reading.Run, run.Id)))
        .Select(reading => new HappenedValue(reading.Width!.Value, reading.Width * shift.Known.Width, [reading.Place]) { At = reading.At, Station = reading.Station }));
}

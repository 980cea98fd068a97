using System.Globalization;
using Laygate.Engineering.Onward;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Records;

/// <summary>What a reader of a re-plan must know.</summary>
internal static class OnwardNotes
{
    /// <summary>A note in one sentence or two.</summary>
    public static string Of(OnwardNote note)
    {
        var of = note.Of is { } id ? PlainText.Show(id) : string.Empty;
        var row = note.Place is { } place ? string.Create(CultureInfo.InvariantCulture, $" First: {PlainText.Show(place.File)}, line {place.Line}.") : string.Empty;
        return note.Kind switch
        {
            OnwardNoteKind.OldStation => $"The last station is {LedgerNumbers.Count(note.Count, "minute", "minutes")} old; what was laid since is reckoned. Read the station and write it down.",
            OnwardNoteKind.OldWeather => "No weather was measured in the last hour; the forecast of the plan stands in. Measure air, surface and wind.",
            OnwardNoteKind.NoLevel => $"{of}: what the machine holds is not recorded. Write `on_machine` with the station.",
            OnwardNoteKind.Unexplained when note.Mass is { } mass => mass.Si > 0
                ? $"{of}: {LedgerNumbers.Text(mass)} more was discharged than is laid and fits on the machine. Look for a station, a wasted or returned load that is not written down."
                : $"{of}: {LedgerNumbers.Text(mass, -mass.Si)} more was laid than was discharged. Look for a load that is not written down.",
            OnwardNoteKind.TakenAsEmpty => $"{LedgerNumbers.Count(note.Count, "load is", "loads are")} taken as empty because later ones are; nobody wrote it down.",
            OnwardNoteKind.Overdue => $"{LedgerNumbers.Count(note.Count, "load has", "loads have")} been on the road for longer than on a bad day, and {(note.Count == 1 ? "counts" : "count")} as on the road. Ask the driver.{row}",
            OnwardNoteKind.NoGroup => $"{LedgerNumbers.Count(note.Count, "load belongs", "loads belong")} to no group of trucks of the plan and {(note.Count == 1 ? "does" : "do")} not count: map `mix` and `plant`.{row}",
            OnwardNoteKind.TrucksGone => $"{of}: {LedgerNumbers.Count(note.Count, "truck", "trucks")} of the plan did not load while the group was sent twice, and {(note.Count == 1 ? "is" : "are")} taken as gone. If that is wrong, say --trucks.",
            OnwardNoteKind.MoreTrucks => $"{of}: {LedgerNumbers.Count(note.Count, "truck", "trucks")} more than planned. If one has left, say --trucks.",
            OnwardNoteKind.NoDeliveries => "No arrival or discharge is recorded; loads come after the journey of the plan.",
            OnwardNoteKind.NotBegun => "Laying has not begun in this record.",
            OnwardNoteKind.OtherPlan => "The record names another plan than this one.",
            OnwardNoteKind.OtherPlant => $"{of} makes no mix that is laid, so that its stop changes nothing.",
            _ => of,
        };
    }
}

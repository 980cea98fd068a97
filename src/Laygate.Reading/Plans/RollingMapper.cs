using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps phases and rollers.</summary>
internal static class RollingMapper
{
    public static Rolling Rolling(Fields at) => new()
    {
        Phases = at.List("phases", Phase),
        Rollers = at.List("rollers", Roller),
        Reversal = at.Measure<Duration>("reversal"),
        StartSide = at.Word<FallSide>("start_side"),
        FirstStripFromEdge = at.Measure<Length>("first_strip_from_edge"),
        TurningPlaces = at.Word<TurningPlaces>("turning_places"),
        RollersWait = at.Word<WaitingPlace>("rollers_wait"),
    };

    private static Phase Phase(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Kind = at.Word<PhaseKind>("kind"),
        Passes = at.Count("passes"),
        ZoneFrom = at.Measure<Length>("zone_from"),
        ZoneTo = at.Measure<Length>("zone_to"),
        DoneWithin = at.Measure<Duration>("done_within"),
    };

    private static Roller Roller(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Phase = at.Id("phase"),
        Kind = at.Word<RollerKind>("kind"),
        Mass = at.Measure<Mass>("mass"),
        LinearLoad = at.Measure<ForcePerLength>("linear_load"),
        DrumWidth = at.Measure<Length>("drum_width"),
        DrumDiameter = at.Measure<Length>("drum_diameter"),
        Overlap = at.Measure<Length>("overlap"),
        Mode = at.Word<RollingMode>("mode"),
        PassesInMode = at.Count("passes_in_mode"),
        Frequency = at.Measure<Frequency>("frequency"),
        Amplitude = at.Measure<Length>("amplitude"),
        Speed = at.Measure<Speed>("speed"),
        Spare = at.Flag("spare"),
        WaterAndFuel = at.Text("water_and_fuel"),
        Parking = at.Text("parking"),
        Breaks = at.Text("breaks"),
    };
}

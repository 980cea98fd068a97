using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps pavers.</summary>
internal static class PaverMapper
{
    public static Paver Paver(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Courses = at.Ids("courses"),
        CarriedBy = at.Word<CarriedBy>("carried_by"),
        Speed = at.Measure<Speed>("speed"),
        Availability = at.Measure<Ratio>("availability"),
        TravelSpeed = at.Measure<Speed>("travel_speed"),
        Reset = at.Measure<Duration>("reset"),
        Screeds = at.List("screeds", Screed),
        Buffers = at.List("buffers", MixBuffer),
        Stops = at.List("stops", PlannedStop),
        HopperKeptFilled = at.Flag("hopper_kept_filled"),
        HopperEmptiedBeforeJoint = at.Flag("hopper_emptied_before_joint"),
        StopLimit = at.Measure<Duration>("stop_limit"),
        MassEmpty = at.Measure<Mass>("mass_empty"),
    };

    private static Screed Screed(Fields at) => new(
        Course: at.RequiredId("course"),
        Kind: at.Word<ScreedKind>("kind"),
        LevelledOn: at.Text("levelled_on"),
        WidthLowest: at.Measure<Length>("width_lowest"),
        WidthHighest: at.Measure<Length>("width_highest"))
    {
        Heating = at.Word<ScreedHeating>("heating"),
    };

    private static MixBuffer MixBuffer(Fields at) => new(
        Course: at.RequiredId("course"),
        Capacity: at.Measure<Mass>("capacity"),
        Lowest: at.Measure<Mass>("lowest"),
        Call: at.Measure<Mass>("call"));

    private static PlannedStop PlannedStop(Fields at) => new(
        Id: at.RequiredId("id"),
        After: at.Measure<Duration>("after"),
        Length: at.Measure<Duration>("length"),
        Reason: at.Text("reason"));
}

using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps runs and what lies along them.</summary>
internal static class RunMapper
{
    public static Run Run(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Courses = at.Ids("courses"),
        Paver = at.Id("paver"),
        Order = at.Count("order"),
        Move = at.Measure<Duration>("move"),
        StartsAfter = at.Measure<Duration>("starts_after"),
        From = at.Measure<Length>("from"),
        To = at.Measure<Length>("to"),
        Width = AlongRun<Length>(at, "width", "widths"),
        Crossfall = AlongRun<Ratio>(at, "crossfall", "crossfalls"),
        LowSide = at.Word<Side>("low_side"),
        Gradient = at.Measure<Ratio>("gradient"),
        LeftEdge = at.Word<EdgeKind>("left_edge"),
        RightEdge = at.Word<EdgeKind>("right_edge"),
        LeftReach = at.Measure<Length>("left_reach"),
        RightReach = at.Measure<Length>("right_reach"),
        EdgeSlope = at.Measure<Ratio>("edge_slope"),
        AboveGutter = at.Measure<Length>("above_gutter"),
        Levels = at.List("levels", FixedLevel),
        Thickness = at.List("thickness", ThicknessAt),
        Obstacles = at.List("obstacles", Obstacle),
        HandLaid = at.List("hand_laid", HandLaid),
        TieIns = at.List("tie_ins", TieIn),
    };

    private static ThicknessAt ThicknessAt(Fields at) => new(
        Course: at.RequiredId("course"),
        At: at.RequiredMeasure<Length>("at"),
        Nominal: at.Measure<Length>("nominal"),
        Lowest: at.Measure<Length>("lowest"),
        Highest: at.Measure<Length>("highest"));

    private static Obstacle Obstacle(Fields at) => new(
        Id: at.RequiredId("id"),
        At: at.Measure<Length>("at"),
        What: at.Text("what"),
        Treatment: at.Text("treatment"),
        Who: at.Text("who"),
        When: at.Text("when"))
    {
        Kind = at.Word<ObstacleKind>("kind"),
    };

    private static FixedLevel FixedLevel(Fields at) => new(
        Id: at.RequiredId("id"),
        At: at.Measure<Length>("at"),
        What: at.Text("what"),
        Above: at.Measure<Length>("above"),
        RollDown: at.Measure<Length>("roll_down"));

    private static HandLaid HandLaid(Fields at) => new(
        Id: at.RequiredId("id"),
        At: at.Measure<Length>("at"),
        Area: at.Measure<Area>("area"),
        Thickness: at.Measure<Length>("thickness"),
        Mix: at.Id("mix"),
        Compactor: at.Text("compactor"));

    private static TieIn TieIn(Fields at) => new(
        Id: at.RequiredId("id"),
        At: at.Measure<Length>("at"),
        Length: at.Measure<Length>("length"),
        Treatment: at.Text("treatment"));

    // One value that holds everywhere, or a list from station to station; both together are caught by the consistency check.
    private static IReadOnlyList<AtStation<T>> AlongRun<T>(Fields at, string single, string list)
        where T : IDimension
    {
        var stations = at.List(list, entry => new AtStation<T>(entry.RequiredMeasure<Length>("at"), entry.RequiredMeasure<T>("value")));
        return at.Measure<T>(single) is { } everywhere ? [new AtStation<T>(null, everywhere), .. stations] : stations;
    }
}

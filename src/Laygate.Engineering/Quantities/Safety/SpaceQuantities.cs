using Laygate.Engineering.Safety;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Room beside live traffic: clearance, standing room, tapers and buffers.</summary>
internal static class SpaceQuantities
{
    private static readonly Define Site = new(ElementKind.Site);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Site.StatedWord<Site, Separation>("separation", "space.separation", "What separates works and traffic.", site => site.Space?.Separation),
        Site.Stated<Site>("side_clearance", Shape.Length, "space.side", "Clearance from the working space to the traffic.", site => site.Space?.Side),
        Site.Stated<Site>("standing_width", Shape.Length, "space.standing", "Width in which a person stands or walks beside the machine.", site => site.Space?.Standing),
        Site.StatedFlag<Site>("leaning", "space.leaning", "Whether that person only leans from or stands close to a machine.", site => site.Space?.Leaning),
        Site.StatedFlag<Site>("light_traffic_only", "space.light_traffic_only", "Whether the open lane is for cars and light vehicles only.", site => site.Space?.LightTrafficOnly),
        Site.Stated<Site>("closure_width", Shape.Length, "closure.width", "Width that is closed to traffic.", site => site.Closure?.Width),
        Site.Stated<Site>("open_lane", Shape.Length, "closure.open_lane", "Narrowest lane that stays open.", site => site.Closure?.OpenLane),
        Site.Stated<Site>("taper", Shape.Length, "space.taper", "Length of the taper.", site => site.Space?.Taper),
        Site.Stated<Site>("buffer", Shape.Length, "space.buffer", "Length between the taper and the works that stays empty.", site => site.Space?.Buffer),
        Site.Stated<Site>("cone_gap", Shape.Length, "space.cone_gap", "Gap between the cones beside the works.", site => site.Space?.ConeGap),
        Site.Stated<Site>("footway", Shape.Length, "space.footway", "Clear width of the way for people on foot.", site => site.Space?.Footway),
        IsStated("side_stated", "space.side", "A clearance to the traffic is stated.", site => site.Space?.Side is not null),
        IsStated("standing_stated", "space.standing", "A width to stand in is stated.", site => site.Space?.Standing is not null),
        IsStated("open_lane_stated", "closure.open_lane", "The width of the lane left open is stated.", site => site.Closure?.OpenLane is not null),
        IsStated("footway_stated", "space.footway", "The width of the way for people on foot is stated.", site => site.Space?.Footway is not null),
        IsStated("oxygen_stated", "air.oxygen", "The share of oxygen is stated.", site => site.Air?.Oxygen is not null),
        IsStated("air_speed_stated", "air.speed", "The speed of the air along an enclosed place is stated.", site => site.Air?.Speed is not null),
        Site.StatedCount<Site>("clothing_class", "clothing_class", "Class of the high-visibility clothing.", site => site.ClothingClass),
        Site.Presence("roller_to_edge", "Least distance that rollers keep from a drop or step; whether it is enough needs a person, because no published figure fits every edge.", RollerToEdge),
        Site.Number("width_needed", Shape.Length, "Width that the works take: the widest run, standing room and side clearance.", WidthNeeded, new Method(
            "B = w + b + s", Formulas.Sources.Definition, "widest run of the plan; standing room and side clearance on the side of the traffic")),
        Site.Number("taper_needed", Shape.Length, "Length of a merging taper for the speed of the traffic.", TaperNeeded, new Method(
            TrafficSpaceFormulas.TaperExpression, TrafficSpaceFormulas.TaperSource, "W in ft, S in mph; from above 40 mph on the longer form, which also holds for the gap to 45 mph")),
        Site.Number("buffer_needed", Shape.Length, "Stopping sight distance at the speed of the traffic, the guide for the empty length.", BufferNeeded, new Method(
            TrafficSpaceFormulas.StoppingExpression, TrafficSpaceFormulas.StoppingSource, "V in mph, level road, t = 2.5 s, a = 11.2 ft/s²")),
    ];

    private static QuantityDefinition IsStated(string name, string key, string meaning, Func<Site, bool> isStated) =>
        Site.Flag(name, meaning, (c, _) => Answers.Follows(c.Plan.Site is { } site && isStated(site), new InputReference("site", key)));

    private static TrafficSpace? Space(Calculation calculation) => calculation.Context.Plan.Site?.Space;

    private static Answer RollerToEdge(QuantityContext context, Element element)
    {
        var input = new InputReference(element.Address, "roller_to_edge");
        return context.Plan.Site?.RollerToEdge is { } distance
            ? Answer.None(AbsenceReason.NeedsPerson, new Note(NoteIds.RollerToEdge, [new NoteArgument("distance", null, distance.Unit.FromSi(distance.Si), distance.Unit.Spelling)])) with { Input = input }
            : Answers.Fields(input, ("roller_to_edge", false));
    }

    private static Answer WidthNeeded(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var runs = context.Elements.Of(ElementKind.Run).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        var widest = runs.Select(run => calculation.Quantity("w", "run.width_highest", run)).DefaultIfEmpty(double.NaN).Max();
        var standing = calculation.Stated("b", Space(calculation)?.Standing, element.Address, "space.standing");
        var side = calculation.Stated("s", Space(calculation)?.Side, element.Address, "space.side");
        return calculation.Result("site.width_needed", "B", "B = w + b + s", widest + standing + side);
    }

    private static Answer TaperNeeded(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var speed = calculation.Stated("S", context.Plan.Site?.TrafficSpeed, element.Address, "traffic_speed");
        var shift = calculation.Stated("W", Space(calculation)?.TaperShift, element.Address, "space.taper_shift");
        return calculation.Result("site.taper_needed", "L", TrafficSpaceFormulas.TaperExpression, TrafficSpaceFormulas.Taper(shift, speed));
    }

    private static Answer BufferNeeded(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var speed = calculation.Stated("V", context.Plan.Site?.TrafficSpeed, element.Address, "traffic_speed");
        return calculation.Result("site.buffer_needed", "SSD", TrafficSpaceFormulas.StoppingExpression, TrafficSpaceFormulas.Stopping(speed));
    }
}

using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Use, traffic, closure, conditions and safety measures of the site.</summary>
internal static class SiteQuantities
{
    private static readonly Define Site = new(ElementKind.Site);

    /// <summary>The conditions by key; a condition that is not stated is unknown, never no.</summary>
    private static readonly (string Key, string Meaning, Func<SiteConditions, bool?> Read)[] Conditions =
    [
        ("trucks_reverse", "Trucks reverse to the paver or feeder.", c => c.TrucksReverse),
        ("raised_bodies", "Tipping bodies are raised on site.", c => c.RaisedBodies),
        ("overhead_line", "An overhead line crosses or runs near the works or the haul route.", c => c.OverheadLine),
        ("buried_services", "Buried services or ironwork lie in or near the works.", c => c.BuriedServices),
        ("milling", "The existing surface is milled.", c => c.Milling),
        ("tar_suspected", "Existing layers may hold tar.", c => c.TarSuspected),
        ("night", "Work at night, at dusk or in poor light.", c => c.Night),
        ("enclosed", "Tunnel, underpass, deep cutting or indoors.", c => c.Enclosed),
        ("bridge_deck", "A bridge deck is laid upon or crossed by the plant.", c => c.BridgeDeck),
        ("crew_on_foot", "People of the crew work on foot near machines.", c => c.CrewOnFoot),
        ("public_on_foot", "The public passes on foot or by cycle.", c => c.PublicOnFoot),
        ("gradient", "The works lie on a marked gradient.", c => c.Gradient),
        ("edge_drop", "An embankment, trench, retaining wall or step lies beside the works.", c => c.EdgeDrop),
        ("water_edge", "Water lies beside the works.", c => c.WaterEdge),
        ("drains", "A watercourse or gullies can take spills.", c => c.Drains),
        ("railway", "A railway or tramway is near.", c => c.Railway),
        ("neighbours", "Homes or other neighbours are near.", c => c.Neighbours),
        ("access_closed", "The mat closes the only access of somebody, or the full width.", c => c.AccessClosed),
        ("spraying", "Bond coat or binder is sprayed.", c => c.Spraying),
        ("hot_binder", "Hot binder is handled on site.", c => c.HotBinder),
        ("burners", "Gas or oil burners are in use.", c => c.Burners),
        ("hot_weather", "Hot weather is expected.", c => c.HotWeather),
        ("lone_work", "Somebody works alone or apart from the crew.", c => c.LoneWork),
        ("remote", "The site is remote or has poor telephone cover.", c => c.Remote),
        ("several_employers", "More than one employer works on site.", c => c.SeveralEmployers),
        ("radioactive_gauge", "A gauge with a radioactive source is used.", c => c.RadioactiveGauge),
        ("step_left", "A step or ramp stays under traffic between shifts.", c => c.StepLeft),
    ];

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Site.StatedWord<Site, SiteUse>("use", "use", "What the pavement is used for.", site => site.Use),
        Site.StatedWord<Site, TrafficAlongside>("traffic", "traffic", "Traffic beside the works.", site => site.Traffic),
        Site.Stated<Site>("traffic_speed", Shape.RoadSpeed, "traffic_speed", "Speed limit of the traffic beside the works.", site => site.TrafficSpeed),
        Site.Stated<Site>("open_speed", Shape.RoadSpeed, "open_speed", "Speed limit once the surface is open.", site => site.OpenSpeed),
        Site.StatedWord<Site, ClosureKind>("closure_kind", "closure.kind", "How the place is closed.", site => site.Closure?.Kind),
        Site.Moment("closure_end", "End of the closure.", ClosureEnd),
        .. Conditions.Select(condition => Site.StatedFlag<Site>(
            condition.Key, $"conditions.{condition.Key}", condition.Meaning, site => condition.Read(site.Conditions))),
        .. Enum.GetValues<MeasureKind>().Select(MeasureOf),
    ];

    private static Answer ClosureEnd(QuantityContext context, Element element)
    {
        var input = new InputReference(element.Address, "closure.to");
        return context.Plan.Site?.Closure?.To is { } to ? Answers.At(PlanView.Of(context).Clock.At(to), input) : Answer.Missing(input);
    }

    private static QuantityDefinition MeasureOf(MeasureKind kind) => Site.Presence(
        $"measure_{PlanQuantities.Underscored(Words.Of(kind))}",
        $"A measure of the kind {Words.Of(kind)}: what, where and who.",
        (c, _) => Answers.Fullest(
            c.Plan.Measures.Where(measure => measure.Kind == kind).Select(measure => Answers.Fields(
                new InputReference($"measure:{measure.Id}", string.Empty),
                ("what", Answers.Given(measure.What)),
                ("where", Answers.Given(measure.Where)),
                ("who", Answers.Given(measure.Who)))),
            new InputReference("plan", "measures"), Words.Of(kind), "what", "where", "who"));
}

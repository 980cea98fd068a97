using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Conditions of the site on which safety rules depend: stated, or following from what the plan states elsewhere. What is not known is never no.</summary>
internal static class ConditionQuantities
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
        ("water_edge", "Water, or the edge of a structure, lies beside the works.", c => c.WaterEdge),
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
        ("long_works", "Traffic runs beside the works for longer than one day.", c => c.LongWorks),
        ("work_on_trucks", "Somebody climbs onto a truck to sheet, sample or trim the load.", c => c.WorkOnTrucks),
        ("hand_work", "Mix is laid, raked or carried by hand.", c => c.HandWork),
        ("tank_opened", "A tank of hot binder is opened, dipped or sampled.", c => c.TankOpened),
        ("solvents", "Cut-back binder or a solvent is used.", c => c.Solvents),
        ("release_agent", "Beds or tools are treated so that mix does not stick.", c => c.ReleaseAgent),
        ("flame_cleaning", "Tools are cleaned or heated with a flame.", c => c.FlameCleaning),
        ("dust", "Old pavement is sawn, ground or swept dry.", c => c.Dust),
        ("long_shift", "The shift is long, one of several nights in a row, or followed by a long way home.", c => c.LongShift),
        ("out_of_hours", "Work at a weekend or outside the usual hours for noise.", c => c.OutOfHours),
        ("bad_weather", "Cold, rain, strong wind or lightning may meet the shift.", c => c.BadWeather),
        ("opened_warm", "People walk or drive on the new mat before it is cold.", c => c.OpenedWarm),
        ("slippery_when_new", "The new surface opens before it grips, or with loose grit or spills on it.", c => c.SlipperyWhenNew),
        ("public_road_access", "Trucks leave the site onto a public road.", c => c.PublicRoadAccess),
        ("plant_left", "Machines or hot material stay on site after the shift.", c => c.PlantLeft),
    ];

    public static IEnumerable<QuantityDefinition> All() =>
    [
        .. Conditions.Select(condition => Site.StatedFlag<Site>(
            condition.Key, $"conditions.{condition.Key}", condition.Meaning, site => condition.Read(site.Conditions))),
        Site.Flag("trucks_dock", "Trucks dock at a paver or feeder.", (c, _) =>
            StatedOr(c, "trucks_dock", conditions => conditions.TrucksDock, c.Plan.Pavers.Count > 0)),
        Site.Flag("feeder", "A feeder passes the mix from truck to paver.", (c, _) =>
            StatedOr(c, "feeder", conditions => conditions.Feeder, c.Plan.Supply?.Feeder is not null)),
        Site.Flag("several_machines", "Two or more machines or trucks work at the same time.", (c, _) =>
            StatedOr(c, "several_machines", conditions => conditions.SeveralMachines, Machines(c.Plan) > 1)),
        Site.Flag("traffic_stopped", "Traffic is stopped or turned by people or by portable signals.", (c, _) =>
            StatedOr(c, "traffic_stopped", conditions => conditions.TrafficStopped, c.Plan.Site?.Traffic == TrafficAlongside.OneLaneShuttle)),
        Site.Flag("vibrating_tools", "Vibrating rollers, plates, rammers, saws or breakers are used.", (c, _) =>
            StatedOr(c, "vibrating_tools", conditions => conditions.VibratingTools, Vibrates(c.Plan))),
        Site.Flag("silica_dust", "Old pavement is milled, sawn, ground or swept dry.", (c, _) => Either(c, ("milling", x => x.Milling), ("dust", x => x.Dust))),
        Site.Flag("tiring", "The work is at night, or the shift is long, one of several nights in a row, or followed by a long way home.", (c, _) =>
            Either(c, ("night", x => x.Night), ("long_shift", x => x.LongShift))),
        Site.Flag("unsocial_hours", "Work at night, at a weekend or outside the usual hours for noise.", (c, _) =>
            Either(c, ("night", x => x.Night), ("out_of_hours", x => x.OutOfHours))),
        Site.Flag("fall_or_water", "Water, the edge of a structure or a bridge deck lies beside or below the works.", (c, _) =>
            Either(c, ("water_edge", x => x.WaterEdge), ("bridge_deck", x => x.BridgeDeck))),
        Site.Flag("solvent_or_cut_back", "Cut-back binder or a solvent is used.", (c, _) =>
            c.Plan.BondCoats.Any(coat => coat.Binder == BondBinder.CutBack) ? Answers.Follows(true, new InputReference("plan", "bond_coats")) : Either(c, ("solvents", x => x.Solvents))),
        Site.Flag("lasting_exposure", "Silica dust or vibrating tools act on the crew.", (c, _) =>
            Either(c, ("milling", x => x.Milling), ("dust", x => x.Dust), ("vibrating_tools", x => x.VibratingTools ?? (Vibrates(c.Plan) ? true : null)))),
        Site.Flag("hot_lower_course", "A course is laid on one that is still hot, so that people could walk between two screeds or on hot mix.", HotLowerCourse),
        Site.Flag("weak_ground", "Machines cross a bridge deck, or run on a course that is still hot.", (c, e) => AnyOf(
            Either(c, ("bridge_deck", x => x.BridgeDeck)), HotLowerCourse(c, e))),
    ];

    private static SiteConditions Stated(QuantityContext context) => context.Plan.Site?.Conditions ?? new SiteConditions();

    private static InputReference Key(string key) => new("site", $"conditions.{key}");

    // What the plan shows is there whatever the flag says; what it does not show may still be there.
    private static Answer StatedOr(QuantityContext context, string key, Func<SiteConditions, bool?> read, bool shown) =>
        shown ? Answers.Follows(true, Key(key)) : Answers.Flag(read(Stated(context)), Key(key));

    private static Answer Either(QuantityContext context, params (string Key, Func<SiteConditions, bool?> Read)[] flags) =>
        AnyOf([.. flags.Select(flag => Answers.Flag(flag.Read(Stated(context)), Key(flag.Key)))]);

    // Yes as soon as one is yes, no only when all are no.
    private static Answer AnyOf(params Answer[] answers)
    {
        if (Array.Find(answers, answer => answer.Value is FlagValue { Yes: true }) is { } yes)
        {
            return yes with { Origin = Origin.Computed };
        }

        var unknown = answers.Where(answer => answer.Value is null).SelectMany(answer => answer.Absence!.Missing).Distinct().ToArray();
        return unknown.Length > 0 ? Answer.Missing(unknown) : Answers.Follows(false, answers[0].Input);
    }

    private static Answer HotLowerCourse(QuantityContext context, Element element)
    {
        Answer[] courses = [.. context.Plan.Courses.Skip(1).Select(course => course.Laid is { } laid
            ? Answers.Follows(laid != Laying.Separately, new InputReference($"course:{course.Id}", "laid"))
            : Answer.Missing(new InputReference($"course:{course.Id}", "laid")))];
        return courses.Length == 0 ? Answers.Follows(false, new InputReference("plan", "courses")) : AnyOf(courses);
    }

    private static int Machines(Plan plan) =>
        plan.Pavers.Count + (plan.Rolling?.Rollers.Count ?? 0) + (plan.Supply?.Trucks.Sum(trucks => trucks.Count ?? 1) ?? 0);

    private static bool Vibrates(Plan plan) =>
        plan.Rolling?.Rollers.Any(roller => roller.Kind == RollerKind.Plate) == true
        || plan.Rolling?.Rollers.Any(roller => roller.Mode is RollingMode.Vibration or RollingMode.Oscillation) == true;
}

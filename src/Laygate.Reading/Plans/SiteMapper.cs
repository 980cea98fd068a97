using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps where the job lies, what goes on around it and what is laid upon.</summary>
internal static class SiteMapper
{
    public static Location Location(Fields at) => new()
    {
        Name = at.Text("name"),
        Latitude = at.Measure<Angle>("latitude"),
        Longitude = at.Measure<Angle>("longitude"),
        Altitude = at.Measure<Length>("altitude"),
        Jurisdiction = at.Text("jurisdiction"),
    };

    public static Site Site(Fields at) => new()
    {
        Use = at.Word<SiteUse>("use"),
        Traffic = at.Word<TrafficAlongside>("traffic"),
        TrafficSpeed = at.Measure<Speed>("traffic_speed"),
        OpenSpeed = at.Measure<Speed>("open_speed"),
        Closure = at.Block("closure", Closure),
        Conditions = at.Block("conditions", SiteConditions) ?? new SiteConditions(),
        Space = at.Block("space", SafetyMapper.Space),
        RaisedHeight = at.Measure<Length>("raised_height"),
        RollerToEdge = at.Measure<Length>("roller_to_edge"),
        ClothingClass = at.Count("clothing_class"),
        Air = at.Block("air", SafetyMapper.Air),
        Vibration = at.Block("vibration", SafetyMapper.Vibration),
        FirstAid = at.Block("first_aid", SafetyMapper.FirstAid),
        Lights = at.List("lights", SafetyMapper.Light),
        Exposures = at.List("exposures", SafetyMapper.Exposure),
        OverheadLines = at.List("overhead_lines", OverheadLine),
    };

    public static Existing Existing(Fields at) => new()
    {
        Surface = at.Word<ExistingSurface>("surface"),
        Condition = at.Word<Moisture>("condition"),
        Clean = at.Flag("clean"),
        Milling = at.Block("milling", Milling),
        Layers = at.List("layers", ExistingLayer),
    };

    private static Closure Closure(Fields at) => new()
    {
        Kind = at.Word<ClosureKind>("kind"),
        From = at.Moment("from"),
        To = at.Moment("to"),
        Width = at.Measure<Length>("width"),
        OpenLane = at.Measure<Length>("open_lane"),
    };

    private static SiteConditions SiteConditions(Fields at) => new()
    {
        TrucksReverse = at.Flag("trucks_reverse"),
        RaisedBodies = at.Flag("raised_bodies"),
        OverheadLine = at.Flag("overhead_line"),
        BuriedServices = at.Flag("buried_services"),
        Milling = at.Flag("milling"),
        TarSuspected = at.Flag("tar_suspected"),
        Night = at.Flag("night"),
        Enclosed = at.Flag("enclosed"),
        BridgeDeck = at.Flag("bridge_deck"),
        CrewOnFoot = at.Flag("crew_on_foot"),
        PublicOnFoot = at.Flag("public_on_foot"),
        Gradient = at.Flag("gradient"),
        EdgeDrop = at.Flag("edge_drop"),
        WaterEdge = at.Flag("water_edge"),
        Drains = at.Flag("drains"),
        Railway = at.Flag("railway"),
        Neighbours = at.Flag("neighbours"),
        AccessClosed = at.Flag("access_closed"),
        Spraying = at.Flag("spraying"),
        HotBinder = at.Flag("hot_binder"),
        Burners = at.Flag("burners"),
        HotWeather = at.Flag("hot_weather"),
        LoneWork = at.Flag("lone_work"),
        Remote = at.Flag("remote"),
        SeveralEmployers = at.Flag("several_employers"),
        RadioactiveGauge = at.Flag("radioactive_gauge"),
        StepLeft = at.Flag("step_left"),
        TrafficStopped = at.Flag("traffic_stopped"),
        LongWorks = at.Flag("long_works"),
        WorkOnTrucks = at.Flag("work_on_trucks"),
        TrucksDock = at.Flag("trucks_dock"),
        Feeder = at.Flag("feeder"),
        SeveralMachines = at.Flag("several_machines"),
        HandWork = at.Flag("hand_work"),
        VibratingTools = at.Flag("vibrating_tools"),
        TankOpened = at.Flag("tank_opened"),
        Solvents = at.Flag("solvents"),
        ReleaseAgent = at.Flag("release_agent"),
        FlameCleaning = at.Flag("flame_cleaning"),
        Dust = at.Flag("dust"),
        LongShift = at.Flag("long_shift"),
        OutOfHours = at.Flag("out_of_hours"),
        BadWeather = at.Flag("bad_weather"),
        OpenedWarm = at.Flag("opened_warm"),
        SlipperyWhenNew = at.Flag("slippery_when_new"),
        PublicRoadAccess = at.Flag("public_road_access"),
        PlantLeft = at.Flag("plant_left"),
    };

    private static OverheadLine OverheadLine(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        At = at.Measure<Length>("at"),
        Voltage = at.Measure<ElectricPotential>("voltage"),
        Height = at.Measure<Length>("height"),
        Away = at.Measure<Length>("away"),
        Owner = at.Text("owner"),
    };

    private static Milling Milling(Fields at) => new(
        Depth: at.Measure<Length>("depth"),
        Texture: at.Text("texture"),
        LeftAboveInterface: at.Measure<Length>("left_above_interface"))
    {
        Done = at.Date("done"),
    };

    private static ExistingLayer ExistingLayer(Fields at) => new(
        Id: at.RequiredId("id"),
        Material: at.Word<LayerMaterial>("material"),
        Thickness: at.Measure<Length>("thickness"));
}

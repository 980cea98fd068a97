namespace Laygate.Model.Plans;

/// <summary>Conditions of the site. Null means not stated.</summary>
public sealed record SiteConditions
{
    /// <summary>Trucks reverse to the paver or feeder.</summary>
    public bool? TrucksReverse { get; init; }

    /// <summary>Tipping bodies are raised on site.</summary>
    public bool? RaisedBodies { get; init; }

    /// <summary>An overhead line crosses or runs near the works or the haul route.</summary>
    public bool? OverheadLine { get; init; }

    /// <summary>Buried services or ironwork lie in or near the works.</summary>
    public bool? BuriedServices { get; init; }

    /// <summary>The existing surface is milled.</summary>
    public bool? Milling { get; init; }

    /// <summary>Existing layers may hold tar.</summary>
    public bool? TarSuspected { get; init; }

    /// <summary>Work at night, at dusk or in poor light.</summary>
    public bool? Night { get; init; }

    /// <summary>Tunnel, underpass, deep cutting or indoors.</summary>
    public bool? Enclosed { get; init; }

    /// <summary>A bridge deck is laid upon or crossed by the plant.</summary>
    public bool? BridgeDeck { get; init; }

    /// <summary>People of the crew work on foot near machines.</summary>
    public bool? CrewOnFoot { get; init; }

    /// <summary>The public passes on foot or by cycle.</summary>
    public bool? PublicOnFoot { get; init; }

    /// <summary>The works lie on a marked gradient.</summary>
    public bool? Gradient { get; init; }

    /// <summary>An embankment, trench, retaining wall or step lies beside the works.</summary>
    public bool? EdgeDrop { get; init; }

    /// <summary>Water, or the edge of a structure, lies beside the works.</summary>
    public bool? WaterEdge { get; init; }

    /// <summary>A watercourse or gullies can take spills.</summary>
    public bool? Drains { get; init; }

    /// <summary>A railway or tramway is near.</summary>
    public bool? Railway { get; init; }

    /// <summary>Homes or other neighbours are near.</summary>
    public bool? Neighbours { get; init; }

    /// <summary>The mat closes the only access of somebody, or the full width.</summary>
    public bool? AccessClosed { get; init; }

    /// <summary>Bond coat or binder is sprayed.</summary>
    public bool? Spraying { get; init; }

    /// <summary>Hot binder is handled on site.</summary>
    public bool? HotBinder { get; init; }

    /// <summary>Gas or oil burners are in use.</summary>
    public bool? Burners { get; init; }

    /// <summary>Hot weather is expected.</summary>
    public bool? HotWeather { get; init; }

    /// <summary>Somebody works alone or apart from the crew.</summary>
    public bool? LoneWork { get; init; }

    /// <summary>The site is remote or has poor telephone cover.</summary>
    public bool? Remote { get; init; }

    /// <summary>More than one employer works on site.</summary>
    public bool? SeveralEmployers { get; init; }

    /// <summary>A gauge with a radioactive source is used.</summary>
    public bool? RadioactiveGauge { get; init; }

    /// <summary>A step or ramp stays under traffic between shifts.</summary>
    public bool? StepLeft { get; init; }

    /// <summary>Traffic is stopped or turned by people or by portable signals.</summary>
    public bool? TrafficStopped { get; init; }

    /// <summary>Traffic runs beside the works for longer than one day.</summary>
    public bool? LongWorks { get; init; }

    /// <summary>Somebody climbs onto a truck to sheet, sample or trim the load.</summary>
    public bool? WorkOnTrucks { get; init; }

    /// <summary>Trucks dock at a paver or feeder.</summary>
    public bool? TrucksDock { get; init; }

    /// <summary>A feeder passes the mix from truck to paver.</summary>
    public bool? Feeder { get; init; }

    /// <summary>Two or more machines or trucks work at the same time.</summary>
    public bool? SeveralMachines { get; init; }

    /// <summary>Mix is laid, raked or carried by hand.</summary>
    public bool? HandWork { get; init; }

    /// <summary>Vibrating rollers, plates, rammers, saws or breakers are used.</summary>
    public bool? VibratingTools { get; init; }

    /// <summary>A tank of hot binder is opened, dipped or sampled.</summary>
    public bool? TankOpened { get; init; }

    /// <summary>Cut-back binder or a solvent is used.</summary>
    public bool? Solvents { get; init; }

    /// <summary>Beds or tools are treated so that mix does not stick.</summary>
    public bool? ReleaseAgent { get; init; }

    /// <summary>Tools are cleaned or heated with a flame.</summary>
    public bool? FlameCleaning { get; init; }

    /// <summary>Old pavement is sawn, ground or swept dry.</summary>
    public bool? Dust { get; init; }

    /// <summary>The shift is long, one of several nights in a row, or followed by a long way home.</summary>
    public bool? LongShift { get; init; }

    /// <summary>Work at a weekend or outside the usual hours for noise.</summary>
    public bool? OutOfHours { get; init; }

    /// <summary>Cold, rain, strong wind or lightning may meet the shift.</summary>
    public bool? BadWeather { get; init; }

    /// <summary>People walk or drive on the new mat before it is cold.</summary>
    public bool? OpenedWarm { get; init; }

    /// <summary>The new surface opens before it grips, or with loose grit or spills on it.</summary>
    public bool? SlipperyWhenNew { get; init; }

    /// <summary>Trucks leave the site onto a public road.</summary>
    public bool? PublicRoadAccess { get; init; }

    /// <summary>Machines or hot material stay on site after the shift.</summary>
    public bool? PlantLeft { get; init; }
}

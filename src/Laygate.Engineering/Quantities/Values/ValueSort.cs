namespace Laygate.Engineering.Quantities.Values;

/// <summary>What a stated number measures; numbers of one sort are usual within one range, which rules name.</summary>
public enum ValueSort
{
    /// <summary>Temperature of the air.</summary>
    Air,

    /// <summary>Surface temperature of what is laid upon.</summary>
    Base,

    /// <summary>Surface temperature of new asphalt that is laid upon.</summary>
    WarmBase,

    /// <summary>Temperature below the surface that is laid upon.</summary>
    TemperatureBelow,

    /// <summary>Dew point.</summary>
    DewPoint,

    /// <summary>Mix loaded, delivered or laid.</summary>
    HotMix,

    /// <summary>Mastic asphalt loaded, delivered or laid.</summary>
    MasticMix,

    /// <summary>Temperature below which a load is refused.</summary>
    Refusal,

    /// <summary>Temperature at which rolling may begin.</summary>
    RollingStart,

    /// <summary>Temperature at which rolling no longer densifies.</summary>
    Cessation,

    /// <summary>Temperature at which a mix is tender.</summary>
    Tender,

    /// <summary>Skin temperature below which grit is not pressed in.</summary>
    GritEmbedment,

    /// <summary>A course that another is laid upon while it is hot or warm.</summary>
    WarmCourse,

    /// <summary>Temperature below which a surface is opened.</summary>
    OpeningTemperature,

    /// <summary>Nominal thickness of a course.</summary>
    CourseThickness,

    /// <summary>Thickness of a course at a point.</summary>
    ThicknessAtAPoint,

    /// <summary>Tolerance of a thickness.</summary>
    Tolerance,

    /// <summary>Distance between the screeds of two courses.</summary>
    ScreedDistance,

    /// <summary>Width of a mat or a screed.</summary>
    MatWidth,

    /// <summary>Length of a run, between its stations.</summary>
    RunLength,

    /// <summary>How far a course lies beyond or behind the line of the run.</summary>
    Reach,

    /// <summary>Level of a fixed point against the mat.</summary>
    Level,

    /// <summary>Height of the finished surface above the gutter.</summary>
    Gutter,

    /// <summary>Thickness that rolling takes.</summary>
    RollDown,

    /// <summary>Length of a tie-in.</summary>
    TieIn,

    /// <summary>Depth of milling.</summary>
    MillingDepth,

    /// <summary>What milling leaves above the next interface.</summary>
    LeftAboveInterface,

    /// <summary>Thickness of a layer that is there.</summary>
    ExistingLayer,

    /// <summary>Depth at which a temperature is stated.</summary>
    DepthBelow,

    /// <summary>Height at which wind is measured.</summary>
    WindHeight,

    /// <summary>Height above sea level.</summary>
    Altitude,

    /// <summary>Width that is closed.</summary>
    ClosureWidth,

    /// <summary>Width of a lane that stays open.</summary>
    OpenLane,

    /// <summary>Clearance, standing room or footway.</summary>
    SideSpace,

    /// <summary>How far traffic is shifted aside.</summary>
    TaperShift,

    /// <summary>Length of a taper or buffer.</summary>
    TaperLength,

    /// <summary>Distance between cones.</summary>
    ConeGap,

    /// <summary>Height of a raised body.</summary>
    RaisedHeight,

    /// <summary>Distance of rollers or strips from an edge.</summary>
    EdgeDistance,

    /// <summary>Height of an overhead line.</summary>
    LineHeight,

    /// <summary>Level distance of an overhead line.</summary>
    LineDistance,

    /// <summary>Where a zone of rolling begins behind the screed.</summary>
    ZoneStart,

    /// <summary>Where a zone of rolling ends behind the screed.</summary>
    ZoneEnd,

    /// <summary>Width of a drum.</summary>
    DrumWidth,

    /// <summary>Diameter of a drum.</summary>
    DrumDiameter,

    /// <summary>Overlap of roller strips.</summary>
    Overlap,

    /// <summary>Amplitude of a drum.</summary>
    Amplitude,

    /// <summary>Offset of a joint from the one below.</summary>
    JointOffset,

    /// <summary>Length that is cut off at a joint.</summary>
    CutOff,

    /// <summary>Speed of a paver that lays.</summary>
    PaverSpeed,

    /// <summary>Speed of a paver that travels.</summary>
    TravelSpeed,

    /// <summary>Speed of a roller.</summary>
    RollerSpeed,

    /// <summary>Speed of the wind.</summary>
    Wind,

    /// <summary>Speed of traffic.</summary>
    TrafficSpeed,

    /// <summary>Speed of the air in a tunnel.</summary>
    AirSpeed,

    /// <summary>Load of a truck.</summary>
    Payload,

    /// <summary>Mass of a roller or plate.</summary>
    RollerMass,

    /// <summary>Mass of a paver.</summary>
    PaverMass,

    /// <summary>Mass of a feeder.</summary>
    FeederMass,

    /// <summary>Mix that a machine can hold.</summary>
    Buffer,

    /// <summary>Part of the mix that a machine holds.</summary>
    BufferPart,

    /// <summary>Mix in the silos of a plant.</summary>
    Silo,

    /// <summary>Mix that is ordered for a course.</summary>
    Tonnage,

    /// <summary>Output of a mixing plant.</summary>
    PlantOutput,

    /// <summary>Output of a feeder.</summary>
    FeederRate,

    /// <summary>Set-up of the site.</summary>
    SetUp,

    /// <summary>How long a burn is cooled or an eye flushed.</summary>
    FirstAid,

    /// <summary>Longest age of a load.</summary>
    AgeLimit,

    /// <summary>Time between two courses or the two sides of a joint.</summary>
    LayingDelay,

    /// <summary>Move of a paver to the next run.</summary>
    PaverMove,

    /// <summary>When a run or a stop begins, after the start of laying.</summary>
    RunStart,

    /// <summary>Longest stop of a plant.</summary>
    PlantStop,

    /// <summary>Loading of a truck.</summary>
    TruckLoading,

    /// <summary>Ticket, wait or cleaning of a truck.</summary>
    TruckStep,

    /// <summary>Journey of a truck.</summary>
    Haul,

    /// <summary>Journey of a truck on a bad day.</summary>
    BadHaul,

    /// <summary>Exchange of trucks or change of mix at the feeder.</summary>
    FeederStep,

    /// <summary>Resetting of a paver.</summary>
    PaverReset,

    /// <summary>Length of a planned stop.</summary>
    StopLength,

    /// <summary>Longest stop before a joint is made.</summary>
    StopLimit,

    /// <summary>Time within which a phase of rolling is done.</summary>
    PhaseTime,

    /// <summary>Reversal of a roller.</summary>
    Reversal,

    /// <summary>Time by which grit is spread.</summary>
    GritBy,

    /// <summary>Time from laying to opening.</summary>
    OpeningAfter,

    /// <summary>Wind at the mat as a share of the wind at the station.</summary>
    WindShare,

    /// <summary>Share of a bond coat that stays.</summary>
    Residue,

    /// <summary>Density as a share of its reference.</summary>
    Compaction,

    /// <summary>Density behind the screed as a share of its reference.</summary>
    ScreedDensity,

    /// <summary>Share of the time in which a paver moves.</summary>
    Availability,

    /// <summary>Slope of a free edge, height over width.</summary>
    EdgeSlope,

    /// <summary>Trucks of a group.</summary>
    TruckCount,

    /// <summary>Loads that wait before the start.</summary>
    LoadsBeforeStart,

    /// <summary>Places where trucks wait.</summary>
    WaitingPlaces,

    /// <summary>Places where a plant loads.</summary>
    LoadingPlaces,

    /// <summary>Passes of a phase.</summary>
    Passes,

    /// <summary>Passes of a roller in one mode.</summary>
    PassesInMode,

    /// <summary>Place of a run in the order.</summary>
    RunOrder,

    /// <summary>Cores of a test.</summary>
    Cores,

    /// <summary>Bond coat by mass.</summary>
    BondCoatMass,

    /// <summary>Bond coat by volume.</summary>
    BondCoatVolume,

    /// <summary>Frequency of a drum.</summary>
    DrumFrequency,

    /// <summary>Static load of a drum per width.</summary>
    LinearLoad,

    /// <summary>Heat lost in the feeder.</summary>
    FeederLoss,

    /// <summary>Light at a place of work.</summary>
    Light,

    /// <summary>Vibration of hand and arm or of the whole body.</summary>
    BodyVibration,

    /// <summary>Concentration of a substance in air.</summary>
    InAir,

    /// <summary>Strength of the sun on the ground.</summary>
    Sun,

    /// <summary>Voltage of a line.</summary>
    LineVoltage,

    /// <summary>Area that is laid by hand.</summary>
    HandLaidArea,
}

namespace Laygate.Model.Plans;

#pragma warning disable CS1591 // The members are the words themselves; what they mean stands on each list and in the plan schema.

/// <summary>What a plan must already know.</summary>
public enum Stage { Concept, Submission, Release }

/// <summary>What the pavement is used for.</summary>
public enum SiteUse { Road, Street, Motorway, Airfield, Port, Yard, Footway, Other }

/// <summary>Traffic beside the works: none, on an open lane alongside, or one direction at a time past the works.</summary>
public enum TrafficAlongside { None, OpenLane, OneLaneShuttle }

/// <summary>How the place is closed.</summary>
public enum ClosureKind { Full, Lane, Shoulder, None }

/// <summary>A course's part in the pavement.</summary>
public enum CourseKind { Base, Binder, Surface, Regulating }

/// <summary>How a course is laid on what lies below: on a cold course, on one that is rolled and still warm, or directly after it and compacted together with it.</summary>
public enum Laying { Separately, HotOnWarm, HotOnHot }

/// <summary>Kind of asphalt mixture.</summary>
public enum MixKind { AsphaltConcrete, StoneMastic, HotRolled, Porous, MasticAsphalt, ThinLayer, Other }

/// <summary>Grading of a dense mix: above (fine) or below (coarse) its primary control sieve.</summary>
public enum Gradation { Fine, Coarse }

/// <summary>Basis on which an aggregate size is stated: EN upper sieve size D, nominal maximum, or maximum size.</summary>
public enum SizeBasis { UpperSieve, NominalMaximum, Maximum }

/// <summary>The density to which a degree of compaction refers.</summary>
public enum DensityReference { Laboratory, Maximum, Trial }

/// <summary>Where a temperature is measured or predicted.</summary>
public enum Place { Skin, MidDepth, InLoad, CourseMean, Core }

/// <summary>Where a stated cessation temperature comes from: measured viscosity of the binder, the curve of density over temperature of the trial length, the specification, or earlier jobs.</summary>
public enum CessationOrigin { Viscosity, TrialCurve, Specification, Experience }

/// <summary>The surface that is laid upon.</summary>
public enum ExistingSurface { Milled, OldAsphalt, NewAsphalt, Concrete, Granular, Soil, BridgeDeck }

/// <summary>State of the surface that is laid upon.</summary>
public enum Moisture { Dry, Damp, Wet, Frozen }

/// <summary>Material of an existing layer.</summary>
public enum LayerMaterial { Asphalt, Concrete, CrushedRockDry, CrushedRockMoist, CrushedRockFrozen, Soil, Steel }

/// <summary>What stands at the side of a run.</summary>
public enum EdgeKind { Kerb, Gutter, ExistingCold, Hot, Cut, Free, Formed }

/// <summary>A side of a run, seen in its direction.</summary>
public enum Side { Left, Right }

/// <summary>What compacts under a screed.</summary>
public enum ScreedKind { Vibrating, Tamper, HighCompaction }

/// <summary>What bears a machine that follows on a fresh course: the base, the course just laid, or the frame of the first machine.</summary>
public enum CarriedBy { Base, LowerCourse, Frame }

/// <summary>Where a statement about density behind the screed comes from.</summary>
public enum DensityEvidence { Trial, MakerStatement, Assumed }

/// <summary>Kind of truck body.</summary>
public enum TruckKind { Rigid, Articulated, MovingFloor, BottomDump }

/// <summary>Kind of obstacle that the screed meets.</summary>
public enum ObstacleKind { Ironwork, Gully, Service, Rail, MovementJoint, Other }

/// <summary>What heats a screed.</summary>
public enum ScreedHeating { Gas, Oil, Electric }

/// <summary>
/// How loads are sent: each at the moment at which the timetable wants it on site, each as soon as it is loaded, or when the
/// paving site calls for it.
/// </summary>
public enum Dispatch { Timetable, OnCall, AsLoaded }

/// <summary>Kind of roller.</summary>
public enum RollerKind { Tandem, ThreeWheel, Pneumatic, Combination, Plate }

/// <summary>How a roller compacts.</summary>
public enum RollingMode { Static, Vibration, Oscillation }

/// <summary>Part of the rolling: initial (breakdown), main (intermediate), finish.</summary>
public enum PhaseKind { Initial, Main, Finish }

/// <summary>Side of a crossfall.</summary>
public enum FallSide { Low, High }

/// <summary>How the places at which rollers turn back lie: each pass at another station, or all on one line across.</summary>
public enum TurningPlaces { Staggered, InLine }

/// <summary>Where a roller stands while it waits.</summary>
public enum WaitingPlace { OffTheMat, CooledMat, HotMat }

/// <summary>Binder of a bond coat.</summary>
public enum BondBinder { Emulsion, ModifiedEmulsion, CutBack, HotBinder }

/// <summary>What a spray rate counts: as sprayed, or the binder that stays.</summary>
public enum RateBasis { Sprayed, Residual }

/// <summary>Direction of a joint.</summary>
public enum JointKind { Longitudinal, Transverse }

/// <summary>How a joint face is made.</summary>
public enum JointForm { CutVertical, FormedVertical, NotchedWedge, Tapered, HotEchelon }

/// <summary>Over what height a joint is treated.</summary>
public enum JointHeight { TopCourse, Full }

/// <summary>Where a longitudinal joint lies in the finished surface: at the edge of a lane beside its marking, below a marking, in a wheel track, or elsewhere in the lane.</summary>
public enum JointLine { LaneEdge, UnderMarking, WheelTrack, Elsewhere }

/// <summary>Terrain between the weather station and the mat.</summary>
public enum Exposure { Open, Wooded, Town }

/// <summary>Event for which a plan holds an action ready.</summary>
public enum ContingencyEvent { PlantStops, FeederFails, PaverFails, RollerFails, Rain, Wind, TruckShortage, OpeningInDanger, WrongMix, Other }

/// <summary>Part of the shift in which a step waits for its release.</summary>
public enum HoldStep { BeforeLaying, DuringLaying, BeforeOpening }

/// <summary>What a test examines.</summary>
public enum TestKind { Density, Thickness, Evenness, Texture, Friction, MixTemperature, MatTemperature, ThermalProfile, Yield, Composition, Bond, BondCoatRate, TrialLength, JointDensity, Deformation, Other }

/// <summary>Part that a document plays for the plan.</summary>
public enum DocumentKind { GoverningCode, Specification, MethodStatement, RiskAssessment, MixDesign, TrialReport, Permit, Drawing, Other }

namespace Laygate.Model.Plans;

#pragma warning disable CS1591 // The members are the words themselves; what they mean stands in the plan schema.

/// <summary>Kind of safety, health or environment measure, in the words of the trade.</summary>
public enum MeasureKind
{
    Supervisor, Induction, RiskAssessment, InternalTrafficPlan, ReversingSpotter, ReversingAlarm, KeepOutArea, TippingCheck,
    OverheadLinePrecaution, BuriedServicesCheck, BurnsFirstAid, HeatProtectiveClothing, HighVisibilityClothing, EmergencyArrangements,
    EmergencyAccess, FumeControl, ExhaustControl, NoiseControl, VibrationControl, TrafficManagement, SideClearance, RestraintBarrier,
    TrafficControllers, Lighting, EdgeProtection, RollerOverturnProtection, RollerZones, MachineChecks, FirePrecaution, GasPrecaution,
    SprayingPrecaution, TarTest, SilicaControl, MillingDrumPrecaution, Ventilation, HeatIllnessPlan, ColdAndStormRules, FatiguePlan,
    PedestrianRoute, BridgeCheck, RailwayArrangement, WaterEdgePrecaution, SpillControl, NeighbourNotice, Coordinator, LoneWorkerCheck,
    Signals, HealthSurveillance, Welfare, AccidentReporting, SlipperySurfaceWarning, StepAndRampControl, GaugeSafety, SiteSecurity,
    ManualHandling, ProtectiveClothing, NoRiding, TrafficSetUp, IncursionWarning, BarrierLeftOut,
    ReversingCamera, ReversingBarrier, TurningPlace, SpotterRelief, DockingControl, LoweredBodyCheck,
    SheetingFromTheGround, LineOwnerConsulted, RollawayPrecaution, WorkingMassCheck, FeederZones, KeepOffHotCourses,
    BoilOverPrecaution, BurnerPrecaution, TankVapourPrecaution, SolventPrecaution, ReleaseAgent, FlameCleaningPrecaution,
    HoursConsent, GasMonitoring, HotSurfaceWarning, RoadCleaning, EmergencyCall,
    SafetyZone, CushionVehicle, GlareControl, SpareLight, SprayAreaClear,
    IronworkMarked, WithdrawalLevels, TrainedOperators, MachineStops, RescueFromEdge,
    ShiftBriefing, FumeExtraction, DustSweeping, TarHandling, GullyCover,
}

using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps what a plan states about space beside traffic, first aid, light and exposure.</summary>
internal static class SafetyMapper
{
    public static TrafficSpace Space(Fields at) => new()
    {
        Separation = at.Word<Separation>("separation"),
        Side = at.Measure<Length>("side"),
        Standing = at.Measure<Length>("standing"),
        Leaning = at.Flag("leaning"),
        LightTrafficOnly = at.Flag("light_traffic_only"),
        TaperShift = at.Measure<Length>("taper_shift"),
        Taper = at.Measure<Length>("taper"),
        Buffer = at.Measure<Length>("buffer"),
        ConeGap = at.Measure<Length>("cone_gap"),
        Footway = at.Measure<Length>("footway"),
    };

    public static EnclosedAir Air(Fields at) => new(
        Oxygen: at.Measure<Ratio>("oxygen"),
        Speed: at.Measure<Speed>("speed"));

    public static BodyVibration Vibration(Fields at) => new(
        HandArm: at.Measure<Acceleration>("hand_arm"),
        WholeBody: at.Measure<Acceleration>("whole_body"),
        Evidence: at.Text("evidence"));

    public static FirstAid FirstAid(Fields at) => new()
    {
        Steps = at.WordList<FirstAidStep>("steps"),
        Cooling = at.Measure<Duration>("cooling"),
        EyeFlushing = at.Measure<Duration>("eye_flushing"),
    };

    public static Light Light(Fields at) => new(
        Id: at.RequiredId("id"),
        Task: at.Word<LightTask>("task"),
        Level: at.Measure<Illuminance>("level"),
        NearLane: at.Flag("near_lane"));

    public static AirExposure Exposure(Fields at) => new(
        Id: at.RequiredId("id"),
        Agent: at.Word<Agent>("agent"),
        Level: at.Measure<MassConcentration>("level"),
        Evidence: at.Text("evidence"));

    public static Section Section(Fields at) => new(
        Id: at.RequiredId("id"),
        Kind: at.Word<SectionKind>("kind"),
        What: at.Text("what"),
        Reference: at.Text("reference"));
}

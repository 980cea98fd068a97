using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Light by task, and what people breathe.</summary>
internal static class LightAndAirQuantities
{
    private static readonly Define OfLight = new(ElementKind.Light);
    private static readonly Define OfExposure = new(ElementKind.Exposure);
    private static readonly Define Site = new(ElementKind.Site);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        OfLight.StatedWord<Light, LightTask>("task", "task", "Task for which the place is lit.", light => light.Task),
        OfLight.StatedFlag<Light>("near_lane", "near_lane", "Whether the place lies within 15 ft (4.6 m) of an open lane.", light => light.NearLane),
        OfLight.Stated<Light>("level", Shape.Light, "level", "Light on the surface.", light => light.Level),
        OfExposure.StatedWord<AirExposure, Agent>("agent", "agent", "What is breathed.", exposure => exposure.Agent),
        OfExposure.Stated<AirExposure>("level", Shape.InAir, "level", "Mean of what is breathed over the averaging time of its limit.", exposure => exposure.Level),
        Site.Stated<Site>("oxygen", Shape.Share, "air.oxygen", "Lowest share of oxygen in an enclosed place.", site => site.Air?.Oxygen),
        Site.Stated<Site>("air_speed", Shape.WindSpeed, "air.speed", "Lowest speed of the air along an enclosed place.", site => site.Air?.Speed),
        Site.Flag("hand_arm_stated", "A figure for vibration on hand and arm is stated.", (c, _) => Answers.Follows(c.Plan.Site?.Vibration?.HandArm is not null, new InputReference("site", "vibration.hand_arm"))),
        Site.Flag("whole_body_stated", "A figure for vibration on the whole body is stated.", (c, _) => Answers.Follows(c.Plan.Site?.Vibration?.WholeBody is not null, new InputReference("site", "vibration.whole_body"))),
        Site.Stated<Site>("hand_arm_vibration", Shape.Vibration, "vibration.hand_arm", "Vibration on hand and arm, mean over eight hours.", site => site.Vibration?.HandArm),
        Site.Stated<Site>("whole_body_vibration", Shape.Vibration, "vibration.whole_body", "Vibration on the whole body, mean over eight hours.", site => site.Vibration?.WholeBody),
        Site.Flag("mastic_asphalt", "Mastic asphalt is laid.", (c, _) => c.Plan.Mixes.Count == 0
            ? Answer.Missing(new InputReference("plan", "mixes"))
            : Answers.Follows(c.Plan.Mixes.Any(mix => mix.Kind == MixKind.MasticAsphalt), new InputReference("plan", "mixes"))),
    ];
}

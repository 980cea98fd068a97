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
        Site.Flag("mastic_asphalt", "Mastic asphalt is laid.", (c, _) => c.Plan.Mixes.Count == 0
            ? Answer.Missing(new InputReference("plan", "mixes"))
            : Answers.Follows(c.Plan.Mixes.Any(mix => mix.Kind == MixKind.MasticAsphalt), new InputReference("plan", "mixes"))),
    ];
}

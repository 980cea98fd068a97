using Laygate.Engineering.Quantities.Safety;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Use, traffic, closure, of the site.</summary>
internal static class SiteQuantities
{
    private static readonly Define Site = new(ElementKind.Site);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Site.StatedWord<Site, SiteUse>("use", "use", "What the pavement is used for.", site => site.Use),
        Site.Category("traffic", Words.Of<TrafficAlongside>(), "Traffic beside the works.", Traffic),
        Site.Stated<Site>("traffic_speed", Shape.RoadSpeed, "traffic_speed", "Speed limit of the traffic beside the works.", site => site.TrafficSpeed),
        Site.Stated<Site>("open_speed", Shape.RoadSpeed, "open_speed", "Speed limit once the surface is open.", site => site.OpenSpeed),
        Site.StatedWord<Site, ClosureKind>("closure_kind", "closure.kind", "How the place is closed.", site => site.Closure?.Kind),
        Site.Moment("closure_end", "End of the closure.", ClosureEnd),
        .. ConditionQuantities.All(),
        .. MeasureQuantities.All(),
        .. MovementQuantities.All(),
        .. SpaceQuantities.All(),
        .. HeatQuantities.All(),
        .. LineQuantities.All(),
        .. LightAndAirQuantities.All(),
        .. FirstAidQuantities.All(),
        .. SectionQuantities.All(),
    ];

    // A closure that leaves a lane open shows traffic whatever the plan says of it.
    private static Answer Traffic(QuantityContext context, Element element)
    {
        var stated = context.Plan.Site?.Traffic;
        return stated is null or TrafficAlongside.None && ShownByPlace.Traffic(context) is { } shown
            ? Answers.Follows(Words.Of(TrafficAlongside.OpenLane), shown.By)
            : Answers.Word(stated is { } word ? Words.Of(word) : null, new InputReference(element.Address, "traffic"));
    }

    private static Answer ClosureEnd(QuantityContext context, Element element)
    {
        var input = new InputReference(element.Address, "closure.to");
        return context.Plan.Site?.Closure?.To is { } to ? Answers.At(PlanView.Of(context).Clock.At(to), input) : Answer.Missing(input);
    }
}

using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities.Safety;
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
        Site.Flag("closure_stated", "Whether a closure is stated.", (c, _) => Answers.Follows(c.Plan.Site?.Closure is not null, new InputReference("site", "closure"))),
        Site.Flag("closure_dated", "Whether beginning and end of the closure are stated.", (c, _) => Answers.Follows(
            c.Plan.Site?.Closure is { From: not null, To: not null }, new InputReference("site", "closure.from"))),
        Site.Number("closure_length", Shape.Days, "How long the place is closed.", ClosureLength, new Method("Δt = end − beginning of the closure", Formulas.Sources.Definition, "with offsets from UTC where they are stated")),
        Site.Flag("traffic_in_full_closure", "Whether traffic or an open lane is stated in a place that is fully closed.", TrafficInFullClosure),
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

    private static Answer ClosureLength(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var clock = PlanView.Of(context).Clock;
        var closure = context.Plan.Site?.Closure;
        if (closure is not { From: { } from, To: { } to })
        {
            calculation.Miss(element.Address, closure?.From is null ? "closure.from" : "closure.to");
            return calculation.Stopped!;
        }

        return calculation.Result("site.closure_length", "Δt", "Δt = end − beginning of the closure", (clock.At(to) - clock.At(from)).TotalSeconds) with { Input = new InputReference(element.Address, "closure.from") };
    }

    private static Answer TrafficInFullClosure(QuantityContext context, Element element)
    {
        var site = context.Plan.Site;
        return site?.Closure?.Kind is null ? Answer.Missing(new InputReference(element.Address, "closure.kind"))
            : site.Closure.Kind != ClosureKind.Full ? Answers.Follows(flag: false, new InputReference(element.Address, "closure.kind"))
            : site.Closure.OpenLane is not null ? Answers.Follows(flag: true, new InputReference(element.Address, "closure.open_lane"))
            : Answers.Follows(site.Traffic is TrafficAlongside.OpenLane or TrafficAlongside.OneLaneShuttle, new InputReference(element.Address, "traffic"));
    }

    private static Answer ClosureEnd(QuantityContext context, Element element)
    {
        var input = new InputReference(element.Address, "closure.to");
        return context.Plan.Site?.Closure?.To is { } to ? Answers.At(PlanView.Of(context).Clock.At(to), input) : Answer.Missing(input);
    }
}

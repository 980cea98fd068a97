using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Conditions of the site that place, traffic, closure and runs decide. Texts are no evidence, structured keys are.</summary>
internal static class ShownByPlace
{
    private static readonly TimeSpan OneDay = TimeSpan.FromDays(1);

    /// <summary>A stated overhead line.</summary>
    public static ShownCondition? OverheadLine(QuantityContext context) =>
        context.Plan.Site?.OverheadLines is [var line, ..] ? Yes($"overhead-line:{line.Id}", "id") : null;

    /// <summary>An obstacle of the kind ironwork or service.</summary>
    public static ShownCondition? BuriedServices(QuantityContext context) => Obstacle(context, kind => kind is ObstacleKind.Ironwork or ObstacleKind.Service);

    /// <summary>An obstacle of the kind gully.</summary>
    public static ShownCondition? Drains(QuantityContext context) => Obstacle(context, kind => kind is ObstacleKind.Gully);

    /// <summary>An obstacle of the kind rail.</summary>
    public static ShownCondition? Railway(QuantityContext context) => Obstacle(context, kind => kind is ObstacleKind.Rail);

    /// <summary>Around everything that the screed meets, and in stated areas, mix is raked by hand (common practice).</summary>
    public static ShownCondition? HandWork(QuantityContext context) =>
        context.Plan.Runs.FirstOrDefault(run => run.HandLaid.Count > 0) is { } byHand ? Yes($"run:{byHand.Id}", $"hand_laid.{byHand.HandLaid[0].Id}")
        : context.Plan.Runs.FirstOrDefault(run => run.Obstacles.Count > 0) is { } met ? Yes($"run:{met.Id}", $"obstacles.{met.Obstacles[0].Id}")
        : null;

    /// <summary>Light stated for a tunnel.</summary>
    public static ShownCondition? Enclosed(QuantityContext context) =>
        context.Plan.Site?.Lights.FirstOrDefault(light => light.Task is LightTask.Tunnel or LightTask.TunnelHeading) is { } light
            ? Yes($"light:{light.Id}", "task")
            : null;

    /// <summary>A bridge deck is laid upon.</summary>
    public static ShownCondition? BridgeDeck(QuantityContext context) =>
        context.Plan.Existing?.Surface == ExistingSurface.BridgeDeck ? Yes("existing", "surface") : null;

    /// <summary>A stated width of a footway beside the works.</summary>
    public static ShownCondition? PublicOnFoot(QuantityContext context) => context.Plan.Site?.Space?.Footway is not null ? Yes("site", "space.footway") : null;

    /// <summary>A run that is steeper than the assumed limit of a marked gradient.</summary>
    public static ShownCondition? Gradient(QuantityContext context)
    {
        var marked = context.Assumptions[AssumptionIds.MarkedGradient].Number / 100;
        return context.Plan.Runs.FirstOrDefault(run => run.Gradient is { } gradient && Math.Abs(gradient.Si) >= marked) is { } steep
            ? new ShownCondition(true, new InputReference($"run:{steep.Id}", "gradient"), AssumptionIds.MarkedGradient)
            : null;
    }

    /// <summary>A full closure: the mat takes the whole width.</summary>
    public static ShownCondition? AccessClosed(QuantityContext context) =>
        context.Plan.Site?.Closure?.Kind == ClosureKind.Full ? Yes("site", "closure.kind") : null;

    /// <summary>Traffic passes in turns through one lane.</summary>
    public static ShownCondition? TrafficStopped(QuantityContext context) =>
        context.Plan.Site?.Traffic == TrafficAlongside.OneLaneShuttle ? Yes("site", "traffic") : null;

    /// <summary>A lane that stays open, or a closure of less than the road, leaves traffic beside the works.</summary>
    public static ShownCondition? Traffic(QuantityContext context) => context.Plan.Site?.Closure switch
    {
        { Kind: ClosureKind.Full } or null => null,
        { OpenLane: not null } => Yes("site", "closure.open_lane"),
        { Kind: ClosureKind.Lane or ClosureKind.Shoulder } => Yes("site", "closure.kind"),
        _ => null,
    };

    /// <summary>A closure beside traffic that lasts longer than a day.</summary>
    public static ShownCondition? LongWorks(QuantityContext context)
    {
        var clock = PlanView.Of(context).Clock;
        return context.Plan.Site is { Closure: { From: { } from, To: { } to } } site && clock.At(to) - clock.At(from) > OneDay
            && (site.Traffic is TrafficAlongside.OpenLane or TrafficAlongside.OneLaneShuttle || Traffic(context) is not null)
                ? Yes("site", "closure.to")
                : null;
    }

    /// <summary>An obstacle of which only a text says what it is: it may be a gully, a cover or a rail.</summary>
    public static InputReference? ObstacleOfNoKind(QuantityContext context) =>
        (from run in context.Plan.Runs
         from obstacle in run.Obstacles
         where obstacle.Kind is null
         select new InputReference($"run:{run.Id}", $"obstacles.{obstacle.Id}.kind")).FirstOrDefault();

    private static ShownCondition? Obstacle(QuantityContext context, Func<ObstacleKind, bool> shows) =>
        (from run in context.Plan.Runs
         from obstacle in run.Obstacles
         where obstacle.Kind is { } kind && shows(kind)
         select Yes($"run:{run.Id}", $"obstacles.{obstacle.Id}.kind")).FirstOrDefault();

    private static ShownCondition Yes(string address, string key) => new(true, new InputReference(address, key));
}

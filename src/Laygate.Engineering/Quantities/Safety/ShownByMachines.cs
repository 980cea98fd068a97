using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Conditions of the site that the stated machines and trucks decide. A machine that is stated is there; one that is not may still come.</summary>
internal static class ShownByMachines
{
    /// <summary>Trucks that unload at their rear back up to the machine that takes the mix; only mix laid in a windrow needs no reversing.</summary>
    public static ShownCondition? TrucksReverse(QuantityContext context) => context.Plan.Pavers.Count == 0
        ? null
        : Kind(context, kind => kind is TruckKind.Rigid or TruckKind.Articulated or TruckKind.MovingFloor);

    /// <summary>Rigid and articulated tippers raise their bodies.</summary>
    public static ShownCondition? RaisedBodies(QuantityContext context) => Kind(context, kind => kind is TruckKind.Rigid or TruckKind.Articulated);

    /// <summary>A paver or feeder takes its mix from trucks that dock.</summary>
    public static ShownCondition? TrucksDock(QuantityContext context) => Paver(context);

    /// <summary>Beside every paver people work on foot: screed operators, rakers and whoever guides the trucks (common practice).</summary>
    public static ShownCondition? CrewOnFoot(QuantityContext context) => Paver(context);

    /// <summary>A stated feeder is used.</summary>
    public static ShownCondition? Feeder(QuantityContext context) =>
        context.Plan.Supply?.Feeder is { } feeder ? new ShownCondition(true, new InputReference($"feeder:{feeder.Id}", "id")) : null;

    /// <summary>Two or more of pavers, rollers and trucks.</summary>
    public static ShownCondition? SeveralMachines(QuantityContext context)
    {
        var plan = context.Plan;
        var rollers = plan.Rolling?.Rollers ?? [];
        var trucks = plan.Supply?.Trucks ?? [];
        return plan.Pavers.Count + rollers.Count + trucks.Sum(group => group.Count ?? 1) < 2 ? null
            : rollers.Count > 0 ? Yes($"roller:{rollers[0].Id}", "id")
            : trucks.Count > 0 ? Yes($"trucks:{trucks[0].Id}", "count")
            : Paver(context);
    }

    /// <summary>A plate, or a roller that vibrates or oscillates.</summary>
    public static ShownCondition? VibratingTools(QuantityContext context) => context.Plan.Rolling?.Rollers
        .FirstOrDefault(roller => roller.Kind == RollerKind.Plate || roller.Mode is RollingMode.Vibration or RollingMode.Oscillation) is { } roller
            ? Yes($"roller:{roller.Id}", roller.Kind == RollerKind.Plate ? "kind" : "mode")
            : null;

    /// <summary>A screed that gas or oil heats.</summary>
    public static ShownCondition? Burners(QuantityContext context) =>
        (from paver in context.Plan.Pavers
         from screed in paver.Screeds
         where screed.Heating is ScreedHeating.Gas or ScreedHeating.Oil
         select Yes($"paver:{paver.Id}", $"screeds.{screed.Course}.heating")).FirstOrDefault();

    private static ShownCondition? Paver(QuantityContext context) => context.Plan.Pavers is [var paver, ..] ? Yes($"paver:{paver.Id}", "id") : null;

    private static ShownCondition? Kind(QuantityContext context, Func<TruckKind, bool> shows) =>
        context.Plan.Supply?.Trucks.FirstOrDefault(trucks => trucks.Kind is { } kind && shows(kind)) is { } group ? Yes($"trucks:{group.Id}", "kind") : null;

    private static ShownCondition Yes(string address, string key) => new(true, new InputReference(address, key));
}

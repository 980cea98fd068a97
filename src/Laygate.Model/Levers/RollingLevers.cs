using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>Levers of the rolling: rollers per phase, their speed, length of zones.</summary>
internal static class RollingLevers
{
    public static IEnumerable<Lever> Of(Plan plan)
    {
        if (plan.Rolling is not { } rolling)
        {
            return [];
        }

        return rolling.Phases.Select(phase => Rollers(plan, rolling, phase))
            .Concat(rolling.Phases.Select(phase => Zone(plan, rolling, phase)))
            .Concat(rolling.Phases.Select(phase => DoneWithin(plan, phase)))
            .Concat(rolling.Rollers.Select(roller => Speed(plan, roller)))
            .OfType<Lever>();
    }

    private static Lever? Rollers(Plan plan, Rolling rolling, Phase phase)
    {
        var there = rolling.Rollers.Where(roller => Is(roller.Phase, phase.Id) && roller.Spare != true && roller.Kind != RollerKind.Plate).ToList();
        return there.Count == 0 ? null : new Lever
        {
            Kind = LeverKind.Rollers,
            Address = $"phase:{phase.Id}",
            Key = "rollers",
            IsCount = true,
            Current = there.Count,
            Lowest = there.Count,
            Highest = there.Count + PlanLevers.MostAddedRollers,
            Step = 1,
            Change = count => plan with { Rolling = Added(rolling, there[0], (int)Math.Round(count) - there.Count) },
        };
    }

    private static Rolling Added(Rolling rolling, Roller model, int more)
    {
        var rollers = rolling.Rollers.ToList();
        for (var i = 0; i < more; i++)
        {
            rollers.Add(model with { Id = RollerCopy.FreeId(rollers, model.Id) });
        }

        return rolling with { Rollers = rollers };
    }

    private static Lever? DoneWithin(Plan plan, Phase phase) => PlanLevers.Measure(
        LeverKind.DoneWithin, $"phase:{phase.Id}", "done_within", phase.DoneWithin, (null, null),
        within => PlanCopy.WithPhase(plan, phase with { DoneWithin = within }));

    // A zone may grow as far as the next phase begins: rollers of two phases do not share a zone.
    private static Lever? Zone(Plan plan, Rolling rolling, Phase phase)
    {
        if (phase is not { ZoneFrom: { } from, ZoneTo: { } to } || to.Si <= from.Si)
        {
            return null;
        }

        var behind = rolling.Phases.Where(other => other.ZoneFrom is { } start && start.Si >= to.Si).Select(other => other.ZoneFrom!.Si).ToList();
        return PlanLevers.Measure(
            LeverKind.ZoneLength, $"phase:{phase.Id}", "zone_to", to, (from.Si, behind.Count > 0 ? behind.Min() : null),
            end => PlanCopy.WithPhase(plan, phase with { ZoneTo = end }));
    }

    private static Lever? Speed(Plan plan, Roller roller) => roller.Phase is null ? null : PlanLevers.Measure(
        LeverKind.RollerSpeed, $"roller:{roller.Id}", "speed", roller.Speed, (null, PlanLevers.MostOfSpeed * roller.Speed?.Si),
        speed => PlanCopy.WithRoller(plan, roller with { Speed = speed }));

    private static bool Is(string? a, string b) => string.Equals(a, b, StringComparison.Ordinal);
}

/// <summary>Rollers that a remedy adds as a copy of one that is there.</summary>
public static class RollerCopy
{
    private const string Mark = "-added-";

    /// <summary>The address of the roller that was copied, for the address of a copy; any other address as it is.</summary>
    public static string ModelOf(string address)
    {
        var at = address.LastIndexOf(Mark, StringComparison.Ordinal);
        return at > 0 && address.StartsWith("roller:", StringComparison.Ordinal) ? address[..at] : address;
    }

    internal static string FreeId(IReadOnlyList<Roller> rollers, string model)
    {
        for (var number = 1; ; number++)
        {
            var id = $"{model}{Mark}{number.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
            if (rollers.All(roller => !string.Equals(roller.Id, id, StringComparison.Ordinal)))
            {
                return id;
            }
        }
    }
}

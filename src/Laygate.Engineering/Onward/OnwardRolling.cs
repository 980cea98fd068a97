using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Onward;

/// <summary>A phase of the rolling with the rollers that are left.</summary>
/// <param name="Phase">Its id.</param>
/// <param name="Densifies">Whether its passes densify.</param>
/// <param name="Planned">Passes of the plan.</param>
/// <param name="Rollers">Rollers that are left in it.</param>
/// <param name="Follows">Paver speed at which they make all passes, m/s; 0 without a roller, null where it cannot be told.</param>
/// <param name="AtPlannedSpeed">Passes that they make at the speed of the plan; null where it cannot be told.</param>
public sealed record PhaseLeft(string Phase, bool Densifies, int Planned, int Rollers, double? Follows, int? AtPlannedSpeed);

/// <summary>What the rollers that are left can do, by the quantities of the check.</summary>
internal sealed class OnwardRolling
{
    // A product of the same speeds may lie a hair below a whole number.
    private const double Hair = 1e-9;

    private readonly OnwardEvents events;

    /// <summary>Works it out.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="events">What was said, with the rollers that are lost.</param>
    /// <param name="planned">Speed of the paver by the plan, m/s.</param>
    public OnwardRolling(QuantityContext context, OnwardEvents events, double planned)
    {
        this.events = events;
        if (context.Plan.Rolling is not { } rolling)
        {
            return;
        }

        var left = context.For(Left(context.Plan), withSpread: false);
        var phases = new List<PhaseLeft>();
        foreach (var phase in rolling.Phases)
        {
            var rollers = PhaseQuantities.Working(left, phase.Id).Count();
            var speed = rollers == 0 ? 0 : left.Elements.Find($"phase:{phase.Id}") is { } element && left.Get("phase.speed_it_follows", element).Value is NumberValue { Si: var si } ? si : (double?)null;
            if (rollers > 0 && speed is { } follows && !(follows >= Follows))
            {
                Follows = follows;
            }

            if (rollers < PhaseQuantities.Working(context, phase.Id).Count() && phase.Passes is { } passes)
            {
                phases.Add(new PhaseLeft(phase.Id, phase.Kind is PhaseKind.Initial or PhaseKind.Main, passes, rollers, speed, speed is { } v && planned > 0 ? Math.Min(passes, (int)Math.Floor((passes * v / planned) + Hair)) : null));
            }
        }

        Phases = phases;
    }

    /// <summary>Paver speed that all phases with a roller can follow, m/s; null where it cannot be told.</summary>
    public double? Follows { get; }

    /// <summary>Phases that lost a roller.</summary>
    public IReadOnlyList<PhaseLeft> Phases { get; } = [];

    /// <summary>A plan without the rollers that are lost, its pavers no faster than those that are left can follow.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="planned">Speed of the paver by the plan, m/s.</param>
    public Plan Followed(Plan plan, double planned) => events.RollersLost.Count == 0 ? plan
        : Follows is { } most && most < planned ? Left(plan) with { Pavers = [.. plan.Pavers.Select(paver => paver.Speed is null ? paver : paver with { Speed = new Measure<Speed>(paver.Speed.Si * most / planned, UnitTable.Find("m/s")!) })] }
        : Left(plan);

    private Plan Left(Plan plan) => plan.Rolling is not { } rolling ? plan
        : plan with { Rolling = rolling with { Rollers = [.. rolling.Rollers.Where(roller => !events.RollersLost.Contains(roller.Id, StringComparer.Ordinal))] } };
}

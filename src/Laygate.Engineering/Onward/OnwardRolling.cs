using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Onward;

/// <summary>The paver speed that the rollers which are left can follow, by the quantities of the check.</summary>
internal sealed class OnwardRolling
{
    public OnwardRolling(QuantityContext context, OnwardEvents events)
    {
        if (context.Plan.Rolling is not { } rolling)
        {
            return;
        }

        var left = context.For(context.Plan with { Rolling = rolling with { Rollers = [.. rolling.Rollers.Where(roller => !events.RollersLost.Contains(roller.Id, StringComparer.Ordinal))] } }, withSpread: false);
        foreach (var phase in rolling.Phases)
        {
            if (left.Elements.Find($"phase:{phase.Id}") is { } element && left.Get("phase.speed_it_follows", element).Value is NumberValue { Si: var speed } && !(speed >= Follows))
            {
                (Follows, Phase) = (speed, phase.Id);
            }
        }
    }

    /// <summary>That speed, m/s; null where it cannot be told.</summary>
    public double? Follows { get; }

    /// <summary>The phase that follows most slowly.</summary>
    public string? Phase { get; }
}

using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Rolling;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>What one roller does in its phase.</summary>
internal static class RollerTrain
{
    /// <summary>Share of its time in which a roller rolls; null where an input is missing or does not go into the formula.</summary>
    public static double? Efficiency(Calculation calculation, Roller roller, double zone, double reversal) => RollerOutput.Efficiency(
        zone, calculation.Stated("vr", roller.Speed, $"roller:{roller.Id}", "speed"), reversal);

    /// <summary>Time that one reversal costs, s.</summary>
    public static double Reversal(Calculation calculation) =>
        calculation.StatedOr(AssumptionIds.Reversal, "tr", calculation.Context.Plan.Rolling?.Reversal, "plan", "rolling.reversal");

    /// <summary>Strips on the widest mat.</summary>
    public static Answer Strips(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        return calculation.Result("roller.strips", "k", "k = ⌈(W + hl + hr − o) / (b − o)⌉", RollerStrips.Most(calculation, (Roller)element.Subject!));
    }

    /// <summary>Share of its time in which it rolls.</summary>
    public static Answer EfficiencyOf(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        return calculation.Result("roller.efficiency", "E", "E = (L/vr) / (L/vr + tr)", EfficiencyOf(calculation, element));
    }

    /// <summary>Speed at which it gets on, reversals counted.</summary>
    public static Answer EffectiveSpeed(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var roller = (Roller)element.Subject!;
        var speed = calculation.Stated("vr", roller.Speed, element.Address, "speed");
        var efficiency = EfficiencyOf(calculation, element) ?? double.NaN;
        return calculation.Result(
            "roller.effective_speed", "ve", "ve = E · vr", PassTimes.EffectiveSpeed(efficiency, speed));
    }

    /// <summary>Paver speed that it can follow alone.</summary>
    public static Answer Follows(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var roller = (Roller)element.Subject!;
        if (PhaseOf(calculation, element) is not { } phase)
        {
            return calculation.Stopped!;
        }

        var passes = calculation.Stated("n", phase.Passes, $"phase:{phase.Id}", "passes");
        return calculation.Result("roller.speed_it_follows", "v", "v = E · vr / (k · n)", PhaseQuantities.Follows(
            calculation, roller, PhaseQuantities.Zone(calculation, phase), Reversal(calculation), passes));
    }

    /// <summary>Static load of the heavier drum per width.</summary>
    public static Answer LinearLoad(QuantityContext context, Element element)
    {
        var roller = (Roller)element.Subject!;
        if (roller.LinearLoad is not null || roller.Kind is not RollerKind.Tandem)
        {
            return roller.Kind is null && roller.LinearLoad is null
                ? Answer.Missing(new InputReference(element.Address, "linear_load"), new InputReference(element.Address, "kind"))
                : Answers.Measure(roller.LinearLoad, new InputReference(element.Address, "linear_load"));
        }

        var calculation = new Calculation(context);
        var mass = calculation.Stated("m", roller.Mass, element.Address, "mass");
        var drum = calculation.Stated("b", roller.DrumWidth, element.Address, "drum_width");
        var share = calculation.Assumed(AssumptionIds.DrumShare, "s", element.Address, new InputReference(element.Address, "linear_load"));
        return calculation.Result(
            "roller.linear_load", "p", "p = s · m · g / b", RollerOutput.LinearLoad(share * mass, drum));
    }

    /// <summary>Passes that it vibrates in its phase.</summary>
    public static Answer PassesVibrated(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var roller = (Roller)element.Subject!;
        if (roller.Mode is null)
        {
            return Answer.Missing(new InputReference(element.Address, "mode"));
        }

        var vibrated = roller is not { Mode: RollingMode.Vibration, Kind: not RollerKind.Pneumatic } ? 0
            : roller.PassesInMode is { } some ? calculation.Stated("n", some, element.Address, "passes_in_mode")
            : PhaseOf(calculation, element) is { } phase ? calculation.Stated("n", phase.Passes, $"phase:{phase.Id}", "passes") : 0;
        return calculation.Result("roller.passes_vibrated", "n", "n = passes in this mode, else those of the phase", vibrated);
    }

    private static double? EfficiencyOf(Calculation calculation, Element element) => PhaseOf(calculation, element) is { } phase
        ? Efficiency(calculation, (Roller)element.Subject!, PhaseQuantities.Zone(calculation, phase), Reversal(calculation))
        : null;

    private static Phase? PhaseOf(Calculation calculation, Element element)
    {
        if (calculation.Context.Elements.Related(element, ElementKind.Phase)?.Subject is Phase phase)
        {
            return phase;
        }

        calculation.Miss(element.Address, "phase");
        return null;
    }
}

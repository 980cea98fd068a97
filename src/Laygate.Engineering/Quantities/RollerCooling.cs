using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Core against skin under a vibrating roller.</summary>
internal static class RollerCooling
{
    /// <summary>Largest core-skin difference while the roller vibrates on a skin below the tender limit of the top course.</summary>
    public static Answer CoreSkin(QuantityContext context, Element element) => WhileVibrating(context, element, (calculation, pass, roller) =>
    {
        MatLimits.Tender(calculation, pass.Top);
        return CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) ?? CoolingInputs.Result(
            calculation, "roller.core_skin_difference", "ΔT", "ΔT = largest T(core) − T(skin) while T(skin) < Tt",
            MatCooling.Of(context).While(pass).Find($"vibration {roller.Id}"), MatCooling.LongestRolling);
    });

    /// <summary>What is asked of the uppermost hot body while a roller vibrates on it; what is missing where there is no body or the roller has no phase.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="element">The roller.</param>
    /// <param name="ask">Asks; the time of vibration is read already.</param>
    public static Answer WhileVibrating(QuantityContext context, Element element, Func<Calculation, PavingPass, Roller, Answer> ask)
    {
        var calculation = new Calculation(context);
        var roller = (Roller)element.Subject!;
        if (PlanView.Of(context).Passes is not [.., var pass])
        {
            return Answer.Missing(new InputReference("plan", "courses"));
        }

        if (context.Elements.Related(element, ElementKind.Phase)?.Subject is not Phase phase)
        {
            return Answer.Missing(new InputReference(element.Address, "phase"));
        }

        VibrationSpan.Of(calculation, roller, phase);
        return ask(calculation, pass, roller);
    }

    /// <summary>Lowest mid-depth temperature of the courses at the end of the last vibrated pass.</summary>
    public static Answer MidDepth(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        if (PlanView.Of(context).Passes is not [.., var body])
        {
            return Answer.Missing(new InputReference("plan", "courses"));
        }

        if (context.Elements.Related(element, ElementKind.Phase)?.Subject is not Phase phase)
        {
            return Answer.Missing(new InputReference(element.Address, "phase"));
        }

        var vibrated = calculation.Quantity("n", "roller.passes_vibrated", element);
        var passes = PassPlan.Of(calculation, phase);
        if (CoolingInputs.Gather(calculation, body, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        if (!(vibrated >= 1 && vibrated <= passes.Count))
        {
            return calculation.Result("roller.mid_depth_while_vibrating", "T", "T = least T(mid-depth)", null);
        }

        var time = passes[(int)vibrated - 1].Latest;
        var cooling = MatCooling.Of(context).While(body, time);
        return CoolingInputs.Result(
            calculation, "roller.mid_depth_while_vibrating", "T", "T = least T(mid-depth)", cooling.At("least middle", time), MatCooling.LongestRolling);
    }
}

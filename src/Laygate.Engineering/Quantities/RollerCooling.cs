using Laygate.Engineering.Mat;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Core against skin under a vibrating roller.</summary>
internal static class RollerCooling
{
    /// <summary>Largest core-skin difference while the roller vibrates on a skin below the tender limit of the top course.</summary>
    public static Answer CoreSkin(QuantityContext context, Element element)
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
        MatLimits.Tender(calculation, pass.Top);
        if (CoolingInputs.Gather(calculation, pass, CoolingQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).While(pass);
        return CoolingInputs.Result(
            calculation, "roller.core_skin_difference", "ΔT", "ΔT = largest T(core) − T(skin) while T(skin) < Tt", (cooling.Failure, cooling.Weather),
            cooling.BandUnder(roller.Id), MatCooling.LongestRolling);
    }
}

using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;

namespace Laygate.Engineering.Quantities;

/// <summary>Core against skin of a pair.</summary>
internal static class PairCooling
{
    /// <summary>Largest core-skin difference during the rolling.</summary>
    public static Answer CoreSkin(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var pass = PlanView.Of(context).PassOf(((Pair)element.Subject!).Upper);
        MatLimits.Rolling(calculation);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).While(pass);
        return CoolingInputs.Result(
            calculation, "pair.core_skin_difference", "ΔT", "ΔT = largest T(core) − T(skin)", cooling.Find("core-skin"), MatCooling.LongestRolling);
    }
}

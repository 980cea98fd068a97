using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;

namespace Laygate.Engineering.Quantities;

/// <summary>Time for grit, and time until opening.</summary>
internal static class GritAndOpeningCooling
{
    /// <summary>Minutes behind the last screed until the skin is too cold to take grit.</summary>
    public static Answer GritWindow(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        if (PlanView.Of(context).Passes is not [.., var pass])
        {
            return Answer.Missing(new InputReference("plan", "courses"));
        }

        MatLimits.Embedment(calculation, pass.Top);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).While(pass);
        return CoolingInputs.Result(
            calculation, "early-friction.grit_window", "tg", "T(skin, tg) = Tg", cooling.Find("grit"), MatCooling.LongestRolling);
    }

    /// <summary>Lowest stated air temperature from the end of laying to the opening.</summary>
    public static Answer AirLowestBefore(QuantityContext context, Element element)
    {
        var clock = PlanView.Of(context).Clock;
        var input = new InputReference("weather", "hours");
        if (LayingEnd.Of(context) is not { } end)
        {
            return Answer.Missing(ShiftTimes.Missing(context.Plan.Shift));
        }

        var opened = context.Get("opening.at", element).Value is MomentValue moment ? moment.At : DateTimeOffset.MaxValue;
        var table = WeatherTable.Of(context);
        var stated = table?.Rows().Where(row => row.At > end && row.At <= opened).Select(row => row.Hour) ?? [];
        var air = table is null || table.First > end ? null : stated.Prepend(table.At(end)).Select(hour => hour.Air).OfType<IMeasure>().MinBy(value => value.Si);
        return Answers.Measure(air, input);
    }

    /// <summary>Minutes from the last metre until what has been laid may be laid upon.</summary>
    public static Answer OverlaidFrom(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        if (PlanView.Of(context).Passes is not [.., var pass])
        {
            return Answer.Missing(new InputReference("plan", "courses"));
        }

        calculation.Assumed(AssumptionIds.OverlayLimit, "To", element.Address, null);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Slow) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).Until(pass);
        return CoolingInputs.Result(
            calculation, "existing.cooled_for_overlay", "to", "T(core, to) = To", cooling.OverlaidFrom, MatCooling.LongestOpening);
    }

    /// <summary>Minutes from the last metre until the whole hot body is below the opening temperature.</summary>
    public static Answer SoftUntil(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        if (PlanView.Of(context).Passes is not [.., var pass])
        {
            return Answer.Missing(new InputReference("plan", "courses"));
        }

        calculation.Stated("To", context.Plan.Opening?.Below?.Value, element.Address, "below.value");
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Slow) is { } stopped)
        {
            return stopped;
        }

        var cooling = MatCooling.Of(context).Until(pass);
        return CoolingInputs.Result(
            calculation, "opening.soft_until", "ts", "T(core, ts) = To", cooling.SoftUntil, MatCooling.LongestOpening);
    }
}

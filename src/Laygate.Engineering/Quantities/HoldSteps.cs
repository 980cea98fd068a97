using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>In which part of the shift a hold point lies.</summary>
internal static class HoldSteps
{
    // Read only where `step` is not stated, and only words that leave no doubt.
    private static readonly string[] Laying = ["first load", "first mix", "first truck", "laying", "paving starts", "paving begins", "start of paving", "is tipped"];
    private static readonly string[] Opening = ["opening", "opened", "traffic"];

    /// <summary>The fullest hold point of a step; absent, with what to state, where the plan has none.</summary>
    public static Answer Of(QuantityContext context, HoldStep step) => Answers.Fullest(
        context.Plan.HoldPoints.Where(point => StepOf(point) == step).Select(QualityQuantities.Complete),
        new InputReference("plan", "hold_points"), Words.Of(step), "step", "criterion", "evidence", "owner", "released_by");

    /// <summary>The stated step, else what the text of <c>before</c> says beyond doubt; null where it leaves doubt.</summary>
    public static HoldStep? StepOf(HoldPoint point) =>
        point.Step ?? (Says(point, Opening) ? HoldStep.BeforeOpening : Says(point, Laying) ? HoldStep.BeforeLaying : null);

    private static bool Says(HoldPoint point, string[] words) =>
        Array.Exists(words, word => point.Before?.Contains(word, StringComparison.OrdinalIgnoreCase) == true);
}

using Laygate.Engineering.Quantities;
using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Times of trucks and of moves of the paver where a plan leaves them out, and where a gradient or a shift becomes a hazard.</summary>
internal static class WorkAssumptions
{
    private const string ShiftGuidance = "Health and Safety Executive, HSG256, Managing shift work, 2006, guidance on the length of shifts (recalled)";

    public static IReadOnlyList<Assumption> All { get; } =
    [
        LaygateAssumptions.Judged(Loading, "Time to load one truck.", 5, "min", 3, 10),
        LaygateAssumptions.Judged(Ticket, "Time for weighing, ticket and sheeting.", 4, "min", 2, 8),
        LaygateAssumptions.Judged(Wait, "Time that a truck waits on site.", 5, "min", 0, 20),
        LaygateAssumptions.Judged(Cleaning, "Time to clean the body after unloading.", 3, "min", 0, 6),
        LaygateAssumptions.Judged(Exchange, "Time for one truck to leave and the next to dock and tip.", 1.5, "min", 1, 2),
        LaygateAssumptions.Judged(PaverTravel, "Speed at which a paver goes to the next run, screed lifted.", 3, "km/h", 2, 10),
        LaygateAssumptions.Judged(PaverReset, "Time to lift the screed at the end of a run, and to set it down and level it at the next.", 20, "min", 10, 40),
        LaygateAssumptions.Judged(MarkedGradient, "Gradient from which machines and trucks can roll away unless they are held.", 5, "%", 3, 8),
        new(LongDay, "Set-up and laying by day from which a shift counts as long.", 12, "h", 10, 12, ShiftGuidance, Evidence.Recalled),
        new(LongNight, "Set-up and laying by night from which a shift counts as long.", 8, "h", 8, 10, ShiftGuidance, Evidence.Recalled),
    ];
}

using static Laygate.Engineering.Assumptions.AssumptionIds;

namespace Laygate.Engineering.Assumptions;

/// <summary>Times of trucks where a plan leaves them out.</summary>
internal static class WorkAssumptions
{
    public static IReadOnlyList<Assumption> All { get; } =
    [
        LaygateAssumptions.Judged(Loading, "Time to load one truck.", 5, "min", 3, 10),
        LaygateAssumptions.Judged(Ticket, "Time for weighing, ticket and sheeting.", 4, "min", 2, 8),
        LaygateAssumptions.Judged(Wait, "Time that a truck waits on site.", 5, "min", 0, 20),
        LaygateAssumptions.Judged(Cleaning, "Time to clean the body after unloading.", 3, "min", 0, 6),
        LaygateAssumptions.Judged(Exchange, "Time for one truck to leave and the next to dock and tip.", 1.5, "min", 1, 2),
    ];
}

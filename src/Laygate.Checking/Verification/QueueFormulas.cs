using Laygate.Engineering.Supply.Queueing;
using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of queueing, and the order of loads.</summary>
internal static class QueueFormulas
{
    private static readonly CaseInput Customers = new("customers", CaseDimension.Count);
    private static readonly CaseInput Servers = new("servers", CaseDimension.Count);

    private static readonly CaseInput[] Source = [new("away", CaseDimension.Duration), new("service", CaseDimension.Duration), Customers, Servers];
    private static readonly CaseInput[] Table = [new("service_factor", CaseDimension.Plain), Customers, Servers];

    private static readonly CaseInput[] Network =
        [new("trucks", CaseDimension.Count), new("travel", CaseDimension.Duration), new("loading", CaseDimension.Duration), new("unloading", CaseDimension.Duration)];

    private static readonly CaseInput[] Order =
        [new("ratio", CaseDimension.Plain), new("lower_payload", CaseDimension.Mass), new("upper_payload", CaseDimension.Mass), new("group", CaseDimension.Count)];

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("finite-source-use", CaseDimension.Plain, Source, i => Of(i)?.ServerUse),
        new("finite-source-all-idle", CaseDimension.Plain, Source, i => Of(i)?.AllIdle),
        new("finite-source-waiting", CaseDimension.Plain, Source, i => Of(i)?.Waiting),
        new("finite-source-wait-in-services", CaseDimension.Plain, Source, i => Of(i)?.Wait / i["service"]),
        new("finite-queue-delay", CaseDimension.Plain, Table, i => Row(i)?.Delay),
        new("finite-queue-efficiency", CaseDimension.Plain, Table, i => Row(i)?.Efficiency),
        new("closed-network-loads-per-hour", CaseDimension.Plain, Network, i => Means(i)?.Throughput * 3600),
        new("closed-network-use", CaseDimension.Plain, Network, i => Means(i)?.Use[1]),
        new("closed-network-wait-loading", CaseDimension.Duration, Network, i => Means(i)?.Wait[0]),
        new("closed-network-wait-unloading", CaseDimension.Duration, Network, i => Means(i)?.Wait[1]),
        new("closed-network-cycle", CaseDimension.Duration, Network, i => Means(i)?.Cycle),
        new("loads-per-hour-without-variation", CaseDimension.Plain, Network,
            i => ClosedNetwork.DeterministicBound(i.Whole("trucks"), i["travel"], [i["loading"], i["unloading"]]) * 3600),
        new("lower-loads-of-group", CaseDimension.Count, Order, Group),
    ];

    private static FiniteSourceState? Of(CaseInputs i) => FiniteSource.Of(i["away"], i["service"], i.Whole("customers"), i.Whole("servers"));

    private static FiniteQueueRow? Row(CaseInputs i) => FiniteSource.TableRow(i["service_factor"], i.Whole("customers"), i.Whole("servers"));

    private static ClosedNetworkState? Means(CaseInputs i) =>
        ClosedNetwork.MeanValues(i.Whole("trucks"), i["travel"], [i["loading"], i["unloading"]]);

    /// <summary>Loads of the lower mix before the upper load of a number, since the one before it.</summary>
    private static double? Group(CaseInputs i)
    {
        const int Loads = 800;
        var order = LoadOrder.ByBalance(
            [.. Enumerable.Repeat(i["lower_payload"], Loads)], [.. Enumerable.Repeat(i["upper_payload"], Loads)], i["ratio"]);
        var (uppers, lowers) = (0, 0);
        foreach (var isUpper in order ?? [])
        {
            lowers = isUpper ? lowers : lowers + 1;
            if (isUpper && ++uppers == i.Whole("group"))
            {
                return lowers;
            }

            lowers = isUpper ? 0 : lowers;
        }

        return null;
    }
}

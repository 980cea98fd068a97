namespace Laygate.Engineering.Supply.Queueing;

/// <summary>Publications that the queueing formulas cite.</summary>
internal static class QueueSources
{
    /// <summary>Finite-source queue.</summary>
    public const string FiniteSource =
        "An Introduction to Management Science, p. 497, eqs 11.35-11.39 (machine repair, read); set up for paving by Trani, Virginia Tech CEE 3604, \"Finite source stochastic queues: paving operations\" (set-up read)";

    /// <summary>Finite-queue table.</summary>
    public const string Table =
        "limited-population table for operations management, population 5 (read); origin Peck and Hazelwood, Finite Queuing Tables (from memory)";

    /// <summary>Closed network.</summary>
    public const string ClosedNetwork =
        "mean value analysis, Reiser and Lavenberg, Journal of the ACM 27(2), 1980 (from memory); paving as a closed network: Maher and Cabrera, Highway Engineer 22(11), 1975 (abstract read)";

    /// <summary>Deterministic bound.</summary>
    public const string Bound = "asymptotic bounds of a closed network, derived here";
}

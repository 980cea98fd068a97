using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Ids of the remarks that the simulation hands out. Reporting words them; each says which arguments come with it.</summary>
public static class SimulationNotes
{
    /// <summary>Too few trucks carry a mix for each paver that lays it at the same time to have one. Argument: <c>mix</c>, an id.</summary>
    public const string TooFewTrucks = "simulation-too-few-trucks";

    /// <summary>One feeder would have to serve several trains. Argument: <c>feeder</c>, an id.</summary>
    public const string SharedFeeder = "simulation-shared-feeder";

    /// <summary>A mix that is laid has no truck. Argument: <c>mix</c>, an id.</summary>
    public const string NoTrucks = "simulation-no-trucks";

    /// <summary>The plant of a group of trucks does not make its mix. Arguments: <c>plant</c> and <c>mix</c>, ids.</summary>
    public const string PlantWithoutMix = "simulation-plant-without-mix";

    /// <summary>
    /// Beginning of the ids that say what a standing paver waits for; a word of <see cref="StopCause"/> follows. Arguments:
    /// <c>share</c>, a number in %; for dispatch that is assumed also <c>timetable</c> and <c>as_loaded</c>, the chances of a stop in %.
    /// </summary>
    public const string WaitsFor = "simulation-waits-for-";

    /// <summary>Ending of the id where the paver waits for loads that are held back, and the plan does not say how loads are sent.</summary>
    public const string Assumed = "-assumed";

    /// <summary>The loading place alone is slower than the paver, so more trucks do not help. Argument: <c>plant</c>, an id.</summary>
    public const string LoadingTooSlow = "loading-too-slow";

    /// <summary>The id that names one cause of a stop.</summary>
    public static string Of(StopCause cause) => WaitsFor + Words.Of(cause);

    /// <summary>The cause that an id names; null for other remarks.</summary>
    public static StopCause? CauseOf(string id) => id.StartsWith(WaitsFor, StringComparison.Ordinal)
        ? Words.Find<StopCause>(id[WaitsFor.Length..].Replace(Assumed, string.Empty, StringComparison.Ordinal))
        : null;

    /// <summary>The shift, a journey or the number of loads is too large to be simulated. Arguments: <c>hours</c> and <c>loads</c>, numbers that are the limits.</summary>
    public const string TooLarge = "simulation-too-large";
}

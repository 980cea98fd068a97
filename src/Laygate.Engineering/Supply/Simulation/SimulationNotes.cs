namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Ids of the remarks that the simulation hands out. Reporting words them; each says which arguments come with it.</summary>
public static class SimulationNotes
{
    /// <summary>Several trains take one mix from the same trucks without laying side by side at one speed. Argument: <c>mix</c>, an id.</summary>
    public const string SharedTrucks = "simulation-shared-trucks";

    /// <summary>One feeder would have to serve several trains. Argument: <c>feeder</c>, an id.</summary>
    public const string SharedFeeder = "simulation-shared-feeder";

    /// <summary>A mix that is laid has no truck. Argument: <c>mix</c>, an id.</summary>
    public const string NoTrucks = "simulation-no-trucks";

    /// <summary>The plant of a group of trucks does not make its mix. Arguments: <c>plant</c> and <c>mix</c>, ids.</summary>
    public const string PlantWithoutMix = "simulation-plant-without-mix";

    /// <summary>The shift, a journey or the number of loads is too large to be simulated. Arguments: <c>hours</c> and <c>loads</c>, numbers that are the limits.</summary>
    public const string TooLarge = "simulation-too-large";
}

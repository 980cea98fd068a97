namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Ids of the remarks that the simulation hands out. Reporting words them; each says which arguments come with it.</summary>
public static class SimulationNotes
{
    /// <summary>More than one pass of the paver in the shift, one upon the other; only one is simulated. Argument: <c>count</c>, a number.</summary>
    public const string SeveralPasses = "simulation-several-passes";

    /// <summary>Several pavers lay one course at the same time and share the supply. Argument: <c>course</c>, an id.</summary>
    public const string SeveralPavers = "simulation-several-pavers";

    /// <summary>A mix that is laid has no truck. Argument: <c>mix</c>, an id.</summary>
    public const string NoTrucks = "simulation-no-trucks";

    /// <summary>The plant of a group of trucks does not make its mix. Arguments: <c>plant</c> and <c>mix</c>, ids.</summary>
    public const string PlantWithoutMix = "simulation-plant-without-mix";

    /// <summary>The shift, a journey or the number of loads is too large to be simulated. Arguments: <c>hours</c> and <c>loads</c>, numbers that are the limits.</summary>
    public const string TooLarge = "simulation-too-large";
}

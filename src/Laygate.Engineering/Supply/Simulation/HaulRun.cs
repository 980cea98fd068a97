namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Runs plain networks of stations and journeys, for which queueing theory has exact answers.</summary>
public static class HaulRun
{
    /// <summary>Most events of one run; a run that needs more is turned down.</summary>
    public const long MostEvents = 1_000_000_000;

    /// <summary>Watches one station of a network in independent replications.</summary>
    /// <param name="network">The network; no stop may be the paving site.</param>
    /// <param name="station">Position of the station.</param>
    /// <param name="warmUp">Time before it is watched, s.</param>
    /// <param name="watched">Time watched, s.</param>
    /// <param name="replications">Number of replications.</param>
    /// <param name="seed">Seed.</param>
    /// <returns>What was seen in each replication; null when the network cannot be run or needs too many events.</returns>
    public static IReadOnlyList<StationTally>? Watch(
        HaulNetwork network, int station, double warmUp, double watched, int replications, ulong seed)
    {
        if (!network.IsUsable || station < 0 || station >= network.Stations.Count || !(warmUp >= 0) || !(watched > 0)
            || !double.IsFinite(warmUp + watched) || network.Groups.SelectMany(group => group.Round).Any(stop => stop.Station < 0))
        {
            return null;
        }

        var engine = new HaulEngine(network);
        var tallies = new List<StationTally>(Math.Max(0, replications));
        for (var i = 0; i < replications; i++)
        {
            engine.Reset(seed, i);
            if (!engine.Run(warmUp, MostEvents))
            {
                return null;
            }

            engine.Watch(station, warmUp);
            if (!engine.Run(warmUp + watched, MostEvents))
            {
                return null;
            }

            tallies.Add(engine.Tally(station, warmUp + watched));
        }

        return tallies;
    }
}

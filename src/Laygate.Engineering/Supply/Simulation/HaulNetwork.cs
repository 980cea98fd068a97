using System.Runtime.InteropServices;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>A place with servers and one queue in order of arrival, for example a loading place or a paver that unloads one truck at a time.</summary>
/// <param name="Servers">Number of servers, at least 1.</param>
public sealed record HaulStation(int Servers);

/// <summary>A stop of a truck's round: service at a station, then the journey to the next stop.</summary>
/// <param name="Station">Position of the station in the network; −1 for the paving site of a shift.</param>
/// <param name="Service">Service there; not used at the paving site.</param>
/// <param name="Journey">Journey to the next stop.</param>
public sealed record HaulStop(int Station, TimeSpread Service, TimeSpread Journey);

/// <summary>Trucks that drive the same round; their number stays the same.</summary>
/// <param name="Count">Number of trucks.</param>
/// <param name="Round">Stops in order; after the last comes the first.</param>
/// <param name="Start">Moment at which all stand at the first stop, s.</param>
public sealed record HaulGroup(int Count, IReadOnlyList<HaulStop> Round, double Start = 0);

/// <summary>Stations and groups of trucks.</summary>
/// <param name="Stations">Stations.</param>
/// <param name="Groups">Groups.</param>
public sealed record HaulNetwork(IReadOnlyList<HaulStation> Stations, IReadOnlyList<HaulGroup> Groups)
{
    /// <summary>Number of trucks.</summary>
    public int Trucks => Groups.Sum(group => group.Count);

    /// <summary>Whether it can be simulated: a truck at least, known stations with servers, usable times.</summary>
    public bool IsUsable => Trucks is > 0 and <= 10_000 && Groups.All(group => group is { Count: >= 0, Round.Count: > 0 } && double.IsFinite(group.Start))
        && Stations.All(station => station.Servers is > 0 and <= 10_000)
        && Groups.SelectMany(group => group.Round).All(stop =>
            stop.Station >= -1 && stop.Station < Stations.Count && stop.Service.IsUsable && stop.Journey.IsUsable);
}

/// <summary>What happened at a station while it was watched.</summary>
/// <param name="Departures">Trucks served.</param>
/// <param name="Time">Time watched, s.</param>
/// <param name="Busy">Time in service, summed over the servers, s.</param>
/// <param name="Waited">Time in the queue, summed over the trucks, s.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct StationTally(long Departures, double Time, double Busy, double Waited)
{
    /// <summary>Trucks served per second.</summary>
    public double Throughput => Departures / Time;

    /// <summary>Mean time in the queue, s.</summary>
    public double Wait => Waited / Departures;
}

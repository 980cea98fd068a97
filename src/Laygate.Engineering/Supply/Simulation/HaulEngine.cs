using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// The event loop of trucks on their rounds. It runs plain networks, for which queueing theory has exact answers, and the
/// shift, where one stop is the paving site. A station with a queue in order of arrival needs no event for the end of a
/// service: it is known on arrival. Nothing is allocated while it runs. Each time belongs to a load: the n-th load of a group
/// meets the same service and journeys whatever else is changed.
/// </summary>
internal sealed partial class HaulEngine
{
    private readonly Stop[] stops;
    private readonly int[] firstStop;
    private readonly int[] groupOf;
    private readonly double[] start;
    private readonly ulong[] streams;
    private readonly Servers[] stations;
    private readonly int[] at;
    private readonly int[] load;
    private readonly int[] loads;
    private readonly Calendar calendar;
    private readonly PavingSite? site;

    /// <summary>Creates the engine of a usable network.</summary>
    public HaulEngine(HaulNetwork network, PavingSite? site = null)
    {
        this.site = site;
        firstStop = new int[network.Groups.Count];
        stops = Stops(network.Groups);
        groupOf = [.. network.Groups.SelectMany((group, g) => Enumerable.Repeat(g, group.Count))];
        start = [.. network.Groups.Select(group => group.Start)];
        stations = [.. network.Stations.Select(station => new Servers(station.Servers))];
        streams = new ulong[2 * stops.Length];
        at = new int[groupOf.Length];
        load = new int[groupOf.Length];
        loads = new int[network.Groups.Count];
        calendar = new Calendar(groupOf.Length);
    }

    /// <summary>Events so far.</summary>
    public long Events { get; private set; }

    /// <summary>Number of trucks.</summary>
    public int Trucks => groupOf.Length;

    /// <summary>Puts all trucks at their first stop and all streams at their beginning.</summary>
    public void Reset(ulong seed, int replication)
    {
        Events = 0;
        for (var i = 0; i < streams.Length; i++)
        {
            streams[i] = RandomStream.Start(seed, replication, i);
        }

        foreach (ref var station in stations.AsSpan())
        {
            station.Clear();
        }

        calendar.Clear();
        Array.Clear(loads);
        for (var truck = 0; truck < at.Length; truck++)
        {
            at[truck] = firstStop[groupOf[truck]];
            calendar.Set(truck, start[groupOf[truck]]);
        }
    }

    /// <summary>Runs up to a moment or a number of events; both bounds always hold.</summary>
    /// <returns>Whether the moment was reached, or nothing was left to do.</returns>
    public bool Run(double until, long mostEvents)
    {
        while (true)
        {
            var time = calendar.FirstTime;
            var fromSite = site is not null && site.Next <= time;
            time = fromSite ? site!.Next : time;
            if (!(time <= until) || site is { IsOver: true })
            {
                return true;
            }

            if (Events >= mostEvents)
            {
                return false;
            }

            Events++;

            if (fromSite)
            {
                site!.Continue(time, this);
            }
            else
            {
                Arrive(calendar.First, time);
            }
        }
    }

    /// <summary>Starts to watch a station.</summary>
    public void Watch(int station, double from) => stations[station].Watch(from);

    /// <summary>What happened at a station since it is watched.</summary>
    public StationTally Tally(int station, double until) => stations[station].Tally(until);

    /// <summary>Sends a truck on its way from the paving site.</summary>
    public void Release(int truck, double now) => Leave(truck, ref stops[at[truck]], now);

    /// <summary>Loads a truck that waited at its plant to be called.</summary>
    public void Call(int truck, double now) => Arrive(truck, now);

    private void Arrive(int truck, double now)
    {
        ref var stop = ref stops[at[truck]];
        if (stop.Station < 0)
        {
            calendar.Set(truck, double.PositiveInfinity);
            site!.Arrive(truck, now, this);
            return;
        }

        ref var station = ref stations[stop.Station];
        var slot = station.EarliestFree();
        var begin = Math.Max(now, station.FreeAt(slot));
        var number = stop.Loads ? loads[stop.Group] : load[truck];
        var end = begin + stop.Service.Of(streams[2 * at[truck]], number);
        if (stop.Loads && site is not null)
        {
            end = site.Load(truck, stop.Group, now, begin, end);
            if (double.IsPositiveInfinity(end))
            {
                calendar.Set(truck, end); // Nothing left to load: the truck goes home; or it waits to be called.
                return;
            }
        }

        load[truck] = number;
        loads[stop.Group] += stop.Loads ? 1 : 0;
        station.Serve(slot, now, begin, end);
        Leave(truck, ref stop, end);
    }

    private void Leave(int truck, ref Stop stop, double now)
    {
        var next = now + stop.Journey.Of(streams[(2 * at[truck]) + 1], load[truck]);
        at[truck] = stop.Next;
        calendar.Set(truck, next);
    }

    private Stop[] Stops(IReadOnlyList<HaulGroup> groups)
    {
        var all = new List<Stop>();
        for (var g = 0; g < groups.Count; g++)
        {
            var round = groups[g].Round;
            firstStop[g] = all.Count;
            for (var i = 0; i < round.Count; i++)
            {
                var next = firstStop[g] + ((i + 1) % round.Count);
                all.Add(new Stop(round[i].Station, new Sampler(round[i].Service), new Sampler(round[i].Journey), next, g, i == 0));
            }
        }

        return [.. all];
    }

    private readonly record struct Stop(int Station, Sampler Service, Sampler Journey, int Next, int Group, bool Loads);
}

using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What one train lays of each mix.</summary>
/// <param name="Train">The train.</param>
/// <param name="Stretches">What it lays, in order.</param>
internal sealed record TrainDemand(PavingTrain Train, IReadOnlyList<ShiftStretch> Stretches)
{
    /// <summary>Mix to be laid by mix, kg.</summary>
    public IReadOnlyDictionary<string, double> Tonnages { get; } = Stretches
        .SelectMany(stretch => Train.Lanes.Select((lane, i) => (lane.Course.Mix, Mass: stretch.Length * stretch.PerMetre[i])))
        .GroupBy(part => part.Mix, StringComparer.Ordinal)
        .ToDictionary(mix => mix.Key, mix => mix.Sum(part => part.Mass), StringComparer.Ordinal);

    /// <summary>Mix laid per time, kg/s; 0 of a mix that the train does not lay.</summary>
    public double Rate(string mix) => Tonnages.TryGetValue(mix, out var mass) && Train.Ends > Train.Begins ? mass / (Train.Ends - Train.Begins) : 0;

    /// <summary>Whether both lay at the same time.</summary>
    public bool Overlaps(TrainDemand other) => Train.Begins < other.Train.Ends && other.Train.Begins < Train.Ends;

    /// <summary>Whether one of the pavers is named.</summary>
    public bool Has(string paver) => Train.Lanes.Any(lane => PlanView.Same(lane.Paver.Id, paver));
}

/// <summary>
/// Gives each train trucks and plant of its own. Trucks that the plan gives to a paver serve that one; the others are dealt out among the trains that
/// lay their mix at the same time, by what each lays in an hour, and stay with it. In truth a dispatcher may send a free truck to whoever needs it
/// most; trucks that stay are never better off, so stops and finish lie on the safe side. Trains that lay one after the other each have all trucks.
/// </summary>
internal sealed class TruckDeal
{
    private readonly TrainDemand own;
    private readonly IReadOnlyList<TrainDemand> beside;
    private readonly Dictionary<string, int> counts = new(StringComparer.Ordinal);

    /// <summary>Deals.</summary>
    /// <param name="own">The train that gets its trucks.</param>
    /// <param name="all">All trains.</param>
    /// <param name="trucks">All groups of trucks.</param>
    public TruckDeal(TrainDemand own, IReadOnlyList<TrainDemand> all, IReadOnlyList<TruckGroup> trucks)
    {
        this.own = own;
        // This train keeps its place among the others, so that each of them deals alike.
        beside = [.. all.Where(other => ReferenceEquals(other, own) || other.Overlaps(own))];
        foreach (var mix in trucks.Where(group => group.Mix is not null).GroupBy(group => group.Mix!, StringComparer.Ordinal))
        {
            Deal(mix.Key, [.. mix]);
        }
    }

    /// <summary>Trucks of a group that serve this train.</summary>
    public int Count(TruckGroup trucks) => counts.GetValueOrDefault(trucks.Id);

    /// <summary>Whether a group is dealt out among several trains, because the plan does not say whom it serves.</summary>
    public bool IsDealt(TruckGroup trucks) => trucks is { Paver: null, Mix: { } mix } && Laying(mix).Count > 1;

    /// <summary>Share of what a plant makes that this train takes while others lay, 0 to 1.</summary>
    /// <param name="makes">Whether the plant makes a mix.</param>
    public double ShareOf(Func<string, bool> makes)
    {
        var rates = beside.Select(train => train.Tonnages.Keys.Where(makes).Sum(train.Rate)).ToList();
        return beside.Count > 1 && rates.Sum() > 0 ? own.Tonnages.Keys.Where(makes).Sum(own.Rate) / rates.Sum() : 1;
    }

    private List<TrainDemand> Laying(string mix) => [.. beside.Where(train => train.Rate(mix) > 0)];

    // One truck after the other to the train that has least for what it lays, what the plan gives it counted first.
    private void Deal(string mix, List<TruckGroup> groups)
    {
        var laying = Laying(mix);
        var isDealt = laying.Count > 1 && groups.Sum(group => (long)(group.Count ?? 0)) <= ShiftSimulator.MostLoads; // More are not simulated.
        var has = laying.Select(train => groups.Where(group => group.Paver is { } paver && train.Has(paver)).Sum(group => (long)(group.Count ?? 0))).ToArray();
        foreach (var group in groups)
        {
            counts[group.Id] = group.Paver is { } paver ? own.Has(paver) ? group.Count ?? 0 : 0 : isDealt ? Dealt(group.Count ?? 0) : group.Count ?? 0;
        }

        int Dealt(int count)
        {
            var mine = 0;
            for (var i = 0; i < count; i++)
            {
                var next = Enumerable.Range(0, laying.Count).MinBy(train => (has[train] + 1) / laying[train].Rate(mix));
                has[next]++;
                mine += ReferenceEquals(laying[next], own) ? 1 : 0;
            }

            return mine;
        }
    }
}

using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What one train lays of each mix.</summary>
/// <param name="Train">The train.</param>
/// <param name="Tonnages">Mix to be laid by mix, kg.</param>
internal sealed record TrainDemand(PavingTrain Train, IReadOnlyDictionary<string, double> Tonnages)
{
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
internal sealed class TruckDeal(Calculation calculation, TrainDemand own, IReadOnlyList<TrainDemand> all)
{
    // This train keeps its place among the others, so that each of them deals alike.
    private readonly IReadOnlyList<TrainDemand> beside = [.. all.Where(other => ReferenceEquals(other, own) || other.Overlaps(own))];

    /// <summary>Share of what a plant makes that this train takes while others lay, 0 to 1.</summary>
    /// <param name="makes">Whether the plant makes a mix.</param>
    public double ShareOf(Func<string, bool> makes)
    {
        var rates = beside.Select(train => train.Tonnages.Keys.Where(makes).Sum(train.Rate)).ToList();
        return beside.Count > 1 && rates.Sum() > 0 ? own.Tonnages.Keys.Where(makes).Sum(own.Rate) / rates.Sum() : 1;
    }

    /// <summary>Trucks of a group that serve this train.</summary>
    public int Count(TruckGroup trucks, IReadOnlyList<TruckGroup> ofMix)
    {
        var count = trucks.Count ?? 0;
        if (trucks.Paver is { } paver)
        {
            return own.Has(paver) ? count : 0;
        }

        var laying = beside.Where(train => train.Rate(trucks.Mix!) > 0).ToList();
        if (laying.Count < 2)
        {
            return count;
        }

        calculation.Assumed(SimulationAssumptions.TrucksStay, "own", $"trucks:{trucks.Id}", new InputReference($"trucks:{trucks.Id}", "paver"));
        return Dealt(trucks, ofMix, laying);
    }

    // One truck after the other to the train that has least for what it lays, what the plan gives it counted first.
    private int Dealt(TruckGroup trucks, IReadOnlyList<TruckGroup> ofMix, List<TrainDemand> laying)
    {
        var has = laying.Select(train => ofMix.Where(other => other.Paver is { } paver && train.Has(paver)).Sum(other => other.Count ?? 0)).ToArray();
        var dealt = 0;
        foreach (var group in ofMix.Where(group => group.Paver is null))
        {
            for (var i = 0; i < (group.Count ?? 0); i++)
            {
                var next = Enumerable.Range(0, laying.Count).MinBy(train => (has[train] + 1) / laying[train].Rate(trucks.Mix!));
                has[next]++;
                dealt += ReferenceEquals(group, trucks) && ReferenceEquals(laying[next], own) ? 1 : 0;
            }
        }

        return dealt;
    }
}

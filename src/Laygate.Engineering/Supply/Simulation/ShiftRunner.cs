namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Engine, site and record of one worker.</summary>
internal sealed class ShiftRunner
{
    private readonly ShiftTally record;
    private readonly PavingSite site;
    private readonly HaulEngine engine;

    private readonly ShiftState? start;

    public ShiftRunner(ShiftModel model, ShiftPlan plan, ShiftArrays arrays, List<FedLoad>? list = null, ShiftState? start = null)
    {
        this.start = start;
        record = new ShiftTally(arrays, model.Duration);
        site = new PavingSite(model, plan, record, list);
        engine = new HaulEngine(plan.Network, site);
    }

    /// <summary>Runs some of the replications.</summary>
    /// <returns>Whether none needed too many events.</returns>
    public bool Run(ulong seed, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            Begin(seed, i);
            if (!engine.Run(double.MaxValue, ShiftSimulator.MostEvents) || !site.IsOver)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The states of one replication after each of its events, before the last.</summary>
    public IEnumerable<ShiftState> States(ulong seed, int replication)
    {
        Begin(seed, replication);
        for (var events = 1; events < ShiftSimulator.MostEvents && !engine.Run(double.MaxValue, events); events++)
        {
            yield return engine.Save();
        }
    }

    private void Begin(ulong seed, int replication)
    {
        engine.Reset(seed, replication);
        site.Reset(seed, replication);
        if (start is not null)
        {
            engine.Restore(start);
        }
    }

    /// <summary>Adds the waiting times of this worker to those of the others.</summary>
    public void AddWaited(int[][] waited)
    {
        for (var group = 0; group < record.Waited.Length; group++)
        {
            var own = record.Waited[group];
            if (waited[group].Length < own.Length)
            {
                Array.Resize(ref waited[group], own.Length);
            }

            for (var i = 0; i < own.Length; i++)
            {
                waited[group][i] += own[i];
            }
        }
    }
}

using Laygate.Engineering.Onward;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using ShiftRecord = Laygate.Model.Records.ShiftRecord;

namespace Laygate.UnitTests.Engineering.Onward;

/// <summary>A plan and the record of a shift that followed it exactly when nothing varies: each load, station, level and stop as the simulation has them.</summary>
internal sealed class FollowedPlan
{
    private readonly TrainWay way;

    public FollowedPlan(Plan plan)
    {
        Context = Ask.Context(plan);
        Train = TrainReader.Of(ShiftTimeline.Of(Context)!, new Calculation(Context))[0];
        Model = new ShiftReader(new Calculation(Context)).Read()![0];
        Start = PlanView.Of(Context).Clock.Start!.Value;
        way = new TrainWay(Train);
        (Loads, Outcome) = ShiftSimulator.Steady(Model)!.Value;
        Record = new ShiftRecord { Plan = plan.Identity.Id, Loads = [.. Loads.Select(Row)], Stations = [.. Loads.Select(Station)], Stops = [.. Stops()], Last = At(Outcome.Ended) };
    }

    public QuantityContext Context { get; }

    public PavingTrain Train { get; }

    public ShiftModel Model { get; }

    public DateTimeOffset Start { get; }

    public IReadOnlyList<FedLoad> Loads { get; }

    public ShiftOutcome Outcome { get; }

    public ShiftRecord Record { get; }

    /// <summary>What was known at the last reading.</summary>
    public OnwardKnown? Last { get; private set; }

    public DateTimeOffset At(double seconds) => Start.AddSeconds(seconds);

    public OnwardStart Read(DateTimeOffset at, OnwardEvents? events = null, ShiftRecord? record = null)
    {
        var known = RecordUpTo.Of(record ?? Record, at);
        Last = new OnwardKnown(known, ShiftLedgers.Of(Context, known, at), events ?? new OnwardEvents(), new OnwardClock(Start, at), new LedgerUnits(Context.Plan, Context.System));
        return new OnwardReader(Train, Model, Last).Read();
    }

    public double? End(OnwardStart start) => ShiftSimulator.Steady(start.Model, start.State) is { Outcome: { Finished: true, Ended: var end } } ? end : null;

    private Load Row(FedLoad load, int i) => new(new RowPlace("loads", i + 1), $"{i}", load.Mass)
    {
        Course = Model.Buffers[load.Buffer].Course,
        Mix = Model.Buffers[load.Buffer].Mix,
        Loaded = At(load.Loaded),
        Arrived = At(load.Arrived),
        Started = At(load.Docked + Model.Unloading.Exchange.Expected),
        Emptied = At(load.Empty),
        StationAtEnd = way.At(load.Position).Station,
        Run = way.At(load.Position).Run,
    };

    private StationReading Station(FedLoad load, int i)
    {
        var fed = Loads.Take(i + 1).Where(other => other.Buffer == load.Buffer).Sum(other => other.Mass);
        return new StationReading(new RowPlace("stations", i + 1), At(load.Empty), way.At(load.Position).Station)
        {
            Run = way.At(load.Position).Run,
            Course = Model.Buffers[load.Buffer].Course,
            OnMachine = fed - MixBalance.LaidUpTo(Model, load.Buffer, load.Position),
        };
    }

    private IEnumerable<PaverStop> Stops()
    {
        double? since = null;
        foreach (var state in ShiftSimulator.States(Model))
        {
            if (state.Paver.Motion is PaverMotion.Wanting or PaverMotion.Pausing)
            {
                since ??= state.Now;
            }
            else if (since is { } from)
            {
                yield return new PaverStop(default, At(from), At(state.Now));
                since = null;
            }
        }
    }
}

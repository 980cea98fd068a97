using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The shift of one train when nothing varies.</summary>
/// <param name="Model">The shift.</param>
/// <param name="Loads">Its loads in order.</param>
/// <param name="Outcome">What happened.</param>
public sealed record SteadyTrain(ShiftModel Model, IReadOnlyList<FedLoad> Loads, ShiftOutcome Outcome);

/// <summary>The simulated shift of one plan: run once, when something first asks for it, with the seed of the check.</summary>
public sealed class ShiftSimulation
{
    /// <summary>Replications while a search needs expected values only; what it proposes is confirmed with all.</summary>
    private const int SearchReplications = 50;

    private readonly QuantityContext context;
    private readonly Dictionary<string, Band> survived = new(StringComparer.Ordinal);
    private readonly Lazy<ShiftTrains?> result;
    private readonly Lazy<ShiftTrains?> otherwise;
    private readonly Lazy<IReadOnlyList<SteadyTrain>> steady;

    private ShiftSimulation(QuantityContext context)
    {
        this.context = context;
        Models = new ShiftReader(new Calculation(context)).Read() ?? [];
        Replications = ShiftSimulator.ReplicationsOf(Models, context.WithSpread ? ShiftSimulator.Replications : SearchReplications);
        result = new Lazy<ShiftTrains?>(() => All(Models));
        otherwise = new Lazy<ShiftTrains?>(Otherwise);
        steady = new Lazy<IReadOnlyList<SteadyTrain>>(() =>
            [.. Models.Select(model => ShiftSimulator.Steady(model) is { } run ? new SteadyTrain(model, run.Loads, run.Outcome) : null).OfType<SteadyTrain>()]);
    }

    /// <summary>The shift of each train; none where the plan does not state enough or it cannot be simulated. The quantities say why.</summary>
    public IReadOnlyList<ShiftModel> Models { get; }

    /// <summary>The shift of the only or first train; null where there is none.</summary>
    public ShiftModel? Model => Models.Count > 0 ? Models[0] : null;

    /// <summary>How often each train is simulated.</summary>
    public int Replications { get; }

    /// <summary>What happened in the replications; null where there is no model or a shift needed too many events.</summary>
    public ShiftTrains? Result => result.Value;

    /// <summary>
    /// The same shift with loads sent the other way, where the plan does not say how they are sent and the spread of values is asked
    /// for: that assumption moves stops, waits and mix under way more than any other. Null where it is not needed.
    /// </summary>
    public ShiftTrains? SentOtherwise => otherwise.Value;

    /// <summary>The shift of each train when nothing varies, to the last metre, beyond the end of the shift where it must; empty unless every train can be simulated.</summary>
    public IReadOnlyList<SteadyTrain> Steady => steady.Value.Count == Models.Count ? steady.Value : [];

    /// <summary>Loads of the only or first train in order when nothing varies, by the level of the buffers.</summary>
    public IReadOnlyList<FedLoad>? Loads => Steady.Count > 0 ? Steady[0].Loads : null;

    /// <summary>
    /// When the last metre is laid when nothing varies, s after the start of laying; where work is left after <see cref="ShiftSimulator.LongestTime"/>, that time,
    /// so that nothing that waits for the last metre comes sooner because mix comes later. Null where the shift cannot be simulated.
    /// </summary>
    public double? LastMetre => Steady.Count > 0 ? Steady.Max(train => train.Outcome.Ended) : null;

    /// <summary>
    /// Order of the loads of a pair by running balance: true for the upper mix. The largest payload of each mix counts; the lowest
    /// level of its buffer is sent with it. Null where no two mixes are laid together.
    /// </summary>
    public IReadOnlyList<bool>? OrderByBalance() => Model is { Buffers: [var lower, var upper] } && Model.Stretches.All(stretch => stretch.Pass == 0) && !string.Equals(lower.Mix, upper.Mix, StringComparison.Ordinal)
        ? LoadOrder.ByBalance(LoadsOf(0), LoadsOf(1), Model.Tonnage(0) / Model.Tonnage(1))
        : null;

    /// <summary>The simulation of a context.</summary>
    public static ShiftSimulation Of(QuantityContext context) => context.Service(c => new ShiftSimulation(c));

    /// <summary>
    /// Time for which the paver goes on when a plant stops in the middle of the shift, s: what is in its silo counts, what it
    /// would have made does not.
    /// </summary>
    /// <param name="plant">Id of the plant.</param>
    /// <param name="fromSilo">Whether trucks are still loaded from the silo.</param>
    /// <returns>Mean, 5 % and 95 % point over the replications; null where there is no model or the plant makes none of the mixes.</returns>
    public Band? Survived(string plant, bool fromSilo)
    {
        var served = Models.Where(model => model.Lines.Any(line => string.Equals(line.Plant, plant, StringComparison.Ordinal))).ToList();
        if (served.Count == 0)
        {
            return null;
        }

        var key = $"{plant} {fromSilo}";
        if (!survived.TryGetValue(key, out var band))
        {
            var runs = served.Select(model => Run(model with { Stop = new PlantStop(plant, model.Duration / 2, double.PositiveInfinity, fromSilo) })).ToList();
            if (runs.Contains(null))
            {
                return null;
            }

            survived[key] = band = runs.Select(run => run!.Survived).MinBy(one => one.Expected);
        }

        return band;
    }

    private ShiftTrains? All(IReadOnlyList<ShiftModel> models)
    {
        var trains = models.Select(model => (Model: model, Result: Run(model))).ToList();
        return trains.Count == 0 || trains.Exists(train => train.Result is null) ? null : new ShiftTrains([.. trains.Select(train => (train.Model, train.Result!))]);
    }

    private ShiftTrains? Otherwise() => context.WithSpread && context.Plan.Supply?.Dispatch is null
        ? All([.. Models.Select(model => model with { Dispatch = model.Dispatch == Dispatch.Timetable ? Dispatch.AsLoaded : Dispatch.Timetable })])
        : null;

    private ShiftResult? Run(ShiftModel model)
    {
        return context.Shifts is { } memory ? memory.Run(model, context.WithSpread, Replications, Simulate) : Simulate();

        // A search keeps all cores busy by itself.
        ShiftResult? Simulate() => ShiftSimulator.Run(
            model, context.Seed, Replications, parallel: context.WithSpread, cancel: context.Cancel);
    }

    private IReadOnlyList<double> LoadsOf(int buffer)
    {
        var payload = Model!.Trucks.Where(trucks => string.Equals(Model.Lines[trucks.Line].Mix, Model.Buffers[buffer].Mix, StringComparison.Ordinal)).Max(trucks => trucks.Payload);
        return LoadOrder.Loads(Model.Tonnage(buffer) + Model.Buffers[buffer].Lowest, payload, Model.LoadStep, Model.SmallestLoad);
    }
}

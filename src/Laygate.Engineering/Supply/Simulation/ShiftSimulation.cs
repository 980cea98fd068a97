using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The simulated shift of one plan: run once, when something first asks for it, with the seed of the check.</summary>
public sealed class ShiftSimulation
{
    /// <summary>Replications while a search needs expected values only; what it proposes is confirmed with all.</summary>
    private const int SearchReplications = 50;

    private readonly QuantityContext context;
    private readonly Dictionary<string, Band> survived = new(StringComparer.Ordinal);
    private readonly Lazy<ShiftResult?> result;
    private readonly Lazy<ShiftResult?> otherwise;
    private readonly Lazy<IReadOnlyList<FedLoad>?> loads;

    private ShiftSimulation(QuantityContext context)
    {
        this.context = context;
        Model = new ShiftReader(new Calculation(context)).Read();
        result = new Lazy<ShiftResult?>(() => Model is null ? null : Run(Model));
        otherwise = new Lazy<ShiftResult?>(Otherwise);
        loads = new Lazy<IReadOnlyList<FedLoad>?>(() => Model is null ? null : ShiftSimulator.Loads(Model));
    }

    /// <summary>The shift; null where the plan does not state enough or it cannot be simulated. The quantities say why.</summary>
    public ShiftModel? Model { get; }

    /// <summary>What happened in the replications; null where there is no model or a shift needed too many events.</summary>
    public ShiftResult? Result => result.Value;

    /// <summary>
    /// The same shift with loads sent the other way, where the plan does not say how they are sent and the spread of values is asked
    /// for: that assumption moves stops, waits and mix under way more than any other. Null where it is not needed.
    /// </summary>
    public ShiftResult? SentOtherwise => otherwise.Value;

    /// <summary>Loads in order when nothing varies, by the level of the buffers.</summary>
    public IReadOnlyList<FedLoad>? Loads => loads.Value;

    /// <summary>
    /// Order of the loads of a pair by running balance: true for the upper mix. The largest payload of each mix counts; the lowest
    /// level of its buffer is sent with it. Null where no two mixes are laid together.
    /// </summary>
    public IReadOnlyList<bool>? OrderByBalance() => Model is { Buffers: [var lower, var upper] } && !string.Equals(lower.Mix, upper.Mix, StringComparison.Ordinal)
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
        if (Model is null || !Model.Lines.Any(line => string.Equals(line.Plant, plant, StringComparison.Ordinal)))
        {
            return null;
        }

        var key = $"{plant} {fromSilo}";
        if (!survived.TryGetValue(key, out var band))
        {
            var stopped = Model with { Stop = new PlantStop(plant, Model.Duration / 2, double.PositiveInfinity, fromSilo) };
            if (Run(stopped) is not { } run)
            {
                return null;
            }

            survived[key] = band = run.Survived;
        }

        return band;
    }

    private ShiftResult? Otherwise() => Model is not null && context.WithSpread && context.Plan.Supply?.Dispatch is null
        ? Run(Model with { Dispatch = Model.Dispatch == Dispatch.Timetable ? Dispatch.AsLoaded : Dispatch.Timetable })
        : null;

    private ShiftResult? Run(ShiftModel model)
    {
        return context.Shifts is { } memory ? memory.Run(model, context.WithSpread, Simulate) : Simulate();

        // A search keeps all cores busy by itself.
        ShiftResult? Simulate() => ShiftSimulator.Run(
            model, context.Seed, context.WithSpread ? ShiftSimulator.Replications : SearchReplications, parallel: context.WithSpread, context.Cancel);
    }

    private IReadOnlyList<double> LoadsOf(int buffer)
    {
        var payload = Model!.Trucks.Where(trucks => string.Equals(Model.Lines[trucks.Line].Mix, Model.Buffers[buffer].Mix, StringComparison.Ordinal)).Max(trucks => trucks.Payload);
        return LoadOrder.Loads(Model.Tonnage(buffer) + Model.Buffers[buffer].Lowest, payload, Model.LoadStep, Model.SmallestLoad);
    }
}

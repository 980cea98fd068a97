using System.Collections.Concurrent;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Why a shift cannot be simulated.</summary>
public enum ShiftProblem
{
    /// <summary>Nothing stands in the way.</summary>
    None,

    /// <summary>Time, speed, lengths or masses are zero, negative or not finite.</summary>
    UnusableFigures,

    /// <summary>More than two courses are laid together, or more than eight in all.</summary>
    TooManyCourses,

    /// <summary>A mix has no truck.</summary>
    NoTrucks,

    /// <summary>The plant of a group makes none of the mixes that are laid.</summary>
    NoPlant,

    /// <summary>The shift, a journey or the number of loads is too large to be simulated.</summary>
    TooLarge,
}

/// <summary>Simulates a shift many times. The same model and seed give the same answer, on any number of cores.</summary>
public static class ShiftSimulator
{
    /// <summary>Replications where nothing else is asked for.</summary>
    public const int Replications = 500;

    /// <summary>Longest shift and longest time from the opening of a plant to the start of laying, s.</summary>
    public const double LongestTime = 72 * 3600;

    /// <summary>Most loads, trucks or stretches.</summary>
    public const int MostLoads = 2000;

    /// <summary>Most buffers over all passes of a train.</summary>
    public const int MostBuffers = 8;

    /// <summary>Most events of one shift.</summary>
    public const long MostEvents = 30_000;

    /// <summary>Loads and trucks up to which a shift is simulated as often as is asked for.</summary>
    public const int UsualLoads = 400;

    /// <summary>
    /// How often a shift is simulated: as often as is asked for, and less often in proportion where it has more than <see cref="UsualLoads"/> loads and trucks,
    /// but never less than a fifth, so that loads times replications have a bound. The confidence limits widen by themselves.
    /// </summary>
    /// <param name="models">The trains of the shift, of which none has a <see cref="Problem"/>.</param>
    /// <param name="asked">Replications of an ordinary shift.</param>
    public static int ReplicationsOf(IReadOnlyList<ShiftModel> models, int asked) =>
        Math.Clamp((int)(asked * UsualLoads / Math.Max(1, models.Sum(Size))), Math.Max(1, asked / 5), asked);

    /// <summary>Loads and trucks of one shift.</summary>
    private static double Size(ShiftModel model) =>
        (model.Buffers.Select((_, i) => model.Tonnage(i)).Sum() / model.Trucks.Where(trucks => trucks.Count > 0).Min(trucks => trucks.Payload)) + model.Trucks.Sum(trucks => (double)trucks.Count);

    /// <summary>What stands in the way of a simulation.</summary>
    public static ShiftProblem Problem(ShiftModel model)
    {
        if (model.Buffers.Count is 0 or > MostBuffers)
        {
            return ShiftProblem.TooManyCourses;
        }

        if (!HasUsableFigures(model))
        {
            return ShiftProblem.UnusableFigures;
        }

        if (model.Stretches.Any(stretch => stretch.PerMetre.Count(mass => mass > 0) > 2))
        {
            return ShiftProblem.TooManyCourses;
        }

        if (model.Buffers.Any(buffer => !model.Trucks.Any(trucks => trucks.Count > 0 && IsOf(model, trucks, buffer))))
        {
            return ShiftProblem.NoTrucks;
        }

        if (model.Trucks.Any(trucks => !model.Buffers.Any(buffer => IsOf(model, trucks, buffer))))
        {
            return ShiftProblem.NoPlant;
        }

        var loads = model.Buffers.Select((_, i) => model.Tonnage(i)).Sum() / model.Trucks.Where(trucks => trucks.Count > 0).Min(trucks => trucks.Payload);
        return loads > MostLoads || model.Trucks.Sum(trucks => (double)trucks.Count) > MostLoads || model.Stretches.Count > MostLoads
            || model.Duration > LongestTime || model.Trucks.Any(trucks => !(model.Opening(trucks) >= -LongestTime))
            ? ShiftProblem.TooLarge
            : ShiftProblem.None;
    }

    /// <summary>Simulates a shift.</summary>
    /// <param name="model">The shift.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="replications">Number of shifts, 1 to 100 000.</param>
    /// <param name="parallel">Whether all cores are used; the result is the same.</param>
    /// <param name="from">State from which all go on; null: from the beginning.</param>
    /// <param name="cancel">Calls it off between shifts.</param>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    /// <returns>What happened; null where <see cref="Problem"/> names a reason, the state is not one of the model, or a shift needs too many events.</returns>
    public static ShiftResult? Run(ShiftModel model, ulong seed, int replications = Replications, bool parallel = true, ShiftState? from = null, CancellationToken cancel = default)
    {
        if (Problem(model) != ShiftProblem.None || replications is < 1 or > 100_000 || from?.Fits(model) == false)
        {
            return null;
        }

        var plan = new ShiftPlan(model);
        var arrays = new ShiftArrays(replications, model.Buffers.Count, plan.Mixes.Count, model.Trucks.Count);
        int[][] waited = [.. model.Trucks.Select(_ => Array.Empty<int>())];
        var first = new ShiftRunner(model, plan, arrays, start: from);
        if (!first.Run(seed, 0, 1))
        {
            return null;
        }

        var complete = parallel && replications > 16
            ? RunParallel(model, plan, arrays, seed, waited, from, cancel)
            : first.Run(seed, 1, replications);
        first.AddWaited(waited);
        return complete ? new ShiftResult(model, plan, arrays, waited) : null;
    }

    /// <summary>The loads of a shift in which nothing varies, in the order in which the feeder takes them by the level of the buffers.</summary>
    /// <returns>The loads; null where the shift cannot be simulated.</returns>
    public static IReadOnlyList<FedLoad>? Loads(ShiftModel model) => Steady(model)?.Loads;

    /// <summary>
    /// The shift in which nothing varies, to the last metre: where it ends too early, it is followed beyond its end, for <see cref="LongestTime"/>
    /// at most, so that the list of loads and the last metre belong to the whole work.
    /// </summary>
    /// <param name="model">The shift.</param>
    /// <param name="from">State from which it goes on; null: from the beginning.</param>
    /// <returns>Loads that are fed from then on, and outcome; null where the shift cannot be simulated.</returns>
    public static (IReadOnlyList<FedLoad> Loads, ShiftOutcome Outcome)? Steady(ShiftModel model, ShiftState? from = null)
    {
        if (Problem(model) != ShiftProblem.None || from?.Fits(model) == false)
        {
            return null;
        }

        var list = new List<FedLoad>();
        var (runner, arrays) = SteadyRunner(model, list, from);
        return runner.Run(0, 0, 1) ? (list, arrays.Outcomes[0]) : null;
    }

    /// <summary>The states of the shift in which nothing varies, after each of its events.</summary>
    /// <param name="model">The shift.</param>
    public static IEnumerable<ShiftState> States(ShiftModel model) =>
        Problem(model) == ShiftProblem.None ? SteadyRunner(model, null, null).Runner.States(0, 0) : [];

    private static (ShiftRunner Runner, ShiftArrays Arrays) SteadyRunner(ShiftModel model, List<FedLoad>? list, ShiftState? from)
    {
        var steady = model.WithoutSpread() with { Duration = LongestTime };
        var plan = new ShiftPlan(steady);
        var arrays = new ShiftArrays(1, model.Buffers.Count, plan.Mixes.Count, model.Trucks.Count);
        return (new ShiftRunner(steady, plan, arrays, list, from), arrays);
    }

    private static bool RunParallel(ShiftModel model, ShiftPlan plan, ShiftArrays arrays, ulong seed, int[][] waited, ShiftState? from, CancellationToken cancel)
    {
        var complete = 1;
        Parallel.ForEach(
            Partitioner.Create(1, arrays.Outcomes.Length, 16),
            new ParallelOptions { CancellationToken = cancel },
            () => new ShiftRunner(model, plan, arrays, start: from),
            (range, _, runner) =>
            {
                if (!runner.Run(seed, range.Item1, range.Item2))
                {
                    Interlocked.Exchange(ref complete, 0);
                }

                return runner;
            },
            runner =>
            {
                lock (waited)
                {
                    runner.AddWaited(waited);
                }
            });
        return complete == 1;
    }

    private static bool IsOf(ShiftModel model, ShiftTrucks trucks, ShiftBuffer buffer) =>
        trucks.Line >= 0 && trucks.Line < model.Lines.Count && string.Equals(model.Lines[trucks.Line].Mix, buffer.Mix, StringComparison.Ordinal);

    private static bool HasUsableFigures(ShiftModel model) =>
        Positive(model.Duration) && Positive(model.Speed) && Positive(model.Length) && Positive(model.LoadStep) && model.BadDay is >= 0.5 and < 1 && model.SmallestLoad is >= 0 and <= 1
        && NotNegative(model.Begins) && model.Stretches.All(stretch => stretch.Length >= 0 && NotNegative(stretch.Move) && stretch.PerMetre.Count == model.Buffers.Count && stretch.PerMetre.All(NotNegative))
        && model.Buffers.Select((_, i) => model.Tonnage(i)).All(Positive)
        && model.Buffers.All(buffer => Positive(buffer.Capacity) && NotNegative(buffer.Lowest) && buffer.Lowest < buffer.Capacity
            && NotNegative(buffer.Restart) && (buffer.Call is null || NotNegative(buffer.Call.Value)))
        && model.Lines.All(line => NotNegative(line.Rate) && NotNegative(line.Stock) && NotNegative(line.Capacity) && line.Places is >= 1 and <= 100)
        && model.Trucks.All(trucks => trucks.Count >= 0 && Positive(trucks.Payload) && trucks.Loading.IsUsable && trucks.Out.IsUsable && trucks.Back.IsUsable)
        && Positive(model.Unloading.Rate) && model.Unloading.Exchange.IsUsable && NotNegative(model.Unloading.Changeover)
        && model.Pauses.All(pause => NotNegative(pause.After) && NotNegative(pause.Length))
        && (model.Stop is null || (double.IsFinite(model.Stop.At) && model.Stop.Length >= 0));

    private static bool Positive(double value) => value > 0 && double.IsFinite(value);

    private static bool NotNegative(double value) => value >= 0 && double.IsFinite(value);
}

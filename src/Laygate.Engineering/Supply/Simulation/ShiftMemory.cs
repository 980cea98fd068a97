using System.Collections.Concurrent;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// Simulated shifts of one plan and of changed copies of it, found again by all that goes into them: a change of the mat
/// does not simulate the haul again. Serves several threads.
/// </summary>
internal sealed class ShiftMemory
{
    // A fleet of many groups is changed in many ways, and each result holds figures for each of its groups.
    private const int MostKept = 64;
    private const long MostBytes = 24 << 20;

    private readonly ConcurrentDictionary<ShiftModel, ShiftResult?> few = new(SameShift.Instance);
    private readonly ConcurrentDictionary<ShiftModel, ShiftResult?> all = new(SameShift.Instance);

    private long bytes;

    /// <summary>Simulations that were kept; for tests and measurements.</summary>
    public int Count => few.Count + all.Count;

    /// <summary>The result of a shift, from memory or newly simulated.</summary>
    /// <param name="model">The shift.</param>
    /// <param name="withSpread">Whether all replications count, or the few of a search.</param>
    /// <param name="replications">How often it is simulated: a result of another number is not taken.</param>
    /// <param name="run">Simulates it.</param>
    public ShiftResult? Run(ShiftModel model, bool withSpread, int replications, Func<ShiftResult?> run)
    {
        var kept = withSpread ? all : few;
        if (kept.TryGetValue(model, out var known) && (known is null || known.Outcomes.Count == replications))
        {
            return known;
        }

        var found = run();
        if (kept.Count >= MostKept || Interlocked.Read(ref bytes) + (found?.Bytes ?? 0) > MostBytes)
        {
            return found;
        }

        Interlocked.Add(ref bytes, found?.Bytes ?? 0);
        return kept.GetOrAdd(model, found);
    }

    /// <summary>Compares shifts by every number and name in them.</summary>
    private sealed class SameShift : IEqualityComparer<ShiftModel>
    {
        public static readonly SameShift Instance = new();

        public bool Equals(ShiftModel? x, ShiftModel? y) => ReferenceEquals(x, y) || (x is not null && y is not null
            && Plain(x) == Plain(y)
            && x.Stretches.Count == y.Stretches.Count
            && x.Stretches.Zip(y.Stretches).All(pair => pair.First.Length.Equals(pair.Second.Length) && pair.First.Move.Equals(pair.Second.Move) && pair.First.Pass == pair.Second.Pass && pair.First.PerMetre.SequenceEqual(pair.Second.PerMetre))
            && x.Buffers.SequenceEqual(y.Buffers) && x.Lines.SequenceEqual(y.Lines) && x.Trucks.SequenceEqual(y.Trucks) && x.Pauses.SequenceEqual(y.Pauses));

        public int GetHashCode(ShiftModel obj)
        {
            var code = new HashCode();
            code.Add(obj.Duration);
            code.Add(obj.Speed);
            code.Add(obj.Unloading);
            foreach (var part in obj.Trucks.Cast<object>().Concat(obj.Buffers).Concat(obj.Lines))
            {
                code.Add(part);
            }

            return code.ToHashCode();
        }

        // Everything that is no list: records compare lists by reference only.
        private static ShiftModel Plain(ShiftModel model) => model with { Stretches = [], Buffers = [], Lines = [], Trucks = [], Pauses = [] };
    }
}

namespace Laygate.Mutation;

/// <summary>Draws a sample that is spread over rooms and folders.</summary>
public static class Sample
{
    private const int LeastOfFolder = 6;

    /// <summary>
    /// How many mutants of each folder: as many as its share of all, at least six where there are so many.
    /// </summary>
    public static IReadOnlyDictionary<string, int> Quotas(IReadOnlyDictionary<string, int> found, int count)
    {
        var all = found.Values.Sum();
        return found.ToDictionary(one => one.Key, one => Math.Min(one.Value, Math.Max(LeastOfFolder, (int)Math.Ceiling((double)count * one.Value / all))), StringComparer.Ordinal);
    }

    /// <summary>The same order for the same seed, on every machine: sorted by a hash of seed and number.</summary>
    public static IEnumerable<T> Shuffled<T>(IEnumerable<T> all, int seed) =>
        all.Select((one, index) => (one, Key: Hash((ulong)(uint)seed << 32 | (uint)index))).OrderBy(pair => pair.Key).Select(pair => pair.one);

    // SplitMix64, Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014.
    private static ulong Hash(ulong value)
    {
        value += 0x9E3779B97F4A7C15;
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
        return value ^ (value >> 31);
    }
}

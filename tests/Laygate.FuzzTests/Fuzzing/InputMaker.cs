using System.Globalization;
using System.Text;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>One input of the fuzzer.</summary>
/// <param name="Index">Its number.</param>
/// <param name="Target">What it is given to.</param>
/// <param name="Changes">The seed and what was changed in it.</param>
/// <param name="Bytes">The input.</param>
internal sealed record FuzzInput(long Index, Target Target, string Changes, byte[] Bytes);

/// <summary>Makes inputs: the same seed and number always give the same bytes.</summary>
/// <param name="seed">The seed of the run.</param>
/// <param name="targets">The targets; each gets its share of the inputs.</param>
internal sealed class InputMaker(int seed, IReadOnlyList<Target> targets)
{
    private readonly int total = targets.Sum(target => target.Share);

    /// <summary>The input of a number.</summary>
    public FuzzInput Make(long index)
    {
        // Random's own sequence for a given seed is fixed; the two numbers are mixed so that neighbours share nothing.
        var random = new Random(unchecked((int)((((ulong)(uint)seed << 32) + (ulong)index) * 0x9E3779B97F4A7C15UL >> 33)));
        var target = Drawn(random);
        var (text, changes) = target.IsMany ? Several(target, random) : Changed(target.Seeds, random);
        var (bytes, how) = Finished(text, random);
        return new FuzzInput(index, target, changes + how, bytes);
    }

    private Target Drawn(Random random)
    {
        var at = random.Next(total);
        return targets.First(target => (at -= target.Share) < 0);
    }

    private static (string Text, string Changes) Changed(SeedSet set, Random random)
    {
        var from = set.Any(random);
        if (random.Next(20) == 0)
        {
            var other = set.Any(random);
            return (TextDamage.Crossed(from.Text, other.Text, random), $"{from.Name} crossed with {other.Name}");
        }

        var (text, changes) = Splices.Make(from, set, 1 + Math.Min(random.Next(4), random.Next(4)), random);
        return (text, $"{from.Name}: {changes}");
    }

    // Several documents in one file: sound ones and changed ones.
    private static (string Text, string Changes) Several(Target target, Random random)
    {
        var documents = Enumerable.Range(0, random.Next(2, 5))
            .Select(_ => random.Next(3) == 0 ? Changed(target.Seeds, random) : (target.Seeds.Any(random).Text, Changes: "as it is")).ToList();
        var between = random.Next(8) switch { 0 => "\n...\n", 1 => "\n---\n---\n", 2 => "\n...\n---\n", _ => "\n---\n" };
        return (string.Join(between, documents.Select(document => document.Item1)), string.Create(CultureInfo.InvariantCulture, $"{documents.Count} documents: {string.Join("; ", documents.Select(document => document.Changes))}"));
    }

    private static (byte[] Bytes, string How) Finished(string text, Random random) => random.Next(20) switch
    {
        0 or 1 => (Encoding.UTF8.GetBytes(TextDamage.Lines(text, random)), ", a line"),
        2 => (ByteDamage.Damaged(Encoding.UTF8.GetBytes(text), random), ", bytes"),
        3 when random.Next(2) == 0 => (TextDamage.Encoded(text, random), ", the encoding"),
        _ => (Encoding.UTF8.GetBytes(text), string.Empty),
    };
}

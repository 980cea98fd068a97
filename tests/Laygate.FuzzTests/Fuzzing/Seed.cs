namespace Laygate.FuzzTests.Fuzzing;

/// <summary>A sound input from which others are made.</summary>
/// <param name="Name">Where it comes from.</param>
/// <param name="Text">Its text.</param>
internal sealed record Seed(string Name, string Text)
{
    private readonly Lazy<IReadOnlyList<Piece>> pieces = new(() => Piece.Of(Text));

    /// <summary>All its values.</summary>
    public IReadOnlyList<Piece> Pieces => pieces.Value;
}

/// <summary>The seeds of one target, and what of them can be put in other places.</summary>
internal sealed class SeedSet(IReadOnlyList<Seed> seeds)
{
    private readonly Lazy<string[]> keys = new(() =>
        [.. seeds.SelectMany(seed => seed.Pieces).Select(piece => piece.Key?.Name).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);

    private readonly Lazy<ILookup<string, (Seed Seed, Piece Piece)>> byKey = new(() =>
        seeds.SelectMany(seed => seed.Pieces.Where(piece => piece.Key is not null).Select(piece => (seed, piece)))
            .ToLookup(found => found.piece.Key!.Value.Name, StringComparer.Ordinal));

    /// <summary>The seeds.</summary>
    public IReadOnlyList<Seed> All => seeds;

    /// <summary>Every key that any of them uses.</summary>
    public IReadOnlyList<string> Keys => keys.Value;

    /// <summary>Any of them.</summary>
    public Seed Any(Random random) => seeds[random.Next(seeds.Count)];

    /// <summary>A value that any of them gives a key, in one line.</summary>
    public string ValueOf(string key, Random random)
    {
        var found = byKey.Value[key].ToArray();
        var (seed, piece) = found[random.Next(found.Length)];
        return piece.InOneLine(seed.Text);
    }
}

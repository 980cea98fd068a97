using System.Globalization;
using Laygate.ConformanceTests.Plans;
using Laygate.Model.Measures;
using Laygate.Reading.Yaml;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>A change of a text: what stands between two offsets gives way to something else.</summary>
/// <param name="Start">Offset of the first character that goes.</param>
/// <param name="End">Offset behind the last.</param>
/// <param name="Put">What stands there instead.</param>
internal sealed record Splice(int Start, int End, string Put);

/// <summary>Changes that know the structure of a file: single values and entries are changed, the rest stays sound.</summary>
internal static class Splices
{
    private delegate IEnumerable<Splice>? Change(Seed seed, Piece piece, SeedSet set, Random random);

    private static readonly (string Name, int Weight, Change Make)[] Changes =
    [
        ("fragment", 22, (_, piece, _, random) => [new Splice(piece.Start, piece.End, Fragments.Any(random))]),
        ("absurd number", 12, (seed, piece, _, random) => Absurd(seed, piece, random)),
        ("other unit", 8, (seed, piece, _, random) => OtherUnit(seed, piece, random)),
        ("value of the same key elsewhere", 14, (_, piece, set, random) => piece.Key is { } key ? [new Splice(piece.Start, piece.End, set.ValueOf(key.Name, random))] : null),
        ("value of another key", 5, (_, piece, set, random) => [new Splice(piece.Start, piece.End, set.ValueOf(set.Keys[random.Next(set.Keys.Count)], random))]),
        ("delete", 12, (_, piece, _, _) => [Deleted(piece)]),
        ("duplicate", 5, (seed, piece, _, _) => piece.Next is { } next ? [new Splice(piece.EntryStart, piece.EntryStart, seed.Text[piece.EntryStart..next.EntryStart])] : null),
        ("swap with the next", 5, (seed, piece, _, _) => piece.Next is { } next ? [new Splice(piece.EntryStart, piece.End, seed.Text[next.EntryStart..next.End]), new Splice(next.EntryStart, next.End, seed.Text[piece.EntryStart..piece.End])] : null),
        ("rename key", 6, (_, piece, set, random) => piece.Key is { } key ? [new Splice(key.Start, key.End, OtherKey(key.Name, set, random))] : null),
        ("new key", 6, (seed, piece, set, random) => NewKey(seed, piece, set, random)),
        ("wrap", 4, (seed, piece, _, random) => [new Splice(piece.Start, piece.End, random.Next(2) == 0 ? $"[{piece.InOneLine(seed.Text)}]" : $"{{a: {piece.InOneLine(seed.Text)}}}")]),
        ("many times", 3, (seed, piece, _, random) => [new Splice(piece.Start, piece.End, Fragments.List(piece.InOneLine(seed.Text), 1 << random.Next(1, 12)))]),
        ("more entries", 4, (seed, piece, _, random) => piece.Next is { } next ? [new Splice(piece.EntryStart, piece.EntryStart, Repeated(seed.Text[piece.EntryStart..next.EntryStart], 1 << random.Next(1, 9)))] : null),
        ("anchor and alias", 3, (seed, piece, _, random) => Alias(seed, piece, random)),
        ("tag", 2, (_, piece, _, random) => [new Splice(piece.Start, piece.Start, random.Next(2) == 0 ? "!!str " : "!own ")]),
        ("upper case", 2, (seed, piece, _, _) => [new Splice(piece.Start, piece.End, seed.Text[piece.Start..piece.End].ToUpperInvariant())]),
    ];

    private static readonly int Total = Changes.Sum(change => change.Weight);

    /// <summary>Makes changes at places that do not touch one another.</summary>
    /// <returns>The text, and the names of the changes.</returns>
    public static (string Text, string Changes) Make(Seed seed, SeedSet set, int count, Random random)
    {
        var made = new List<Splice>();
        var names = new List<string>();
        for (var tries = 0; tries < 20 * count && names.Count < count && seed.Pieces.Count > 0; tries++)
        {
            var (name, make) = Drawn(random);
            var piece = seed.Pieces[random.Next(seed.Pieces.Count)];
            if (make(seed, piece, set, random)?.ToList() is { } splices && !splices.Exists(splice => made.Exists(other => splice.Start <= other.End && other.Start <= splice.End)))
            {
                made.AddRange(splices);
                names.Add(string.Create(CultureInfo.InvariantCulture, $"{name} at {piece.Key?.Name ?? "entry"} {piece.Index}"));
            }
        }

        var text = made.OrderByDescending(splice => splice.Start).Aggregate(seed.Text, (now, splice) => string.Concat(now.AsSpan(0, splice.Start), splice.Put, now.AsSpan(splice.End)));
        return (text, string.Join(", ", names));
    }

    private static (string Name, Change Make) Drawn(Random random)
    {
        var at = random.Next(Total);
        foreach (var (name, weight, make) in Changes)
        {
            if ((at -= weight) < 0)
            {
                return (name, make);
            }
        }

        throw new InvalidOperationException("The weights do not add up.");
    }

    // In block and in flow style alike an entry reaches to the next; the last one begins behind the one before it.
    private static Splice Deleted(Piece piece) => piece.Next is { } next
        ? new Splice(piece.EntryStart, next.EntryStart, string.Empty)
        : piece.Index > 0 ? new Splice(piece.Siblings[piece.Index - 1].End, piece.End, string.Empty) : new Splice(piece.EntryStart, piece.End, string.Empty);

    private static IEnumerable<Splice>? Absurd(Seed seed, Piece piece, Random random)
    {
        var written = seed.Text[piece.Start..piece.End];
        if (piece.Token is not ScalarToken { Style: ScalarStyle.Plain } || StatedNumber.Read(written, string.Empty, piece.Token.Span) is not { } number)
        {
            return null;
        }

        var absurd = number.Absurd().ToArray();
        return absurd.Length == 0 ? null : [new Splice(piece.Start, piece.End, absurd[random.Next(absurd.Length)])];
    }

    private static IEnumerable<Splice>? OtherUnit(Seed seed, Piece piece, Random random)
    {
        var parts = seed.Text[piece.Start..piece.End].Split(' ', 2);
        if (piece.Token is not ScalarToken || parts.Length < 2 || UnitTable.Find(parts[1]) is not { } unit)
        {
            return null;
        }

        var units = random.Next(4) == 0 ? UnitTable.All : [.. UnitTable.Of(unit.Dimension)];
        return [new Splice(piece.Start, piece.End, $"{parts[0]} {units[random.Next(units.Count)].Spelling}")];
    }

    private static string OtherKey(string key, SeedSet set, Random random) => random.Next(4) switch
    {
        0 => key + "s",
        1 => key.Replace('_', '-'),
        2 => Fragments.Any(random),
        _ => set.Keys[random.Next(set.Keys.Count)],
    };

    private static IEnumerable<Splice>? NewKey(Seed seed, Piece piece, SeedSet set, Random random)
    {
        if (piece.Key is not { } key)
        {
            return null;
        }

        var name = set.Keys[random.Next(set.Keys.Count)];
        var value = random.Next(3) == 0 ? Fragments.Any(random) : set.ValueOf(name, random);
        var lineStart = seed.Text.LastIndexOf('\n', Math.Max(0, key.Start - 1)) + 1;
        var isBlock = seed.Text.AsSpan(lineStart, key.Start - lineStart).ContainsAnyExcept(' ', '-') is false;
        return [new Splice(key.Start, key.Start, isBlock ? $"{name}: {value}\n{new string(' ', key.Start - lineStart)}" : $"{name}: {value}, ")];
    }

    private static string Repeated(string entry, int count) => string.Concat(Enumerable.Repeat(entry, Math.Min(count, 1 + (400_000 / entry.Length))));

    private static IEnumerable<Splice>? Alias(Seed seed, Piece piece, Random random)
    {
        var other = seed.Pieces[random.Next(seed.Pieces.Count)];
        return piece.End < other.Start ? [new Splice(piece.Start, piece.Start, "&a "), new Splice(other.Start, other.End, "*a")] : null;
    }
}

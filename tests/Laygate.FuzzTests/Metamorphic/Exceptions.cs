namespace Laygate.FuzzTests.Metamorphic;

/// <summary>What may differ although the property says otherwise, each with its reason: <c>exceptions.txt</c>.</summary>
internal static class Exceptions
{
    private static readonly ILookup<string, (string What, string Reason)> All =
        File.ReadLines(Path.Combine(SourceTree.Root, "tests", "Laygate.FuzzTests", "Metamorphic", "exceptions.txt"))
            .Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split(" | "))
            .ToLookup(parts => parts[0], parts => (parts[1], parts[2]), StringComparer.Ordinal);

    /// <summary>All that a property excepts.</summary>
    public static IEnumerable<(string What, string Reason)> Of(string property) => All[property];

    /// <summary>Whether a property excepts a quantity, a rule or a list.</summary>
    public static bool Has(string property, string what) => All[property].Any(exception => exception.What == what);

    /// <summary>The properties that except anything.</summary>
    public static IEnumerable<string> Properties => All.Select(group => group.Key);
}
